import type { CameraProfile } from '../camera/camera-profile.js';
import type { PictureFeatures } from '../camera/features.js';
import { anglesOfAxes, axesOfHead, type HeadAxes } from '../camera/head-axes.js';
import type { HeadAngles } from '../camera/head-pose.js';
import { project, rayOf, type Camera } from '../camera/pinhole.js';
import { POSE_STEPS, poseFromParameters } from '../camera/planar-pose.js';
import { CARD_CORNERS_MM } from '../camera/reference-card.js';
import { whiten } from '../camera/whiten.js';
import type { BundleKnowledge, BundleSteps, FrameKnowledge } from '../fitting/bundle-adjustment.js';
import { toCamera, type Pose } from '../geometry/pose.js';
import {
  add,
  distancePx,
  dot,
  midpointPx,
  multiplyVector,
  norm,
  scale,
  subtract,
  transpose,
  type Matrix3,
  type Vector3,
} from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import { SIDES, type Side } from '../units/side.js';
import { assumedCamera, deviationUncertainty, NO_DEVIATION } from './assumed-camera.js';
import type { BudgetSource } from './estimate.js';
import type { MeasuringSettings } from './face-estimates.js';
import { ROTATION_TO_PUPIL_MM } from './gaze.js';
import {
  HEAD_SIDES_RATIO,
  landmarkSides,
  sidesTangent,
  skinEdgeSides,
  type HeadSides,
  type HeadSidesKind,
} from './head-sides.js';
import { heldCard } from './held-card.js';
import {
  CARD_TURN_SD,
  EYE_DEPTH_DIFFERENCE_SD_MM,
  IRIS_MEAN_MM,
  IRIS_SD_MM,
  midlineDoubtGrowth,
  PITCH_SD,
  ROLL_SD,
  ROTATION_TO_PUPIL_SD_MM,
  TEMPLE_BACK_MM,
  TEMPLE_RATIO,
  TEMPLE_RATIO_SD,
  YAW_SD,
  type FaceKnowledge,
} from './prior-knowledge.js';

/**
 * Parameters that all frames of a sweep share, by place. The card is the body's frame: x right and y down as seen, z into the face, origin in
 * its middle. Everything of the head stands in it, since the card does not move against the face.
 */
export const S = {
  logFocal: 0,
  k1: 1,
  cxPx: 2,
  cyPx: 3,
  cardSize: 4,
  /** centres of rotation of the eyes */
  eyeR: 5,
  eyeL: 8,
  /** how the head stands in the card's frame, radians */
  yaw: 11,
  pitch: 12,
  roll: 13,
  /** by how much the fit of the mean face errs in all frames alike, radians */
  yawBias: 14,
  pitchBias: 15,
  rollBias: 16,
  iris: 17,
  /** where the midline crosses the line between the pupils: to the wearer's left of their middle, and before the pupils */
  bridgeAcross: 18,
  bridgeForward: 19,
  apertureR: 20,
  apertureL: 21,
  /** distances of the sides of the head that are measured, and of the landmarks on the temples */
  headSpan: 22,
  templeSpan: 23,
  rotation: 24,
  /** where the eyes look, against the camera's centre of projection, mm */
  fixationX: 25,
  fixationY: 26,
  fixationZ: 27,
  /** From here on what the frames do not show: by how much they err in all frames alike, and ratios of the mean face. */
  midlineBias: 28,
  lidBiasR: 29,
  lidBiasL: 30,
  headRatio: 31,
  templeRatio: 32,
  /** by how much the edge of an iris is found beside its place, to the wearer's left, mm */
  irisBiasR: 33,
  irisBiasL: 34,
  /** by how much an iris is found too large, relative */
  irisGrowth: 35,
} as const;

export const SWEEP_STEPS: BundleSteps = {
  shared: [
    ...[1e-4, 1e-4, 1e-2, 1e-2, 1e-5],
    ...new Array<number>(6).fill(1e-3),
    ...new Array<number>(6).fill(1e-5),
    ...new Array<number>(14).fill(1e-3),
    ...[1e-4, 1e-4, 1e-3, 1e-3, 1e-4],
  ],
  own: POSE_STEPS,
};

const SEEN_BY_FRAMES = S.midlineBias;
/** The first residuals of a frame: where the card's corners and the irises are. */
export const GEOMETRY_RESIDUALS = 14;

/** Eyes that are asked to look into the lens look at something beside it by about this, and as far away to within this, mm (chosen). */
const FIXATION_ASIDE_SD_MM = 15;
export const FIXATION_DEPTH_SD_MM = 25;
/** Where a wearer looks who was asked to look far away, mm behind the camera, and the doubt of it aside (chosen). */
const FAR_FIXATION_MM = 6000;
const FAR_FIXATION_SD_MM = 300;
/** Scatter of the head's angles from frame to frame, beside what errs in all alike (rendered heads). */
const FRAME_YAW_SD = degreesToRadians(1.5);
const FRAME_PITCH_SD = degreesToRadians(3);
const FRAME_ROLL_SD = degreesToRadians(1);
/** The head does not nod against the card by more than about this beyond what a card's lean explains (scans: 6 to 9 degrees). */
const CARD_LEAN_SD = degreesToRadians(15);
/** What landmarks, lids and iris edges get wrong in all frames alike, mm (rendered heads). */
const MIDLINE_BIAS_SD_MM = 0.25;
const LID_BIAS_SD_MM = 0.22;
const IRIS_BIAS_SD_MM = 0.045;
const IRIS_GROWTH_SD = 0.01;
/** How well the crossing of midline and pupils' line keeps its depth as the head turns, mm (rendered heads). */
const BRIDGE_FORWARD_SD_MM = 2;
/** Wide enough to say nothing: bridge beside the middle, apertures and spans, mm. */
const BRIDGE_ACROSS_SD_MM = 10;
const WIDE_SD_MM = 100;
/** The sides of the head are seen worse the more it is turned: twice as badly at this angle (chosen). */
const SIDE_TURN_RAD = degreesToRadians(5);

/** The skin before the ears is measured where so many frames show it: one alone could be mistaken. */
const FEWEST_SKIN_EDGES = 2;

/** A frame with what was made of its landmarks. */
export interface SweepView {
  readonly features: PictureFeatures;
  readonly head: HeadAngles;
  /** first guess of where the card is */
  readonly pose: Pose;
}

export interface SweepModel {
  readonly views: readonly SweepView[];
  readonly settings: MeasuringSettings;
  readonly profile: CameraProfile | null;
  readonly known: FaceKnowledge;
  /** the eyes may have looked at anything behind the camera, whatever they were asked to look at */
  readonly isGazeDoubted: boolean;
}

export function cameraOf({ views, profile }: SweepModel, s: readonly number[]): Camera {
  return assumedCamera(views[0]!.features, profile, {
    logFocal: s[S.logFocal]!,
    k1: s[S.k1]!,
    cxPx: s[S.cxPx]!,
    cyPx: s[S.cyPx]!,
  });
}

/** Axes of the head in the card's frame. */
export function headAxesInCard(s: readonly number[]): HeadAxes {
  return axesOfHead({ yawRad: s[S.yaw]!, pitchRad: s[S.pitch]!, rollRad: s[S.roll]! });
}

/** Angles of the head in a frame in which the card has this pose. */
export function headAnglesInFrame({ rotation }: Pose, inCard: HeadAxes): HeadAngles {
  return anglesOfAxes(turned(rotation, inCard));
}

/** How the head stands in the card's frame, from its angles in a frame in which the card has this pose. */
export function headInCard({ rotation }: Pose, head: HeadAngles): HeadAngles {
  return anglesOfAxes(turned(transpose(rotation), axesOfHead(head)));
}

function turned(rotation: Matrix3, { left, up, forward }: HeadAxes): HeadAxes {
  return {
    left: multiplyVector(rotation, left),
    up: multiplyVector(rotation, up),
    forward: multiplyVector(rotation, forward),
  };
}

export function eyeCentre(s: readonly number[], side: Side): Vector3 {
  const offset = side === 'R' ? S.eyeR : S.eyeL;
  return [s[offset]!, s[offset + 1]!, s[offset + 2]!];
}

/** The pupil's centre in the camera frame: before the eye's centre of rotation, towards what the eye looks at. */
export function pupilInCamera(pose: Pose, s: readonly number[], side: Side, gaze: MeasuringSettings['gaze']): Vector3 {
  const centre = toCamera(pose, eyeCentre(s, side));
  const target: Vector3 =
    gaze === 'camera'
      ? [s[S.fixationX]!, s[S.fixationY]!, s[S.fixationZ]!]
      : [s[S.fixationX]!, s[S.fixationY]!, s[S.fixationZ]! - FAR_FIXATION_MM];
  const sight = subtract(target, centre);
  return add(centre, scale(sight, s[S.rotation]! / norm(sight)));
}

/** Camera to the plane of the pupils. */
export function pupilsDistanceMm(pose: Pose, s: readonly number[], gaze: MeasuringSettings['gaze']): number {
  return (pupilInCamera(pose, s, 'R', gaze)[2] + pupilInCamera(pose, s, 'L', gaze)[2]) / 2;
}

/** Everything that is known of the sweep: priors, and what every frame shows. */
export function sweepKnowledge(model: SweepModel): BundleKnowledge<BudgetSource> {
  const sidesKind = headSidesOfSweep(model);
  return {
    shared: priors(model, HEAD_SIDES_RATIO[sidesKind]),
    frames: model.views.map((view) => frameKnowledge(model, view, sidesKind)),
    seenByFrames: SEEN_BY_FRAMES,
  };
}

/** What the width of the head is measured between in all frames. */
function headSidesOfSweep(model: SweepModel): HeadSidesKind {
  const seen = model.views.filter((view) => skinEdgeOfView(model.profile, view) !== null);
  return seen.length >= FEWEST_SKIN_EDGES ? 'skin-edge' : 'landmarks';
}

function skinEdgeOfView(profile: CameraProfile | null, { features, head }: SweepView): HeadSides | null {
  const camera = assumedCamera(features, profile, NO_DEVIATION);
  const { R, L } = features.iris;
  return skinEdgeSides(features.outline, head.yawRad + Math.atan(rayOf(camera, midpointPx(R.centre, L.centre)).x));
}

function priors(
  { views, settings, profile, known, isGazeDoubted }: SweepModel,
  headRatio: { readonly mean: number; readonly sd: number },
): BundleKnowledge<BudgetSource>['shared'] {
  const { card } = views[0]!.features;
  const held = heldCard(card, settings.printScale, known);
  const cameraSd = deviationUncertainty(views[0]!.features, profile);
  const asideSdMm = settings.gaze === 'camera' ? FIXATION_ASIDE_SD_MM : FAR_FIXATION_SD_MM;
  const depthSdMm = settings.gaze === 'far' || isGazeDoubted ? FAR_FIXATION_MM / 2 : FIXATION_DEPTH_SD_MM;

  /** What is known of single parameters: value, standard uncertainty, and where that doubt belongs in a budget. */
  const single: readonly (readonly [place: number, value: number, sd: number, source: BudgetSource])[] = [
    [S.logFocal, 0, cameraSd.logFocal, 'camera'],
    [S.k1, 0, cameraSd.k1, 'camera'],
    [S.cxPx, 0, cameraSd.cxPx, 'camera'],
    [S.cyPx, 0, cameraSd.cyPx, 'camera'],
    [S.cardSize, held.size, held.size * held.sizeUncertainty, 'card-size'],
    [S.yawBias, 0, YAW_SD, 'head-pose'],
    [S.pitchBias, 0, PITCH_SD, 'head-pose'],
    [S.rollBias, 0, ROLL_SD, 'head-pose'],
    [S.yaw, 0, CARD_TURN_SD, 'head-pose'],
    [S.pitch, 0, CARD_LEAN_SD, 'head-pose'],
    [S.iris, IRIS_MEAN_MM, IRIS_SD_MM, 'iris-size'],
    [S.bridgeAcross, 0, BRIDGE_ACROSS_SD_MM, 'midline'],
    [S.bridgeForward, 0, BRIDGE_FORWARD_SD_MM, 'midline'],
    [S.midlineBias, 0, MIDLINE_BIAS_SD_MM, 'midline'],
    [S.apertureR, 10, WIDE_SD_MM, 'lid-edges'],
    [S.apertureL, 10, WIDE_SD_MM, 'lid-edges'],
    [S.lidBiasR, 0, LID_BIAS_SD_MM, 'lid-edges'],
    [S.lidBiasL, 0, LID_BIAS_SD_MM, 'lid-edges'],
    [S.headSpan, 140, WIDE_SD_MM, 'head-shape'],
    [S.templeSpan, 130, WIDE_SD_MM, 'head-shape'],
    [S.headRatio, headRatio.mean, headRatio.sd, 'head-shape'],
    [S.templeRatio, TEMPLE_RATIO, TEMPLE_RATIO_SD, 'head-shape'],
    [S.rotation, ROTATION_TO_PUPIL_MM, ROTATION_TO_PUPIL_SD_MM, 'gaze'],
    [S.fixationX, 0, asideSdMm, 'gaze'],
    [S.fixationY, 0, asideSdMm, 'gaze'],
    [S.fixationZ, 0, depthSdMm, 'gaze'],
    [S.irisBiasR, 0, IRIS_BIAS_SD_MM, 'iris-edges'],
    [S.irisBiasL, 0, IRIS_BIAS_SD_MM, 'iris-edges'],
    [S.irisGrowth, 0, IRIS_GROWTH_SD, 'iris-edges'],
  ];
  return {
    sources: [...single.map(([, , , source]) => source), 'contact-depth', 'head-shape'],
    residuals: (s) => {
      const { forward } = headAxesInCard(s);
      const [right, left] = [eyeCentre(s, 'R'), eyeCentre(s, 'L')];
      const middle = scale(add(right, left), 0.5);
      const back: Vector3 = [0, 0, held.thicknessMm];
      const forwardMm = dot(subtract(back, middle), forward) - s[S.rotation]!;
      return [
        ...single.map(([place, value, sd]) => (s[place]! - value) / sd),
        (forwardMm - held.contactMm) / held.contactSdMm,
        dot(subtract(left, right), forward) / EYE_DEPTH_DIFFERENCE_SD_MM,
      ];
    },
  };
}

function frameKnowledge(model: SweepModel, view: SweepView, sidesKind: HeadSidesKind): FrameKnowledge<BudgetSource> {
  const { card, iris, lids, midline, outline } = view.features;
  const { gaze } = model.settings;
  const sides = sidesKind === 'skin-edge' ? skinEdgeOfView(model.profile, view) : landmarkSides(outline);
  const sources: BudgetSource[] = [];
  for (let i = 0; i < 8; i++) sources.push('card-edges');
  for (let i = 0; i < 6; i++) sources.push('iris-edges');
  sources.push('head-pose', 'head-pose', 'head-pose', 'midline', 'lid-edges', 'lid-edges', 'head-shape');
  if (sides !== null) sources.push('head-shape');
  const seenAperturePx = { R: distancePx(lids.R.upper, lids.R.lower), L: distancePx(lids.L.upper, lids.L.lower) };
  const seenTemplePx = distancePx(outline.temple.R, outline.temple.L);
  const sideDoubt = Math.SQRT2 * (1 + (view.head.yawRad / SIDE_TURN_RAD) ** 2);
  const midlineDoubtPx = midline.uncertaintyPx * midlineDoubtGrowth(view.head.yawRad);
  const along = Math.atan2(iris.L.centre.yPx - iris.R.centre.yPx, iris.L.centre.xPx - iris.R.centre.xPx);

  const residuals = (s: readonly number[], own: readonly number[]): number[] => {
    const camera = cameraOf(model, s);
    const pose = poseFromParameters(own);
    const out: number[] = [];
    CARD_CORNERS_MM.forEach((corner, i) => {
      const seen = project(camera, toCamera(pose, scale(corner, s[S.cardSize]!)));
      const found = card.corners[i]!;
      out.push(...whiten(found.covariance, seen.xPx - found.xPx, seen.yPx - found.yPx));
    });
    const pupils = { R: pupilInCamera(pose, s, 'R', gaze), L: pupilInCamera(pose, s, 'L', gaze) };
    for (const side of SIDES) {
      const seen = project(camera, pupils[side]);
      const { centre, radiusPx, radiusUncertaintyPx } = iris[side];
      out.push(...whiten(centre.covariance, seen.xPx - centre.xPx, seen.yPx - centre.yPx));
      out.push(((camera.fx * s[S.iris]!) / 2 / pupils[side][2] - radiusPx) / radiusUncertaintyPx);
    }
    const inCard = headAxesInCard(s);
    const head = headAnglesInFrame(pose, inCard);
    out.push((head.yawRad + s[S.yawBias]! - view.head.yawRad) / FRAME_YAW_SD);
    out.push((head.pitchRad + s[S.pitchBias]! - view.head.pitchRad) / FRAME_PITCH_SD);
    out.push((head.rollRad + s[S.rollBias]! - view.head.rollRad) / FRAME_ROLL_SD);
    const bridge = project(camera, toCamera(pose, bridgeInCard(s, inCard)));
    const seenMidline = midline.betweenPupils ?? midline.point;
    const asidePx = (bridge.xPx - seenMidline.xPx) * Math.cos(along) + (bridge.yPx - seenMidline.yPx) * Math.sin(along);
    out.push(asidePx / midlineDoubtPx);
    for (const side of SIDES) {
      const apertureMm = side === 'R' ? s[S.apertureR]! : s[S.apertureL]!;
      const expectedPx = (camera.fx * apertureMm) / pupils[side][2];
      out.push((expectedPx - seenAperturePx[side]) / (Math.SQRT2 * lids[side].uncertaintyPx));
    }
    const eyesMm = (pupils.R[2] + pupils.L[2]) / 2;
    const acrossPx = camera.fx * Math.cos(head.yawRad);
    const templePx = (acrossPx * s[S.templeSpan]!) / (eyesMm + TEMPLE_BACK_MM);
    out.push((templePx - seenTemplePx) / (sideDoubt * outline.uncertaintyPx));
    if (sides !== null) {
      const headPx = acrossPx * sidesTangent(sidesKind, s[S.headSpan]!, eyesMm);
      out.push((headPx - distancePx(sides.points.R, sides.points.L)) / (sideDoubt * sides.uncertaintyPx));
    }
    return out;
  };
  return { sources, robust: () => true, residuals };
}

/** The midline of the bridge at the level of the eyes, in the card's frame. */
function bridgeInCard(s: readonly number[], { left, forward }: HeadAxes): Vector3 {
  const middle = scale(add(eyeCentre(s, 'R'), eyeCentre(s, 'L')), 0.5);
  return add(add(middle, scale(left, s[S.bridgeAcross]!)), scale(forward, s[S.rotation]! + s[S.bridgeForward]!));
}
