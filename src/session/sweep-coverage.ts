import type { HeadView } from '../core/camera/head-view.js';
import type { BothSides } from '../core/units/side.js';

/** What a sweep still lacks. */
export type SweepGap = 'turned-R' | 'turned-L' | 'distance' | 'frames';

/** What the usable frames of a sweep cover. */
export interface SweepCoverage {
  readonly usable: number;
  /** the farthest turn to each side of the wearer, degrees; 0 where the head was never turned there */
  readonly turnedDeg: BothSides<number>;
  /** distance of the farthest frame over that of the nearest; 1 where there are none */
  readonly distanceRatio: number;
  readonly missing: readonly SweepGap[];
}

/**
 * When a sweep is enough. Chosen: the wearer is asked for 15 degrees to each side and about a tenth nearer and farther; a
 * little more than half of that already makes depth observable, and a dozen frames average the edges out.
 */
export const ENOUGH = { frames: 12, turnDeg: 8, distanceRatio: 1.15 } as const;

/** Below this a sweep is not measured at all. Chosen: two frames to each side and two between. */
export const LEAST_FRAMES = 6;

/** More frames only cost time. */
export const MOST_FRAMES = 40;

/** What frames cover that were all usable. */
export function coverageOf(views: readonly HeadView[]): SweepCoverage {
  const turnedDeg = {
    R: Math.max(0, ...views.map(({ yawDeg }) => -yawDeg)),
    L: Math.max(0, ...views.map(({ yawDeg }) => yawDeg)),
  };
  const spans = views.map(({ spanPx }) => spanPx);
  const distanceRatio = spans.length === 0 ? 1 : Math.max(...spans) / Math.min(...spans);
  const missing: SweepGap[] = [];
  if (turnedDeg.R < ENOUGH.turnDeg) missing.push('turned-R');
  if (turnedDeg.L < ENOUGH.turnDeg) missing.push('turned-L');
  if (distanceRatio < ENOUGH.distanceRatio) missing.push('distance');
  if (views.length < ENOUGH.frames) missing.push('frames');
  return { usable: views.length, turnedDeg, distanceRatio, missing };
}
