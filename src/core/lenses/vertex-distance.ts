import type { LensPower } from './prescription.js';

/**
 * What a lens acts as when it is moved away from the eye by `furtherMm`, seen from where it was: F / (1 - d F), d in metres (textbook).
 * Plus lenses gain, minus lenses lose. -8.00 D moved out by 5 mm acts as -7.69 D.
 */
export function actingPowerD(powerD: number, furtherMm: number): number {
  return powerD / (1 - (furtherMm / 1000) * powerD);
}

/** The lens as it acts at its old place when it is moved away from the eye by `furtherMm`; both principal powers change. */
export function actingLens({ sphereD, cylinderD, axisDeg }: LensPower, furtherMm: number): LensPower {
  const along = actingPowerD(sphereD, furtherMm);
  return { sphereD: along, cylinderD: actingPowerD(sphereD + cylinderD, furtherMm) - along, axisDeg };
}

/**
 * The lens that does at `fittedMm` before the eye what the tested one did at `testedMm`. A -8.00 D tested at 12 mm has to be -8.33 D
 * at 17 mm. Its effect is the same at distance; the cylinder is kept along its axis.
 */
export function compensatedLens(tested: LensPower, testedMm: number, fittedMm: number): LensPower {
  return actingLens(tested, testedMm - fittedMm);
}
