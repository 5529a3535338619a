import type { Advice, PictureFailure } from '../camera/failure.js';
import { LANDMARK, landmarkAt } from '../camera/face-landmarks.js';
import type { Landmark, PictureFeatures } from '../camera/features.js';
import { axesOfHead, type HeadAxes } from '../camera/head-axes.js';
import { choosePoseVertices, fitHeadPose, type HeadAngles } from '../camera/head-pose.js';
import {
  NOD_LIMIT_DEG,
  SEEN_SHARE_ADVICE,
  SLANT_ADVICE_DEG,
  TURN_ADVICE_DEG,
  TURN_LIMIT_DEG,
} from '../camera/picture-limits.js';
import { project, rayOf, type Camera } from '../camera/pinhole.js';
import { findPlanarPoses, parametersOfPose, poseFromParameters } from '../camera/planar-pose.js';
import { CARD_CORNERS_MM } from '../camera/reference-card.js';
import { whiten } from '../camera/whiten.js';
import { adjust, type Adjustment, type Knowledge } from '../fitting/adjustment.js';
import { isWithin } from '../geometry/outline.js';
import { toCamera } from '../geometry/pose.js';
import {
  add,
  distancePx,
  dot,
  midpointPx,
  norm,
  normalise,
  scale,
  subtract,
  transpose,
  type ImagePoint,
  type Vector3,
} from '../geometry/vector.js';
import { fail, succeed, type Result } from '../result.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { radiansToDegrees } from '../units/angle.js';
import { SIDES, type BothSides } from '../units/side.js';
import type { AlwaysEstimated, BudgetSource, Estimate, EstimateUnit, FaceEstimates } from './estimate.js';
import {
  NEAR_ENOUGH_PIXELS_PER_MM,
  type FaceMeasurement,
  type MeasureFace,
  type MeasuringSettings,
} from './face-estimates.js';
import { assumedCamera, deviationUncertainty, matchingProfile, NO_DEVIATION } from './assumed-camera.js';
import { estimateOf, type OwnDoubt } from './estimate-of.js';
import { nearCentrationDistanceMm, ROTATION_TO_PUPIL_MM } from './gaze.js';
import { HEAD_SIDES_RATIO, landmarkSides, sidesApartMm, skinEdgeSides, type HeadSides } from './head-sides.js';
import { chooseCardPose, heldCard, withoutFitBias } from './held-card.js';
import {
  CARD_TURN_SD,
  EYE_DEPTH_DIFFERENCE_SD_MM,
  FAR_VERGENCE_SD,
  FOCAL_OVER_LONG_SIDE,
  BRIDGE_FORWARD_MM,
  BRIDGE_SHAPE_SD,
  IRIS_MEAN_MM,
  isPlausibleIris,
  midlineDoubtGrowth,
  IRIS_SD_MM,
  LANDMARK_DEPTH_SD_MM,
  NEAR_VERGENCE_SD,
  PITCH_SD,
  ROLL_SD,
  ROTATION_TO_PUPIL_SD_MM,
  TEMPLE_BACK_MM,
  TEMPLE_RATIO,
  TEMPLE_RATIO_SD,
  UPRIGHT_SD,
  YAW_SD,
  type FaceKnowledge,
} from './prior-knowledge.js';

/** Corners that a hand placed may lie this far from those of a flat card of the right shape, as a share of its width. Chosen. */
const HAND_MISFIT_SHARE = 0.03;
/** No card that is held to a face leans further from the picture than this, degrees. Chosen. */
const CARD_TILT_LIMIT_DEG = 35;
/** Parameters of the adjustment, by place. */
const P = {
  logFocal: 0,
  k1: 1,
  cardSize: 2,
  card: 3,
  eyeR: 9,
  eyeL: 12,
  yaw: 15,
  pitch: 16,
  roll: 17,
  iris: 18,
  midline: 19,
  lidUpperR: 20,
  lidLowerR: 21,
  lidUpperL: 22,
  lidLowerL: 23,
  rotation: 24,
  vergence: 25,
  headRatio: 26,
  templeRatio: 27,
  headSpan: 28,
  templeSpan: 29,
} as const;

const STEPS: readonly number[] = [
  1e-4, 1e-4, 1e-5, 1e-5, 1e-5, 1e-5, 1e-3, 1e-3, 1e-3, 1e-3, 1e-3, 1e-3, 1e-3, 1e-3, 1e-3, 1e-5, 1e-5, 1e-5, 1e-3,
  1e-3, 1e-3, 1e-3, 1e-3, 1e-3, 1e-3, 1e-7, 1e-4, 1e-4, 1e-3, 1e-3,
];

type PoseFitter = (camera: Camera, features: PictureFeatures) => HeadAngles | null;

/** Makes the function that turns features into estimates, with what is known of faces from outside. */
export function createMeasureFace(known: FaceKnowledge): MeasureFace {
  const vertices = choosePoseVertices(known.canonicalFace);
  // While a handle is dragged the landmarks stay, and mostly also which of them the card covers: the head's pose is then the same.
  let last: {
    readonly landmarks: readonly Landmark[];
    readonly key: string;
    readonly angles: HeadAngles | null;
  } | null = null;
  const poseOf: PoseFitter = (camera, { landmarks, card }) => {
    const covered = vertices.filter((i) => landmarks[i] !== undefined && isWithin(card.corners, landmarks[i]));
    const key = [camera.fx, camera.cx, camera.cy, ...covered].join(' ');
    if (last === null || last.landmarks !== landmarks || last.key !== key) {
      last = { landmarks, key, angles: fitHeadPose(camera, known.canonicalFace, landmarks, card.corners, vertices) };
    }
    return last.angles;
  };
  return (features, settings) => measureFace(features, settings, known, poseOf);
}

/**
 * All estimates of one picture with their budgets: one least squares adjustment of the camera's field of view, the card's pose, the
 * pupils in space and the head's angles to everything that was seen and everything that is known beforehand. What decides the
 * scale at the eyes is that the card touches the face, so far before the eyes as faces allow; the size of the irises is a second,
 * weak opinion.
 *
 * Camera frame: x right, y down, z forward, mm. Fails as `PictureFailure` says.
 */
export function measureFace(
  features: PictureFeatures,
  settings: MeasuringSettings,
  known: FaceKnowledge,
  poseOf: PoseFitter = (camera, { landmarks, card }) =>
    fitHeadPose(camera, known.canonicalFace, landmarks, card.corners),
): Result<FaceMeasurement, PictureFailure> {
  const { card, iris, outline } = features;
  const longSide = Math.max(features.widthPx, features.heightPx);
  const profile = matchingProfile(settings.profile, features);
  const startFocal = profile?.fx ?? FOCAL_OVER_LONG_SIDE * longSide;
  const startCamera = assumedCamera(features, profile, NO_DEVIATION);

  const poses = findPlanarPoses(startCamera, CARD_CORNERS_MM, card.corners);
  if (!poses.ok) return fail({ kind: 'card-not-flat', residualPx: Infinity });
  const angles = poseOf(startCamera, features);
  if (angles === null) return fail({ kind: 'no-face' });
  const head = withoutFitBias(angles, card.position);
  const turnDeg = Math.abs(radiansToDegrees(head.yawRad));
  if (turnDeg > TURN_LIMIT_DEG + radiansToDegrees(NORMAL_95 * YAW_SD)) {
    return fail({ kind: 'head-turned', turnDeg, limitDeg: TURN_LIMIT_DEG });
  }
  const nodDeg = Math.abs(radiansToDegrees(head.pitchRad));
  if (nodDeg > NOD_LIMIT_DEG) return fail({ kind: 'head-turned', turnDeg: nodDeg, limitDeg: NOD_LIMIT_DEG });

  const pose = chooseCardPose(poses.value, head);
  const cardWidthPx = distancePx(card.corners[0], card.corners[1]);
  if (pose.residualPx > Math.max(3, HAND_MISFIT_SHARE * cardWidthPx)) {
    return fail({ kind: 'card-not-flat', residualPx: pose.residualPx });
  }
  const cardNormal = transpose(pose.pose.rotation)[2];
  const tiltDeg = radiansToDegrees(Math.acos(Math.min(1, Math.abs(cardNormal[2]))));
  if (tiltDeg > CARD_TILT_LIMIT_DEG) return fail({ kind: 'card-tilted', tiltDeg, limitDeg: CARD_TILT_LIMIT_DEG });
  const eyesDepthMm = pose.pose.translationMm[2] + known.contactDepth.regions[card.position].meanMm;
  const onRay = (point: ImagePoint): Vector3 => {
    const ray = rayOf(startCamera, point);
    return [ray.x * eyesDepthMm, ray.y * eyesDepthMm, eyesDepthMm];
  };
  const sightRad = Math.atan(rayOf(startCamera, midpointPx(iris.R.centre, iris.L.centre)).x);
  const sides = skinEdgeSides(outline, head.yawRad + sightRad) ?? landmarkSides(outline);
  const start = new Array<number>(STEPS.length).fill(0);
  start[P.cardSize] = 1;
  start.splice(P.card, 6, ...parametersOfPose(pose.pose));
  start.splice(P.eyeR, 6, ...onRay(features.iris.R.centre), ...onRay(features.iris.L.centre));
  start[P.yaw] = head.yawRad;
  start[P.pitch] = head.pitchRad;
  start[P.roll] = head.rollRad;
  start[P.iris] = IRIS_MEAN_MM;
  start[P.rotation] = ROTATION_TO_PUPIL_MM;
  start[P.vergence] = settings.gaze === 'camera' ? 1 / eyesDepthMm : 0;
  start[P.headRatio] = HEAD_SIDES_RATIO[sides.kind].mean;
  start[P.templeRatio] = TEMPLE_RATIO;

  const model: Model = { features, settings, profile, known, cardNormal, sides };
  const adjusted = adjust(knowledgeOf(model, head), start, STEPS, 25);
  if (!adjusted.ok) return fail({ kind: 'card-not-flat', residualPx: pose.residualPx });
  const estimates = estimatesOf(model, adjusted.value);
  const irisMm = estimates.irisDiameter.value;
  if (!isPlausibleIris(irisMm)) return fail({ kind: 'implausible', irisMm });
  const distanceMm = estimates.distance.value;
  const focal = startFocal * Math.exp(adjusted.value.parameters[P.logFocal]!);
  const pixelsPerMm = focal / distanceMm;
  return succeed({ estimates, pixelsPerMm, advice: adviceOf(features, pixelsPerMm, turnDeg) });
}

interface Model {
  readonly features: PictureFeatures;
  readonly settings: MeasuringSettings;
  readonly profile: MeasuringSettings['profile'];
  readonly known: FaceKnowledge;
  /** of the first pose, into the face, in the camera frame */
  readonly cardNormal: Vector3;
  /** what the width of the head is measured between */
  readonly sides: HeadSides;
}

function cameraByParameters({ features, profile }: Model): (x: readonly number[]) => Camera {
  return (x) => assumedCamera(features, profile, { ...NO_DEVIATION, logFocal: x[P.logFocal]!, k1: x[P.k1]! });
}

const headAxes = (x: readonly number[]): HeadAxes =>
  axesOfHead({ yawRad: x[P.yaw]!, pitchRad: x[P.pitch]!, rollRad: x[P.roll]! });

const eyeAt = (x: readonly number[], offset: number): Vector3 => [x[offset]!, x[offset + 1]!, x[offset + 2]!];

function knowledgeOf(model: Model, head: HeadAngles): Knowledge<BudgetSource> {
  const { features, settings, profile, known, sides } = model;
  const { card, iris, lids, midline, outline } = features;
  const headRatio = HEAD_SIDES_RATIO[sides.kind];
  const held = heldCard(card, settings.printScale, known);
  const cameraSd = deviationUncertainty(features, profile);
  const midlineDoubtPx = midline.uncertaintyPx * midlineDoubtGrowth(head.yawRad);
  const landmarkGapPx = landmarkGap(features, model.cardNormal);
  const vergence = settings.gaze === 'camera' ? null : 0;

  const sources: BudgetSource[] = ['camera', 'camera', 'card-size'];
  for (let i = 0; i < 8; i++) sources.push('card-edges');
  sources.push('iris-edges', 'iris-edges', 'iris-edges', 'iris-edges', 'iris-edges', 'iris-edges', 'iris-size');
  sources.push(
    'head-pose',
    'head-pose',
    'head-pose',
    'head-pose',
    'head-pose',
    'head-pose',
    'head-shape',
    'contact-depth',
    'head-shape',
  );
  sources.push('midline', 'lid-edges', 'lid-edges', 'lid-edges', 'lid-edges', 'gaze', 'gaze');
  sources.push('head-shape', 'head-shape', 'head-shape', 'head-shape');

  const cameraAt = cameraByParameters(model);
  const residuals = (x: readonly number[]): number[] => {
    const camera = cameraAt(x);
    const pose = poseFromParameters(x, P.card);
    const axes = headAxes(x);
    const eyes = { R: eyeAt(x, P.eyeR), L: eyeAt(x, P.eyeL) };
    const out: number[] = [x[P.logFocal]! / cameraSd.logFocal, x[P.k1]! / cameraSd.k1];
    out.push((x[P.cardSize]! / held.size - 1) / held.sizeUncertainty);
    CARD_CORNERS_MM.forEach((corner, i) => {
      const seen = project(camera, toCamera(pose, scale(corner, x[P.cardSize]!)));
      const found = card.corners[i]!;
      out.push(...whiten(found.covariance, seen.xPx - found.xPx, seen.yPx - found.yPx));
    });
    for (const side of SIDES) {
      const seen = project(camera, eyes[side]);
      const { centre, radiusPx, radiusUncertaintyPx } = iris[side];
      out.push(...whiten(centre.covariance, seen.xPx - centre.xPx, seen.yPx - centre.yPx));
      out.push(((camera.fx * x[P.iris]!) / 2 / eyes[side][2] - radiusPx) / radiusUncertaintyPx);
    }
    out.push((x[P.iris]! - IRIS_MEAN_MM) / IRIS_SD_MM);
    out.push((x[P.yaw]! - head.yawRad) / YAW_SD, (x[P.pitch]! - head.pitchRad) / PITCH_SD);
    out.push((x[P.roll]! - head.rollRad) / ROLL_SD, x[P.pitch]! / UPRIGHT_SD, x[P.yaw]! / UPRIGHT_SD);
    const normal = transpose(pose.rotation)[2];
    out.push(Math.atan2(-dot(normal, axes.left), -dot(normal, axes.forward)) / CARD_TURN_SD);
    const across = subtract(eyes.L, eyes.R);
    const middle = scale(add(eyes.L, eyes.R), 0.5);
    out.push(dot(across, axes.forward) / EYE_DEPTH_DIFFERENCE_SD_MM);
    const back = add(pose.translationMm, scale(normal, held.thicknessMm));
    out.push((dot(subtract(back, middle), axes.forward) - held.contactMm) / held.contactSdMm);
    const gapMm = landmarkGapPx === null ? null : (landmarkGapPx * middle[2]) / camera.fx;
    out.push(gapMm === null ? 0 : (middle[2] - back[2] - gapMm) / LANDMARK_DEPTH_SD_MM[card.position]);
    out.push(x[P.midline]! / midlineDoubtPx);
    out.push(x[P.lidUpperR]! / lids.R.uncertaintyPx, x[P.lidLowerR]! / lids.R.uncertaintyPx);
    out.push(x[P.lidUpperL]! / lids.L.uncertaintyPx, x[P.lidLowerL]! / lids.L.uncertaintyPx);
    out.push((x[P.rotation]! - ROTATION_TO_PUPIL_MM) / ROTATION_TO_PUPIL_SD_MM);
    out.push(
      vergence === null
        ? (x[P.vergence]! * (middle[2] + x[P.rotation]!) - 1) / NEAR_VERGENCE_SD
        : (x[P.vergence]! - vergence) / FAR_VERGENCE_SD,
    );
    out.push((x[P.headRatio]! - headRatio.mean) / headRatio.sd, (x[P.templeRatio]! - TEMPLE_RATIO) / TEMPLE_RATIO_SD);
    out.push(x[P.headSpan]! / sides.uncertaintyPx, x[P.templeSpan]! / outline.uncertaintyPx);
    return out;
  };
  return { sources, robust: () => false, residuals };
}

/**
 * How far the landmark model sees the eyes behind the middle of a card that touches the skin it covers, along the line of sight and in the
 * scale of a pixel at the eyes; null where too few landmarks lie under the card. The model guesses what it cannot see there.
 */
function landmarkGap({ landmarks, card }: PictureFeatures, cardNormal: Vector3): number | null {
  // The chin's landmarks are often drawn a little above the card that covers it: they count for a card held there in any case.
  const chin = card.position === 'chin' ? LANDMARK.chinPoint.map((index) => landmarkAt(landmarks, index)) : [];
  const covered = [...chin, ...landmarks.slice(0, MESH_COUNT).filter((landmark) => isWithin(card.corners, landmark))];
  if (covered.length < 2) return null;
  const eyeDepthPx =
    SIDES.flatMap((side) => [LANDMARK.upperLid[side], LANDMARK.lowerLid[side]])
      .map((index) => landmarkAt(landmarks, index).depthPx)
      .reduce((sum, depthPx) => sum + depthPx, 0) / 4;
  const centre = midpointPx(midpointPx(card.corners[0], card.corners[2]), midpointPx(card.corners[1], card.corners[3]));
  // Depth at the card's middle of the plane with the card's normal through each landmark; the nearest plane is the card's.
  const depthsPx = covered.map(({ xPx, yPx, depthPx }: Landmark) => {
    const across = (xPx - centre.xPx) * cardNormal[0] + (yPx - centre.yPx) * cardNormal[1];
    return depthPx + across / cardNormal[2];
  });
  return eyeDepthPx - Math.min(...depthsPx);
}

const MESH_COUNT = 468;

function estimatesOf(model: Model, adjustment: Adjustment<BudgetSource>): FaceEstimates {
  const { features, settings, known } = model;
  const cameraAt = cameraByParameters(model);
  const midlineForwardMm = features.midline.betweenPupils === null ? known.contactDepth.nasion.meanMm : 0;
  const eyes = (x: readonly number[]) => ({ R: eyeAt(x, P.eyeR), L: eyeAt(x, P.eyeL) });
  const pdShown = (x: readonly number[]): number => norm(subtract(eyes(x).L, eyes(x).R));
  /** Pupil to its place at far gaze, along the line between the eyes: convergence turns each pupil inwards. */
  const inward = (x: readonly number[]): number => {
    const shown = pdShown(x);
    const sine = x[P.rotation]! * x[P.vergence]!;
    // Far PD P, shown p: (P - p) / 2 = r sin(angle), tan(angle) = (P / 2) vergence; one step of iteration is enough for r << distance.
    const far = shown / (1 - sine);
    return x[P.rotation]! * Math.sin(Math.atan((far / 2) * x[P.vergence]!));
  };
  const pdFar = (x: readonly number[]): number => pdShown(x) + 2 * inward(x);
  const mono = (x: readonly number[], side: 'R' | 'L'): number => {
    const { left, forward } = headAxes(x);
    const both = eyes(x);
    const camera = cameraAt(x);
    const middle = scale(add(both.L, both.R), 0.5);
    const { xPx, yPx } = features.midline.betweenPupils ?? features.midline.point;
    const ray = rayOf(camera, { xPx: xPx + x[P.midline]!, yPx });
    const depthMm = middle[2] + midlineForwardMm * forward[2];
    const bridge: Vector3 = [ray.x * depthMm, ray.y * depthMm, depthMm];
    const along = dot(subtract(bridge, both[side]), left);
    if (settings.gaze === 'far') return (side === 'R' ? along : -along) + inward(x);
    // Eyes on the camera while the head is turned: the pupil goes back to where it is when the eye looks straight ahead.
    const fixation = scale(middle, 1 - 1 / (x[P.vergence]! * norm(middle)));
    const sight = normalise(subtract(fixation, both[side]));
    const turnedMm = x[P.rotation]! * dot(sight, left);
    return side === 'R' ? along + turnedMm : -(along + turnedMm);
  };
  const aperture = (x: readonly number[], side: 'R' | 'L'): number => {
    const camera = cameraAt(x);
    const { upper, lower } = features.lids[side];
    const shift = side === 'R' ? x[P.lidLowerR]! - x[P.lidUpperR]! : x[P.lidLowerL]! - x[P.lidUpperL]!;
    return ((distancePx(upper, lower) + shift) / camera.fx) * eyes(x)[side][2];
  };
  const eyesMm = (x: readonly number[]): number => (x[P.eyeR + 2]! + x[P.eyeL + 2]!) / 2;
  /** The tangent as which two sides of the head appear when it is not turned. */
  const tangent = (x: readonly number[], { R, L }: BothSides<ImagePoint>, growthPx: number): number =>
    (distancePx(R, L) + growthPx) / cameraAt(x).fx / Math.cos(x[P.yaw]!);
  const headWidth = (x: readonly number[]): number => {
    const { kind, points } = model.sides;
    return x[P.headRatio]! * sidesApartMm(kind, tangent(x, points, x[P.headSpan]!), eyesMm(x));
  };
  const templeWidth = (x: readonly number[]): number =>
    x[P.templeRatio]! * tangent(x, features.outline.temple, x[P.templeSpan]!) * (eyesMm(x) + TEMPLE_BACK_MM);
  const outputs: Readonly<Record<AlwaysEstimated, readonly [EstimateUnit, (x: readonly number[]) => number]>> = {
    pdFar: ['mm', pdFar],
    pdShown: ['mm', pdShown],
    pdNear: ['mm', (x) => nearCentrationDistanceMm(pdFar(x), settings.workingDistanceMm)],
    monoPdR: ['mm', (x) => mono(x, 'R')],
    monoPdL: ['mm', (x) => mono(x, 'L')],
    monoNearR: ['mm', (x) => nearCentrationDistanceMm(mono(x, 'R'), settings.workingDistanceMm)],
    monoNearL: ['mm', (x) => nearCentrationDistanceMm(mono(x, 'L'), settings.workingDistanceMm)],
    apertureR: ['mm', (x) => aperture(x, 'R')],
    apertureL: ['mm', (x) => aperture(x, 'L')],
    headWidth: ['mm', headWidth],
    templeWidth: ['mm', templeWidth],
    irisDiameter: ['mm', (x) => x[P.iris]!],
    distance: ['mm', eyesMm],
    headYaw: ['deg', (x) => radiansToDegrees(x[P.yaw]!)],
    headPitch: ['deg', (x) => radiansToDegrees(x[P.pitch]!)],
    headRoll: ['deg', (x) => radiansToDegrees(x[P.roll]!)],
  };
  const entries = Object.entries(outputs).map(([name, [unit, output]]) => [name, estimateOf(adjustment, unit, output)]);
  const sometimes = {
    ...pupilDiameters(model, adjustment),
    ...bridgeWidths(model, adjustment),
  };
  return { ...(Object.fromEntries(entries) as FaceEstimates), ...sometimes };
}

/** Diameter of each pupil that could be told from its iris: its picture at the depth of the eye. */
function pupilDiameters(
  model: Model,
  adjustment: Adjustment<BudgetSource>,
): Partial<Record<'pupilDiameterR' | 'pupilDiameterL', Estimate>> {
  const cameraAt = cameraByParameters(model);
  const entries = SIDES.flatMap((side) => {
    const pupil = model.features.pupil[side];
    if (pupil === null) return [];
    const depthAt = (x: readonly number[]): number => x[side === 'R' ? P.eyeR + 2 : P.eyeL + 2]!;
    const scaleAt = (x: readonly number[]): number => (2 * depthAt(x)) / cameraAt(x).fx;
    const own: OwnDoubt = { source: 'iris-edges', sensitivity: scaleAt, uncertainty: pupil.radiusUncertaintyPx };
    const estimate = estimateOf(adjustment, 'mm', (x) => scaleAt(x) * pupil.radiusPx, [own]);
    return [[`pupilDiameter${side}`, estimate] as const];
  });
  return Object.fromEntries(entries);
}

/** Widths of the nose below its crest, indicative: as far before the pupils as the mean face has them. */
function bridgeWidths(
  model: Model,
  adjustment: Adjustment<BudgetSource>,
): Partial<Record<'distanceBetweenRims10' | 'distanceBetweenRims15', Estimate>> {
  const cameraAt = cameraByParameters(model);
  const entries = model.features.bridge.map(({ belowCrestMm, R, L, uncertaintyPx }) => {
    const scaleAt = (x: readonly number[]): number =>
      ((x[P.eyeR + 2]! + x[P.eyeL + 2]!) / 2 - BRIDGE_FORWARD_MM) / cameraAt(x).fx;
    const widthMm = (x: readonly number[]): number => (scaleAt(x) * distancePx(R, L)) / Math.cos(x[P.yaw]!);
    const own: readonly OwnDoubt[] = [
      { source: 'head-shape', sensitivity: scaleAt, uncertainty: Math.SQRT2 * uncertaintyPx },
      { source: 'head-shape', sensitivity: widthMm, uncertainty: BRIDGE_SHAPE_SD },
    ];
    return [`distanceBetweenRims${belowCrestMm}`, estimateOf(adjustment, 'mm', widthMm, own)] as const;
  });
  return Object.fromEntries(entries);
}

function adviceOf(features: PictureFeatures, pixelsPerMm: number, turnDeg: number): Advice[] {
  const advice: Advice[] = [];
  const { card, iris } = features;
  if (pixelsPerMm < NEAR_ENOUGH_PIXELS_PER_MM) advice.push({ kind: 'come-nearer', pixelsPerMm });
  const edges = ['top', 'right', 'bottom', 'left'] as const;
  if (card.source === 'edges') {
    edges.forEach((edge, i) => {
      if (card.edgeSupport[i]! < SEEN_SHARE_ADVICE) advice.push({ kind: 'card-covered', edge });
    });
  }
  if (turnDeg > TURN_ADVICE_DEG) advice.push({ kind: 'turn-to-camera', turnDeg });
  const rollDeg = radiansToDegrees(
    Math.atan2(card.corners[1].yPx - card.corners[0].yPx, card.corners[1].xPx - card.corners[0].xPx) -
      Math.atan2(iris.L.centre.yPx - iris.R.centre.yPx, iris.L.centre.xPx - iris.R.centre.xPx),
  );
  if (Math.abs(rollDeg) > SLANT_ADVICE_DEG) advice.push({ kind: 'level-card', rollDeg });
  if (card.position !== 'forehead') advice.push({ kind: 'card-on-forehead' });
  if (iris.R.support < SEEN_SHARE_ADVICE && iris.R.source === 'edges')
    advice.push({ kind: 'check-points', what: 'irisR' });
  if (iris.L.support < SEEN_SHARE_ADVICE && iris.L.source === 'edges')
    advice.push({ kind: 'check-points', what: 'irisL' });
  return advice;
}
