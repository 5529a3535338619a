import { describe, expect, it } from 'vitest';
import { paintEye, type PaintedEye } from '../../../tests/support/painted-wearer.js';
import { develop, disc, paint, paintBackground, skinAt, type Rgb } from '../../../tests/support/painting.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import type { IrisObservation } from './features.js';
import { fitPupilEdge } from './pupil-edge.js';

const BLUE: Rgb = [128, 150, 165];
const EYE: PaintedEye = {
  centre: { xPx: 80.3, yPx: 59.6 },
  irisRadiusPx: 16,
  upperPx: 11,
  lowerPx: 14.5,
  rollRad: 0,
};

/** An eye with a pupil of its own place and size, painted over the iris. */
function picture(iris: Rgb, pupilRadiusPx: number, aside = { xPx: 0, yPx: 0 }, seed = 51, highlight = false) {
  const canvas = paintBackground(160, 120, skinAt(0.95));
  paintEye(canvas, { ...EYE, iris });
  // Over the small pupil that comes with the eye.
  paint(canvas, disc(EYE.centre, 0.45 * EYE.irisRadiusPx), iris);
  const centre = { xPx: EYE.centre.xPx + aside.xPx, yPx: EYE.centre.yPx + aside.yPx };
  paint(canvas, disc(centre, pupilRadiusPx), [20, 18, 18]);
  if (highlight) paint(canvas, disc({ xPx: centre.xPx + pupilRadiusPx, yPx: centre.yPx - 1 }, 1.6), [250, 250, 250]);
  return develop(canvas, seededRandom(seed), 2.5);
}

const SEEN: IrisObservation = {
  centre: { xPx: EYE.centre.xPx + 0.2, yPx: EYE.centre.yPx - 0.3, covariance: { xx: 0.01, xy: 0, yy: 0.03 } },
  radiusPx: EYE.irisRadiusPx,
  radiusUncertaintyPx: 0.15,
  support: 0.9,
  source: 'edges',
};

describe('fitPupilEdge', () => {
  it.each([4, 6.3, 8.8])('measures a pupil of %s px within its doubt', (radiusPx) => {
    const found = fitPupilEdge(picture(BLUE, radiusPx), SEEN);
    expect(Math.abs(found!.radiusPx - radiusPx)).toBeLessThan(0.1);
    expect(Math.abs(found!.radiusPx - radiusPx)).toBeLessThan(2 * found!.radiusUncertaintyPx);
    expect(Math.hypot(found!.centre.xPx - EYE.centre.xPx, found!.centre.yPx - EYE.centre.yPx)).toBeLessThan(0.15);
  });

  it('finds one that is not in the middle, with a highlight on its edge', () => {
    const found = fitPupilEdge(picture(BLUE, 5.5, { xPx: 0.9, yPx: 0.5 }, 52, true), SEEN);
    expect(Math.abs(found!.centre.xPx - EYE.centre.xPx - 0.9)).toBeLessThan(0.2);
    expect(Math.abs(found!.centre.yPx - EYE.centre.yPx - 0.5)).toBeLessThan(0.2);
    expect(Math.abs(found!.radiusPx - 5.5)).toBeLessThan(0.2);
  });

  it('is silent on irises almost as dark as their pupils', () => {
    for (const iris of [
      [30, 22, 18],
      [42, 30, 22],
    ] as const) {
      for (let seed = 60; seed < 66; seed++) expect(fitPupilEdge(picture(iris, 5, undefined, seed), SEEN)).toBeNull();
    }
  });

  it('is silent on an iris without a pupil, and outside of the picture', () => {
    expect(fitPupilEdge(picture(BLUE, 0.1), SEEN)).toBeNull();
    expect(fitPupilEdge(picture(BLUE, 5), { ...SEEN, centre: { ...SEEN.centre, xPx: 900 } })).toBeNull();
  });

  it('states a doubt that its errors over noise keep to', () => {
    const pictures = Array.from({ length: 20 }, (_, k) => fitPupilEdge(picture(BLUE, 5.2, undefined, 100 + k), SEEN)!);
    const meanSquare = (values: readonly number[]): number =>
      values.reduce((sum, value) => sum + value * value, 0) / values.length;
    // Noise alone is a small part of what living eyes add: never more than is stated.
    expect(meanSquare(pictures.map((p) => (p.radiusPx - 5.2) / p.radiusUncertaintyPx))).toBeLessThan(1);
    expect(
      meanSquare(pictures.map((p) => (p.centre.xPx - EYE.centre.xPx) / Math.sqrt(p.centre.covariance.xx))),
    ).toBeLessThan(1);
  });
});
