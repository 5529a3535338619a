import type { PictureFeatures } from '../camera/features.js';
import { choosePoseVertices, fitHeadPose } from '../camera/head-pose.js';
import { rayOf, type Camera } from '../camera/pinhole.js';
import { findPlanarPoses, parametersOfPose, poseFromParameters } from '../camera/planar-pose.js';
import { CARD_CORNERS_MM } from '../camera/reference-card.js';
import { adjustBundle, type BundleAdjustment, type BundleStart } from '../fitting/bundle-adjustment.js';
import type { Pose } from '../geometry/pose.js';
import {
  add,
  distancePx,
  dot,
  multiplyVector,
  norm,
  scale,
  subtract,
  transpose,
  type ImagePoint,
  type Vector3,
} from '../geometry/vector.js';
import { fail, succeed, type Result } from '../result.js';
import { median } from '../statistics/robust.js';
import { radiansToDegrees } from '../units/angle.js';
import { SIDES } from '../units/side.js';
import { assumedCamera, matchingProfile, NO_DEVIATION } from './assumed-camera.js';
import { likeliestBreak } from './card-slip.js';
import type { AlwaysEstimated, BudgetSource, Estimate, EstimateUnit, FaceEstimates } from './estimate.js';
import { estimateOf, type OwnDoubt } from './estimate-of.js';
import { NEAR_ENOUGH_PIXELS_PER_MM, type MeasuringSettings } from './face-estimates.js';
import { nearCentrationDistanceMm, ROTATION_TO_PUPIL_MM } from './gaze.js';
import { chooseCardPose, withoutFitBias } from './held-card.js';
import {
  BRIDGE_FORWARD_MM,
  BRIDGE_SHAPE_SD,
  HEAD_RATIO,
  IRIS_MEAN_MM,
  isPlausibleIris,
  TEMPLE_RATIO,
  type FaceKnowledge,
} from './prior-knowledge.js';
import type { FrameFate, MeasureSweep, SweepAdvice, SweepFailure, SweepMeasurement } from './sweep.js';
import {
  cameraOf,
  eyeCentre,
  FIXATION_DEPTH_SD_MM,
  GEOMETRY_RESIDUALS,
  headAnglesInFrame,
  headAxesInCard,
  headInCard,
  pupilInCamera,
  pupilsDistanceMm,
  S,
  SWEEP_STEPS,
  sweepKnowledge,
  type SweepModel,
  type SweepView,
} from './sweep-model.js';

/** Fewer frames say too little of the depth to be called a sweep. Chosen. */
export const FEWEST_FRAMES = 6;
/** From here on more frames, turn or lean hardly help (rendered sweeps). */
const USEFUL_FRAMES = 12;
const USEFUL_RANGE_DEG = 16;
const USEFUL_DISTANCE_RATIO = 1.12;
/**
 * A break in the series of frames is a slip if it explains the scatter so much better than chance (F of 2 and about 30 degrees of freedom is
 * below 9 in 999 of 1000 series), if it lowers the cost of the adjustment by so much, and if the card moved by so much. Chosen: smaller
 * slips do less harm than half the frames do good.
 */
const SLIP_F_RATIO = 15;
const SLIP_COST = 60;
const SLIP_MM = 0.8;
/** A frame whose card and irises miss their place by this many times their uncertainty, root mean square, is left out. Chosen. */
const MISFIT_LIMIT = 4;
/** From this mean cost of a residual on something is wrong with a sweep (rendered sweeps: 0.2 to 0.5; with a slip 1.5). */
const HIGH_COST = 1;
/** A place of fixation this many times its doubt away from the lens means that the eyes looked elsewhere. Chosen: one sweep in 20 is doubted in vain. */
const FIXATION_LIMIT_SD = 1;
const ROUND_LIMIT = 30;

/** Makes the function that measures sweeps, with what is known of faces from outside. */
export function createMeasureSweep(known: FaceKnowledge): MeasureSweep {
  const vertices = choosePoseVertices(known.canonicalFace);
  return (frames, settings, onProgress) => measureSweep(frames, settings, onProgress, known, vertices);
}

interface Sweep {
  readonly frames: readonly PictureFeatures[];
  readonly views: readonly (SweepView | null)[];
  readonly model: Omit<SweepModel, 'views'>;
  readonly startCamera: Camera;
}

interface Fitted {
  /** places, among the frames given, of those that were adjusted */
  readonly places: readonly number[];
  readonly model: SweepModel;
  readonly adjustment: BundleAdjustment<BudgetSource>;
}

/**
 * All estimates of one sweep with their budgets. The card does not move against the face, and both eyes look at the same point in every
 * frame: so the frames together show how far the eyes' centres of rotation lie behind the card, which no single picture does, and what the
 * camera's focal length is.
 */
function measureSweep(
  frames: readonly PictureFeatures[],
  settings: MeasuringSettings,
  onProgress: (share: number) => void,
  known: FaceKnowledge,
  vertices: readonly number[],
): Result<SweepMeasurement, SweepFailure> {
  const first = frames[0];
  if (first === undefined) return fail({ kind: 'too-few-frames', usable: 0, needed: FEWEST_FRAMES });
  if (frames.some(({ widthPx, heightPx }) => widthPx !== first.widthPx || heightPx !== first.heightPx)) {
    return fail({ kind: 'frames-of-different-size' });
  }
  const profile = matchingProfile(settings.profile, first);
  const startCamera = assumedCamera(first, profile, NO_DEVIATION);
  const holding = commonest(frames.map(holdingOf));
  const views = frames.map((features, i) => {
    const view = holdingOf(features) === holding ? viewOf(features, startCamera, known, vertices) : null;
    onProgress((0.4 * (i + 1)) / frames.length);
    return view;
  });
  const sweep: Sweep = { frames, views, model: { settings, profile, known, isGazeDoubted: false }, startCamera };
  const usable = places(views).length;
  if (usable < FEWEST_FRAMES) return fail({ kind: 'too-few-frames', usable, needed: FEWEST_FRAMES });

  let rounds = 0;
  const progress = (): void => {
    rounds += 1;
    onProgress(0.4 + 0.6 * (1 - Math.exp(-rounds / 40)));
  };
  const whole = fit(sweep, places(views), null, progress);
  if (whole === null) return fail({ kind: 'too-few-frames', usable, needed: FEWEST_FRAMES });
  let stretches = withoutSlips(sweep, whole, SLIP_F_RATIO, progress);
  let longest = longestOf(stretches);
  let fitting = withoutMisfits(sweep, longest, progress);
  if (costOfResidual(fitting) > HIGH_COST) {
    // A second slip is scatter to the first, so neither stands out; what the frames cost together is then the sign.
    stretches = withoutSlips(sweep, fitting, 0, progress);
    longest = longestOf(stretches);
    fitting = withoutMisfits(sweep, longest, progress);
  }
  if (fitting.places.length < FEWEST_FRAMES) {
    return fail({ kind: 'card-not-still', longestRun: longest.places.length, needed: FEWEST_FRAMES });
  }
  const isGazeDoubted = settings.gaze === 'camera' && looksElsewhere(fitting);
  const doubting: Sweep = { ...sweep, model: { ...sweep.model, isGazeDoubted: true } };
  const fitted = isGazeDoubted ? (fit(doubting, fitting.places, fitting, progress) ?? fitting) : fitting;
  const fates = frames.map((_, i): FrameFate => {
    if (fitted.places.includes(i)) return 'used';
    return longest.places.includes(i) || views[i] === null ? 'misfit' : 'slipped';
  });
  onProgress(1);
  return measurementOf(sweep, fitted, fates, stretches.length > 1 ? stretches[1]!.places[0]! : null);
}

function places(views: readonly (SweepView | null)[]): number[] {
  return views.flatMap((view, i) => (view === null ? [] : [i]));
}

/** Which card a frame shows, and where it is held: frames of one sweep agree in both, or one of them was misread. */
function holdingOf({ card }: PictureFeatures): string {
  return `${card.position} ${card.source === 'markers' ? 'printed' : 'bought'}`;
}

function commonest(words: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const word of words) counts.set(word, (counts.get(word) ?? 0) + 1);
  return [...counts].reduce((best, each) => (each[1] > best[1] ? each : best))[0];
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
  const head = withoutFitBias(angles, card.position);
  return { features, head, pose: chooseCardPose(poses.value, head).pose };
}

/** Adjusts these frames; from the outcome of an earlier adjustment where there is one. */
function fit(sweep: Sweep, chosen: readonly number[], earlier: Fitted | null, onRound: () => void): Fitted | null {
  const model: SweepModel = { ...sweep.model, views: chosen.map((i) => sweep.views[i]!) };
  const start =
    earlier === null
      ? startOf(model, sweep.startCamera)
      : {
          shared: earlier.adjustment.shared,
          frames: chosen.map((i) => earlier.adjustment.frames[earlier.places.indexOf(i)]!),
        };
  const outcome = adjustBundle(sweepKnowledge(model), start, SWEEP_STEPS, ROUND_LIMIT, onRound);
  return outcome.ok ? { places: chosen, model, adjustment: outcome.value } : null;
}

/** The stretches of frames between slips of the card, in their order, each adjusted for itself. */
function withoutSlips(sweep: Sweep, whole: Fitted, leastFRatio: number, onRound: () => void): readonly Fitted[] {
  const found = likeliestBreak(eyesBesideCard(whole));
  if (found === null || found.fRatio < leastFRatio || found.stepMm < SLIP_MM) return [whole];
  const before = fit(sweep, whole.places.slice(0, found.at), whole, onRound);
  const after = fit(sweep, whole.places.slice(found.at), whole, onRound);
  if (before === null || after === null) return [whole];
  if (whole.adjustment.cost - before.adjustment.cost - after.adjustment.cost < SLIP_COST) return [whole];
  return [...withoutSlips(sweep, before, leastFRatio, onRound), ...withoutSlips(sweep, after, leastFRatio, onRound)];
}

/** Mean cost of a residual: below one where frames fit one another as well as their uncertainties say. */
function costOfResidual({ adjustment }: Fitted): number {
  const residuals = adjustment.frameResiduals.reduce((sum, each) => sum + each.length, 0);
  return adjustment.cost / residuals;
}

/** Whether card and eyes move as if the eyes had looked much nearer or farther than the camera. */
function looksElsewhere({ adjustment }: Fitted): boolean {
  return Math.abs(adjustment.shared[S.fixationZ]!) > FIXATION_LIMIT_SD * FIXATION_DEPTH_SD_MM;
}

function longestOf(stretches: readonly Fitted[]): Fitted {
  return stretches.reduce((best, each) => (each.places.length > best.places.length ? each : best));
}

/** Where each frame by itself shows the eyes beside the card, with the camera and the depth of all frames together. */
function eyesBesideCard({ model, adjustment }: Fitted) {
  const camera = cameraOf(model, adjustment.shared);
  const inCard = headAxesInCard(adjustment.shared);
  const depthMm = (eyeCentre(adjustment.shared, 'R')[2] + eyeCentre(adjustment.shared, 'L')[2]) / 2;
  return model.views.map(({ features }, i) => {
    const common = poseFromParameters(adjustment.frames[i]!);
    // The card alone, from where it is in the common adjustment: its place there already gives way to the eyes.
    const alone = findPlanarPoses(camera, CARD_CORNERS_MM, features.card.corners);
    const pose = alone.ok
      ? nearestPose(
          alone.value.map((each) => each.pose),
          common,
        )
      : common;
    const right = crossing(camera, pose, features.iris.R.centre, depthMm);
    const left = crossing(camera, pose, features.iris.L.centre, depthMm);
    const { yawRad, pitchRad } = headAnglesInFrame(common, inCard);
    return { xMm: (right[0] + left[0]) / 2, yMm: (right[1] + left[1]) / 2, yawRad, pitchRad };
  });
}

function nearestPose(poses: readonly Pose[], common: Pose): Pose {
  const normalOf = (pose: Pose): Vector3 => transpose(pose.rotation)[2];
  return poses.reduce((best, each) =>
    dot(normalOf(each), normalOf(common)) > dot(normalOf(best), normalOf(common)) ? each : best,
  );
}

/** Where the ray of a point of the picture crosses the plane so far behind the card, in the card's frame. */
function crossing(camera: Camera, pose: Pose, point: ImagePoint, depthMm: number): Vector3 {
  const ray = rayOf(camera, point);
  const back = transpose(pose.rotation);
  const origin = scale(multiplyVector(back, pose.translationMm), -1);
  const direction = multiplyVector(back, [ray.x, ray.y, 1]);
  return add(origin, scale(direction, (depthMm - origin[2]) / direction[2]));
}

/** The same without the frames that do not fit the others. */
function withoutMisfits(sweep: Sweep, fitted: Fitted, onRound: () => void): Fitted {
  const { places: chosen, adjustment } = fitted;
  const fitting = chosen.filter((_, i) => {
    const geometry = adjustment.frameResiduals[i]!.slice(0, GEOMETRY_RESIDUALS);
    const square = geometry.reduce((sum, r) => sum + r * r, 0) / geometry.length;
    return square < MISFIT_LIMIT ** 2;
  });
  if (fitting.length === chosen.length || fitting.length < FEWEST_FRAMES) return fitted;
  return fit(sweep, fitting, fitted, onRound) ?? fitted;
}

function startOf({ views, known }: SweepModel, camera: Camera): BundleStart {
  const behindMm = known.contactDepth.regions[views[0]!.features.card.position].meanMm + ROTATION_TO_PUPIL_MM;
  const middle = (points: readonly Vector3[]): Vector3 => [
    median(points.map((p) => p[0])),
    median(points.map((p) => p[1])),
    median(points.map((p) => p[2])),
  ];
  const eyeR = middle(views.map(({ pose, features }) => crossing(camera, pose, features.iris.R.centre, behindMm)));
  const eyeL = middle(views.map(({ pose, features }) => crossing(camera, pose, features.iris.L.centre, behindMm)));
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
  return { shared, frames: views.map(({ pose }) => parametersOfPose(pose)) };
}

function measurementOf(
  { frames }: Sweep,
  fitted: Fitted,
  fates: readonly FrameFate[],
  slippedFromFrame: number | null,
): Result<SweepMeasurement, SweepFailure> {
  const { model, adjustment, places: chosen } = fitted;
  const estimates = estimatesOf(fitted);
  const irisMm = estimates.irisDiameter.value;
  if (!isPlausibleIris(irisMm)) return fail({ kind: 'implausible', irisMm });
  const inCard = headAxesInCard(adjustment.shared);
  const poseAt = (i: number): Pose | null => {
    const place = chosen.indexOf(i);
    return place < 0 ? null : poseFromParameters(adjustment.frames[place]!);
  };
  const poses = frames.map((_, i) => poseAt(i));
  const yawsDeg = poses.map((pose) => pose && radiansToDegrees(headAnglesInFrame(pose, inCard).yawRad));
  const distancesMm = poses.map((pose) => pose && pupilsDistanceMm(pose, adjustment.shared, model.settings.gaze));
  const known = distancesMm.filter((value) => value !== null);
  const focalPx = cameraOf(model, adjustment.shared).fx;
  const pixelsPerMm = median(known.map((value) => focalPx / value));
  const turned = yawsDeg.filter((value) => value !== null);
  const rangeDeg = Math.max(...turned) - Math.min(...turned);
  const ratio = Math.max(...known) / Math.min(...known);
  const advice: SweepAdvice[] = [];
  if (slippedFromFrame !== null) advice.push({ kind: 'card-slipped', fromFrame: slippedFromFrame });
  if (rangeDeg < USEFUL_RANGE_DEG) advice.push({ kind: 'turn-further', rangeDeg, usefulDeg: USEFUL_RANGE_DEG });
  if (model.profile === null && ratio < USEFUL_DISTANCE_RATIO) {
    advice.push({ kind: 'lean-more', ratio, usefulRatio: USEFUL_DISTANCE_RATIO });
  }
  if (chosen.length < USEFUL_FRAMES) advice.push({ kind: 'more-frames', used: chosen.length, useful: USEFUL_FRAMES });
  if (model.isGazeDoubted) advice.push({ kind: 'eyes-elsewhere' });
  if (pixelsPerMm < NEAR_ENOUGH_PIXELS_PER_MM) advice.push({ kind: 'come-nearer', pixelsPerMm });
  return succeed({
    estimates,
    pixelsPerMm,
    advice,
    fates,
    framesUsed: chosen.length,
    slippedFromFrame,
    yawsDeg,
    distancesMm,
  });
}

/**
 * The adjustment with its doubts widened where the frames fit one another worse than their uncertainties say: by the root of the mean cost of
 * a residual (Birge 1932), as a source of its own.
 */
function widened(fitted: Fitted): BundleAdjustment<BudgetSource> {
  const { adjustment } = fitted;
  const excess = costOfResidual(fitted) - 1;
  if (excess <= 0) return adjustment;
  return {
    ...adjustment,
    propagate: (output) => {
      const { value, standardUncertainty, bySource } = adjustment.propagate(output);
      const between = Math.sqrt(excess) * standardUncertainty;
      return {
        value,
        standardUncertainty: Math.hypot(standardUncertainty, between),
        bySource: new Map([...bySource, ['between-frames', between]]),
      };
    },
  };
}

/** What was seen in single frames (distance, angles, the PD as shown) is said of the middle one of the frames used. */
function estimatesOf(fitted: Fitted): FaceEstimates {
  const { model } = fitted;
  const adjustment = widened(fitted);
  const { settings } = model;
  const apart = (s: readonly number[]): Vector3 => subtract(eyeCentre(s, 'L'), eyeCentre(s, 'R'));
  // Eyes that turn about their centres of rotation alike: the pupils at straight gaze stand as far apart as these.
  const pdFar = (s: readonly number[]): number => norm(apart(s)) + s[S.irisBiasL]! - s[S.irisBiasR]!;
  const mono = (s: readonly number[], side: 'R' | 'L'): number => {
    const half = dot(apart(s), headAxesInCard(s).left) / 2;
    const across = s[S.bridgeAcross]! + s[S.midlineBias]!;
    return side === 'R' ? half + across - s[S.irisBiasR]! : half - across + s[S.irisBiasL]!;
  };
  const pose = poseFromParameters(adjustment.frames[Math.floor(adjustment.frames.length / 2)]!);
  const pupils = (s: readonly number[]) => ({
    R: pupilInCamera(pose, s, 'R', settings.gaze),
    L: pupilInCamera(pose, s, 'L', settings.gaze),
  });
  const angles = (s: readonly number[]) => headAnglesInFrame(pose, headAxesInCard(s));
  const outputs: Readonly<Record<AlwaysEstimated, readonly [EstimateUnit, (s: readonly number[]) => number]>> = {
    pdFar: ['mm', pdFar],
    pdShown: ['mm', (s) => norm(subtract(pupils(s).L, pupils(s).R)) + s[S.irisBiasL]! - s[S.irisBiasR]!],
    pdNear: ['mm', (s) => nearCentrationDistanceMm(pdFar(s), settings.workingDistanceMm)],
    monoPdR: ['mm', (s) => mono(s, 'R')],
    monoPdL: ['mm', (s) => mono(s, 'L')],
    monoNearR: ['mm', (s) => nearCentrationDistanceMm(mono(s, 'R'), settings.workingDistanceMm)],
    monoNearL: ['mm', (s) => nearCentrationDistanceMm(mono(s, 'L'), settings.workingDistanceMm)],
    apertureR: ['mm', (s) => s[S.apertureR]! + s[S.lidBiasR]!],
    apertureL: ['mm', (s) => s[S.apertureL]! + s[S.lidBiasL]!],
    headWidth: ['mm', (s) => s[S.headRatio]! * s[S.headSpan]!],
    templeWidth: ['mm', (s) => s[S.templeRatio]! * s[S.templeSpan]!],
    irisDiameter: ['mm', (s) => s[S.iris]! * (1 + s[S.irisGrowth]!)],
    distance: ['mm', (s) => pupilsDistanceMm(pose, s, settings.gaze)],
    headYaw: ['deg', (s) => radiansToDegrees(angles(s).yawRad)],
    headPitch: ['deg', (s) => radiansToDegrees(angles(s).pitchRad)],
    headRoll: ['deg', (s) => radiansToDegrees(angles(s).rollRad)],
  };
  const entries = Object.entries(outputs).map(([name, [unit, output]]) => [name, estimateOf(adjustment, unit, output)]);
  return {
    ...(Object.fromEntries(entries) as FaceEstimates),
    ...pupilDiameters(model, adjustment),
    ...bridgeWidths(model, adjustment),
  };
}

/** Pupils against their irises, over the frames that show them: what differs from frame to frame is light, and noise. */
function pupilDiameters(
  model: SweepModel,
  adjustment: BundleAdjustment<BudgetSource>,
): Partial<Record<'pupilDiameterR' | 'pupilDiameterL', Estimate>> {
  const entries = SIDES.flatMap((side) => {
    const shares = model.views.flatMap(({ features: { pupil, iris } }) => {
      const seen = pupil[side];
      return seen === null
        ? []
        : [{ share: seen.radiusPx / iris[side].radiusPx, doubt: seen.radiusUncertaintyPx / iris[side].radiusPx }];
    });
    if (shares.length === 0) return [];
    const share = median(shares.map((each) => each.share));
    // What the fit of an edge gets wrong it mostly gets wrong in all frames.
    const own: OwnDoubt = {
      source: 'iris-edges',
      sensitivity: (s) => s[S.iris]!,
      uncertainty: median(shares.map((each) => each.doubt)),
    };
    const estimate = estimateOf(adjustment, 'mm', (s) => share * s[S.iris]! * (1 + s[S.irisGrowth]!), [own]);
    return [[`pupilDiameter${side}`, estimate] as const];
  });
  return Object.fromEntries(entries);
}

/** Widths of the nose below its crest, indicative: the middle one of the frames, as far before the pupils as the mean face has them. */
function bridgeWidths(
  model: SweepModel,
  adjustment: BundleAdjustment<BudgetSource>,
): Partial<Record<'distanceBetweenRims10' | 'distanceBetweenRims15', Estimate>> {
  const { views, settings } = model;
  const entries = ([10, 15] as const).flatMap((level) => {
    const seen = views.flatMap(({ features }, i) => {
      const flanks = features.bridge.find(({ belowCrestMm }) => belowCrestMm === level);
      return flanks === undefined ? [] : [{ flanks, pose: poseFromParameters(adjustment.frames[i]!) }];
    });
    if (seen.length === 0) return [];
    const scales = (s: readonly number[]): number[] =>
      seen.map(({ pose }) => {
        const eyesMm = pupilsDistanceMm(pose, s, settings.gaze);
        const { yawRad } = headAnglesInFrame(pose, headAxesInCard(s));
        return (eyesMm - BRIDGE_FORWARD_MM) / cameraOf(model, s).fx / Math.cos(yawRad);
      });
    const widthMm = (s: readonly number[]): number =>
      median(scales(s).map((scaleMm, k) => scaleMm * distancePx(seen[k]!.flanks.R, seen[k]!.flanks.L)));
    const doubtPx = median(seen.map(({ flanks }) => Math.SQRT2 * flanks.uncertaintyPx));
    const own: readonly OwnDoubt[] = [
      { source: 'head-shape', sensitivity: (s) => median(scales(s)), uncertainty: doubtPx },
      { source: 'head-shape', sensitivity: widthMm, uncertainty: BRIDGE_SHAPE_SD },
    ];
    return [[`distanceBetweenRims${level}`, estimateOf(adjustment, 'mm', widthMm, own)] as const];
  });
  return Object.fromEntries(entries);
}
