import type { BothSides, Side } from '../units/side.js';
import { powerMatrix } from './lens-power.js';
import type { LensPower, PrescribedPrism } from './prescription.js';

/** How far a lens lies from where it should: its centre less the pupil, mm, in the plane of the lens. */
export interface LensShift {
  /** towards the wearer's left */
  readonly leftMm: number;
  readonly upMm: number;
}

/** A prism by its base, prism dioptres. Two prisms before the same eye add up. */
export interface PrismBase {
  /** base towards the wearer's left; negative: towards the right */
  readonly left: number;
  /** base up; negative: down */
  readonly up: number;
}

export const NO_SHIFT: LensShift = { leftMm: 0, upMm: 0 };

/** Towards the nose is the wearer's left for the right eye, and right for the left eye. */
function inwardSign(side: Side): 1 | -1 {
  return side === 'R' ? 1 : -1;
}

/** A shift by so much towards the nose and up. */
export function shiftInward(side: Side, inwardMm: number, upMm: number): LensShift {
  return { leftMm: inwardSign(side) * inwardMm, upMm };
}

/**
 * The prism that an eye looks through when its lens lies beside the pupil by `shift`: Prentice's rule in both meridians, base =
 * F shift / 10 with the power matrix F. For one eye this is the textbook's PV = y S + C cos t (x sin t + y cos t), PH = x S +
 * C sin t (x sin t + y cos t), with x outward in cm, and 180 - t for the left eye (Jalie, after Principles of Ophthalmic Lenses).
 */
export function prismOfShift(lens: LensPower, shift: LensShift): PrismBase {
  const { xx, xy, yy } = powerMatrix(lens);
  return {
    left: (xx * shift.leftMm + xy * shift.upMm) / 10,
    up: (xy * shift.leftMm + yy * shift.upMm) / 10,
  };
}

/** The prism as it is written for an eye of that side. Nothing at all is written as base in and up. */
export function writtenPrism(side: Side, { left, up }: PrismBase): PrescribedPrism {
  const inward = inwardSign(side) * left;
  return {
    horizontal: { amount: Math.abs(inward), base: inward < 0 ? 'out' : 'in' },
    vertical: { amount: Math.abs(up), base: up < 0 ? 'down' : 'up' },
  };
}

/** The base of a prism that is written for an eye of that side. */
export function baseOfWritten(side: Side, { horizontal, vertical }: PrescribedPrism): PrismBase {
  const inward = horizontal.base === 'in' ? horizontal.amount : -horizontal.amount;
  return {
    left: inwardSign(side) * inward,
    up: vertical.base === 'up' ? vertical.amount : -vertical.amount,
  };
}

/** What a pair does to both eyes together, prism dioptres. */
export interface PairPrism {
  /** bases in of both eyes added up; negative: base out */
  readonly baseIn: number;
  /** base up before the right eye less base up before the left */
  readonly upBeforeRight: number;
}

/**
 * The prism of a pair: what the eyes have to make up for between them is the right eye's prism less the left eye's. Bases in
 * add up, bases up before both eyes cancel.
 */
export function pairPrism({ R, L }: BothSides<PrismBase>): PairPrism {
  return { baseIn: R.left - L.left, upBeforeRight: R.up - L.up };
}
