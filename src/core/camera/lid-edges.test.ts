import { describe, expect, it } from 'vitest';
import { eyeOpening, paintEye, type PaintedEye } from '../../../tests/support/painted-wearer.js';
import {
  develop,
  disc,
  intersectionOf,
  paint,
  paintBackground,
  skinAt,
  stroke,
  type Canvas,
  type Rgb,
} from '../../../tests/support/painting.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import type { ImagePoint } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import type { Side } from '../units/side.js';
import { LANDMARK, LANDMARK_COUNT } from './face-landmarks.js';
import type { IrisObservation, Landmark } from './features.js';
import { fitLidEdges } from './lid-edges.js';

/** Lid margins of a painted eye are found this near: a twentieth of the iris radius, 0.3 mm of a face. */
const LID_PX = 0.8;
/** A lash line hardly wider than the blur, against an iris that is as dark, counts in part to the eye: 0.4 mm of a face. */
const THIN_LINE_PX = 1.2;

interface PaintedLids extends PaintedEye {
  readonly skinBrightness: number;
  /** a dark line of this thickness along the upper margin, px */
  readonly lashLinePx: number;
  readonly lashes: boolean;
  readonly highlights: boolean;
}

const EYE: PaintedLids = {
  centre: { xPx: 80.3, yPx: 59.6 },
  irisRadiusPx: 16,
  upperPx: 11,
  lowerPx: 14.5,
  rollRad: 0,
  skinBrightness: 0.95,
  lashLinePx: 0,
  lashes: false,
  highlights: false,
};

function irisOf({ centre, irisRadiusPx }: PaintedEye): IrisObservation {
  return {
    centre: { ...centre, covariance: { xx: 0.01, xy: 0, yy: 0.01 } },
    radiusPx: irisRadiusPx,
    radiusUncertaintyPx: 0.2,
    support: 0.8,
    source: 'edges',
  };
}

/** Half the width of a painted opening and the distance of the other eye, radii of the iris. */
const HALF_OPENING = 2.4;
const OTHER_EYE = 10.5;

/** Landmarks on the arches of a painted opening, but the upper lid's `upperOffPx` too far out and the lower lid's `lowerOffPx`. */
function landmarksOf(eye: PaintedEye, side: Side, upperOffPx: number, lowerOffPx: number): Landmark[] {
  const landmarks = Array.from({ length: LANDMARK_COUNT }, (): Landmark => ({ xPx: 0, yPx: 0, depthPx: 0 }));
  const r = eye.irisRadiusPx;
  const at = (across: number, down: number): Landmark => ({
    xPx: eye.centre.xPx + across * Math.cos(eye.rollRad) - down * Math.sin(eye.rollRad),
    yPx: eye.centre.yPx + across * Math.sin(eye.rollRad) + down * Math.cos(eye.rollRad),
    depthPx: 0,
  });
  // A chord of the arch's circle, as `eyeOpening` paints it.
  const arch = (across: number, heightPx: number): number => {
    const radius = ((HALF_OPENING * r) ** 2 + heightPx ** 2) / (2 * heightPx);
    return Math.sqrt(radius ** 2 - across ** 2) - (radius - heightPx);
  };
  const place = (indices: readonly number[], down: (across: number) => number): void =>
    indices.forEach((index, i) => {
      const across = (i - 3) * 0.7 * r;
      landmarks[index] = at(across, down(across));
    });
  place(LANDMARK.upperLidMargin[side], (across) => -arch(across, eye.upperPx) - upperOffPx);
  place(LANDMARK.lowerLidMargin[side], (across) => arch(across, eye.lowerPx) + lowerOffPx);
  for (const one of ['R', 'L'] as const) {
    const away = one === side ? 0 : (side === 'R' ? 1 : -1) * OTHER_EYE * r;
    const toOuter = (one === 'R' ? -1 : 1) * HALF_OPENING * r;
    landmarks[LANDMARK.outerEyeCorner[one]] = at(away + toOuter, 0);
    landmarks[LANDMARK.innerEyeCorner[one]] = at(away - toOuter, 0);
    landmarks[LANDMARK.irisCentre[one]] = at(away, 0);
  }
  return landmarks;
}

const LASH_COLOUR: Rgb = [62, 44, 36];

function paintLids(eye: PaintedLids): Canvas {
  const canvas = paintBackground(160, 120, skinAt(eye.skinBrightness));
  const { centre, irisRadiusPx: r, lashLinePx } = eye;
  const shade = ([red, green, blue]: Rgb): Rgb => [
    eye.skinBrightness * red,
    eye.skinBrightness * green,
    eye.skinBrightness * blue,
  ];
  if (lashLinePx > 0) paint(canvas, eyeOpening({ ...eye, upperPx: eye.upperPx + lashLinePx }), shade(LASH_COLOUR));
  paintEye(canvas, { ...eye, white: shade([222, 214, 208]) });
  if (eye.highlights) {
    for (const across of [-0.25, 0.2]) {
      const at = { xPx: centre.xPx + across * r, yPx: centre.yPx - eye.upperPx + 2 };
      paint(canvas, intersectionOf(disc(at, 0.13 * r), eyeOpening(eye)), [250, 250, 250]);
    }
  }
  if (eye.lashes) {
    for (let i = -5; i <= 5; i++) {
      const root = { xPx: centre.xPx + 0.3 * i * r, yPx: centre.yPx - eye.upperPx };
      paint(canvas, stroke({ ...root, yPx: root.yPx + 2 }, { xPx: root.xPx + i, yPx: root.yPx - 9 }, 0.6), LASH_COLOUR);
    }
  }
  return canvas;
}

function fitted(eye: PaintedLids, side: Side, upperOffPx: number, lowerOffPx: number) {
  const image = develop(paintLids(eye), seededRandom(51), 2);
  return fitLidEdges(image, landmarksOf(eye, side, upperOffPx, lowerOffPx), irisOf(eye), side, eye.rollRad);
}

/** Distance down the vertical of the head from the pupil's centre, and beside it. */
function fromCentre(eye: PaintedEye, point: ImagePoint): { readonly down: number; readonly across: number } {
  const [dx, dy] = [point.xPx - eye.centre.xPx, point.yPx - eye.centre.yPx];
  return {
    down: -dx * Math.sin(eye.rollRad) + dy * Math.cos(eye.rollRad),
    across: dx * Math.cos(eye.rollRad) + dy * Math.sin(eye.rollRad),
  };
}

const BLACK_IRIS: Partial<PaintedLids> = { iris: [30, 20, 15] };

describe('fitLidEdges', () => {
  it.each<readonly [string, Side, upperOffPx: number, lowerOffPx: number, Partial<PaintedLids>]>([
    ['landmarks on the spot', 'R', 0, 0, {}],
    ['landmarks an eighth of the radius too far out', 'R', 2, 2, {}],
    ['landmarks an eighth of the radius too far in', 'L', -2, -2, {}],
    ['a leaning head', 'L', 2, 2, { rollRad: degreesToRadians(14) }],
    ['a light iris', 'R', 2, 2, { iris: [128, 150, 165] }],
    ['eyes that are nearly closed', 'R', 1, 1, { upperPx: 8, lowerPx: 12 }],
    ['white that shows under the iris, landmarks on the iris', 'R', 1, -4, { lowerPx: 20 }],
    ['white that shows under the iris, landmarks on the cheek', 'L', 1, 4, { lowerPx: 20 }],
    ['white that shows above the iris', 'L', -2, 1, { upperPx: 18 }],
    ['a dark lash line over a dark iris', 'R', 2.5, 1, { ...BLACK_IRIS, lashLinePx: 3 }],
    ['lashes', 'L', 2, 1, { ...BLACK_IRIS, lashLinePx: 1.5, lashes: true }],
    ['highlights at the margin of a dark iris', 'R', 2, 1, { ...BLACK_IRIS, highlights: true }],
    ['dark skin and a dark iris', 'L', 2, 2, { ...BLACK_IRIS, skinBrightness: 0.4 }],
    ['dark skin and a dark iris, landmarks too far in', 'R', -2, -2, { ...BLACK_IRIS, skinBrightness: 0.4 }],
    ['very light skin', 'R', 2, 2, { skinBrightness: 1.15 }],
  ])('finds both margins from %s', (_, side, upperOffPx, lowerOffPx, changes) => {
    const eye = { ...EYE, ...changes };
    const { upper, lower, uncertaintyPx, source } = fitted(eye, side, upperOffPx, lowerOffPx);
    expect(Math.abs(fromCentre(eye, upper).down + eye.upperPx)).toBeLessThan(
      eye.lashLinePx > 0 ? THIN_LINE_PX : LID_PX,
    );
    expect(Math.abs(fromCentre(eye, lower).down - eye.lowerPx)).toBeLessThan(LID_PX);
    expect(Math.abs(fromCentre(eye, upper).across)).toBeLessThan(1e-9);
    expect(Math.abs(fromCentre(eye, lower).across)).toBeLessThan(1e-9);
    expect(uncertaintyPx).toBeGreaterThan(LID_PX / 2);
    expect(uncertaintyPx).toBeLessThan(2.5);
    expect(source).toBe('edges');
  });

  it('keeps near to the landmarks where nothing is to be seen, and says so', () => {
    const even = { widthPx: 160, heightPx: 120, data: new Uint8ClampedArray(4 * 160 * 120).fill(130) };
    const { upper, lower, uncertaintyPx } = fitLidEdges(even, landmarksOf(EYE, 'R', 1.5, 1.5), irisOf(EYE), 'R', 0);
    expect(Math.abs(fromCentre(EYE, upper).down + EYE.upperPx + 1.5)).toBeLessThan(1.5);
    expect(Math.abs(fromCentre(EYE, lower).down - EYE.lowerPx - 1.5)).toBeLessThan(1.5);
    expect(uncertaintyPx).toBeGreaterThan(2 * fitted(EYE, 'R', 0, 0).uncertaintyPx);
  });

  it('measures at the middle of an opening whose eye looks aside', () => {
    // The iris stands half its radius aside; the lid is highest in the middle of the opening, where the eye would look straight ahead.
    const r = EYE.irisRadiusPx;
    const opening = { ...EYE, upperPx: 18, lowerPx: 18 };
    const iris = irisOf(EYE);
    const aside = { ...iris, centre: { ...iris.centre, xPx: iris.centre.xPx + 0.5 * r } };
    const canvas = paintBackground(160, 120, skinAt(0.95));
    const inside = paintBackground(160, 120, () => [222, 214, 208]);
    paint(inside, disc(aside.centre, r), [92, 66, 48]);
    const whole =
      ({ widthPx, levels }: Canvas) =>
      (x: number, y: number): Rgb => {
        const at = 3 * (Math.floor(y) * widthPx + Math.floor(x));
        return [levels[at]!, levels[at + 1]!, levels[at + 2]!];
      };
    paint(canvas, eyeOpening(opening), whole(inside));
    const landmarks = landmarksOf(opening, 'R', 1, 1);
    for (const side of ['R', 'L'] as const) {
      const centre = landmarks[LANDMARK.irisCentre[side]]!;
      landmarks[LANDMARK.irisCentre[side]] = { ...centre, xPx: centre.xPx + 0.5 * r };
    }
    const { upper, lower } = fitLidEdges(develop(canvas, seededRandom(51), 2), landmarks, aside, 'R', 0);
    expect(upper.xPx).toBeCloseTo(aside.centre.xPx, 9);
    expect(Math.abs(lower.yPx - upper.yPx - 36)).toBeLessThan(2 * LID_PX);
  });
});
