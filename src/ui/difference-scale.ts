import type { Comparison } from '../core/crosscheck/finding.js';

/** A scale with zero in its middle, which ends alike on both sides. */
export interface DifferenceScale {
  /** from the middle to either end */
  readonly range: number;
  /** where numbers stand, zero among them */
  readonly ticks: readonly number[];
  /** decimals that the ticks need */
  readonly decimals: number;
  /** where a value lies, in per cent of the width; beyond the ends it is the end */
  readonly percent: (value: number) => number;
  readonly isBeyond: (value: number) => boolean;
}

const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50];

/** Chosen: more numbers run into one another on a phone. */
const MOST_TICKS_A_SIDE = 4;

/** The scale that reaches as far as `reach`, which is positive, rounded up to a whole number of its steps. */
export function differenceScale(reach: number): DifferenceScale {
  const step = STEPS.find((one) => Math.ceil(reach / one - 1e-9) <= MOST_TICKS_A_SIDE) ?? 100;
  const count = Math.max(1, Math.ceil(reach / step - 1e-9));
  const range = count * step;
  return {
    range,
    ticks: Array.from({ length: 2 * count + 1 }, (_, place) => (place - count) * step),
    decimals: step < 1 ? 1 : 0,
    percent: (value) => (50 * (Math.max(-range, Math.min(range, value)) + range)) / range,
    isBeyond: (value) => Math.abs(value) > range * (1 + 1e-9),
  };
}

/** Chosen: a difference of more tolerances than these is drawn at the end of the scale, so that the others can still be told apart. */
const MOST_TOLERANCES = 6;

/**
 * How far a scale of these comparisons has to reach, in `unitOf` each: as far as their differences and the better half of the camera's
 * intervals, and at least somewhat beyond the tolerances.
 */
export function reachOf(comparisons: readonly Comparison[], unitOf: (comparison: Comparison) => number): number {
  const doubts = comparisons.map((one) => one.cameraExpanded / unitOf(one)).sort((a, b) => a - b);
  const middleDoubt = doubts[Math.floor((doubts.length - 1) / 2)] ?? 0;
  const furthest = Math.max(
    ...comparisons.map((one) => {
      const tolerance = one.tolerance.value / unitOf(one);
      const most = MOST_TOLERANCES * tolerance;
      return Math.max(1.4 * tolerance, Math.min(most, Math.abs(one.difference) / unitOf(one)));
    }),
  );
  return Math.max(furthest, middleDoubt);
}
