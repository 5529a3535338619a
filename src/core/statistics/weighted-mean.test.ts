import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { weightedMean } from './weighted-mean.js';

const values = (xs: readonly number[], us: readonly number[]) =>
  xs.map((value, i) => ({ value, standardUncertainty: us[i]! }));

describe('weighted mean', () => {
  // standard result, plain arithmetic (formula from memory)
  it.each([
    { xs: [63, 62], us: [0.5, 1.0], mean: 62.8, u: 0.4472, chi: 0.8, birge: 0.8944 },
    { xs: [63, 64, 61.5], us: [0.5, 0.8, 1.2], mean: 63.0832, u: 0.3998, chi: 3.0816, birge: 1.2413 },
  ])('of $xs', ({ xs, us, mean, u, chi, birge }) => {
    const result = weightedMean(values(xs, us));
    expect(Math.abs(result.value - mean)).toBeLessThan(0.0001);
    expect(Math.abs(result.standardUncertainty - u)).toBeLessThan(0.0001);
    expect(Math.abs(result.chiSquared - chi)).toBeLessThan(0.0001);
    expect(Math.abs(result.birgeRatio! - birge)).toBeLessThan(0.0001);
  });

  it('of one value is that value, without a ratio', () => {
    expect(weightedMean(values([63], [0.5]))).toEqual({
      value: 63,
      standardUncertainty: 0.5,
      chiSquared: 0,
      birgeRatio: null,
    });
  });

  it('lies among the values and is surer than the surest', () => {
    const some = fc.array(
      fc.record({
        value: fc.double({ min: 10, max: 200, noNaN: true }),
        standardUncertainty: fc.double({ min: 0.1, max: 5, noNaN: true }),
      }),
      { minLength: 2, maxLength: 8 },
    );
    fc.assert(
      fc.property(some, (list) => {
        const result = weightedMean(list);
        expect(result.value).toBeGreaterThanOrEqual(Math.min(...list.map((one) => one.value)) - 1e-9);
        expect(result.value).toBeLessThanOrEqual(Math.max(...list.map((one) => one.value)) + 1e-9);
        expect(result.standardUncertainty).toBeLessThan(Math.min(...list.map((one) => one.standardUncertainty)));
      }),
    );
  });

  it('refuses a value without doubt', () => {
    expect(() => weightedMean(values([63], [0]))).toThrow('positive');
  });
});
