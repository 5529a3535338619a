import { eyePlaceOf, type EyeAxes } from './eye-strip.js';
import { LANDMARK, landmarkAt } from './face-landmarks.js';
import type { Landmark } from './features.js';
import { SIDES } from '../units/side.js';

/**
 * How the pupil's place follows from what the landmarks tell, by least squares on rendered heads (radii of the iris; residual 0.12, that is
 * 0.7 mm): against how far both irises stand aside from the middle of their corners, and with the head's turn, for the corners lie behind the
 * pupils.
 */
const PER_ASIDE = -1.03;
const PER_YAW = 0.67;
/** Standard deviation of the place, radii: the residual of that fit. */
export const STRAIGHT_AHEAD_DEVIATION = 0.12;
/** Farther than this no eye turns that is measured, radii. */
const FARTHEST = 0.8;

/**
 * Where the pupil would stand if the eyes looked straight ahead of the head, along the line of the eyes from where it stands, in radii of
 * the iris. A lid is measured there: an eye that looks aside, at the camera from a turned head, has its pupil under another part of the lid.
 */
export function straightAheadPlace(landmarks: readonly Landmark[], axes: EyeAxes): number {
  const across = (index: number): number => eyePlaceOf(axes, landmarkAt(landmarks, index)).across;
  const [outerR, outerL] = [LANDMARK.outerEyeCorner.R, LANDMARK.outerEyeCorner.L];
  let aside = 0;
  for (const side of SIDES) {
    const outer = across(LANDMARK.outerEyeCorner[side]);
    const inner = across(LANDMARK.innerEyeCorner[side]);
    aside += (across(LANDMARK.irisCentre[side]) - (outer + inner) / 2) / SIDES.length;
  }
  const depthPx = landmarkAt(landmarks, outerL).depthPx - landmarkAt(landmarks, outerR).depthPx;
  const yawRad = Math.atan2(depthPx, (across(outerL) - across(outerR)) * axes.radiusPx);
  return Math.min(Math.max(PER_ASIDE * aside + PER_YAW * yawRad, -FARTHEST), FARTHEST);
}
