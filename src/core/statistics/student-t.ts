import { invariant } from '../result.js';
import { normalQuantile } from './normal.js';

/** Coefficients of the Lanczos approximation with g = 7 and nine terms (Godfrey 2001). */
const LANCZOS: readonly number[] = [
  676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

/** Natural logarithm of the gamma function for x of at least 0.5. */
function logGamma(x: number): number {
  const shifted = x - 1;
  const base = shifted + 7.5;
  const series = LANCZOS.reduce((sum, coefficient, i) => sum + coefficient / (shifted + i + 1), 0.99999999999980993);
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(base) - base + Math.log(series);
}

/**
 * Regularised incomplete beta function I_x(a, b) for a and b of at least 0.5: continued fraction of Abramowitz and Stegun 1964,
 * 26.5.8, by Lentz's method.
 */
function regularisedBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  // the fraction converges quickly only on this side of the mean
  if (x > (a + 1) / (a + b + 2)) return 1 - regularisedBeta(1 - x, b, a);
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  const tiny = 1e-300;
  const away = (value: number): number => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m <= 1000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    fraction *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    fraction *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return front * fraction;
}

/** Probability that Student's t with `degreesOfFreedom` (at least 1, not necessarily whole) lies at or below `t`. */
export function studentTCdf(t: number, degreesOfFreedom: number): number {
  const squares = degreesOfFreedom + t * t;
  if (t * t < degreesOfFreedom) {
    // near the middle the share between 0 and t keeps its digits, the tail would not
    return 0.5 + (Math.sign(t) / 2) * regularisedBeta((t * t) / squares, 0.5, degreesOfFreedom / 2);
  }
  const tail = 0.5 * regularisedBeta(degreesOfFreedom / squares, degreesOfFreedom / 2, 0.5);
  return t > 0 ? 1 - tail : tail;
}

/**
 * Coverage factor: half width, in standard uncertainties, of the interval that holds `coverage` (strictly between 0 and 1) of
 * Student's t (JCGM 100:2008, table G.2). Infinite degrees of freedom give the normal distribution.
 */
export function coverageFactor(coverage: number, degreesOfFreedom: number): number {
  invariant(coverage > 0 && coverage < 1, `a coverage lies between 0 and 1, got ${coverage}`);
  invariant(degreesOfFreedom >= 1, `degrees of freedom are at least 1, got ${degreesOfFreedom}`);
  const tail = (1 - coverage) / 2;
  // from here on the two differ by less than a millionth, and the continued fraction grows long
  if (degreesOfFreedom > 1e7) return -normalQuantile(tail);
  let low = 0;
  let high = 1;
  while (studentTCdf(-high, degreesOfFreedom) > tail) high *= 2;
  while (high - low > 1e-13 * high) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (studentTCdf(-middle, degreesOfFreedom) > tail) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
