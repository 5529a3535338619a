import { radiansToDegrees } from '../units/angle.js';
import { LANDMARK } from './face-landmarks.js';
import type { Landmark } from './features.js';

/** How landmarks show the head, roughly: for leading the wearer, not for measuring. */
export interface HeadView {
  /** positive: face to picture right, that is to the wearer's left */
  readonly yawDeg: number;
  /** outer corner of one eye to that of the other, in space but in px: the nearer the head, the larger */
  readonly spanPx: number;
}

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
