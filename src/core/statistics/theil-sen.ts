import type { Result } from '../result.js';
import { fail, invariant, succeed } from '../result.js';
import type { ConfidenceInterval } from './agreement.js';
import { NORMAL_95 } from './normal.js';
import { median } from './robust.js';

/** A straight line through points, of which a few may lie anywhere. */
export interface RobustSlope {
  /** median of the slopes between any two points, in units of y over those of x */
  readonly slope: number;
  /** 95 % */
  readonly interval: ConfidenceInterval;
  /** y of the line at x = 0 */
  readonly intercept: number;
  /** points, or medians of neighbours where there were too many points */
  readonly count: number;
}

/** Two places along x are not enough, or all points lie above one of them. */
export interface NoSlope {
  readonly kind: 'no-slope';
}

export interface PlotPoint {
  readonly x: number;
  readonly y: number;
}

/** Chosen: 44,850 slopes are sorted in some milliseconds. */
const MOST_POINTS = 300;

/**
 * Slope after Theil and Sen with its 95 % interval (Sen 1968, J Am Stat Assoc 63:1379-1389): the slopes between any two points in
 * order, and those that stand (N ± z √(n(n-1)(2n+5)/18))/2 from their ends, by the normal approximation to Kendall's S, which is fair from
 * about ten points on. Points are independent of each other and scatter alike about the line; nothing else is asked of them.
 * Of more than `mostPoints` points, as many neighbours in x as bring their number below it become one, the median of each.
 */
export function theilSenSlope(points: readonly PlotPoint[], mostPoints = MOST_POINTS): Result<RobustSlope, NoSlope> {
  const used = thinned(points, mostPoints);
  const n = used.length;
  const slopes = new Float64Array((n * (n - 1)) / 2);
  let count = 0;
  for (const [i, a] of used.entries()) {
    for (let j = i + 1; j < n; j += 1) {
      const b = used[j]!;
      if (a.x === b.x) continue;
      slopes[count] = (b.y - a.y) / (b.x - a.x);
      count += 1;
    }
  }
  if (count === 0) return fail({ kind: 'no-slope' });
  const sorted = slopes.subarray(0, count).sort();
  const at = (place: number): number => sorted[Math.min(count - 1, Math.max(0, place))]!;
  const slope = (at(Math.floor((count - 1) / 2)) + at(Math.floor(count / 2))) / 2;
  const beside = NORMAL_95 * Math.sqrt((n * (n - 1) * (2 * n + 5)) / 18);
  return succeed({
    slope,
    interval: {
      low: at(Math.round((count - beside) / 2) - 1),
      high: at(Math.round((count + beside) / 2)),
    },
    intercept: median(used.map(({ x, y }) => y - slope * x)),
    count: n,
  });
}

/** Medians of so many neighbours each that no more than `most` are left; a few at the end may be left over and stay out. */
function thinned(points: readonly PlotPoint[], most: number): readonly PlotPoint[] {
  invariant(most > 1, 'a slope needs two points');
  if (points.length <= most) return points;
  const each = Math.ceil(points.length / most);
  const sorted = points.toSorted((a, b) => a.x - b.x);
  return Array.from({ length: Math.floor(points.length / each) }, (_, place) => {
    const neighbours = sorted.slice(place * each, (place + 1) * each);
    return { x: median(neighbours.map(({ x }) => x)), y: median(neighbours.map(({ y }) => y)) };
  });
}
