import { describe, expect, it } from 'vitest';
import { DEFAULT_COUNT, DEFAULT_SEED, parseArguments } from './parse-arguments.js';

describe('parseArguments of slips', () => {
  it('simulates where no file is named', () => {
    expect(parseArguments([])).toEqual({
      kind: 'simulation',
      seed: DEFAULT_SEED,
      count: DEFAULT_COUNT,
      jsonFile: null,
      recordsFile: null,
      workers: null,
    });
    expect(
      parseArguments(['--seed', '7', '--count', '40', '--json', 'a.json', '--write', 'b.csv', '--workers', '1']),
    ).toEqual({ kind: 'simulation', seed: 7, count: 40, jsonFile: 'a.json', recordsFile: 'b.csv', workers: 1 });
  });

  it('reads a file of records, wherever it stands among the words', () => {
    const asked = { kind: 'records', file: 'a.csv', jsonFile: 'out.json', workers: null };
    expect(parseArguments(['a.csv', '--json', 'out.json'])).toEqual(asked);
    expect(parseArguments(['--json', 'out.json', '--', 'a.csv'])).toEqual(asked);
    expect(parseArguments(['a.csv'])).toMatchObject({ kind: 'records', file: 'a.csv', jsonFile: null });
  });

  it.each([
    [['a.csv', 'b.csv']],
    [['--json']],
    [['--json', '--seed', '1']],
    [['--seed', 'one']],
    [['--seed', '100000']],
    [['--count', '500001']],
    [['--count', '0']],
    [['--count', '-5']],
    [['--workers', '0']],
    [['--fast', '1']],
    [['a.csv', '--seed', '1']],
    [['a.csv', '--write', 'b.csv']],
  ])('refuses %j', (words) => {
    expect(parseArguments(words)).toBeNull();
  });
});
