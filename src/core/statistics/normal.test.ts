import * as oracle from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { NORMAL_95, normalCdf, normalDensity, normalQuantile } from './normal.js';

describe('normal distribution', () => {
  // Abramowitz and Stegun 1964, table 26.1 and 26.2 (from memory)
  it.each([
    [0, 0.5],
    [1, 0.841344746068543],
    [2, 0.977249868051821],
    [3, 0.99865010196837],
    [-4, 3.1671241833e-5],
    [-6, 9.8658764503e-10],
  ])('holds below %d the tabulated share', (z, share) => {
    expect(Math.abs(normalCdf(z) / share - 1)).toBeLessThan(1e-9);
  });

  it('agrees with the error function of simple-statistics within its approximation', () => {
    for (let z = -5; z <= 5; z += 0.25) {
      expect(Math.abs(normalCdf(z) - 0.5 * (1 + oracle.errorFunction(z / Math.SQRT2)))).toBeLessThan(3e-7);
    }
  });

  it('joins series and continued fraction without a step', () => {
    const step = normalCdf(3 + 1e-9) - normalCdf(3 - 1e-9);
    expect(Math.abs(step - 2e-9 * normalDensity(3))).toBeLessThan(1e-15);
  });

  it('has the customary quantiles and inverts itself', () => {
    // 1.959964 and 2.575829: any table of the normal distribution (from memory)
    expect(Math.abs(NORMAL_95 - 1.959963984540054)).toBeLessThan(1e-12);
    expect(Math.abs(normalQuantile(0.995) - 2.5758293035489)).toBeLessThan(1e-12);
    expect(Math.abs(normalQuantile(0.5))).toBeLessThan(1e-15);
    for (const p of [1e-12, 0.001, 0.3, 0.7, 0.999])
      expect(Math.abs(normalCdf(normalQuantile(p)) / p - 1)).toBeLessThan(1e-10);
  });

  it('refuses what is no probability', () => {
    expect(() => normalQuantile(1)).toThrow('probability');
    expect(() => normalQuantile(Number.NaN)).toThrow('probability');
  });
});
