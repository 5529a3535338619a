import { describe, expect, it } from 'vitest';
import { parseArguments, plotFileOf } from './parse-arguments.js';

describe('parseArguments', () => {
  it('measures without a profile unless it is asked otherwise', () => {
    expect(parseArguments(['pictures'])).toEqual({
      folder: 'pictures',
      runs: ['no-profile'],
      jsonFile: null,
      plotFile: null,
    });
    expect(parseArguments(['--profile', 'pictures'])?.runs).toEqual(['profile']);
    expect(parseArguments(['pictures', '--both'])?.runs).toEqual(['no-profile', 'profile']);
  });

  it('draws the picture beside the file of figures, or where it is told', () => {
    expect(parseArguments(['a', '--json', 'out/b.json'])).toMatchObject({
      jsonFile: 'out/b.json',
      plotFile: 'out/b.svg',
    });
    expect(parseArguments(['a', '--json', 'b'])?.plotFile).toBe('b.svg');
    expect(parseArguments(['a', '--json', 'b.json', '--plot', 'c.svg'])?.plotFile).toBe('c.svg');
    expect(parseArguments(['a', '--plot', 'c.svg'])).toMatchObject({ jsonFile: null, plotFile: 'c.svg' });
  });

  it.each([[[]], [['a', 'b']], [['a', '--json']], [['a', '--json', '--both']], [['a', '--fast']], [['--profile']]])(
    'refuses %j',
    (words) => {
      expect(parseArguments(words)).toBeNull();
    },
  );
});

describe('plotFileOf', () => {
  it('keeps two ways to measure apart', () => {
    expect(plotFileOf('a.svg', 'no-profile', true)).toBe('a.svg');
    expect(plotFileOf('a.svg', 'profile', true)).toBe('a.svg');
    expect(plotFileOf('a.svg', 'profile', false)).toBe('a-profile.svg');
  });
});
