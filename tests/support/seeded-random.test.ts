import { describe, expect, it } from 'vitest';
import { seededRandom } from './seeded-random.js';

const COUNT = 20_000;

function moments(values: readonly number[]): { mean: number; sd: number; beyondTwo: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  const beyondTwo = values.filter((value) => Math.abs(value - mean) > 1.96 * sd).length / values.length;
  return { mean, sd, beyondTwo };
}

describe('seededRandom', () => {
  it('repeats itself for the same seed and not for another', () => {
    const draw = (seed: number): number[] => {
      const random = seededRandom(seed);
      return [random.uniform(), random.normal(0, 1), random.uniform()];
    };
    expect(draw(4)).toEqual(draw(4));
    expect(draw(4)).not.toEqual(draw(5));
  });

  it('spreads evenly over the unit interval', () => {
    const random = seededRandom(1);
    const { mean, sd } = moments(Array.from({ length: COUNT }, random.uniform));
    // Mean 1/2, sd 1/sqrt 12; four standard errors.
    expect(Math.abs(mean - 0.5)).toBeLessThan((4 * 0.2887) / Math.sqrt(COUNT));
    expect(Math.abs(sd - Math.sqrt(1 / 12))).toBeLessThan(0.004);
  });

  it('gives normal deviates of the wanted mean and spread', () => {
    const random = seededRandom(2);
    const { mean, sd, beyondTwo } = moments(Array.from({ length: COUNT }, () => random.normal(63, 3.5)));
    expect(Math.abs(mean - 63)).toBeLessThan((4 * 3.5) / Math.sqrt(COUNT));
    expect(Math.abs(sd / 3.5 - 1)).toBeLessThan(4 / Math.sqrt(2 * COUNT));
    expect(Math.abs(beyondTwo - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / COUNT));
  });
});
