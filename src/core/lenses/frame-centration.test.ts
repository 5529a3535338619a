import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boxCorners,
  inwardDecentrationMm,
  nearInsetMm,
  smallestBlankMm,
  smallestBlankOfDiameterMm,
  upwardDecentrationMm,
} from './frame-centration.js';

const FRAME_70 = { boxWidthMm: 52, distanceBetweenLensesMm: 18 };

describe('decentration', () => {
  it('of each lens follows from the frame and the PD of its eye', () => {
    // lens.decentration of the collected facts (two dispensing texts): 70 and 64 give 3 each, 33 and 31 give 2 and 4
    expect(inwardDecentrationMm(FRAME_70, 32)).toBe(3);
    expect(inwardDecentrationMm(FRAME_70, 33)).toBe(2);
    expect(inwardDecentrationMm(FRAME_70, 31)).toBe(4);
    expect(inwardDecentrationMm(FRAME_70, 36)).toBe(-1);
  });

  it('upward is counted from the middle of the box', () => {
    // boxing system (ISO 8624): the boxed centre is the middle of the rectangle
    expect(upwardDecentrationMm(22, 38)).toBe(3);
    expect(upwardDecentrationMm(17.5, 38)).toBe(-1.5);
  });
});

describe('the smallest blank', () => {
  it('of an effective diameter of 56 decentred by 4 is 66 mm', () => {
    // lens.mbs of the collected facts (five trade texts): ED + 2 d + 2
    expect(smallestBlankOfDiameterMm(56, { inwardMm: 4, upMm: 0 })).toBe(66);
  });

  it('of an outline reaches its farthest point', () => {
    // closed form: circle of 50 mm about the boxed centre, centre 3 in and 4 up: 2 (25 + 5) + 2
    const circle = Array.from({ length: 3600 }, (_, index) => {
      const angle = (index * Math.PI) / 1800;
      return { inwardMm: 25 * Math.cos(angle), upMm: 25 * Math.sin(angle) };
    });
    expect(smallestBlankMm(circle, { inwardMm: 3, upMm: 4 })).toBeCloseTo(62, 3);
    // a rectangle of 40 by 30: corner at 20 + 4 and 15 + 3 is 30 from the centre
    expect(smallestBlankMm(boxCorners(40, 30), { inwardMm: 4, upMm: 3 })).toBeCloseTo(62, 12);
  });

  it('by the effective diameter is never smaller than by the outline', () => {
    const point = fc.record({
      inwardMm: fc.double({ min: -30, max: 30, noNaN: true }),
      upMm: fc.double({ min: -25, max: 25, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 40 }), point, (outline, centre) => {
        const effectiveMm = 2 * Math.max(...outline.map(({ inwardMm, upMm }) => Math.hypot(inwardMm, upMm)));
        expect(smallestBlankOfDiameterMm(effectiveMm, centre)).toBeGreaterThanOrEqual(
          smallestBlankMm(outline, centre) - 1e-9,
        );
      }),
      { seed: 44 },
    );
  });
});

describe('the near inset', () => {
  it.each([
    // pd.ncd_power of the collected facts: NCD of 63 at 400 mm, s = 27 = 14 + 13 (worked in the source as 59.8 for -9 D)
    [-9, 59.755],
    [5, 58.44],
    [-5, 59.464],
    // pd.ncd: without power
    [0, 59.0164],
  ])('of lenses of %d D leaves a near centration distance of %d mm', (sphereD, expected) => {
    const inset = nearInsetMm({ sphereD, cylinderD: 0, axisDeg: 180 }, 31.5, 400, 14);
    expect(Math.abs(63 - 2 * (inset ?? NaN) - expected)).toBeLessThan(0.001);
  });

  it('counts the power along the horizontal, and the usual vertex distance where none was read', () => {
    const cylinder = { sphereD: 0, cylinderD: -9, axisDeg: 90 };
    expect(nearInsetMm(cylinder, 31.5, 400, null)).toBeCloseTo(
      nearInsetMm({ sphereD: -9, cylinderD: 0, axisDeg: 180 }, 31.5, 400, 14) ?? NaN,
      12,
    );
  });

  it('does not exist for a lens that images the eye beyond all distances', () => {
    expect(nearInsetMm({ sphereD: 30, cylinderD: 0, axisDeg: 180 }, 31.5, 400, 22)).toBeNull();
  });
});
