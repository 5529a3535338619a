import { describe, expect, it } from 'vitest';
import { formatDifference, formatEstimate, formatNumber } from './numbers.js';

describe('numbers', () => {
  it('have a true minus sign, and none for nothing', () => {
    expect(formatNumber(-1.26, 1)).toBe('\u22121.3');
    expect(formatNumber(-0.04, 1)).toBe('0.0');
  });

  it('of differences carry their sign', () => {
    expect(formatDifference(2.84)).toBe('+2.8');
    expect(formatDifference(-2.84)).toBe('\u22122.8');
    expect(formatDifference(0.04)).toBe('0.0');
  });

  it('of estimates show half the width of the 95 % interval', () => {
    const estimate = { value: 62.43, standardUncertainty: 0.5, low: 61.4, high: 63.4, unit: 'mm', budget: [] } as const;
    expect(formatEstimate(estimate)).toBe('62.4\u202f±\u202f1.0');
  });
});
