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
