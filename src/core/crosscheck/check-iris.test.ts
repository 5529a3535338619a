import { expect, it } from 'vitest';
import type { Estimate } from '../estimate/estimate.js';
import { checkIris } from './check-iris.js';

// 11.71 (0.42) mm among 390 people: Ruefer et al. 2005, abstract
const population = { mean: 11.71, standardDeviation: 0.42, source: 'Ruefer et al. 2005', status: 'verified' } as const;

const estimate = (value: number, standardUncertainty: number): Estimate => ({
  value,
  standardUncertainty,
  low: value - 1.96 * standardUncertainty,
  high: value + 1.96 * standardUncertainty,
  unit: 'mm',
  budget: [{ source: 'iris-edges', standardUncertainty }],
});

it('takes a usual iris as usual', () => {
  expect(checkIris(estimate(11.71, 0.1), population)).toEqual({ kind: 'usual', zScore: 0 });
  expect(checkIris(estimate(12.4, 0.1), population).kind).toBe('usual');
});

it('doubts a picture whose card is printed a tenth too large', () => {
  const { kind, zScore } = checkIris(estimate(11.71 / 1.1, 0.1), population);
  expect(kind).toBe('unusual');
  // (10.645 - 11.71) / sqrt(0.42² + 0.1²)
  expect(Math.abs(zScore - -2.466)).toBeLessThan(0.002);
});

it('says less where the estimate is coarse', () => {
  expect(checkIris(estimate(11.71 / 1.1, 0.6), population).kind).toBe('usual');
});
