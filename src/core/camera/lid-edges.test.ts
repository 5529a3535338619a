import { describe, expect, it } from 'vitest';
import { paintEye, type PaintedEye } from '../../../tests/support/painted-wearer.js';
import { develop, paintBackground, skinAt } from '../../../tests/support/painting.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import type { ImagePoint } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import type { Side } from '../units/side.js';
import { LANDMARK, LANDMARK_COUNT } from './face-landmarks.js';
import type { IrisObservation, Landmark } from './features.js';
import { fitLidEdges } from './lid-edges.js';

/** Lid margins of a painted eye are found this near. */
const LID_PX = 0.6;

const EYE: PaintedEye = {
  centre: { xPx: 80.3, yPx: 59.6 },
  irisRadiusPx: 16,
  upperPx: 11,
  lowerPx: 14.5,
  rollRad: 0,
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

/** Landmarks that hold two flat lids, each drawn too far out by `offPx`. */
function landmarksOf(eye: PaintedEye, side: Side, offPx: number): Landmark[] {
  const landmarks = Array.from({ length: LANDMARK_COUNT }, (): Landmark => ({ xPx: 0, yPx: 0, depthPx: 0 }));
  const at = (across: number, down: number): Landmark => ({
    xPx: eye.centre.xPx + across * Math.cos(eye.rollRad) - down * Math.sin(eye.rollRad),
    yPx: eye.centre.yPx + across * Math.sin(eye.rollRad) + down * Math.cos(eye.rollRad),
    depthPx: 0,
  });
  const place = (indices: readonly number[], down: number): void =>
    indices.forEach((index, i) => (landmarks[index] = at((i - 2.5) * 0.6 * eye.irisRadiusPx, down)));
  place(LANDMARK.upperLidMargin[side], -eye.upperPx - offPx);
  place(LANDMARK.lowerLidMargin[side], eye.lowerPx + offPx);
  return landmarks;
}

function fitted(eye: PaintedEye, side: Side, offPx: number, noise = 2) {
  const canvas = paintBackground(160, 120, skinAt(0.95));
  paintEye(canvas, eye);
  const image = develop(canvas, seededRandom(51), noise);
  return fitLidEdges(image, landmarksOf(eye, side, offPx), irisOf(eye), side, eye.rollRad);
}

/** Distance down the vertical of the head from the pupil's centre, and beside it. */
function fromCentre(eye: PaintedEye, point: ImagePoint): { readonly down: number; readonly across: number } {
  const [dx, dy] = [point.xPx - eye.centre.xPx, point.yPx - eye.centre.yPx];
  return {
    down: -dx * Math.sin(eye.rollRad) + dy * Math.cos(eye.rollRad),
    across: dx * Math.cos(eye.rollRad) + dy * Math.sin(eye.rollRad),
  };
}

describe('fitLidEdges', () => {
  it.each<readonly [string, Side, number, Partial<PaintedEye>]>([
    ['landmarks on the spot', 'R', 0, {}],
    ['landmarks an eighth of the radius too far out', 'R', 2, {}],
    ['landmarks an eighth of the radius too far in', 'L', -2, {}],
    ['a leaning head', 'L', 2, { rollRad: degreesToRadians(14) }],
    ['a light iris', 'R', 2, { iris: [128, 150, 165] }],
    ['eyes that are nearly closed', 'R', 1, { upperPx: 8, lowerPx: 12 }],
  ])('finds both margins from %s', (_, side, offPx, changes) => {
    const eye = { ...EYE, ...changes };
    const { upper, lower, uncertaintyPx, source } = fitted(eye, side, offPx);
    expect(Math.abs(fromCentre(eye, upper).down + eye.upperPx)).toBeLessThan(LID_PX);
    expect(Math.abs(fromCentre(eye, lower).down - eye.lowerPx)).toBeLessThan(LID_PX);
    expect(Math.abs(fromCentre(eye, upper).across)).toBeLessThan(1e-9);
    expect(Math.abs(fromCentre(eye, lower).across)).toBeLessThan(1e-9);
    expect(uncertaintyPx).toBeGreaterThan(LID_PX);
    expect(source).toBe('edges');
  });

  it('keeps to the landmarks where nothing is to be seen', () => {
    const even = { widthPx: 160, heightPx: 120, data: new Uint8ClampedArray(4 * 160 * 120).fill(130) };
    const { upper, lower } = fitLidEdges(even, landmarksOf(EYE, 'R', 1.5), irisOf(EYE), 'R', 0);
    expect(fromCentre(EYE, upper).down).toBeCloseTo(-EYE.upperPx - 1.5, 9);
    expect(fromCentre(EYE, lower).down).toBeCloseTo(EYE.lowerPx + 1.5, 9);
  });
});
