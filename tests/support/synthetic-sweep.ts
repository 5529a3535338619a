import contactDepth from '../../calibration/contact-depth.json' with { type: 'json' };
import type { FourCorners, IrisObservation, LidObservation, PictureFeatures } from '../../src/core/camera/features.js';
import type { ImagePoint, Vector3 } from '../../src/core/geometry/vector.js';
import type { BothSides, Side } from '../../src/core/units/side.js';
import type { SeededRandom } from './seeded-random.js';
import {
  axesOfSyntheticHead,
  cardCornersOfScene,
  chainScene,
  featuresOfScene,
  LANDMARK_PITCH_BIAS_RAD,
  LANDMARK_YAW_GAIN,
  perfectSeeing,
  photograph,
  pupilsOfScene,
  type SyntheticScene,
} from './synthetic-face.js';

const DEGREE = Math.PI / 180;

/** How a head stands in one frame. */
export interface SweepStance {
  /** midway between the pupils as they stand at straight gaze, in the camera frame: a point of the head */
  readonly eyesMm: Vector3;
  readonly yawRad: number;
  readonly pitchRad: number;
  readonly rollRad: number;
}

/** What is seen wrongly: in each frame anew (standard uncertainties), and in all frames alike. */
export interface SweepSeeing {
  readonly cornerPx: number;
  /** across and down, as share of the iris radius */
  readonly irisShare: number;
  readonly irisRadiusShare: number;
  readonly lidPx: number;
  readonly midlinePx: number;
  readonly outlinePx: number;
  /** scatter of the landmarks' angles from frame to frame */
  readonly angleScatterRad: { readonly yaw: number; readonly pitch: number; readonly roll: number };
  /** by how much the landmarks' angles err in all frames, beside what they always do */
  readonly angleBiasRad: { readonly yaw: number; readonly pitch: number; readonly roll: number };
  /** how far to the wearer's left the iris edges are found, and by how much of its size an iris is found too large, in all frames */
  readonly irisBiasMm: BothSides<number>;
  readonly irisGrowth: number;
  readonly lidBiasMm: BothSides<number>;
  readonly midlineBiasMm: number;
  /** a deviation for each call, in standard uncertainties; 0 for perfect seeing */
  readonly deviate: () => number;
}

/** A head that turns and leans before a camera, with a card that does not move against it and eyes that look at one point. */
export interface SyntheticSweep {
  /** head, eyes, card and camera; how it stands and what it fixates is not used */
  readonly head: SyntheticScene;
  readonly stances: readonly SweepStance[];
  /** what both eyes look at, in the camera frame; the origin is the camera's centre of projection */
  readonly lookAtMm: Vector3;
  readonly seeing: SweepSeeing;
  /** from this frame on the card sits elsewhere, by so much in the head's axes (to the wearer's left, up, forward) */
  readonly slip: { readonly fromFrame: number; readonly shiftMm: Vector3 } | null;
  /** frames with the lids half shut, which pull the edges of the irises down */
  readonly blinkFrames: readonly number[];
  /** frames in which the eyes look at something else */
  readonly elsewhere: readonly { readonly frame: number; readonly lookAtMm: Vector3 }[];
}

/** How far a blink pulls the iris edges down, what it leaves of the aperture, and of the radius that is found. */
const BLINK_DOWN_MM = 2;
const BLINK_APERTURE = 0.3;
const BLINK_RADIUS = 0.85;

const plus = (a: Vector3, b: Vector3): Vector3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (a: Vector3, k: number): Vector3 => [a[0] * k, a[1] * k, a[2] * k];
const minus = (a: Vector3, b: Vector3): Vector3 => plus(a, times(b, -1));

/** The scene of one frame with the eyes straight in the head: everything in it but the pupils is as the frame shows it. */
function straightScene({ head, stances, slip }: SyntheticSweep, frame: number): SyntheticScene {
  const slipped = slip !== null && frame >= slip.fromFrame;
  const backMm = slipped ? plus(head.card.backMm, slip.shiftMm) : head.card.backMm;
  return { ...head, ...stances[frame]!, fixationMm: Infinity, card: { ...head.card, backMm } };
}

/** Centres of rotation of the eyes in the camera frame: behind the pupils at straight gaze. */
export function rotationCentresOfFrame(sweep: SyntheticSweep, frame: number): BothSides<Vector3> {
  const scene = straightScene(sweep, frame);
  const { z } = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
  const behind = times(z, -scene.rotationToPupilMm);
  const { R, L } = pupilsOfScene(scene);
  return { R: plus(R, behind), L: plus(L, behind) };
}

/** Pupils in the camera frame: each before its centre of rotation, towards what the eyes look at. */
export function pupilsOfFrame(sweep: SyntheticSweep, frame: number): BothSides<Vector3> {
  const target = sweep.elsewhere.find((each) => each.frame === frame)?.lookAtMm ?? sweep.lookAtMm;
  const centres = rotationCentresOfFrame(sweep, frame);
  const swing = (centre: Vector3): Vector3 => {
    const sight = minus(target, centre);
    return plus(centre, times(sight, sweep.head.rotationToPupilMm / Math.hypot(...sight)));
  };
  return { R: swing(centres.R), L: swing(centres.L) };
}

/** Corners of the card's front in the camera frame, from the top left clockwise as seen. */
export function cardCornersOfFrame(sweep: SyntheticSweep, frame: number): FourCorners<Vector3> {
  return cardCornersOfScene(straightScene(sweep, frame));
}

/** What is found in one frame. */
export function featuresOfFrame(sweep: SyntheticSweep, frame: number): PictureFeatures {
  const { seeing } = sweep;
  const scene = straightScene(sweep, frame);
  const { camera } = scene;
  const { angleScatterRad: scatter, angleBiasRad: bias } = seeing;
  const angles = {
    yaw: scene.yawRad + bias.yaw + scatter.yaw * seeing.deviate(),
    pitch: scene.pitchRad + bias.pitch + scatter.pitch * seeing.deviate(),
    roll: scene.rollRad + bias.roll + scatter.roll * seeing.deviate(),
  };
  const straight = featuresOfScene(
    { ...scene, bridgeLeftMm: scene.bridgeLeftMm + seeing.midlineBiasMm },
    {
      ...seeing,
      landmarkYawRad: LANDMARK_YAW_GAIN * angles.yaw,
      landmarkPitchRad: angles.pitch + LANDMARK_PITCH_BIAS_RAD[scene.card.position],
      landmarkRollRad: angles.roll,
      landmarkGapMm: 0,
    },
  );
  const { x: left, y: up } = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
  const [before, after] = [pupilsOfScene(scene), pupilsOfFrame(sweep, frame)];
  const blinks = sweep.blinkFrames.includes(frame);
  // Whatever is seen of an eye moves with its pupil.
  const moved = (side: Side, point: ImagePoint, aside: Vector3): ImagePoint => {
    const [from, to] = [photograph(camera, before[side]), photograph(camera, plus(after[side], aside))];
    return { xPx: point.xPx + to.xPx - from.xPx, yPx: point.yPx + to.yPx - from.yPx };
  };
  const nearer = (side: Side): number => before[side][2] / after[side][2];
  const irisOf = (side: Side): IrisObservation => {
    const iris = straight.iris[side];
    const aside = plus(times(left, seeing.irisBiasMm[side]), times(up, blinks ? -BLINK_DOWN_MM : 0));
    const radiusPx = iris.radiusPx * nearer(side) * (1 + seeing.irisGrowth) * (blinks ? BLINK_RADIUS : 1);
    return { ...iris, centre: { ...iris.centre, ...moved(side, iris.centre, aside) }, radiusPx };
  };
  const lidsOf = (side: Side): LidObservation => {
    const { upper, lower, ...rest } = straight.lids[side];
    const { upper: above, lower: below } = scene.lidsMm[side];
    const openMm = (above + below) * (blinks ? BLINK_APERTURE : 1) + seeing.lidBiasMm[side];
    const lowered = openMm - (above + below);
    return { ...rest, upper: moved(side, upper, times(up, lowered)), lower: moved(side, lower, [0, 0, 0]) };
  };
  return {
    ...straight,
    iris: { R: irisOf('R'), L: irisOf('L') },
    lids: { R: lidsOf('R'), L: lidsOf('L') },
  };
}

/** What is found in all frames, in their order. */
export function framesOfSweep(sweep: SyntheticSweep): PictureFeatures[] {
  return sweep.stances.map((_, frame) => featuresOfFrame(sweep, frame));
}

/** No deviation at all; the uncertainties that are told stay those of good pictures. */
function perfectSweepSeeing(): SweepSeeing {
  const { cornerPx, irisShare, irisRadiusShare, lidPx, midlinePx, outlinePx } = perfectSeeing(chainScene());
  return {
    ...{ cornerPx, irisShare, irisRadiusShare, lidPx, midlinePx, outlinePx },
    angleScatterRad: { yaw: 0, pitch: 0, roll: 0 },
    angleBiasRad: { yaw: 0, pitch: 0, roll: 0 },
    irisBiasMm: { R: 0, L: 0 },
    irisGrowth: 0,
    lidBiasMm: { R: 0, L: 0 },
    midlineBiasMm: 0,
    deviate: () => 0,
  };
}

/** How far a course goes to both sides of its middle. */
export interface CourseRange {
  readonly yawRad: number;
  readonly pitchRad: number;
  readonly rollRad: number;
  readonly distanceMm: number;
  readonly asideMm: number;
}

/** Turning to both sides by 13 degrees while nodding a little and leaning in and out by a tenth. */
export const WIDE_COURSE: CourseRange = {
  yawRad: 13 * DEGREE,
  pitchRad: 6 * DEGREE,
  rollRad: 3 * DEGREE,
  distanceMm: 45,
  asideMm: 15,
};

/** A course of so many frames through all of the range; turning and leaning go at different paces. */
export function courseOf(
  count: number,
  range: CourseRange = WIDE_COURSE,
  middleMm: Vector3 = [4, -6, 450],
): SweepStance[] {
  return Array.from({ length: count }, (_, i) => {
    const phase = (2 * Math.PI * i) / count;
    return {
      eyesMm: [
        middleMm[0] + range.asideMm * Math.sin(phase + 1),
        middleMm[1] + range.asideMm * Math.cos(2 * phase + 2),
        middleMm[2] + range.distanceMm * Math.cos(2 * phase),
      ],
      yawRad: range.yawRad * Math.sin(phase),
      pitchRad: range.pitchRad * Math.cos(3 * phase + 0.5),
      rollRad: range.rollRad * Math.sin(2 * phase + 0.7),
    };
  });
}

/** A sweep of perfectly seen frames, 1280 x 720: the card on the forehead leans and is turned a little. */
export function exampleSweep(change: Partial<SyntheticSweep> = {}): SyntheticSweep {
  const scene = chainScene();
  return {
    head: {
      ...scene,
      camera: { widthPx: 1280, heightPx: 720, focalPx: 1024, centre: { xPx: 640, yPx: 360 }, k1: 0 },
      bridgeLeftMm: 0.6,
      card: {
        ...scene.card,
        source: 'edges',
        thicknessMm: 0.76,
        backMm: [2, 56, contactDepth.regions.forehead.meanMm],
        turnRad: 2 * DEGREE,
        leanRad: 6 * DEGREE,
        rollRad: 1.5 * DEGREE,
      },
    },
    stances: courseOf(12),
    lookAtMm: [0, 0, 0],
    seeing: perfectSweepSeeing(),
    slip: null,
    blinkFrames: [],
    elsewhere: [],
    ...change,
  };
}

/** The same with a deviation in every frame, as good pictures have it; what errs in all frames alike stays without. */
export function noisySeeing(random: SeededRandom): SweepSeeing {
  return {
    ...perfectSweepSeeing(),
    angleScatterRad: { yaw: 1.5 * DEGREE, pitch: 3 * DEGREE, roll: 1 * DEGREE },
    deviate: () => random.normal(0, 1),
  };
}

/** The sweep as a mirror shows it: the wearer's left is right. */
export function mirroredSweep(sweep: SyntheticSweep): SyntheticSweep {
  const flip = ([x, y, z]: Vector3): Vector3 => [-x, y, z];
  const { head, seeing } = sweep;
  const { card, camera } = head;
  return {
    ...sweep,
    head: {
      ...head,
      camera: { ...camera, centre: { ...camera.centre, xPx: camera.widthPx - camera.centre.xPx } },
      bridgeLeftMm: -head.bridgeLeftMm,
      leftEyeForwardMm: -head.leftEyeForwardMm,
      lidsMm: { R: head.lidsMm.L, L: head.lidsMm.R },
      card: { ...card, backMm: flip(card.backMm), turnRad: -card.turnRad, rollRad: -card.rollRad },
    },
    stances: sweep.stances.map((stance) => ({
      eyesMm: flip(stance.eyesMm),
      yawRad: -stance.yawRad,
      pitchRad: stance.pitchRad,
      rollRad: -stance.rollRad,
    })),
    lookAtMm: flip(sweep.lookAtMm),
    seeing: {
      ...seeing,
      angleBiasRad: {
        yaw: -seeing.angleBiasRad.yaw,
        pitch: seeing.angleBiasRad.pitch,
        roll: -seeing.angleBiasRad.roll,
      },
      irisBiasMm: { R: -seeing.irisBiasMm.L, L: -seeing.irisBiasMm.R },
      lidBiasMm: { R: seeing.lidBiasMm.L, L: seeing.lidBiasMm.R },
      midlineBiasMm: -seeing.midlineBiasMm,
    },
    slip: sweep.slip && { ...sweep.slip, shiftMm: flip(sweep.slip.shiftMm) },
    elsewhere: sweep.elsewhere.map((each) => ({ ...each, lookAtMm: flip(each.lookAtMm) })),
  };
}

/**
 * A sweep drawn from what the measuring says it knows of wearers, cameras and seeing (the means and deviations of prior-knowledge.ts and
 * sweep-model.ts, as they say it). What it claims not to know (PD, place, course) is drawn broadly.
 */
export function drawSweep({ normal, uniform }: SeededRandom, count: number): SyntheticSweep {
  const between = (low: number, high: number): number => low + (high - low) * uniform();
  const contact = contactDepth.regions.forehead;
  const size = normal(1, 0.125 / 85.6 / Math.sqrt(3));
  const base = exampleSweep();
  const range: CourseRange = {
    yawRad: between(10, 15) * DEGREE,
    pitchRad: between(3, 7) * DEGREE,
    rollRad: between(0, 4) * DEGREE,
    distanceMm: between(25, 60),
    asideMm: between(0, 20),
  };
  const lids = { upper: 4, lower: between(4.5, 6.5) };
  return {
    ...base,
    head: {
      ...base.head,
      camera: {
        widthPx: 1280,
        heightPx: 720,
        focalPx: 0.8 * 1280 * Math.exp(normal(0, 0.13)),
        centre: { xPx: normal(640, 12.8), yPx: normal(360, 12.8) },
        k1: normal(0, 0.06),
      },
      pdFarMm: normal(63.3, 3.7),
      bridgeLeftMm: between(-1.5, 1.5),
      irisMm: normal(11.71, 0.42),
      leftEyeForwardMm: normal(0, 0.7),
      rotationToPupilMm: normal(10.5, 0.5),
      lidsMm: { R: lids, L: lids },
      card: {
        ...base.head.card,
        widthMm: 85.6 * size,
        heightMm: 53.98 * size,
        backMm: [between(-5, 5), 55 + between(-5, 5), normal(contact.meanMm, Math.hypot(contact.sdMm, 3.5))],
        turnRad: normal(0, 4 * DEGREE),
        leanRad: between(-6, 14) * DEGREE,
        rollRad: between(-5, 5) * DEGREE,
      },
    },
    stances: courseOf(count, range, [between(-40, 40), between(-30, 30), between(400, 520)]),
    lookAtMm: [normal(0, 15), normal(0, 15), normal(0, 25)],
    seeing: {
      cornerPx: 0.2,
      irisShare: 0.015,
      irisRadiusShare: 0.02,
      lidPx: 1,
      midlinePx: 1.5,
      outlinePx: 3,
      angleScatterRad: { yaw: 1.5 * DEGREE, pitch: 3 * DEGREE, roll: 1 * DEGREE },
      angleBiasRad: { yaw: normal(0, 1.5 * DEGREE), pitch: normal(0, 7 * DEGREE), roll: normal(0, 1 * DEGREE) },
      irisBiasMm: { R: normal(0, 0.045), L: normal(0, 0.045) },
      irisGrowth: normal(0, 0.01),
      lidBiasMm: { R: normal(0, 0.22), L: normal(0, 0.22) },
      midlineBiasMm: normal(0, 0.25),
      deviate: () => normal(0, 1),
    },
  };
}
