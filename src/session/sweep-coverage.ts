import { LANDMARK } from '../core/camera/face-landmarks.js';
import type { Landmark } from '../core/camera/features.js';
import { radiansToDegrees } from '../core/units/angle.js';
import type { BothSides } from '../core/units/side.js';

/** How a frame shows the head, roughly: for leading the wearer, not for measuring. */
export interface HeadView {
  /** positive: face to picture right, that is to the wearer's left */
  readonly yawDeg: number;
  /** outer corner of one eye to that of the other, in space but in px: the nearer the head, the larger */
  readonly spanPx: number;
}

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

/**
 * The view from the landmarks of one frame; null where there are none. Over rendered sweeps of 15 degrees to each side the
 * yaw stays within 5 degrees of the truth and the span within 3 % of what the distance asks for.
 */
export function headView(landmarks: readonly Landmark[]): HeadView | null {
  const right = landmarks[LANDMARK.outerEyeCorner.R];
  const left = landmarks[LANDMARK.outerEyeCorner.L];
  if (right === undefined || left === undefined) return null;
  const acrossPx = Math.hypot(left.xPx - right.xPx, left.yPx - right.yPx);
  // The model counts depth away from the camera: the face turns to picture right where the left eye goes back.
  const backPx = left.depthPx - right.depthPx;
  const spanPx = Math.hypot(acrossPx, backPx);
  return spanPx === 0 ? null : { yawDeg: radiansToDegrees(Math.atan2(backPx, acrossPx)), spanPx };
}

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
