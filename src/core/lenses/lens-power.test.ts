import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { powerAlongD, powerMatrix, sphericalEquivalentD, strongestPowerD, transposed } from './lens-power.js';
import type { LensPower } from './prescription.js';

const anyLens: fc.Arbitrary<LensPower> = fc.record({
  sphereD: fc.integer({ min: -120, max: 120 }).map((quarters) => quarters / 4),
  cylinderD: fc.integer({ min: -40, max: 40 }).map((quarters) => quarters / 4),
  axisDeg: fc.integer({ min: 1, max: 180 }),
});

describe('transposed', () => {
  it('writes the textbook example the other way', () => {
    // textbook rule (common practice): add the cylinder to the sphere, change its sign, turn the axis by 90
    expect(transposed({ sphereD: 2, cylinderD: -1, axisDeg: 180 })).toEqual({ sphereD: 1, cylinderD: 1, axisDeg: 90 });
    expect(transposed({ sphereD: -3, cylinderD: 1.5, axisDeg: 30 })).toEqual({
      sphereD: -1.5,
      cylinderD: -1.5,
      axisDeg: 120,
    });
    expect(transposed({ sphereD: 1, cylinderD: 1, axisDeg: 90 }).axisDeg).toBe(180);
    expect(transposed({ sphereD: -2, cylinderD: 0, axisDeg: 180 })).toEqual({
      sphereD: -2,
      cylinderD: 0,
      axisDeg: 180,
    });
  });

  it('is the same lens in every meridian, and itself when done twice', () => {
    fc.assert(
      fc.property(anyLens, fc.integer({ min: 1, max: 180 }), (lens, meridian) => {
        const other = transposed(lens);
        expect(powerAlongD(other, meridian)).toBeCloseTo(powerAlongD(lens, meridian), 9);
        expect(other.axisDeg).toBeGreaterThanOrEqual(1);
        expect(other.axisDeg).toBeLessThanOrEqual(180);
        expect(sphericalEquivalentD(other)).toBeCloseTo(sphericalEquivalentD(lens), 12);
        expect(Math.abs(strongestPowerD(other))).toBeCloseTo(Math.abs(strongestPowerD(lens)), 12);
        if (lens.cylinderD !== 0) expect(transposed(other)).toEqual(lens);
      }),
      { seed: 41 },
    );
  });
});

describe('powerAlongD', () => {
  it.each([
    // lens.meridian of the collected facts: F(m) = S + C sin²(m - axis), textbook approximation
    [-2, -1, 90, 180, -3],
    [-2, -1, 45, 180, -2.5],
    [3, -1.5, 102, 90, 2.9352],
    [-4, -2, 30, 180, -4.5],
  ])('of %d / %d x %d along %d is %d D', (sphereD, cylinderD, axisDeg, meridian, expected) => {
    expect(Math.abs(powerAlongD({ sphereD, cylinderD, axisDeg }, meridian) - expected)).toBeLessThan(0.0005);
  });
});

describe('powerMatrix', () => {
  it('has the powers along both axes on its diagonal, and the invariants of the principal powers', () => {
    fc.assert(
      fc.property(anyLens, (lens) => {
        const { xx, xy, yy } = powerMatrix(lens);
        expect(xx).toBeCloseTo(powerAlongD(lens, 180), 9);
        expect(yy).toBeCloseTo(powerAlongD(lens, 90), 9);
        // trace and determinant belong to the principal powers S and S + C (linear algebra)
        expect(xx + yy).toBeCloseTo(2 * lens.sphereD + lens.cylinderD, 9);
        expect(xx * yy - xy * xy).toBeCloseTo(lens.sphereD * (lens.sphereD + lens.cylinderD), 7);
      }),
      { seed: 42 },
    );
  });
});
