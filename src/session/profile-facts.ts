import type { CameraProfile } from '../core/camera/camera-profile.js';
import { judgeViews, weaknessesOfProfile, type ProfileWeakness } from '../core/camera/profile-quality.js';
import type { BoardView } from '../core/camera/board.js';
import { radiansToDegrees } from '../core/units/angle.js';

/** An angle with one standard deviation, degrees. */
export interface DoubtfulAngle {
  readonly valueDeg: number;
  readonly uncertaintyDeg: number;
}

/**
 * Horizontal field of view of the ideal lens: from the left to the right edge of the picture through the principal point. Its
 * doubt is that of the focal length, to first order; distortion, which bends the rays at the edges, is left out.
 */
export function horizontalFieldOfView({ widthPx, fx, cx, uncertainty }: CameraProfile): DoubtfulAngle {
  const [left, right] = [cx, widthPx - cx];
  const slope = left / (fx * fx + left * left) + right / (fx * fx + right * right);
  return {
    valueDeg: radiansToDegrees(Math.atan(left / fx) + Math.atan(right / fx)),
    uncertaintyDeg: radiansToDegrees(slope * uncertainty.fx),
  };
}

/** All that is weak about a profile that was just made: what its views lacked, and what its own numbers show. */
export function weaknessesOf(profile: CameraProfile, views: readonly BoardView[]): readonly ProfileWeakness[] {
  return [...judgeViews(views, profile).weaknesses, ...weaknessesOfProfile(profile)];
}
