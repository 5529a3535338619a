import type { CanonicalFace } from '../camera/head-pose.js';
import type { CardPosition } from '../camera/features.js';
import { degreesToRadians } from '../units/angle.js';

/** What is known of faces from outside: the mean face, and how far touched skin lies before the eyes. */
export interface FaceKnowledge {
  readonly canonicalFace: CanonicalFace;
  readonly contactDepth: {
    readonly regions: Readonly<Record<CardPosition, { readonly meanMm: number; readonly sdMm: number }>>;
    readonly nasion: { readonly meanMm: number; readonly sdMm: number };
  };
}

/** Mean visible iris diameter and its spread between adults, mm (Ruefer, Schroeder and Erb 2005). */
export const IRIS_MEAN_MM = 11.71;
export const IRIS_SD_MM = 0.42;
/** Irises this many standard deviations from the population's mean mean that card or irises lie wrong. Chosen: one in 2000 people. */
const IRIS_LIMIT_SD = 3.5;

/** Whether irises can be as large as card and eyes together say. */
export function isPlausibleIris(irisMm: number): boolean {
  return Math.abs(irisMm - IRIS_MEAN_MM) <= IRIS_LIMIT_SD * IRIS_SD_MM;
}

/** Focal length over the longer side of a webcam's picture, as mean and log spread: mostly 52 to 78 degrees of view (common practice). */
export const FOCAL_OVER_LONG_SIDE = 0.8;
export const FOCAL_LOG_SD = 0.13;
/** Radial distortion that is not known: barrel or cushion of a few per cent at the rim (common practice). */
export const K1_SD = 0.06;
/** Spread of the distance from an eye's centre of rotation to its pupil between people, mm (chosen; 10.5 mm from memory). */
export const ROTATION_TO_PUPIL_SD_MM = 0.5;
/** A wearer asked to look far away may look at a wall instead: doubt of the inverse distance, 1/mm (chosen: 1/6 m). */
export const FAR_VERGENCE_SD = 1 / 6000;
/** A wearer asked to look into the camera looks near it: doubt of the inverse distance, relative (chosen). */
export const NEAR_VERGENCE_SD = 0.05;

/**
 * How far the fit of the mean face to landmarks leaves the head's angles in doubt, radians, and by how much it errs on average.
 * Tuned on rendered heads: yaw within 1.5 degrees, a tenth too much; pitch within 3 (forehead) to 5 (lip), nodding too much by the pitch given here, more
 * where the card covers the mouth.
 */
export const YAW_SD = degreesToRadians(1.5);
export const YAW_GAIN = 0.9;
export const PITCH_SD = degreesToRadians(5);
export const ROLL_SD = degreesToRadians(1);
export const PITCH_BIAS: Readonly<Record<CardPosition, number>> = {
  forehead: degreesToRadians(7.8),
  'upper-lip': degreesToRadians(10.8),
  chin: degreesToRadians(8.5),
};
/** A wearer who was asked to face the camera upright holds the head within this of it (chosen). */
export const UPRIGHT_SD = degreesToRadians(6);
/** A card laid flat against a face is turned to neither side by more than about this (chosen). */
export const CARD_TURN_SD = degreesToRadians(4);
/**
 * The scans' card leans as the skin lets it; a hand holds it otherwise by some 8 degrees, which moves its middle by about this against the
 * place that it touches, mm (chosen).
 */
export const HOLDING_SD_MM = 3.5;
/** The eyes of one head lie equally far back to within this, mm (chosen). */
export const EYE_DEPTH_DIFFERENCE_SD_MM = 0.7;
/**
 * How well the landmark model's own relative depth tells where a card that touches the face lies before the eyes, mm. Tuned on
 * rendered heads, where it was wrong by 4 mm (forehead, bias 1) to 10 mm (lip, which the card covers).
 */
export const LANDMARK_DEPTH_SD_MM: Readonly<Record<CardPosition, number>> = { forehead: 8, 'upper-lip': 12, chin: 9 };

/** Landmarks before the ears lie 60 mm behind the pupils (mean face); head width over their span, with its spread (rendered heads). */
export const HEAD_BACK_MM = 60;
export const HEAD_RATIO = 1.022;
export const HEAD_RATIO_SD = 0.028;
/**
 * The skin before the ears' upper ends lies so far behind the pupils, as a share of its own width; head width over that of the edge, with its
 * spread. Tuned on rendered heads with even numbers; on those with odd ones the width was then wrong by 1.7 mm (root mean square).
 */
export const SKIN_EDGE_BACK_SHARE = 0.55;
export const SKIN_EDGE_RATIO = 0.997;
export const SKIN_EDGE_RATIO_SD = 0.013;
/** Landmarks on the temples lie 38 mm behind the pupils; width 25 mm behind the bridge over their span (mean face 0.818). */
export const TEMPLE_BACK_MM = 38;
export const TEMPLE_RATIO = 0.82;
export const TEMPLE_RATIO_SD = 0.05;

/** The flanks of the nose 10 to 15 mm below its crest lie so far before the pupils (mean face), mm; what that and landmarks leave open, relative (chosen). */
export const BRIDGE_FORWARD_MM = 8;
export const BRIDGE_SHAPE_SD = 0.1;

/** The midline is seen worse the more the head is turned: twice as badly at this angle, radians (rendered heads). */
const MIDLINE_TURN = degreesToRadians(12);

/** Standard uncertainty of a midline seen on a head that is turned so far, over that of one seen from the front. */
export function midlineDoubtGrowth(yawRad: number): number {
  return 1 + (yawRad / MIDLINE_TURN) ** 2;
}
