import { distancePx, midpointPx, type ImagePoint } from '../geometry/vector.js';
import { invariant } from '../result.js';
import type { BothSides } from '../units/side.js';
import type { Landmark } from './features.js';

/** Number of landmarks of the model: 468 of the face mesh and 5 of each iris. */
export const LANDMARK_COUNT = 478;

/**
 * Indices into the landmarks, by the name of the place; R is the wearer's right. The numbering is that of the face landmark
 * model (see models/manifest.json).
 */
export const LANDMARK = {
  irisCentre: { R: 468, L: 473 },
  irisEdge: { R: [469, 470, 471, 472], L: [474, 475, 476, 477] },
  outerEyeCorner: { R: 33, L: 263 },
  innerEyeCorner: { R: 133, L: 362 },
  upperLid: { R: 159, L: 386 },
  lowerLid: { R: 145, L: 374 },
  upperLidMargin: { R: [246, 161, 160, 159, 158, 157, 173], L: [466, 388, 387, 386, 385, 384, 398] },
  lowerLidMargin: { R: [7, 163, 144, 145, 153, 154, 155], L: [249, 390, 373, 374, 380, 381, 382] },
  faceSide: { R: 234, L: 454 },
  templeSide: { R: 127, L: 356 },
  bridge: 168,
  crest: 6,
  noseTip: 1,
  upperLip: 0,
  lowerLip: 17,
  chin: 152,
  chinPoint: [152, 175, 199, 148, 377],
  foreheadTop: 10,
} as const;

/** One landmark by its index. */
export function landmarkAt(landmarks: readonly Landmark[], index: number): Landmark {
  const landmark = landmarks[index];
  invariant(landmark !== undefined, `landmark ${index} of ${landmarks.length}`);
  return landmark;
}

/** The eyes as the landmarks show them: a seed for everything else, good to a few per cent. */
export interface EyesSeed {
  readonly irisCentre: BothSides<ImagePoint>;
  readonly irisRadiusPx: BothSides<number>;
  readonly middle: ImagePoint;
  /** distance between the iris centres */
  readonly spanPx: number;
  /** direction from the wearer's right to the left eye, anticlockwise in the picture negative (y points down) */
  readonly rollRad: number;
}

export function eyesFromLandmarks(landmarks: readonly Landmark[]): EyesSeed {
  const R = landmarkAt(landmarks, LANDMARK.irisCentre.R);
  const L = landmarkAt(landmarks, LANDMARK.irisCentre.L);
  const radius = (edge: readonly number[]): number =>
    distancePx(landmarkAt(landmarks, edge[0]!), landmarkAt(landmarks, edge[2]!)) / 2;
  return {
    irisCentre: { R, L },
    irisRadiusPx: { R: radius(LANDMARK.irisEdge.R), L: radius(LANDMARK.irisEdge.L) },
    middle: midpointPx(R, L),
    spanPx: distancePx(R, L),
    rollRad: Math.atan2(L.yPx - R.yPx, L.xPx - R.xPx),
  };
}
