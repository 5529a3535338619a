import { fitHeadPose, choosePoseVertices, type HeadAngles } from '../camera/head-pose.js';
import type { PictureFeatures } from '../camera/features.js';
import { rayOf, type Camera } from '../camera/pinhole.js';
import { findPlanarPoses, parametersOfPose, poseFromParameters } from '../camera/planar-pose.js';
import { CARD_CORNERS_MM } from '../camera/reference-card.js';
import { adjustBundle, type BundleAdjustment } from '../fitting/bundle-adjustment.js';
import type { Pose } from '../geometry/pose.js';
import { dot, multiplyVector, norm, scale, subtract, transpose, type Vector3 } from '../geometry/vector.js';
import { fail, succeed, type Result } from '../result.js';
import { median } from '../statistics/robust.js';
import { radiansToDegrees } from '../units/angle.js';
import { assumedCamera, matchingProfile } from './assumed-camera.js';
import type { AlwaysEstimated, BudgetSource, EstimateUnit, FaceEstimates } from './estimate.js';
import type { MeasuringSettings } from './face-estimates.js';
import { nearCentrationDistanceMm, ROTATION_TO_PUPIL_MM } from './gaze.js';
import { chooseCardPose, estimateOf } from './measure-face.js';
import { HEAD_RATIO, IRIS_MEAN_MM, PITCH_BIAS, TEMPLE_RATIO, YAW_GAIN, type FaceKnowledge } from './prior-knowledge.js';
import type { MeasureSweep, SweepFailure, SweepMeasurement } from './sweep.js';
import {
  cameraOf,
  eyeCentre,
  headAnglesInFrame,
  headAxesInCard,
  headInCard,
  pupilInCamera,
  S,
  SWEEP_STEPS,
  sweepKnowledge,
  type SweepModel,
  type SweepView,
} from './sweep-model.js';

export function createMeasureSweep(known: FaceKnowledge): MeasureSweep {
  const vertices = choosePoseVertices(known.canonicalFace);
  return (frames, settings, onProgress) => measureSweep(frames, settings, onProgress, known, vertices);
}

function measureSweep(
  frames: readonly PictureFeatures[],
  settings: MeasuringSettings,
  onProgress: (share: number) => void,
  known: FaceKnowledge,
  vertices: readonly number[],
): Result<SweepMeasurement, SweepFailure> {
  const first = frames[0]!;
  const profile = matchingProfile(settings.profile, first);
  const startCamera = assumedCamera(first, profile, { logFocal: 0, k1: 0, cxPx: 0, cyPx: 0 });
  const views: SweepView[] = [];
  for (const features of frames) {
    const view = viewOf(features, startCamera, known, vertices);
    if (view !== null) views.push(view);
  }
  const model: SweepModel = { views, settings, profile, known };
  const start = startOf(model, startCamera);
  const outcome = adjustBundle(sweepKnowledge(model), start, SWEEP_STEPS, 40, (n) => onProgress(n / 40));
  if (!outcome.ok) return fail({ kind: 'too-few-frames', usable: views.length, needed: 6 });
  const estimates = estimatesOf(model, outcome.value);
  return succeed({ estimates, outcome: outcome.value, views } as unknown as SweepMeasurement);
}

function viewOf(
  features: PictureFeatures,
  camera: Camera,
  known: FaceKnowledge,
  vertices: readonly number[],
): SweepView | null {
  const { card } = features;
  const angles = fitHeadPose(camera, known.canonicalFace, features.landmarks, card.corners, vertices);
  const poses = findPlanarPoses(camera, CARD_CORNERS_MM, card.corners);
  if (angles === null || !poses.ok) return null;
  const head: HeadAngles = {
    rollRad: angles.rollRad,
    yawRad: YAW_GAIN * angles.yawRad,
    pitchRad: angles.pitchRad - PITCH_BIAS[card.position],
  };
  return { features, head, pose: chooseCardPose(poses.value, head).pose };
}

function startOf({ views, settings, known }: SweepModel, camera: Camera) {
  const behindMm = known.contactDepth.regions[views[0]!.features.card.position].meanMm;
  const inCard = (pose: Pose, point: { xPx: number; yPx: number }): Vector3 => {
    const ray = rayOf(camera, point);
    const back = transpose(pose.rotation);
    const origin = scale(multiplyVector(back, pose.translationMm), -1);
    const direction = multiplyVector(back, [ray.x, ray.y, 1]);
    const along = (behindMm + ROTATION_TO_PUPIL_MM - origin[2]) / direction[2];
    return [origin[0] + along * direction[0], origin[1] + along * direction[1], origin[2] + along * direction[2]];
  };
  const middle = (points: readonly Vector3[]): Vector3 => [
    median(points.map((p) => p[0])),
    median(points.map((p) => p[1])),
    median(points.map((p) => p[2])),
  ];
  const eyeR = middle(views.map(({ pose, features }) => inCard(pose, features.iris.R.centre)));
  const eyeL = middle(views.map(({ pose, features }) => inCard(pose, features.iris.L.centre)));
  const heads = views.map(({ pose, head }) => headInCard(pose, head));
  const shared = new Array<number>(SWEEP_STEPS.shared.length).fill(0);
  shared[S.cardSize] = 1;
  shared.splice(S.eyeR, 6, ...eyeR, ...eyeL);
  shared[S.yaw] = median(heads.map((each) => each.yawRad));
  shared[S.pitch] = median(heads.map((each) => each.pitchRad));
  shared[S.roll] = median(heads.map((each) => each.rollRad));
  shared[S.iris] = IRIS_MEAN_MM;
  shared[S.apertureR] = 10;
  shared[S.apertureL] = 10;
  shared[S.headSpan] = 140;
  shared[S.templeSpan] = 130;
  shared[S.headRatio] = HEAD_RATIO;
  shared[S.templeRatio] = TEMPLE_RATIO;
  shared[S.rotation] = ROTATION_TO_PUPIL_MM;
  void settings;
  return { shared, frames: views.map(({ pose }) => parametersOfPose(pose)) };
}

function estimatesOf(model: SweepModel, adjustment: BundleAdjustment<BudgetSource>): FaceEstimates {
  const { settings } = model;
  const axesAcross = (s: readonly number[]) => headAxesInCard(s).left;
  const pdFar = (s: readonly number[]): number =>
    norm(subtract(eyeCentre(s, 'L'), eyeCentre(s, 'R'))) + s[S.irisBiasL]! - s[S.irisBiasR]!;
  const mono = (s: readonly number[], side: 'R' | 'L'): number => {
    const left = axesAcross(s);
    const half = dot(subtract(eyeCentre(s, 'L'), eyeCentre(s, 'R')), left) / 2;
    const across = s[S.bridgeAcross]! + s[S.midlineBias]!;
    return side === 'R' ? half + across - s[S.irisBiasR]! : half - across + s[S.irisBiasL]!;
  };
  const middle = adjustment.frames[Math.floor(adjustment.frames.length / 2)]!;
  const pose = poseFromParameters(middle);
  const pupils = (s: readonly number[]) => ({
    R: pupilInCamera(pose, s, 'R', settings.gaze),
    L: pupilInCamera(pose, s, 'L', settings.gaze),
  });
  const angles = (s: readonly number[]) => headAnglesInFrame(pose, headAxesInCard(s));
  void cameraOf;
  const outputs: Readonly<Record<AlwaysEstimated, readonly [EstimateUnit, (s: readonly number[]) => number]>> = {
    pdFar: ['mm', pdFar],
    pdShown: ['mm', (s) => norm(subtract(pupils(s).L, pupils(s).R))],
    pdNear: ['mm', (s) => nearCentrationDistanceMm(pdFar(s), settings.workingDistanceMm)],
    monoPdR: ['mm', (s) => mono(s, 'R')],
    monoPdL: ['mm', (s) => mono(s, 'L')],
    apertureR: ['mm', (s) => s[S.apertureR]! + s[S.lidBiasR]!],
    apertureL: ['mm', (s) => s[S.apertureL]! + s[S.lidBiasL]!],
    headWidth: ['mm', (s) => s[S.headRatio]! * s[S.headSpan]!],
    templeWidth: ['mm', (s) => s[S.templeRatio]! * s[S.templeSpan]!],
    irisDiameter: ['mm', (s) => s[S.iris]!],
    distance: ['mm', (s) => (pupils(s).R[2] + pupils(s).L[2]) / 2],
    headYaw: ['deg', (s) => radiansToDegrees(angles(s).yawRad)],
    headPitch: ['deg', (s) => radiansToDegrees(angles(s).pitchRad)],
    headRoll: ['deg', (s) => radiansToDegrees(angles(s).rollRad)],
  };
  const entries = Object.entries(outputs).map(([name, [unit, output]]) => [name, estimateOf(adjustment, unit, output)]);
  return Object.fromEntries(entries) as FaceEstimates;
}
