import { describe, expect, it } from 'vitest';
import type { Comparison } from './statistics.js';
import { binomialBand, isHeld, percentile, shareWithin, summariseErrors } from './statistics.js';

describe('percentile', () => {
  it('is linear between neighbours', () => {
    // by hand: of 1, 2, 3, 4 the place of 95 % is 0.95 * 3 = 2.85, so 3 + 0.85
    expect(percentile([4, 1, 3, 2], 0.95)).toBeCloseTo(3.85, 12);
    expect(percentile([4, 1, 3, 2], 0.5)).toBe(2.5);
    expect(percentile([7, 9, 8], 0.5)).toBe(8);
  });

  it('reaches the ends, and takes a single value', () => {
    expect(percentile([5, 1, 3], 0)).toBe(1);
    expect(percentile([5, 1, 3], 1)).toBe(5);
    expect(percentile([6], 0.95)).toBe(6);
  });

  it('does not sort the list it is given, and refuses an empty one', () => {
    const values = [3, 1, 2];
    percentile(values, 0.5);
    expect(values).toEqual([3, 1, 2]);
    expect(() => percentile([], 0.5)).toThrow('nothing');
  });
});

/** Errors -1, 2, 0 and 1.1 mm. */
const COMPARISONS: readonly Comparison[] = [
  { value: 62, uncertainty: 0.5, low: 61, high: 63, truth: 63 },
  { value: 65, uncertainty: 0.5, low: 64, high: 66, truth: 63 },
  { value: 60, uncertainty: 0.5, low: 59, high: 61, truth: 60 },
  { value: 64, uncertainty: 1.1, low: 63, high: 65, truth: 62.9 },
];

describe('summariseErrors', () => {
  it('takes the size of errors for the percentiles, their sign for the bias, and both bounds as inside', () => {
    const summary = summariseErrors(COMPARISONS);
    // by hand: sizes in order 0, 1, 1.1, 2; errors over uncertainties -2, 4, 0, 1
    expect(summary?.count).toBe(4);
    expect(summary?.medianError).toBeCloseTo(1.05, 12);
    expect(summary?.percentile95Error).toBeCloseTo(1.1 + 0.85 * 0.9, 12);
    expect(summary?.bias).toBeCloseTo(2.1 / 4, 12);
    expect(summary?.coverage).toBe(0.5);
    expect(summary?.errorOverUncertainty).toBeCloseTo(Math.sqrt(21 / 4), 12);
  });

  it('is null without comparisons', () => {
    expect(summariseErrors([])).toBeNull();
  });
});

describe('isHeld', () => {
  it('counts both bounds as inside', () => {
    expect(COMPARISONS.map(isHeld)).toEqual([true, false, true, false]);
  });
});

describe('shareWithin', () => {
  it('counts errors of either sign up to the factor', () => {
    expect(shareWithin(COMPARISONS, 0.9)).toBe(0.25);
    expect(shareWithin(COMPARISONS, 2)).toBe(0.75);
    expect(shareWithin(COMPARISONS, 4)).toBe(1);
  });
});

describe('binomialBand', () => {
  it('agrees with tables of the binomial distribution', () => {
    // 10 trials at one half, by counting of 1024: P(X <= 1) = 11/1024 = 0.011, P(X <= 2) = 56/1024 = 0.055, and the same from the other end
    expect(binomialBand(10, 0.5)).toEqual({ low: 0.2, high: 0.8 });
    // 8 trials at 0.95: 0.95^8 = 0.663; P(X <= 5) = 0.0058, P(X <= 6) = 0.057
    expect(binomialBand(8, 0.95)).toEqual({ low: 6 / 8, high: 1 });
  });

  it('nears the normal distribution for many trials, without running out of digits', () => {
    const { low, high } = binomialBand(20_000, 0.9);
    const halfWidth = 1.96 * Math.sqrt((0.9 * 0.1) / 20_000);
    // a trial more or less is 0.00005
    expect(Math.abs(low - (0.9 - halfWidth))).toBeLessThan(1e-4);
    expect(Math.abs(high - (0.9 + halfWidth))).toBeLessThan(1e-4);
  });

  it('is a point where nothing is left to chance', () => {
    expect(binomialBand(5, 0)).toEqual({ low: 0, high: 0 });
    expect(binomialBand(5, 1)).toEqual({ low: 1, high: 1 });
  });
});
