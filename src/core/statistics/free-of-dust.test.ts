import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { freeOfDust } from './free-of-dust.js';

describe('numbers free of binary dust', () => {
  it.each([
    [0.1 + 0.2, 0.3],
    [63.1 - 62.1, 1],
    [27.3 + 10.1, 37.4],
    [-0, 0],
    [-2.5, -2.5],
  ])('turns %d into %d', (dusty, meant) => {
    expect(freeOfDust(dusty)).toBe(meant);
  });

  it('gives sums of decimals as they are on paper', () => {
    const hundredths = fc.integer({ min: -100_000, max: 100_000 });
    fc.assert(
      fc.property(hundredths, hundredths, (a, b) => {
        expect(freeOfDust(a / 100 + b / 100)).toBe((a + b) / 100);
      }),
    );
  });

  it('leaves what is larger than any scale, or no number, alone', () => {
    for (const value of [Number.MAX_VALUE, -Number.MAX_VALUE, Number.POSITIVE_INFINITY, Number.NaN]) {
      expect(freeOfDust(value)).toBe(value);
    }
  });
});
