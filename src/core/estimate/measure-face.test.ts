import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../../calibration/contact-depth.json' with { type: 'json' };
import {
  chainScene,
  featuresOfScene,
  pdShownOfScene,
  perfectSeeing,
  type SyntheticScene,
  type SyntheticSeeing,
} from '../../../tests/support/synthetic-face.js';
import type { FourCorners, PictureFeatures } from '../camera/features.js';
import { degreesToRadians } from '../units/angle.js';
import type { AlwaysEstimated, FaceEstimates } from './estimate.js';
import type { CameraProfile } from '../camera/camera-profile.js';
import { DEFAULT_MEASURING_SETTINGS, type MeasuringSettings } from './face-estimates.js';
import { createMeasureFace, measureFace } from './measure-face.js';
import type { FaceKnowledge } from './prior-knowledge.js';

/** Faces of which the depth of the touched skin is well known, 15 mm. */
const KNOWN_FACE: FaceKnowledge = {
  canonicalFace,
  contactDepth: {
    regions: {
      forehead: { meanMm: 15, sdMm: 0.1 },
      'upper-lip': { meanMm: 15, sdMm: 0.1 },
      chin: { meanMm: 15, sdMm: 0.1 },
    },
    nasion: { meanMm: 13, sdMm: 0.1 },
  },
};

const ANY_FACE: FaceKnowledge = { canonicalFace, contactDepth };

function profileOf({ camera }: SyntheticScene): CameraProfile {
  return {
    widthPx: camera.widthPx,
    heightPx: camera.heightPx,
    fx: camera.focalPx,
    fy: camera.focalPx,
    cx: camera.centre.xPx,
    cy: camera.centre.yPx,
    distortion: [camera.k1, 0, 0, 0, 0],
    uncertainty: { fx: 2, fy: 2, cx: 1, cy: 1, distortion: [0.001, 0, 0, 0, 0] },
    rmsPx: 0.2,
    viewCount: 12,
  };
}

function settingsOf(scene: SyntheticScene): MeasuringSettings {
  return { ...DEFAULT_MEASURING_SETTINGS, profile: profileOf(scene) };
}

function measured(features: PictureFeatures, settings: MeasuringSettings, known = KNOWN_FACE) {
  const outcome = measureFace(features, settings, known);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
  return outcome.value;
}

function estimatesOf(scene: SyntheticScene, settings = settingsOf(scene), seeing?: SyntheticSeeing): FaceEstimates {
  return measured(featuresOfScene(scene, seeing ?? perfectSeeing(scene)), settings).estimates;
}

function scene(changes: Partial<SyntheticScene> = {}, card: Partial<SyntheticScene['card']> = {}): SyntheticScene {
  const base = chainScene();
  return { ...base, ...changes, card: { ...base.card, ...card } };
}

/** Rounding of the numeric adjustment, far below what a picture tells. */
const ROUNDING_MM = 0.002;

describe('measureFace', () => {
  it('undoes scale, depth and convergence of the worked example', () => {
    // raw = 240 px 85.60 mm / 342.4 px = 60; pupils = raw 500 / 485 = 61.8557; P - 2 e sin(atan(P / 2 D)) = pupils: P = 63.1521.
    const estimates = estimatesOf(scene());
    expect(Math.abs(estimates.pdShown.value - 61.8557)).toBeLessThan(ROUNDING_MM);
    expect(Math.abs(estimates.pdFar.value - 63.1521)).toBeLessThan(ROUNDING_MM);
    expect(Math.abs(estimates.distance.value - 500)).toBeLessThan(0.02);
  });

  it('needs no correction of convergence while the eyes look far', () => {
    const far = scene({ fixationMm: Infinity });
    const estimates = estimatesOf(far, { ...settingsOf(far), gaze: 'far' });
    expect(Math.abs(estimates.pdFar.value - far.pdFarMm)).toBeLessThan(ROUNDING_MM);
    expect(Math.abs(estimates.pdShown.value - far.pdFarMm)).toBeLessThan(ROUNDING_MM);
  });

  it('counts the thickness of a bought card, whose front is what is seen', () => {
    const bought = scene({}, { source: 'edges', thicknessMm: 0.76 });
    expect(Math.abs(estimatesOf(bought).pdFar.value - 63.1521)).toBeLessThan(ROUNDING_MM);
  });

  it('counts the scale of a print', () => {
    const large = scene({}, { widthMm: 85.6 * 1.02, heightMm: 53.98 * 1.02 });
    const estimates = estimatesOf(large, { ...settingsOf(large), printScale: 1.02 });
    expect(Math.abs(estimates.pdFar.value - 63.1521)).toBeLessThan(ROUNDING_MM);
  });

  it('places all other measures of a face that stands square to the camera', () => {
    const estimates = estimatesOf(scene({ bridgeLeftMm: 0.8 }));
    // The midline lies to the wearer's left: the right half is the larger. The scene lets both eyes swing by the same angle.
    expect(Math.abs(estimates.monoPdR.value - (63.1521 / 2 + 0.8))).toBeLessThan(0.02);
    expect(Math.abs(estimates.monoPdL.value - (63.1521 / 2 - 0.8))).toBeLessThan(0.02);
    expect(Math.abs(estimates.apertureR.value - 9.5)).toBeLessThan(0.01);
    expect(Math.abs(estimates.irisDiameter.value - 11.71)).toBeLessThan(0.01);
    expect(Math.abs(estimates.headWidth.value - 155)).toBeLessThan(0.05);
    expect(Math.abs(estimates.templeWidth.value - 125)).toBeLessThan(0.05);
    // Near centration for 400 mm: P W / (W + 27).
    expect(Math.abs(estimates.pdNear.value - (63.1521 * 400) / 427)).toBeLessThan(ROUNDING_MM);
    for (const name of ['headYaw', 'headPitch', 'headRoll'] as const) {
      expect(Math.abs(estimates[name].value)).toBeLessThan(0.1);
      expect(estimates[name].unit).toBe('deg');
    }
  });

  it.each([
    ['rolled', { rollRad: degreesToRadians(8) }],
    ['rolled the other way', { rollRad: degreesToRadians(-12) }],
    ['beside the middle of the picture', { eyesMm: [70, 60, 480] as const }],
    ['another face', { pdFarMm: 58, fixationMm: 510.5 }],
  ])('finds the same PD and roll where the head is %s', (_, changes) => {
    const other = scene(changes);
    const fixationMm = other.eyesMm[2] + other.rotationToPupilMm;
    const estimates = estimatesOf({ ...other, fixationMm });
    expect(Math.abs(estimates.pdFar.value - other.pdFarMm)).toBeLessThan(0.01);
    expect(Math.abs(estimates.headRoll.value - (other.rollRad * 180) / Math.PI)).toBeLessThan(0.1);
  });

  it('finds the PD of a turned head with a leaning card, within what is said to be known beforehand', () => {
    const turned = scene(
      { yawRad: degreesToRadians(5), pitchRad: degreesToRadians(-3) },
      { leanRad: degreesToRadians(14), turnRad: degreesToRadians(2), rollRad: degreesToRadians(3) },
    );
    const { pdFar, headYaw, headPitch } = estimatesOf(turned);
    // Prior knowledge of an upright head draws the angles by part of their size: a fraction of the stated uncertainty.
    for (const [estimate, truth] of [
      [pdFar, turned.pdFarMm],
      [headYaw, 5],
      [headPitch, -3],
    ] as const) {
      expect(Math.abs(estimate.value - truth)).toBeLessThan(estimate.standardUncertainty);
    }
    expect(headYaw.value).toBeGreaterThan(2.5);
    expect(headPitch.value).toBeLessThan(-1);
  });

  it('takes a profile of the same proportions for a picture of half the size', () => {
    const whole = scene();
    const half = scene({
      camera: { widthPx: 960, heightPx: 720, focalPx: 970, centre: { xPx: 480, yPx: 360 }, k1: 0 },
    });
    const { pdFar } = estimatesOf(half, settingsOf(whole));
    expect(Math.abs(pdFar.value - 63.1521)).toBeLessThan(ROUNDING_MM);
  });

  it('does without a profile that belongs to other proportions, and doubts more', () => {
    const plain = scene();
    const features = featuresOfScene(plain, perfectSeeing(plain));
    const profile: CameraProfile = { ...profileOf(plain), heightPx: 1080 };
    const without = measured(features, { ...settingsOf(plain), profile: null }).estimates.distance;
    const misfit = measured(features, { ...settingsOf(plain), profile }).estimates.distance;
    expect(misfit.value).toBe(without.value);
    expect(misfit.standardUncertainty).toBeGreaterThan(
      3 * measured(features, settingsOf(plain)).estimates.distance.standardUncertainty,
    );
  });

  it('gives every estimate an interval of 95 % and a budget whose squares add up', () => {
    const estimates = measured(
      featuresOfScene(scene(), perfectSeeing(scene())),
      { ...DEFAULT_MEASURING_SETTINGS },
      ANY_FACE,
    ).estimates;
    for (const estimate of Object.values(estimates)) {
      const squares = estimate.budget.reduce((sum, line) => sum + line.standardUncertainty ** 2, 0);
      expect(squares / estimate.standardUncertainty ** 2).toBeCloseTo(1, 9);
      // 1.959964 is the 97.5th percentile of the normal distribution.
      expect((estimate.high - estimate.value) / estimate.standardUncertainty).toBeCloseTo(1.959964, 6);
      expect((estimate.value - estimate.low) / estimate.standardUncertainty).toBeCloseTo(1.959964, 6);
      const shares = estimate.budget.map((line) => line.standardUncertainty);
      expect(shares).toEqual([...shares].sort((a, b) => b - a));
    }
  });

  it('doubts the PD of a known camera most for how far skin lies before the eyes', () => {
    const { pdFar } = measured(
      featuresOfScene(scene(), perfectSeeing(scene())),
      settingsOf(scene()),
      ANY_FACE,
    ).estimates;
    expect(pdFar.budget[0]?.source).toBe('contact-depth');
    // P / Z per millimetre of depth; 4.1 mm of scans and 4 mm of holding, before other knowledge helps.
    expect(pdFar.budget[0]!.standardUncertainty).toBeLessThan((63.1521 / 485) * Math.hypot(4.1, 4));
  });

  it('doubts by the share of the card that its size is doubted', () => {
    // Scale: u(P) / P = u(size) / size; half the range of 0.125 mm over root three makes 0.053 mm of 63 mm.
    const bought = scene({}, { source: 'edges', thicknessMm: 0.76 });
    const line = estimatesOf(bought).pdFar.budget.find(({ source }) => source === 'card-size');
    expect(line!.standardUncertainty).toBeGreaterThan(0.045);
    expect(line!.standardUncertainty).toBeLessThan(0.056);
  });
});

const BOTH_SIDES: readonly (readonly [AlwaysEstimated, AlwaysEstimated])[] = [
  ['monoPdR', 'monoPdL'],
  ['apertureR', 'apertureL'],
];
const WITHOUT_SIDE: readonly AlwaysEstimated[] = [
  'pdFar',
  'pdShown',
  'pdNear',
  'headWidth',
  'templeWidth',
  'irisDiameter',
  'distance',
  'headPitch',
];

/** Landmarks of the mirrored face by index: the nearest vertex to the mirror image; irises are swapped by hand. */
const MIRRORED_LANDMARK: readonly number[] = [
  ...canonicalFace.verticesMm.map(([x, y, z]) => {
    const gaps = canonicalFace.verticesMm.map((other) => Math.hypot(other[0]! + x!, other[1]! - y!, other[2]! - z!));
    return gaps.indexOf(Math.min(...gaps));
  }),
  ...[473, 476, 475, 474, 477, 468, 471, 470, 469, 472],
];

/** The features of the mirrored picture: what was the wearer's right is left. */
function mirror(features: PictureFeatures): PictureFeatures {
  const flip = <Point extends { readonly xPx: number }>(point: Point): Point => ({
    ...point,
    xPx: features.widthPx - point.xPx,
  });
  const swap = <Value, Mirrored>(both: { R: Value; L: Value }, each: (value: Value) => Mirrored) => ({
    R: each(both.L),
    L: each(both.R),
  });
  const [a, b, c, d] = features.card.corners;
  const corners: typeof features.card.corners = [flip(b), flip(a), flip(d), flip(c)];
  return {
    ...features,
    landmarks: MIRRORED_LANDMARK.map((index) => flip(features.landmarks[index]!)),
    card: { ...features.card, corners },
    iris: swap(features.iris, (iris) => ({ ...iris, centre: flip(iris.centre) })),
    lids: swap(features.lids, (lids) => ({ ...lids, upper: flip(lids.upper), lower: flip(lids.lower) })),
    midline: {
      ...features.midline,
      point: flip(features.midline.point),
      betweenPupils: features.midline.betweenPupils && flip(features.midline.betweenPupils),
    },
    outline: {
      ...features.outline,
      head: swap(features.outline.head, flip),
      temple: swap(features.outline.temple, flip),
    },
    pupil: swap(features.pupil, (pupil) => pupil && { ...pupil, centre: flip(pupil.centre) }),
    bridge: features.bridge.map((level) => ({ ...level, ...swap(level, flip) })),
  };
}

/** The features of the picture with every pixel a given number of times as large. */
function enlarge(features: PictureFeatures, factor: number): PictureFeatures {
  const grow = <Point extends { readonly xPx: number; readonly yPx: number }>(point: Point): Point => ({
    ...point,
    xPx: factor * point.xPx,
    yPx: factor * point.yPx,
  });
  const growMeasured = (point: PictureFeatures['iris']['R']['centre']) => ({
    ...grow(point),
    covariance: {
      xx: factor ** 2 * point.covariance.xx,
      xy: factor ** 2 * point.covariance.xy,
      yy: factor ** 2 * point.covariance.yy,
    },
  });
  const each = <Value, Grown>(both: { R: Value; L: Value }, change: (value: Value) => Grown) => ({
    R: change(both.R),
    L: change(both.L),
  });
  const [a, b, c, d] = features.card.corners;
  return {
    widthPx: factor * features.widthPx,
    heightPx: factor * features.heightPx,
    landmarks: features.landmarks.map((landmark) => ({ ...grow(landmark), depthPx: factor * landmark.depthPx })),
    card: { ...features.card, corners: [growMeasured(a), growMeasured(b), growMeasured(c), growMeasured(d)] },
    iris: each(features.iris, (iris) => ({
      ...iris,
      centre: growMeasured(iris.centre),
      radiusPx: factor * iris.radiusPx,
      radiusUncertaintyPx: factor * iris.radiusUncertaintyPx,
    })),
    lids: each(features.lids, (lids) => ({
      ...lids,
      upper: grow(lids.upper),
      lower: grow(lids.lower),
      uncertaintyPx: factor * lids.uncertaintyPx,
    })),
    midline: {
      ...features.midline,
      point: grow(features.midline.point),
      betweenPupils: features.midline.betweenPupils && grow(features.midline.betweenPupils),
      uncertaintyPx: factor * features.midline.uncertaintyPx,
    },
    outline: {
      head: each(features.outline.head, grow),
      temple: each(features.outline.temple, grow),
      uncertaintyPx: factor * features.outline.uncertaintyPx,
      skinEdge: null,
    },
    pupil: { R: null, L: null },
    bridge: [],
  };
}

describe('measureFace on changed pictures', () => {
  const uneven = scene(
    {
      camera: { ...chainScene().camera, k1: 0 },
      eyesMm: [30, -20, 520],
      yawRad: degreesToRadians(3),
      pitchRad: degreesToRadians(2),
      rollRad: degreesToRadians(-4),
      bridgeLeftMm: 0.7,
      lidsMm: { R: { upper: 3.5, lower: 5 }, L: { upper: 4, lower: 5.5 } },
    },
    { source: 'edges', thicknessMm: 0.76, leanRad: degreesToRadians(9), rollRad: degreesToRadians(2) },
  );
  const features = featuresOfScene(uneven, perfectSeeing(uneven));
  const settings = { ...DEFAULT_MEASURING_SETTINGS };
  const straight = measured(features, settings, ANY_FACE).estimates;

  it('swaps right and left in a mirrored picture and changes nothing else', () => {
    const mirrored = measured(mirror(features), settings, ANY_FACE).estimates;
    for (const [right, left] of BOTH_SIDES) {
      for (const [here, there] of [
        [right, left],
        [left, right],
      ] as const) {
        expect(mirrored[here].value).toBeCloseTo(straight[there].value, 3);
        expect(mirrored[here].standardUncertainty).toBeCloseTo(straight[there].standardUncertainty, 3);
      }
    }
    for (const name of WITHOUT_SIDE) {
      expect(mirrored[name].value).toBeCloseTo(straight[name].value, 2);
      expect(mirrored[name].standardUncertainty).toBeCloseTo(straight[name].standardUncertainty, 2);
    }
    expect(mirrored.headYaw.value).toBeCloseTo(-straight.headYaw.value, 2);
    expect(mirrored.headRoll.value).toBeCloseTo(-straight.headRoll.value, 2);
  });

  it.each([2, 0.5])('says the same of a picture enlarged %d times', (factor) => {
    const enlarged = measured(enlarge(features, factor), settings, ANY_FACE);
    for (const [name, estimate] of Object.entries(enlarged.estimates) as [
      AlwaysEstimated,
      FaceEstimates[AlwaysEstimated],
    ][]) {
      expect(estimate.value).toBeCloseTo(straight[name].value, 2);
      expect(estimate.standardUncertainty).toBeCloseTo(straight[name].standardUncertainty, 2);
    }
    expect(enlarged.pixelsPerMm / measured(features, settings, ANY_FACE).pixelsPerMm).toBeCloseTo(factor, 3);
  });

  it('says the same of a card whose corners are named from another one by half a turn', () => {
    const [a, b, c, d] = features.card.corners;
    const turned = measured({ ...features, card: { ...features.card, corners: [c, d, a, b] } }, settings, ANY_FACE);
    for (const name of ['pdFar', 'monoPdR', 'distance'] as const) {
      expect(turned.estimates[name].value).toBeCloseTo(straight[name].value, 2);
    }
  });
});

describe('measureFace on pictures that do not carry', () => {
  const failureOf = (features: PictureFeatures) => {
    const outcome = createMeasureFace(ANY_FACE)(features, DEFAULT_MEASURING_SETTINGS);
    return outcome.ok ? null : outcome.failure;
  };

  it('refuses a head turned by more than the limit and its doubt', () => {
    const turned = scene({ yawRad: degreesToRadians(22) });
    const failure = failureOf(featuresOfScene(turned, perfectSeeing(turned)));
    expect(failure).toMatchObject({ kind: 'head-turned', limitDeg: 15 });
    // 22 degrees, within what the unknown camera leaves open
    expect(failure?.kind === 'head-turned' && Math.abs(failure.turnDeg - 22)).toBeLessThan(2);
  });

  it('refuses a head that nods', () => {
    const nodding = scene({ pitchRad: degreesToRadians(30) });
    expect(failureOf(featuresOfScene(nodding, perfectSeeing(nodding)))?.kind).toBe('head-turned');
  });

  it('refuses a card whose corners lie in line', () => {
    const features = featuresOfScene(scene(), perfectSeeing(scene()));
    const [a] = features.card.corners;
    const corners: FourCorners<typeof a> = [
      a,
      { ...a, xPx: a.xPx + 100 },
      { ...a, xPx: a.xPx + 200 },
      { ...a, xPx: a.xPx + 50 },
    ];
    expect(failureOf({ ...features, card: { ...features.card, corners } })?.kind).toBe('card-not-flat');
  });

  it('refuses landmarks that are too few for a face', () => {
    const features = featuresOfScene(scene(), perfectSeeing(scene()));
    expect(failureOf({ ...features, landmarks: features.landmarks.slice(0, 20) })?.kind).toBe('no-face');
  });
});

describe('the advice of measureFace', () => {
  const adviceOf = (features: PictureFeatures) =>
    measured(features, DEFAULT_MEASURING_SETTINGS, ANY_FACE).advice.map(({ kind }) => kind);
  const good = featuresOfScene(scene(), perfectSeeing(scene()));

  it('is silent about a good picture', () => {
    expect(adviceOf(good)).toEqual([]);
  });

  it('asks to come nearer under 1.2 pixels per millimetre', () => {
    const small = scene({
      camera: { widthPx: 640, heightPx: 480, focalPx: 510, centre: { xPx: 320, yPx: 240 }, k1: 0 },
    });
    expect(adviceOf(featuresOfScene(small, perfectSeeing(small)))).toContain('come-nearer');
  });

  it('names a covered edge of a bought card', () => {
    const covered = { ...good.card, source: 'edges', edgeSupport: [0.9, 0.3, 0.9, 0.9] } as const;
    expect(measured({ ...good, card: covered }, DEFAULT_MEASURING_SETTINGS, ANY_FACE).advice).toEqual([
      { kind: 'card-covered', edge: 'right' },
    ]);
  });

  it('asks to turn to the camera, to level the card, to hold it to the forehead and to check an iris', () => {
    const turned = scene({ yawRad: degreesToRadians(11) });
    expect(adviceOf(featuresOfScene(turned, perfectSeeing(turned)))).toContain('turn-to-camera');
    const crooked = scene({}, { rollRad: degreesToRadians(10) });
    expect(adviceOf(featuresOfScene(crooked, perfectSeeing(crooked)))).toContain('level-card');
    const low = scene({}, { position: 'chin', backMm: [0, -90, 11] });
    expect(adviceOf(featuresOfScene(low, perfectSeeing(low)))).toContain('card-on-forehead');
    const iris = { ...good.iris, L: { ...good.iris.L, support: 0.4 } };
    expect(measured({ ...good, iris }, DEFAULT_MEASURING_SETTINGS, ANY_FACE).advice).toEqual([
      { kind: 'check-points', what: 'irisL' },
    ]);
  });
});

describe('the PD that is shown', () => {
  it('follows the scene’s own convergence', () => {
    expect(estimatesOf(scene()).pdShown.value).toBeCloseTo(pdShownOfScene(scene()), 2);
  });
});
