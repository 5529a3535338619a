import { invertSymmetric, multiplyMatrixVector } from '../fitting/linear-system.js';

/** Where the eyes stand beside the card in one frame, as far as that frame alone shows it. */
export interface EyesBesideCard {
  /** middle of the eyes in the card's frame, mm */
  readonly xMm: number;
  readonly yMm: number;
  /** how the head is turned towards the camera, radians */
  readonly yawRad: number;
  readonly pitchRad: number;
}

/** The shortest stretch of frames that a slip can be told from. */
export const SHORTEST_STRETCH = 4;

/**
 * The place at which the series breaks in two: the first frame after the likeliest slip of the card, and how much of the scatter it explains.
 * Null where the series is too short. What a wrong depth of the eyes does to their place, which follows the turn of the head, is fitted
 * along; so is a break in it, by trying every place (least squares with a step; Hinkley 1970 for the principle).
 */
export function likeliestBreak(
  series: readonly EyesBesideCard[],
): { readonly at: number; readonly stepMm: number; readonly fRatio: number } | null {
  const n = series.length;
  if (n < 2 * SHORTEST_STRETCH) return null;
  const terms = series.map(({ yawRad, pitchRad }) => [1, Math.tan(yawRad), Math.tan(pitchRad)]);
  const targets = [series.map(({ xMm }) => xMm), series.map(({ yMm }) => yMm)];
  const without = targets.reduce((sum, values) => sum + restOf(terms, values).squares, 0);
  let best: { at: number; stepMm: number; fRatio: number } | null = null;
  for (let at = SHORTEST_STRETCH; at <= n - SHORTEST_STRETCH; at++) {
    const stepped = terms.map((row, i) => [...row, i >= at ? 1 : 0]);
    const fits = targets.map((values) => restOf(stepped, values));
    const withStep = fits.reduce((sum, { squares }) => sum + squares, 0);
    const freedom = 2 * (n - 4);
    const fRatio = (without - withStep) / 2 / Math.max(withStep / freedom, 1e-9);
    const stepMm = Math.hypot(...fits.map(({ coefficients }) => coefficients[3]!));
    if (best === null || fRatio > best.fRatio) best = { at, stepMm, fRatio };
  }
  return best;
}

/** Least squares of values over terms: coefficients, and the sum of squares of what is left. */
function restOf(terms: readonly (readonly number[])[], values: readonly number[]) {
  const size = terms[0]!.length;
  const places = Array.from({ length: size }, (_, i) => i);
  const normal = places.map((a) =>
    // a head that never turns leaves its terms undetermined: the small addition keeps them at zero
    places.map((b) => terms.reduce((sum, row) => sum + row[a]! * row[b]!, a === b ? 1e-6 : 0)),
  );
  const right = places.map((a) => terms.reduce((sum, row, i) => sum + row[a]! * values[i]!, 0));
  const inverse = invertSymmetric(normal);
  const coefficients = inverse === null ? places.map(() => 0) : multiplyMatrixVector(inverse, right);
  const squares = terms.reduce((sum, row, i) => {
    const rest = values[i]! - row.reduce((total, term, k) => total + term * coefficients[k]!, 0);
    return sum + rest * rest;
  }, 0);
  return { coefficients, squares };
}
