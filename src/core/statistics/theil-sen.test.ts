import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import type { PlotPoint, RobustSlope } from './theil-sen.js';
import { theilSenSlope } from './theil-sen.js';

function slopeOf(points: readonly PlotPoint[], mostPoints?: number): RobustSlope {
  const result = theilSenSlope(points, mostPoints);
  if (!result.ok) throw new Error('no slope');
  return result.value;
}

const pointsOf = (xs: readonly number[], ys: readonly number[]): readonly PlotPoint[] =>
  xs.map((x, place) => ({ x, y: ys[place]! }));

describe('the slope of Theil and Sen', () => {
  it('is that of the rain over seeded clouds', () => {
    // Hollander and Wolfe, Nonparametric Statistical Methods, example 9.1: five years, slope -0.056 (from memory); the middle
    // of the ten slopes is the mean of -0.055 and -0.0575
    const { slope } = slopeOf(pointsOf([1, 2, 3, 4, 5], [1.26, 1.27, 1.12, 1.16, 1.03]));
    expect(slope).toBeCloseTo(-0.05625, 10);
  });

  it('has the slope, interval and intercept that SciPy 1.17.1 gives (scipy.stats.theilslopes), with a point that lies far off', () => {
    const found = slopeOf(
      pointsOf(
        [1, 2, 4, 7, 9, 12, 15, 16, 20, 23, 27, 30],
        [2.31, 2.05, 2.62, 2.38, 2.93, 2.47, 9.1, 2.76, 3.18, 2.89, 3.42, 3.07],
      ),
    );
    expect(found.slope).toBeCloseTo(0.03453416149068321, 9);
    expect(found.interval.low).toBeCloseTo(0.01454545454545456, 9);
    expect(found.interval.high).toBeCloseTo(0.062, 9);
  });

  it('passes through points on a line, whatever a quarter of them does', () => {
    const points = Array.from({ length: 40 }, (_, x) => ({ x, y: x % 4 === 3 ? 1000 * x : 3 - 0.5 * x }));
    const { slope, intercept } = slopeOf(points);
    expect(slope).toBeCloseTo(-0.5, 10);
    expect(intercept).toBeCloseTo(3, 10);
  });

  it('holds the true slope in 95 of 100 cases, thinned as well', () => {
    const random = seededRandom(11);
    for (const [count, most] of [
      [20, 300],
      [120, 40],
    ] as const) {
      const trials = 400;
      let held = 0;
      for (let trial = 0; trial < trials; trial += 1) {
        const points = Array.from({ length: count }, (_, x) => ({
          x: x / count,
          y: 0.8 * (x / count) + random.normal(0, 1),
        }));
        const { interval } = slopeOf(points, most);
        if (interval.low <= 0.8 && interval.high >= 0.8) held += 1;
      }
      // three standard errors of a share of 0.95 among 400 are 0.033
      expect(held / trials).toBeGreaterThan(0.917);
      expect(held / trials).toBeLessThan(0.99);
    }
  });

  it('takes no more points than it is asked to', () => {
    const points = Array.from({ length: 1000 }, (_, x) => ({ x, y: 2 * x }));
    const { slope, count } = slopeOf(points, 100);
    expect(count).toBe(100);
    expect(slope).toBeCloseTo(2, 10);
  });

  it('is none where all points lie above one place', () => {
    expect(theilSenSlope(pointsOf([3, 3], [1, 2]))).toEqual({ ok: false, failure: { kind: 'no-slope' } });
    expect(theilSenSlope([]).ok).toBe(false);
  });
});
