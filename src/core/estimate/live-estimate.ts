import type { FittedCard } from '../camera/card-edges.js';
import type { CardPosition } from '../camera/features.js';
import type { FollowedIris } from '../camera/follow-iris.js';
import { axesOfHead } from '../camera/head-axes.js';
import type { HeadAngles } from '../camera/head-pose.js';
import { rayOf } from '../camera/pinhole.js';
import { findPlanarPoses } from '../camera/planar-pose.js';
import { CARD_CORNERS_MM } from '../camera/reference-card.js';
import {
  add,
  distancePx,
  dot,
  norm,
  scale,
  subtract,
  transpose,
  type ImagePoint,
  type Vector3,
} from '../geometry/vector.js';
import { combineUncertainties } from '../statistics/uncertainty.js';
import { radiansToDegrees } from '../units/angle.js';
import { SIDES, type BothSides } from '../units/side.js';
import { assumedCamera, deviationUncertainty, matchingProfile, NO_DEVIATION } from './assumed-camera.js';
import type { MeasuringSettings } from './face-estimates.js';
import { pdFarFromPdShownMm, ROTATION_TO_PUPIL_MM } from './gaze.js';
import { chooseCardPose, heldCard } from './held-card.js';
import { CARD_TURN_SD, NEAR_VERGENCE_SD, PITCH_SD, type FaceKnowledge } from './prior-knowledge.js';

/** What one frame says of the distance between the pupils. */
export interface FrameEstimate {
  readonly pdFarMm: number;
  /** standard uncertainty that another frame of the same kind does not have: edges of card and irises */
  readonly ownUncertaintyMm: number;
  /** standard uncertainty that all frames of this card and camera share */
  readonly commonUncertaintyMm: number;
  readonly distanceMm: number;
  readonly pixelsPerMm: number;
  /** angle between the card's normal and the line of sight */
  readonly tiltDeg: number;
}

/**
 * A quick estimate from one frame, in closed form but for the card's pose: the pupils lie where their rays meet the plane of the eyes, and that
 * plane lies as far behind the card as faces have it. It leaves out what the measuring of a picture weighs besides (iris size, the landmarks'
 * depth, two opinions on the head's angles), so it is for leading the wearer, and its doubt is a little larger.
 *
 * Null where the card's corners have no pose.
 *
 * @param angles of the head as the landmarks show them
 */
export function estimateFromFrame(
  frame: { readonly widthPx: number; readonly heightPx: number },
  seen: {
    readonly card: FittedCard;
    readonly position: CardPosition;
    readonly iris: BothSides<FollowedIris>;
    readonly angles: HeadAngles;
  },
  settings: MeasuringSettings,
  known: FaceKnowledge,
): FrameEstimate | null {
  const profile = matchingProfile(settings.profile, frame);
  const camera = assumedCamera(frame, profile, NO_DEVIATION);
  const { corners } = seen.card;
  const poses = findPlanarPoses(camera, CARD_CORNERS_MM, corners);
  if (!poses.ok) return null;
  const { pose } = chooseCardPose(poses.value, seen.angles);
  const normal = transpose(pose.rotation)[2];
  const held = heldCard(
    { source: 'edges', position: seen.position, corners, edgeSupport: seen.card.support },
    settings.printScale,
    known,
  );
  const { forward } = axesOfHead(seen.angles);

  // The plane of the eyes: across the head's forward axis, as far behind the skin that the card touches as faces have it.
  const back = add(pose.translationMm, scale(normal, held.thicknessMm));
  const onPlane = ({ xPx, yPx }: ImagePoint): Vector3 => {
    const { x, y } = rayOf(camera, { xPx, yPx });
    const ray: Vector3 = [x, y, 1];
    return scale(ray, (dot(back, forward) - held.contactMm) / dot(ray, forward));
  };
  const eyes = { R: onPlane(seen.iris.R.centre), L: onPlane(seen.iris.L.centre) };
  const shownMm = norm(subtract(eyes.L, eyes.R));
  const distanceMm = (eyes.R[2] + eyes.L[2]) / 2;
  if (!(distanceMm > 4 * ROTATION_TO_PUPIL_MM)) return null;
  const fixationMm = distanceMm + ROTATION_TO_PUPIL_MM;
  const pdFarMm = settings.gaze === 'camera' ? pdFarFromPdShownMm(shownMm, fixationMm) : shownMm;

  const pixelsPerMm = camera.fx / distanceMm;
  const irisMm = combineUncertainties(
    SIDES.map((side) => Math.sqrt(seen.iris[side].centre.covariance.xx) / pixelsPerMm),
  );
  const cardWidthPx = distancePx(corners[0], corners[1]);
  const cornerPx = Math.sqrt(corners.reduce((sum, { covariance }) => sum + covariance.xx, 0) / 4);
  // Two widths of the card, each between two corners.
  const cardShare = cornerPx / cardWidthPx;
  const scaleMm = Math.abs(pose.translationMm[2] - distanceMm);
  const heightMm = Math.abs(dot(subtract(back, scale(add(eyes.R, eyes.L), 0.5)), axesOfHead(seen.angles).up));
  const commonShare = combineUncertainties([
    held.contactSdMm / distanceMm,
    held.sizeUncertainty,
    // the head nods otherwise than it seems: what is above or below the eyes then lies nearer or farther
    (heightMm * PITCH_SD) / distanceMm,
    // a wider or narrower view puts card and eyes at other distances, whose ratio is then another
    (scaleMm / distanceMm) * deviationUncertainty(frame, profile).logFocal,
    (settings.gaze === 'camera' ? NEAR_VERGENCE_SD * ROTATION_TO_PUPIL_MM : 0) / distanceMm,
    CARD_TURN_SD ** 2 / 2,
  ]);
  return {
    pdFarMm,
    ownUncertaintyMm: combineUncertainties([irisMm, cardShare * pdFarMm]),
    commonUncertaintyMm: commonShare * pdFarMm,
    distanceMm,
    pixelsPerMm,
    tiltDeg: radiansToDegrees(Math.acos(Math.min(1, Math.abs(normal[2])))),
  };
}

/** The mean over frames, older ones counting ever less. */
export interface RunningEstimate {
  readonly pdFarMm: number;
  /** sum of the frames' weights, 1/mm² */
  readonly weight: number;
  readonly frameCount: number;
}

/** Frames over which is averaged. Chosen: two seconds of a webcam. */
const MEMORY_FRAMES = 40;
/** Neighbouring frames share blur and light: about so many count as one. Chosen. */
const ALIKE_FRAMES = 4;

/** The running mean after one more frame. */
export function averaged(before: RunningEstimate | null, frame: FrameEstimate): RunningEstimate {
  const own = 1 / frame.ownUncertaintyMm ** 2;
  const weight = (before?.weight ?? 0) * (1 - 1 / MEMORY_FRAMES) + own;
  const mean = before?.pdFarMm ?? frame.pdFarMm;
  return {
    pdFarMm: mean + (own / weight) * (frame.pdFarMm - mean),
    weight,
    frameCount: Math.min((before?.frameCount ?? 0) + 1, MEMORY_FRAMES),
  };
}

/** Standard uncertainty of the running mean, mm. */
export function uncertaintyOfMeanMm({ weight, frameCount }: RunningEstimate, last: FrameEstimate): number {
  const alike = Math.min(ALIKE_FRAMES, frameCount);
  return combineUncertainties([Math.sqrt(alike / weight), last.commonUncertaintyMm]);
}
