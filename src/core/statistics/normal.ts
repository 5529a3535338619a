import { invariant } from '../result.js';

/** Density of the standard normal distribution. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** Below this the power series converges quickly, above it the continued fraction does. */
const SERIES_UP_TO = 3;

/**
 * Probability that a standard normal value lies at or below `z`: power series near the middle, Laplace's continued fraction in
 * the tails (Abramowitz and Stegun 1964, 26.2.11 and 26.2.14).
 */
export function normalCdf(z: number): number {
  const size = Math.abs(z);
  if (size < SERIES_UP_TO) {
    let term = z;
    let sum = z;
    for (let n = 3; Math.abs(term) > 1e-17 * Math.abs(sum); n += 2) {
      term *= (z * z) / n;
      sum += term;
    }
    return 0.5 + normalDensity(z) * sum;
  }
  let fraction = size;
  for (let n = 60; n >= 1; n -= 1) fraction = size + n / fraction;
  const tail = normalDensity(z) / fraction;
  return z < 0 ? tail : 1 - tail;
}

/**
 * The value below which a standard normal value lies with probability `probability` (strictly between 0 and 1): the inverse of
 * `normalCdf` by halving, since it is asked for rarely.
 */
export function normalQuantile(probability: number): number {
  invariant(probability > 0 && probability < 1, `a probability lies between 0 and 1, got ${probability}`);
  // the lower half keeps its digits however near to 0; the upper half is its mirror image
  if (probability > 0.5) return -normalQuantile(1 - probability);
  let low = -40;
  let high = 0;
  while (high - low > 1e-14 * -low) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (normalCdf(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Half width of the interval that holds 95 % of a normal distribution, in standard deviations. */
export const NORMAL_95 = normalQuantile(0.975);
