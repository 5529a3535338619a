import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf } from './normal.js';
import { coverageFactor, studentTCdf } from './student-t.js';

describe('Student t', () => {
  // JCGM 100:2008, table G.2, recomputed by numerical integration; the table's columns 95, 95.45 and 99 %
  it.each([
    [1, 12.706, 13.968, 63.657],
    [2, 4.303, 4.527, 9.925],
    [4, 2.776, 2.869, 4.604],
    [5, 2.571, 2.649, 4.032],
    [9, 2.262, 2.32, 3.25],
    [16, 2.12, 2.169, 2.921],
    [30, 2.042, 2.087, 2.75],
  ])('has the coverage factors of the GUM for %d degrees of freedom', (nu, k95, k9545, k99) => {
    // half of the last printed digit; the 95.45 column was computed for 95.45 %, not for exactly two sigma
    expect(Math.abs(coverageFactor(0.95, nu) - k95)).toBeLessThanOrEqual(0.00051);
    expect(Math.abs(coverageFactor(0.9545, nu) - k9545)).toBeLessThanOrEqual(0.00051);
    expect(Math.abs(coverageFactor(0.99, nu) - k99)).toBeLessThanOrEqual(0.00051);
  });

  // JCGM 100:2008, table G.2, columns 90, 95, 95.45 and 99 % as printed, from memory. The columns 68.27 and 99.73 % and
  // the row of 35 are left out: not remembered with certainty.
  it.each([
    [1, 6.31, 12.71, 13.97, 63.66],
    [2, 2.92, 4.3, 4.53, 9.92],
    [3, 2.35, 3.18, 3.31, 5.84],
    [4, 2.13, 2.78, 2.87, 4.6],
    [5, 2.02, 2.57, 2.65, 4.03],
    [6, 1.94, 2.45, 2.52, 3.71],
    [7, 1.89, 2.36, 2.43, 3.5],
    [8, 1.86, 2.31, 2.37, 3.36],
    [9, 1.83, 2.26, 2.32, 3.25],
    [10, 1.81, 2.23, 2.28, 3.17],
    [11, 1.8, 2.2, 2.25, 3.11],
    [12, 1.78, 2.18, 2.23, 3.05],
    [13, 1.77, 2.16, 2.21, 3.01],
    [14, 1.76, 2.14, 2.2, 2.98],
    [15, 1.75, 2.13, 2.18, 2.95],
    [16, 1.75, 2.12, 2.17, 2.92],
    [17, 1.74, 2.11, 2.16, 2.9],
    [18, 1.73, 2.1, 2.15, 2.88],
    [19, 1.73, 2.09, 2.14, 2.86],
    [20, 1.72, 2.09, 2.13, 2.85],
    [25, 1.71, 2.06, 2.11, 2.79],
    [30, 1.7, 2.04, 2.09, 2.75],
    [40, 1.68, 2.02, 2.06, 2.7],
    [45, 1.68, 2.01, 2.06, 2.69],
    [50, 1.68, 2.01, 2.05, 2.68],
    [100, 1.66, 1.984, 2.025, 2.626],
  ])('has the row of %d degrees of freedom of the GUM table', (nu, k90, k95, k9545, k99) => {
    // Half of the last printed digit; the row of 100 has one digit more.
    const printed = nu === 100 ? 0.00051 : 0.0051;
    expect(Math.abs(coverageFactor(0.9, nu) - k90)).toBeLessThanOrEqual(printed);
    expect(Math.abs(coverageFactor(0.95, nu) - k95)).toBeLessThanOrEqual(printed);
    expect(Math.abs(coverageFactor(0.9545, nu) - k9545)).toBeLessThanOrEqual(printed);
    expect(Math.abs(coverageFactor(0.99, nu) - k99)).toBeLessThanOrEqual(printed);
  });

  it('has the closed forms for one and two degrees of freedom', () => {
    // nu 1 is the Cauchy distribution; nu 2: F(t) = 1/2 + t / (2 sqrt(2 + t²))
    const values = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(values, (t) => {
        expect(studentTCdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 12);
        expect(studentTCdf(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 12);
      }),
    );
  });

  it('becomes normal with many degrees of freedom', () => {
    expect(Math.abs(studentTCdf(1.5, 1e7) - normalCdf(1.5))).toBeLessThan(1e-7);
    expect(Math.abs(coverageFactor(0.95, 1e7) - coverageFactor(0.95, Number.POSITIVE_INFINITY))).toBeLessThan(1e-6);
    expect(Math.abs(coverageFactor(0.95, Number.POSITIVE_INFINITY) - 1.959964)).toBeLessThan(1e-6);
  });

  it('refuses impossible questions', () => {
    expect(() => coverageFactor(1, 5)).toThrow('coverage');
    expect(() => coverageFactor(0.95, 0)).toThrow('degrees of freedom');
  });
});
