import { degreesToRadians } from '../units/angle.js';
import type { LensPower } from './prescription.js';

/**
 * The power of a lens as a symmetric matrix, dioptres, in the plane of the lens: x towards the wearer's left, y up. A reader who
 * faces the wearer has x to the right, so that axes in standard notation count from x to y for both eyes alike.
 */
export interface PowerMatrix {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** `lens` with its axis brought to 1 to 180 degrees. */
function withUsualAxis(lens: LensPower): LensPower {
  const turned = lens.axisDeg % 180;
  return { ...lens, axisDeg: turned <= 0 ? turned + 180 : turned };
}

/**
 * The same lens written with the other sign of cylinder: sphere plus cylinder, cylinder of the other sign, axis turned by 90
 * degrees (textbook). A spherical lens stays as it is.
 */
export function transposed(lens: LensPower): LensPower {
  if (lens.cylinderD === 0) return { ...lens, axisDeg: 180 };
  return withUsualAxis({
    sphereD: lens.sphereD + lens.cylinderD,
    cylinderD: -lens.cylinderD,
    axisDeg: lens.axisDeg + 90,
  });
}

/** Mean of the two principal powers, dioptres: sphere and half of the cylinder. */
export function sphericalEquivalentD({ sphereD, cylinderD }: LensPower): number {
  return sphereD + cylinderD / 2;
}

/** The principal power farther from nothing, dioptres; the power along the axis where both are equally far. */
export function strongestPowerD({ sphereD, cylinderD }: LensPower): number {
  const across = sphereD + cylinderD;
  return Math.abs(across) > Math.abs(sphereD) ? across : sphereD;
}

/** The matrix F = S 1 + C n n', n across the axis: n = (-sin a, cos a) (textbook; Long 1976). */
export function powerMatrix({ sphereD, cylinderD, axisDeg }: LensPower): PowerMatrix {
  const axis = degreesToRadians(axisDeg);
  const [sin, cos] = [Math.sin(axis), Math.cos(axis)];
  return {
    xx: sphereD + cylinderD * sin * sin,
    xy: -cylinderD * sin * cos,
    yy: sphereD + cylinderD * cos * cos,
  };
}

/**
 * Power along a meridian, dioptres: S + C sin²(m - a); 180 is the horizontal. It says how strongly the meridian is curved; an
 * oblique cylinder also bends across it, see `prismOfShift`.
 */
export function powerAlongD({ sphereD, cylinderD, axisDeg }: LensPower, meridianDeg: number): number {
  return sphereD + cylinderD * Math.sin(degreesToRadians(meridianDeg - axisDeg)) ** 2;
}
