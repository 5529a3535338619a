import { describe, expect, it } from 'vitest';
import { criticalRange, MOST_IN_RANGE } from './critical-range.js';
import { normalCdf, normalDensity } from './normal.js';

/** Chance that `count` standard normal values lie within `range`: n times the integral of φ(x) (Φ(x + r) - Φ(x))^(n - 1). */
function chanceOfRange(range: number, count: number): number {
  const step = 0.01;
  let sum = 0;
  for (let x = -9; x <= 9; x += step) {
    sum += normalDensity(x) * (normalCdf(x + range) - normalCdf(x)) ** (count - 1) * step;
  }
  return count * sum;
}

describe('critical range', () => {
  it('is the repeatability limit for two values', () => {
    // ISO 5725: 1.96 times the root of 2; s_r 0.404 mm of a PD rule gives 1.120 mm
    expect(Math.abs(criticalRange(2, 0.404) - 1.12)).toBeLessThan(0.001);
    expect(1.5 > criticalRange(2, 0.404)).toBe(true);
    expect(Math.abs(criticalRange(2, 1) - 1.96 * Math.SQRT2)).toBeLessThan(0.0005);
  });

  // ISO 5725-6:1994, table of critical range factors f(n), from memory; one digit as printed
  it.each([
    [2, 2.8],
    [3, 3.3],
    [4, 3.6],
    [5, 3.9],
    [6, 4.0],
    [7, 4.2],
    [8, 4.3],
    [9, 4.4],
    [10, 4.5],
  ])('has the factor of ISO 5725-6 for %d values', (count, factor) => {
    expect(Math.abs(criticalRange(count, 1) - factor)).toBeLessThanOrEqual(0.05);
  });

  it('holds 95 of 100 ranges, by numerical integration', () => {
    for (let count = 2; count <= MOST_IN_RANGE; count += 1) {
      // the factors are written to four digits behind the point; the density of a range stays below one
      expect(Math.abs(chanceOfRange(criticalRange(count, 1), count) - 0.95)).toBeLessThan(0.0001);
    }
  });

  it('refuses counts that it does not know', () => {
    expect(() => criticalRange(1, 1)).toThrow('2 to 20');
    expect(() => criticalRange(21, 1)).toThrow('2 to 20');
  });
});
