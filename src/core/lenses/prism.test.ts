import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LensPower } from './prescription.js';
import { baseOfWritten, pairPrism, prismOfShift, shiftInward, writtenPrism } from './prism.js';

const sphere = (sphereD: number): LensPower => ({ sphereD, cylinderD: 0, axisDeg: 180 });

describe('prismOfShift', () => {
  it.each([
    // Prentice's rule P = c F (textbook); the first is a worked case of professional articles
    [-8, 2.5, 2],
    [5, 3, 1.5],
    [4, 2, 0.8],
  ])('of %d D off by %d mm is %d prism dioptres', (power, mm, expected) => {
    const { horizontal, vertical } = writtenPrism('R', prismOfShift(sphere(power), shiftInward('R', mm, 0)));
    expect(horizontal.amount).toBeCloseTo(expected, 9);
    expect(vertical.amount).toBe(0);
    // the base of a plus lens points to its centre, that of a minus lens away from it
    expect(horizontal.base).toBe(power > 0 ? 'in' : 'out');
  });

  it.each([
    // Jalie, column in a trade magazine 2022 and 2024 after Principles of Ophthalmic Lenses: x outward and y up in cm, right eye;
    // printed 5.03 and 2.81 (exact 5.0328 and 2.8151), and -2.001
    { S: 6, C: -3, theta: 140, x: 0.25, y: 1.1, up: 5.0328, out: 2.8151 },
    { S: 3, C: 2, theta: 60, x: 0.385, y: -0.667, up: -2.001, out: null },
  ])('of $S / $C x $theta follows the published worked examples', ({ S, C, theta, x, y, up, out }) => {
    const lens = { sphereD: S, cylinderD: C, axisDeg: theta };
    const right = prismOfShift(lens, shiftInward('R', -10 * x, 10 * y));
    expect(Math.abs(right.up - up)).toBeLessThan(0.0005);
    // towards the right eye's temple is the wearer's right
    if (out !== null) expect(Math.abs(-right.left - out)).toBeLessThan(0.0005);
    // the same for the left eye with the axis mirrored: 180 - theta
    const left = prismOfShift({ ...lens, axisDeg: 180 - theta }, shiftInward('L', -10 * x, 10 * y));
    expect(left.up).toBeCloseTo(right.up, 9);
    expect(left.left).toBeCloseTo(-right.left, 9);
  });

  it('of an oblique cylinder has a vertical part for a shift aside', () => {
    // F xy = -C sin cos = 2 * 0.5 at 45 degrees (closed form)
    const { left, up } = prismOfShift({ sphereD: 0, cylinderD: -2, axisDeg: 45 }, { leftMm: 10, upMm: 0 });
    expect(up).toBeCloseTo(1, 12);
    expect(left).toBeCloseTo(-1, 12);
  });
});

describe('writtenPrism', () => {
  it('resolves a base for each eye, and back', () => {
    const base = fc.double({ min: -5, max: 5, noNaN: true });
    fc.assert(
      fc.property(fc.constantFrom('R' as const, 'L' as const), base, base, (side, left, up) => {
        const written = writtenPrism(side, { left, up });
        const back = baseOfWritten(side, written);
        expect(back.left).toBeCloseTo(left, 12);
        expect(back.up).toBeCloseTo(up, 12);
        expect(written.horizontal.amount).toBeGreaterThanOrEqual(0);
      }),
      { seed: 43 },
    );
    expect(writtenPrism('R', { left: 1, up: 0 }).horizontal).toEqual({ amount: 1, base: 'in' });
    expect(writtenPrism('L', { left: 1, up: 0 }).horizontal).toEqual({ amount: 1, base: 'out' });
    expect(writtenPrism('L', { left: 0, up: -2 }).vertical).toEqual({ amount: 2, base: 'down' });
  });
});

describe('pairPrism', () => {
  it('adds bases in of both eyes, and takes bases up from one another', () => {
    // resolving rules of the trade (common practice): in and in add, up and up cancel, up and down add
    const prism = (horizontal: number, vertical: number) => ({
      horizontal: { amount: horizontal, base: 'in' as const },
      vertical: { amount: vertical, base: 'up' as const },
    });
    const pair = pairPrism({ R: baseOfWritten('R', prism(1, 2)), L: baseOfWritten('L', prism(0.5, 0.75)) });
    expect(pair).toEqual({ baseIn: 1.5, upBeforeRight: 1.25 });
  });

  it('of a pair of plus lenses that stand too wide is base out', () => {
    // closed form: total prism is power times the error of the distance, 4 D and 3 mm: 1.2
    const R = prismOfShift(sphere(4), shiftInward('R', -1.5, 0));
    const L = prismOfShift(sphere(4), shiftInward('L', -1.5, 0));
    expect(pairPrism({ R, L }).baseIn).toBeCloseTo(-1.2, 12);
  });
});
