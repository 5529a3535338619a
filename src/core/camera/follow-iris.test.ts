import { describe, expect, it } from 'vitest';
import { paintEye, type PaintedEye } from '../../../tests/support/painted-wearer.js';
import { develop, paintBackground, skinAt } from '../../../tests/support/painting.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import type { ImagePoint } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import { followIris, type LidMargins } from './follow-iris.js';

/** For leading the wearer this is enough: a tenth of a pixel of 16 is a tenth of a millimetre of PD at arm's length. */
const ACROSS_PX = 0.2;
const DOWN_PX = 0.4;

const OPEN: PaintedEye = {
  centre: { xPx: 80.3, yPx: 59.6 },
  irisRadiusPx: 16,
  upperPx: 11,
  lowerPx: 14.5,
  rollRad: 0,
};

function picture(eye: PaintedEye) {
  const canvas = paintBackground(160, 120, skinAt(0.95));
  paintEye(canvas, eye);
  return develop(canvas, seededRandom(41), 2);
}

/** Margins as landmarks draw them: arcs from corner to corner, of the heights that the eye was painted with. */
function lidsOf({ centre, irisRadiusPx, upperPx, lowerPx, rollRad }: PaintedEye): LidMargins {
  const along = [-2.2, -1.5, -0.8, 0, 0.8, 1.5, 2.2];
  const at = (share: number, downPx: number): ImagePoint => {
    const [across, down] = [share * irisRadiusPx, downPx * (1 - (share / 2.2) ** 2)];
    return {
      xPx: centre.xPx + across * Math.cos(rollRad) - down * Math.sin(rollRad),
      yPx: centre.yPx + across * Math.sin(rollRad) + down * Math.cos(rollRad),
    };
  };
  return { upper: along.map((share) => at(share, -upperPx)), lower: along.map((share) => at(share, lowerPx)) };
}

function expected({ centre, irisRadiusPx }: PaintedEye, asidePx: number) {
  return {
    centre: { xPx: centre.xPx + asidePx, yPx: centre.yPx - 0.6 * asidePx },
    radiusPx: 0.99 * irisRadiusPx,
    radiusUncertaintyPx: 0.03 * irisRadiusPx,
  };
}

describe('followIris', () => {
  it.each<readonly [string, Partial<PaintedEye>, number]>([
    ['where it was', {}, 0],
    ['that moved by a sixth of its radius', {}, 2.6],
    ['that moved the other way', {}, -2.6],
    ['that is light', { iris: [128, 150, 165] }, 1],
    ['of a leaning head', { rollRad: degreesToRadians(12) }, 1.5],
    ['that is small', { irisRadiusPx: 9, upperPx: 6.5, lowerPx: 8.3 }, 1],
  ])('finds an iris %s', (_, changes, asidePx) => {
    const eye = { ...OPEN, ...changes };
    const found = followIris(picture(eye), expected(eye, asidePx), lidsOf(eye), eye.rollRad);
    if (found === null) throw new Error('the iris was not found');
    const [dx, dy] = [found.centre.xPx - eye.centre.xPx, found.centre.yPx - eye.centre.yPx];
    const [cosine, sine] = [Math.cos(eye.rollRad), Math.sin(eye.rollRad)];
    expect(Math.abs(dx * cosine + dy * sine)).toBeLessThan(ACROSS_PX);
    expect(Math.abs(dy * cosine - dx * sine)).toBeLessThan(DOWN_PX);
    expect(Math.abs(found.radiusPx / eye.irisRadiusPx - 1)).toBeLessThan(0.03);
    expect(found.softness).toBeLessThan(0.4);
  });

  it('finds none on bare skin, nor behind closed lids', () => {
    const bare = develop(paintBackground(160, 120, skinAt(0.95)), seededRandom(41), 2);
    expect(followIris(bare, expected(OPEN, 0), lidsOf(OPEN), 0)).toBeNull();
    const closed = { ...OPEN, upperPx: 1, lowerPx: 1.5 };
    expect(followIris(picture(closed), expected(closed, 0), lidsOf(closed), 0)).toBeNull();
  });

  it('finds none outside of the picture', () => {
    const outside = { centre: { xPx: -200, yPx: 40 }, radiusPx: 16, radiusUncertaintyPx: 0.5 };
    expect(followIris(picture(OPEN), outside, lidsOf(OPEN), 0)).toBeNull();
  });
});
