import type { Reading, Readings } from '../reading/reading.js';
import { nearCentrationDistanceMm } from '../estimate/gaze.js';
import { combineUncertainties, rectangularUncertainty } from '../statistics/uncertainty.js';

/** How far readings are from a rule that the true values keep, with the doubt that readings without slips leave. */
export interface Residual {
  /** whole less sum, or near less expected near, mm; 0 for perfect readings */
  readonly residualMm: number;
  /** one standard deviation, mm */
  readonly standardUncertaintyMm: number;
}

/**
 * How far the true working distance may lie from the one that was set, as a share of it; any within is equally likely. Chosen:
 * 400 mm stands for 320 to 480, which moves a near distance of 59 by three quarters of a millimetre either way.
 */
const WORKING_DISTANCE_SHARE = 0.2;

/** Both eyes' distance less the sum of each eye's; null where one of the three is missing. */
export function eyesSumResidual({ pdFar, monoPdR, monoPdL }: Readings): Residual | null {
  if (pdFar === undefined || monoPdR === undefined || monoPdL === undefined) return null;
  return {
    residualMm: pdFar.value - (monoPdR.value + monoPdL.value),
    standardUncertaintyMm: combineUncertainties(
      [pdFar, monoPdR, monoPdL].map((reading) => reading.standardUncertainty),
    ),
  };
}

/** The near distance that is expected from a far one: value in mm with one standard deviation. */
export function expectedNear(
  pdFar: Reading,
  workingDistanceMm: number,
): { valueMm: number; standardUncertaintyMm: number } {
  const valueMm = nearCentrationDistanceMm(pdFar.value, workingDistanceMm);
  const halfWidthMm = WORKING_DISTANCE_SHARE * workingDistanceMm;
  // half of the way between both ends of the working distance: its sensitivity times its half width
  const swingMm =
    (nearCentrationDistanceMm(pdFar.value, workingDistanceMm + halfWidthMm) -
      nearCentrationDistanceMm(pdFar.value, workingDistanceMm - halfWidthMm)) /
    2;
  return {
    valueMm,
    standardUncertaintyMm: combineUncertainties([
      nearCentrationDistanceMm(pdFar.standardUncertainty, workingDistanceMm),
      rectangularUncertainty(Math.abs(swingMm)),
    ]),
  };
}

/** The near distance less what is expected from the far one; null where one of the two is missing. */
export function nearResidual({ pdFar, pdNear }: Readings, workingDistanceMm: number): Residual | null {
  if (pdFar === undefined || pdNear === undefined) return null;
  const expected = expectedNear(pdFar, workingDistanceMm);
  return {
    residualMm: pdNear.value - expected.valueMm,
    standardUncertaintyMm: combineUncertainties([pdNear.standardUncertainty, expected.standardUncertaintyMm]),
  };
}
