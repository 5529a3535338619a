import { describe, expect, it } from 'vitest';
import type { EyePrescription, LensKind, Prescription } from '../core/lenses/prescription.js';
import { fitsBox, frameWork, lensCautions } from './prescription-frame.js';

function pair(
  sphereD: number,
  lensKind: LensKind = 'single-vision',
  vertexDistanceMm: number | null = 12,
): Prescription {
  const none = { horizontal: { amount: 0, base: 'in' }, vertical: { amount: 0, base: 'up' } } as const;
  const eye: EyePrescription = { sphereD, cylinderD: 0, axisDeg: 180, addD: 0, prism: none };
  return { R: eye, L: eye, vertexDistanceMm, lensKind };
}

const GIVEN = { workingDistanceMm: 400, effectiveDiameterMm: null };
const BOX = { boxLensWidth: 52, distanceBetweenLenses: 18 } as const;

describe('frameWork', () => {
  it('works out each lens from frame and PDs', () => {
    // lens.decentration and lens.mbs of the collected facts: 70 with 33 and 31 gives 2 and 4; ED 56 with 4 gives 66
    const { isHalved, lenses } = frameWork({ ...BOX, monoPdR: 33, monoPdL: 31 }, pair(-2), {
      ...GIVEN,
      effectiveDiameterMm: 56,
    });
    expect(isHalved).toBe(false);
    expect([lenses.R.inwardMm, lenses.L.inwardMm]).toEqual([2, 4]);
    expect(lenses.L.blank).toEqual({ diameterMm: 66, isBound: false });
    expect(lenses.R.upMm).toBeNull();
    expect(lenses.R.vertex).toBeNull();
  });

  it('halves the whole only where an eye was not measured, and says so', () => {
    const work = frameWork({ ...BOX, pdFar: 64, monoPdR: 33 }, pair(-2), GIVEN);
    expect(work.isHalved).toBe(true);
    expect([work.lenses.R.inwardMm, work.lenses.L.inwardMm]).toEqual([3, 3]);
    expect(frameWork({ ...BOX, monoPdR: 33 }, pair(-2), GIVEN).lenses.L.inwardMm).toBeNull();
  });

  it('bounds the blank by the box where no effective diameter is known', () => {
    // box 52 by 38, centre 3 in and 2 up: corner at 29 and 21 (closed form)
    const { lenses } = frameWork({ ...BOX, boxLensHeight: 38, pdFar: 64, fittingHeightR: 21 }, pair(-2), GIVEN);
    expect(lenses.R.blank?.isBound).toBe(true);
    expect(lenses.R.blank?.diameterMm).toBeCloseTo(2 * Math.hypot(29, 21) + 2, 9);
    expect(lenses.L.upMm).toBeNull();
  });

  it('tells what another vertex distance does to a strong lens', () => {
    // lens.vertex of the collected facts: -8.00 moved out by 5 mm acts as -7.692; to keep it, -8.333
    const { vertex } = frameWork({ backVertexDistanceR: 17 }, pair(-8), GIVEN).lenses.R;
    expect(vertex?.furtherMm).toBe(5);
    expect(vertex?.actsAs.sphereD).toBeCloseTo(-7.6923, 4);
    expect(vertex?.compensated.sphereD).toBeCloseTo(-8.3333, 4);
    expect(vertex?.matters).toBe(true);
    expect(frameWork({ backVertexDistanceR: 14 }, pair(-2), GIVEN).lenses.R.vertex?.matters).toBe(false);
    expect(frameWork({ backVertexDistanceR: 17 }, pair(-8, 'single-vision', null), GIVEN).lenses.R.vertex).toBeNull();
  });
});

describe('fitsBox', () => {
  it('knows what an effective diameter can be in a box', () => {
    const box = { boxLensWidth: 40, boxLensHeight: 30 };
    // no less than the box is wide, no more than its diagonal: 50
    expect([39.5, 40, 50, 50.5].map((mm) => fitsBox(mm, box))).toEqual([false, true, true, false]);
    expect(fitsBox(10, {})).toBe(true);
  });
});

describe('lensCautions', () => {
  it('name what is missing for lenses that need it', () => {
    // law.words of the collected facts: about 5 D and above
    expect(lensCautions({}, pair(-4.75))).toEqual([]);
    const [strong] = lensCautions({ monoPdR: 31, monoPdL: 32, fittingHeightR: 20, fittingHeightL: 20 }, pair(-5));
    expect(strong).toEqual({ kind: 'strong', powerD: -5, missing: ['backVertexDistanceR', 'backVertexDistanceL'] });
    expect(lensCautions({ monoPdR: 31, monoPdL: 32 }, pair(1, 'progressive'))).toEqual([
      { kind: 'progressive', missing: ['fittingHeightR', 'fittingHeightL'] },
    ]);
    expect(lensCautions({}, pair(1, 'multifocal')).map(({ kind }) => kind)).toEqual(['multifocal']);
  });
});
