import { describe, expect, it } from 'vitest';
import { eyeOpening, paintEye, type PaintedEye } from '../../../tests/support/painted-wearer.js';
import { develop, disc, paint, paintBackground, skinAt } from '../../../tests/support/painting.js';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import type { ImagePoint } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import type { EyesSeed } from './face-landmarks.js';
import { fitIrisEdge, fitIrisEdges } from './iris-edge.js';

/** A clean painted eye leaves the centre in doubt by no more than this across, which is where PDs are measured. */
const ACROSS_PX = 0.1;
/** Down, the lids reach into the sectors that are used. */
const DOWN_PX = 0.15;
/** The radius is taken for smaller than it looks by 1.1 %, which is true of lit eyes and not of painted ones. */
const RADIUS_SHARE = 0.03;
const NOISE = 2;

const OPEN: PaintedEye = {
  centre: { xPx: 80.3, yPx: 59.6 },
  irisRadiusPx: 16,
  upperPx: 11,
  lowerPx: 14.5,
  rollRad: 0,
};

function picture(eye: PaintedEye, more: Parameters<typeof paint>[1] | null = null) {
  const canvas = paintBackground(160, 120, skinAt(0.95));
  paintEye(canvas, eye);
  if (more !== null) paint(canvas, more, [250, 250, 250]);
  return develop(canvas, seededRandom(41), NOISE);
}

/** Landmarks are off by some pixels. */
function seedOf({ centre }: PaintedEye): ImagePoint {
  return { xPx: centre.xPx + 2.2, yPx: centre.yPx - 1.6 };
}

/** Where a point lies from the true centre, along the line of the eyes and down from it. */
function fromCentre(
  { centre, rollRad }: PaintedEye,
  point: ImagePoint,
): { readonly across: number; readonly down: number } {
  const [dx, dy] = [point.xPx - centre.xPx, point.yPx - centre.yPx];
  return {
    across: dx * Math.cos(rollRad) + dy * Math.sin(rollRad),
    down: -dx * Math.sin(rollRad) + dy * Math.cos(rollRad),
  };
}

describe('fitIrisEdge', () => {
  it.each<readonly [string, Partial<PaintedEye>]>([
    ['brown, its top and bottom covered', {}],
    ['of the half of its height covered', { upperPx: 8, lowerPx: 12 }],
    ['light', { iris: [128, 150, 165] }],
    ['of a leaning head', { rollRad: degreesToRadians(12) }],
    ['of a head that leans the other way', { rollRad: degreesToRadians(-20), centre: { xPx: 79.8, yPx: 60.15 } }],
    ['small', { irisRadiusPx: 9, upperPx: 6.5, lowerPx: 8.3 }],
  ])('finds centre and radius of an iris that is %s', (_, changes) => {
    const eye = { ...OPEN, ...changes };
    const found = fitIrisEdge(picture(eye), seedOf(eye), 1.08 * eye.irisRadiusPx, eye.rollRad);
    if (!found.ok) throw new Error(JSON.stringify(found.failure));
    const { centre, radiusPx, radiusUncertaintyPx, support, source } = found.value;
    const { across, down } = fromCentre(eye, centre);
    expect(Math.abs(across)).toBeLessThan(ACROSS_PX);
    expect(Math.abs(down)).toBeLessThan(DOWN_PX);
    expect(Math.abs(radiusPx / eye.irisRadiusPx - 1)).toBeLessThan(RADIUS_SHARE);
    expect(support).toBeGreaterThan(0.6);
    expect(source).toBe('edges');
    // Stated doubt: of the size of what is left, and larger down than across.
    expect(Math.abs(radiusPx - eye.irisRadiusPx)).toBeLessThan(2 * radiusUncertaintyPx);
    expect(centre.covariance.yy).toBeGreaterThan(centre.covariance.xx);
    expect(Math.sqrt(centre.covariance.xx)).toBeLessThan(0.03 * eye.irisRadiusPx);
  });

  it('does not hang on where it is looked for', () => {
    const large = { ...OPEN, irisRadiusPx: 24, upperPx: 17, lowerPx: 22 };
    const image = picture(large);
    const from = (share: number, shiftPx: number) => {
      const seed = { xPx: large.centre.xPx + shiftPx, yPx: large.centre.yPx - shiftPx };
      const found = fitIrisEdge(image, seed, share * large.irisRadiusPx, 0);
      if (!found.ok) throw new Error(JSON.stringify(found.failure));
      return found.value;
    };
    const straight = from(1, 0);
    for (const [share, shiftPx] of [
      [0.92, 3],
      [1.08, -3],
      [1.08, 3],
    ] as const) {
      const other = from(share, shiftPx);
      expect(Math.abs(other.centre.xPx - straight.centre.xPx)).toBeLessThan(ACROSS_PX);
      expect(Math.abs(other.centre.yPx - straight.centre.yPx)).toBeLessThan(DOWN_PX);
      expect(Math.abs(other.radiusPx / straight.radiusPx - 1)).toBeLessThan(0.005);
    }
  });

  it('bears a highlight on the edge', () => {
    const highlight = disc({ xPx: OPEN.centre.xPx + 15, yPx: OPEN.centre.yPx - 4 }, 2.5);
    const found = fitIrisEdge(picture(OPEN, highlight), seedOf(OPEN), OPEN.irisRadiusPx, 0);
    if (!found.ok) throw new Error(JSON.stringify(found.failure));
    // A twelfth of one side of the edge is hidden.
    const { across, down } = fromCentre(OPEN, found.value.centre);
    expect(Math.abs(across)).toBeLessThan(2 * ACROSS_PX);
    expect(Math.abs(down)).toBeLessThan(2 * DOWN_PX);
  });

  it('stays with the eye when the picture is moved', () => {
    const moved = { ...OPEN, centre: { xPx: OPEN.centre.xPx - 7, yPx: OPEN.centre.yPx + 5 } };
    const [here, there] = [OPEN, moved].map((eye) => {
      const found = fitIrisEdge(picture(eye), seedOf(eye), eye.irisRadiusPx, 0);
      if (!found.ok) throw new Error(JSON.stringify(found.failure));
      return found.value;
    });
    // Whole pixels change nothing but the noise.
    expect(Math.abs(there!.centre.xPx - here!.centre.xPx + 7)).toBeLessThan(ACROSS_PX);
    expect(Math.abs(there!.centre.yPx - here!.centre.yPx - 5)).toBeLessThan(DOWN_PX);
    expect(Math.abs(there!.radiusPx / here!.radiusPx - 1)).toBeLessThan(0.01);
  });

  it('fails on a closed eye', () => {
    const skin = develop(paintBackground(160, 120, skinAt(0.95)), seededRandom(42), NOISE);
    expect(fitIrisEdge(skin, OPEN.centre, 16, 0)).toMatchObject({ ok: false, failure: { kind: 'iris-not-found' } });
    const slit = picture({ ...OPEN, upperPx: 1, lowerPx: 1 });
    expect(fitIrisEdge(slit, OPEN.centre, 16, 0)).toMatchObject({ ok: false, failure: { kind: 'iris-not-found' } });
  });

  it('fails outside of the picture', () => {
    expect(fitIrisEdge(picture(OPEN), { xPx: 900, yPx: 900 }, 16, 0)).toEqual({
      ok: false,
      failure: { kind: 'iris-not-found', support: 0 },
    });
  });

  it('keeps to the centre of an iris that looks past the camera by 15 degrees', () => {
    const canvas = paintBackground(160, 120, skinAt(0.95));
    const inside = paintBackground(160, 120, () => [222, 214, 208]);
    const { centre, irisRadiusPx } = OPEN;
    // A disc turned about the vertical: narrower by the cosine.
    const narrow = Math.cos(degreesToRadians(15));
    paint(inside, (x, y) => Math.hypot((x - centre.xPx) / narrow, y - centre.yPx) - irisRadiusPx, [92, 66, 48]);
    paint(canvas, eyeOpening(OPEN), (x, y) => {
      const at = 3 * (Math.floor(y) * inside.widthPx + Math.floor(x));
      return [inside.levels[at]!, inside.levels[at + 1]!, inside.levels[at + 2]!];
    });
    const found = fitIrisEdge(develop(canvas, seededRandom(43), NOISE), seedOf(OPEN), irisRadiusPx, 0);
    if (!found.ok) throw new Error(JSON.stringify(found.failure));
    const { across, down } = fromCentre(OPEN, found.value.centre);
    expect(Math.abs(across)).toBeLessThan(ACROSS_PX);
    expect(Math.abs(down)).toBeLessThan(DOWN_PX);
    // Between its half axes, but for what a radius may err otherwise.
    expect(found.value.radiusPx).toBeGreaterThan((narrow - RADIUS_SHARE) * irisRadiusPx);
    expect(found.value.radiusPx).toBeLessThan(irisRadiusPx);
  });

  it('states a doubt that its errors over noise keep to', () => {
    const squares = Array.from({ length: 16 }, (_, k) => {
      const canvas = paintBackground(160, 120, skinAt(0.95));
      const eye = { ...OPEN, centre: { xPx: OPEN.centre.xPx + k / 16, yPx: OPEN.centre.yPx - k / 23 } };
      paintEye(canvas, eye);
      const found = fitIrisEdge(develop(canvas, seededRandom(200 + k), 5), seedOf(eye), eye.irisRadiusPx, 0);
      if (!found.ok) throw new Error(JSON.stringify(found.failure));
      const { across, down } = fromCentre(eye, found.value.centre);
      const { xx, xy, yy } = found.value.centre.covariance;
      return (yy * across ** 2 - 2 * xy * across * down + xx * down ** 2) / (xx * yy - xy * xy);
    });
    const mean = squares.reduce((sum, value) => sum + value, 0) / squares.length;
    // Chi-square with 2 degrees of freedom has the mean 2; noise alone is less than what living eyes add to the doubt.
    expect(mean).toBeLessThan(2);
    expect(Math.max(...squares)).toBeLessThan(9.2);
  });
});

describe('fitIrisEdges', () => {
  const RIGHT = OPEN;
  const LEFT = { ...OPEN, centre: { xPx: 240.7, yPx: 59.1 } };
  const seeds: EyesSeed = {
    irisCentre: { R: seedOf(RIGHT), L: seedOf(LEFT) },
    irisRadiusPx: { R: 1.05 * RIGHT.irisRadiusPx, L: 1.05 * LEFT.irisRadiusPx },
    middle: { xPx: 160, yPx: 60 },
    spanPx: 160,
    rollRad: 0,
  };
  const both = (nasalWhite: boolean) => {
    const canvas = paintBackground(320, 120, skinAt(0.95));
    paintEye(canvas, RIGHT);
    paintEye(canvas, LEFT);
    // Skin over the white on the nasal side of the left eye, and a little over the edge.
    const cover = (x: number): number => Math.max(x - LEFT.centre.xPx + 12, LEFT.centre.xPx - 45 - x);
    if (!nasalWhite) paint(canvas, cover, skinAt(0.95));
    const fits = fitIrisEdges(develop(canvas, seededRandom(44), NOISE), seeds, 1);
    if (!fits.R.ok || !fits.L.ok) throw new Error(JSON.stringify(fits));
    return { R: fits.R.value, L: fits.L.value };
  };

  it('finds both irises, alike in size', () => {
    const { R, L } = both(true);
    expect(Math.abs(fromCentre(RIGHT, R.centre).across)).toBeLessThan(ACROSS_PX);
    expect(Math.abs(fromCentre(LEFT, L.centre).across)).toBeLessThan(ACROSS_PX);
    expect(Math.abs(L.radiusPx / R.radiusPx - 1)).toBeLessThan(0.01);
  });

  it('takes the size of an iris that shows one side only from the other, and doubts its centre more', () => {
    const { R, L } = both(false);
    expect(Math.abs(L.radiusPx / R.radiusPx - 1)).toBeLessThan(0.02);
    const doubtPx = Math.sqrt(L.centre.covariance.xx);
    expect(doubtPx).toBeGreaterThan(1.5 * Math.sqrt(R.centre.covariance.xx));
    expect(doubtPx).toBeLessThan(0.03 * LEFT.irisRadiusPx);
    expect(Math.abs(fromCentre(LEFT, L.centre).across)).toBeLessThan(2 * doubtPx);
    expect(L.support).toBeLessThan(0.7 * R.support);
  });
});
