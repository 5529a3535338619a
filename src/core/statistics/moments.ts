import { invariant } from '../result.js';

/** Arithmetic mean. Needs at least one value. */
export function mean(values: readonly number[]): number {
  invariant(values.length > 0, 'a mean needs at least one value');
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Standard deviation of a sample, with n - 1. Needs at least two values. */
export function standardDeviation(values: readonly number[]): number {
  invariant(values.length > 1, 'a standard deviation needs at least two values');
  const centre = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1));
}
