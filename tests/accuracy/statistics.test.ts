import { describe, expect, it } from 'vitest';
import { percentile, summariseErrors } from './statistics.js';

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

describe('summariseErrors', () => {
  it('takes the size of errors for the percentiles, their sign for the bias, and both bounds as inside', () => {
    const summary = summariseErrors([
      { value: 62, low: 61, high: 63, truth: 63 },
      { value: 65, low: 64, high: 66, truth: 63 },
      { value: 60, low: 59, high: 61, truth: 60 },
      { value: 64, low: 63, high: 65, truth: 62.9 },
    ]);
    // by hand: errors -1, 2, 0, 1.1; sizes in order 0, 1, 1.1, 2
    expect(summary?.count).toBe(4);
    expect(summary?.medianError).toBeCloseTo(1.05, 12);
    expect(summary?.percentile95Error).toBeCloseTo(1.1 + 0.85 * 0.9, 12);
    expect(summary?.bias).toBeCloseTo(2.1 / 4, 12);
    expect(summary?.coverage).toBe(0.5);
  });

  it('is null without comparisons', () => {
    expect(summariseErrors([])).toBeNull();
  });
});
