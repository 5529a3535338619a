import { invariant } from '../result.js';

/**
 * 0.95 quantiles of the range of 2 to 20 values of a standard normal distribution (studentized range with infinitely many
 * degrees of freedom). ISO 5725-6 prints them with one digit: 2.8, 3.3, 3.6 and so on; the first is 1.96 times the root of 2.
 */
const RANGE_95: readonly number[] = [
  2.7718, 3.3145, 3.6332, 3.8577, 4.0301, 4.1696, 4.2863, 4.3865, 4.4741, 4.5519, 4.6217, 4.6849, 4.7427, 4.7959,
  4.8452, 4.891, 4.9337, 4.9739, 5.0117,
];

/** The most values whose range is judged. */
export const MOST_IN_RANGE = RANGE_95.length + 1;

/**
 * How far the largest and the smallest of `count` values may lie apart by chance alone, in 95 of 100 cases, where one value
 * scatters by `standardDeviation`: the critical range of ISO 5725-6, and for two values the repeatability limit r of ISO 5725-1.
 * `count` from 2 to `MOST_IN_RANGE`.
 */
export function criticalRange(count: number, standardDeviation: number): number {
  const factor = RANGE_95[count - 2];
  invariant(factor !== undefined, `a critical range is known for 2 to ${MOST_IN_RANGE} values, not for ${count}`);
  return factor * standardDeviation;
}
