import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rateAmong, rateOf, rateText } from './rate.js';

describe('rateOf', () => {
  it.each([
    // Newcombe 1998 (Statistics in Medicine 17, 857), table I, method 3: Wilson's score interval (from memory)
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('gives %d of %d the published interval', (hits, trials, low, high) => {
    const rate = rateOf(hits, trials);
    expect(Math.abs((rate.low ?? NaN) - low)).toBeLessThanOrEqual(0.00005);
    expect(Math.abs((rate.high ?? NaN) - high)).toBeLessThanOrEqual(0.00005);
  });

  it('has ends at which the observed share is just one quantile away', () => {
    // the definition of the score interval: |share - p| = z sqrt(p (1 - p) / n); z from any table of the normal distribution
    const z = 1.959964;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 5000 }), fc.double({ min: 0, max: 1, noNaN: true }), (trials, part) => {
        const { share, low, high } = rateOf(Math.round(part * trials), trials);
        for (const end of [low, high]) {
          if (share === null || end === null || end < 1e-9 || end > 1 - 1e-9) continue;
          const quantiles = Math.abs(share - end) / Math.sqrt((end * (1 - end)) / trials);
          expect(Math.abs(quantiles - z)).toBeLessThan(1e-6);
        }
      }),
    );
  });

  it('says nothing of no trials', () => {
    expect(rateOf(0, 0)).toEqual({ hits: 0, trials: 0, share: null, low: null, high: null });
    expect(rateText(rateOf(0, 0))).toBe('-');
  });
});

describe('rateAmong', () => {
  it('counts', () => {
    expect(rateAmong([1, 2, 3, 4], (one) => one > 1)).toMatchObject({ hits: 3, trials: 4, share: 0.75 });
    expect(rateText(rateAmong([1, 2, 3, 4], (one) => one > 1))).toMatch(/^75\.0 % \(\d+\.\d to \d+\.\d\)$/);
  });
});
