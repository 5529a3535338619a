import { invariant } from '../result.js';

/**
 * From the eye's centre of rotation forward to its entrance pupil, mm: 13.5 behind and 3.0 behind the cornea in schematic eyes
 * (from memory). One millimetre more or less moves a far PD of 63 seen from half a metre by 0.13.
 */
export const ROTATION_TO_PUPIL_MM = 10.5;

/** From the spectacle plane back to the eye's centre of rotation, mm (textbooks of dispensing optics; some take 25). */
const SPECTACLE_TO_ROTATION_MM = 27;

/**
 * Distance between the pupils while both eyes fixate a point `rotationToFixationMm` before the line that joins their centres of
 * rotation, from the distance while they look far away. `fixation` is straight ahead, midway between the eyes.
 *
 * Each pupil swings in by e sin(a), tan(a) = (P/2) / D (own geometry).
 */
export function pdShownFromPdFarMm(
  pdFarMm: number,
  rotationToFixationMm: number,
  rotationToPupilMm: number = ROTATION_TO_PUPIL_MM,
): number {
  checkFixation(pdFarMm, rotationToFixationMm, rotationToPupilMm);
  return pdFarMm * (1 - rotationToPupilMm / Math.hypot(pdFarMm / 2, rotationToFixationMm));
}

/** The inverse of `pdShownFromPdFarMm`: what a PD seen while both eyes fixate a near point becomes when they look far away. */
export function pdFarFromPdShownMm(
  pdShownMm: number,
  rotationToFixationMm: number,
  rotationToPupilMm: number = ROTATION_TO_PUPIL_MM,
): number {
  checkFixation(pdShownMm, rotationToFixationMm, rotationToPupilMm);
  // each round shrinks the rest by about e (P/2)² / D³, a thousandth at 200 mm: a few rounds reach the last digit
  let pdFarMm = pdShownMm;
  for (let round = 0; round < 50; round += 1) {
    const next = pdShownMm / (1 - rotationToPupilMm / Math.hypot(pdFarMm / 2, rotationToFixationMm));
    if (Math.abs(next - pdFarMm) < 1e-12 * pdFarMm) return next;
    pdFarMm = next;
  }
  return pdFarMm;
}

function checkFixation(pdMm: number, rotationToFixationMm: number, rotationToPupilMm: number): void {
  invariant(pdMm > 0, `a PD is positive, got ${pdMm}`);
  invariant(
    rotationToPupilMm >= 0 && rotationToFixationMm > 2 * rotationToPupilMm,
    `the fixated point lies well before the pupils, got ${rotationToFixationMm} mm`,
  );
}

/**
 * Near centration distance: where the lines of sight cross the spectacle plane while both eyes look at a point `workingDistanceMm`
 * before that plane. `horizontalPowerD` is the lens power along the horizontal, dioptres: plus power draws the lines together,
 * minus power apart.
 *
 * NCD = P - P / (1 + W (1/s - F/1000)); without power P W / (W + s) (textbooks of dispensing optics).
 */
export function nearCentrationDistanceMm(
  pdFarMm: number,
  workingDistanceMm: number,
  horizontalPowerD = 0,
  spectacleToRotationMm: number = SPECTACLE_TO_ROTATION_MM,
): number {
  return pdFarMm * nearCentrationRatio(workingDistanceMm, horizontalPowerD, spectacleToRotationMm);
}

/** The far PD that belongs to a near centration distance: the inverse of `nearCentrationDistanceMm`. */
export function pdFarFromNearCentrationMm(
  nearCentrationMm: number,
  workingDistanceMm: number,
  horizontalPowerD = 0,
  spectacleToRotationMm: number = SPECTACLE_TO_ROTATION_MM,
): number {
  return nearCentrationMm / nearCentrationRatio(workingDistanceMm, horizontalPowerD, spectacleToRotationMm);
}

function nearCentrationRatio(
  workingDistanceMm: number,
  horizontalPowerD: number,
  spectacleToRotationMm: number,
): number {
  invariant(workingDistanceMm > 0, `a working distance is positive, got ${workingDistanceMm}`);
  const vergence = workingDistanceMm * (1 / spectacleToRotationMm - horizontalPowerD / 1000);
  invariant(vergence > 0, `${horizontalPowerD} D would throw the centre of rotation beyond infinity`);
  return 1 - 1 / (1 + vergence);
}
