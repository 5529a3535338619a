import { describe, expect, it } from 'vitest';
import { centred, constant, covariance, Factors, sum, times } from './linear-variable.js';

describe('linear variables', () => {
  it('add means and keep what they share', () => {
    // Var(a + 2b) = 4 Var(b) + Var(a) for independent a, b; Cov(a + 2b, a - b) = Var(a) - 2 Var(b) (bilinearity)
    const factors = new Factors();
    const a = sum(constant(10), factors.scatter(3));
    const b = sum(constant(1), factors.scatter(2));
    const one = sum(a, times(2, b));
    const other = sum(a, times(-1, b));
    expect(one.mean).toBe(12);
    expect(other.mean).toBe(9);
    expect(covariance(one, one)).toBeCloseTo(9 + 16, 12);
    expect(covariance(one, other)).toBeCloseTo(9 - 8, 12);
  });

  it('lets a variable cancel itself', () => {
    const a = sum(constant(5), new Factors().scatter(1.5));
    const nothing = sum(a, times(-1, a));
    expect(covariance(nothing, nothing)).toBe(0);
    expect(centred(a).mean).toBe(0);
    expect(covariance(centred(a), a)).toBeCloseTo(2.25, 12);
  });
});
