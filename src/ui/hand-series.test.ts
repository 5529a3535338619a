import { describe, expect, it } from 'vitest';
import { endsWithSize, withAnotherReading, withVerdict } from './hand-series.js';

describe('another reading', () => {
  it('makes room behind what is typed, and only there', () => {
    expect(withAnotherReading('63')).toBe('63 ');
    expect(withAnotherReading('63 63.5 ')).toBe('63 63.5 ');
    expect(withAnotherReading('')).toBe('');
  });
});

describe('a verdict on a size', () => {
  it('goes behind the size typed last', () => {
    expect(withVerdict('10', 'loose')).toBe('10 loose ');
    expect(withVerdict('10 loose 9,5 ', 'fits')).toBe('10 loose 9,5 fits ');
  });

  it('is not taken where no size waits for it', () => {
    for (const text of ['', '10 loose ', 'wide', '10 l']) {
      expect(endsWithSize(text)).toBe(false);
      expect(withVerdict(text, 'tight')).toBe(text);
    }
  });
});
