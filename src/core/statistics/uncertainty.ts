import { invariant } from '../result.js';

/** Root of the sum of squares of independent standard uncertainties, each in the unit of the result (JCGM 100:2008, 5.1.2). */
export function combineUncertainties(uncertainties: readonly number[]): number {
  return Math.hypot(...uncertainties);
}

/** Standard uncertainty of a value that lies anywhere within ± `halfWidth` with equal chance (JCGM 100:2008, 4.3.7). */
export function rectangularUncertainty(halfWidth: number): number {
  invariant(halfWidth >= 0, `a half width is not negative, got ${halfWidth}`);
  return halfWidth / Math.sqrt(3);
}

/** Standard uncertainty that the step of a scale or display leaves (JCGM 100:2008, F.2.2.1). */
export function resolutionUncertainty(step: number): number {
  return rectangularUncertainty(step / 2);
}

/** One part of a combined uncertainty with the degrees of freedom behind it; infinite where it is taken as known. */
export interface UncertaintyPart {
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
}

/**
 * Effective degrees of freedom of a combined uncertainty, not truncated (Welch-Satterthwaite, JCGM 100:2008, G.4.1).
 * Infinite when every part that counts is known exactly.
 */
export function effectiveDegreesOfFreedom(parts: readonly UncertaintyPart[]): number {
  const combined = combineUncertainties(parts.map((part) => part.standardUncertainty));
  invariant(combined > 0, 'effective degrees of freedom need an uncertainty above zero');
  // in shares of the combined uncertainty, so that the fourth powers stay within range
  const sum = parts.reduce((total, { standardUncertainty, degreesOfFreedom }) => {
    invariant(degreesOfFreedom > 0, `degrees of freedom are positive, got ${degreesOfFreedom}`);
    return total + (standardUncertainty / combined) ** 4 / degreesOfFreedom;
  }, 0);
  return 1 / sum;
}
