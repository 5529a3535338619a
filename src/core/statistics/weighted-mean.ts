import { invariant } from '../result.js';

/** A value with its standard uncertainty, in the same unit. */
export interface UncertainValue {
  readonly value: number;
  readonly standardUncertainty: number;
}

export interface WeightedMean extends UncertainValue {
  /** sum of the squared residuals in units of their uncertainties */
  readonly chiSquared: number;
  /** root of chi-squared per degree of freedom; clearly above 1 the values scatter more than they admit. Null for a single value. */
  readonly birgeRatio: number | null;
}

/**
 * Mean of independent values weighted with the inverse of their variances, and its standard uncertainty (not enlarged by the
 * Birge ratio). Values that disagree must not be averaged: ask `enNumber` first. Standard result; from memory.
 */
export function weightedMean(values: readonly UncertainValue[]): WeightedMean {
  invariant(values.length > 0, 'a weighted mean needs at least one value');
  let weightSum = 0;
  let sum = 0;
  for (const { value, standardUncertainty } of values) {
    invariant(standardUncertainty > 0, `an uncertainty is positive, got ${standardUncertainty}`);
    weightSum += standardUncertainty ** -2;
    sum += value * standardUncertainty ** -2;
  }
  const value = sum / weightSum;
  const chiSquared = values.reduce((total, one) => total + ((one.value - value) / one.standardUncertainty) ** 2, 0);
  return {
    value,
    standardUncertainty: 1 / Math.sqrt(weightSum),
    chiSquared,
    birgeRatio: values.length > 1 ? Math.sqrt(chiSquared / (values.length - 1)) : null,
  };
}
