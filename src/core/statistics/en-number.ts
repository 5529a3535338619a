import { invariant } from '../result.js';

/** A value with its expanded uncertainty: the half width of its interval. */
export interface ExpandedValue {
  readonly value: number;
  readonly expandedUncertainty: number;
}

/**
 * E_n = (a - b) / sqrt(Ua² + Ub²): within ±1 two results agree as far as their uncertainties tell (ISO 13528).
 * Both intervals must have the same coverage, and the results must be independent.
 */
export function enNumber(a: ExpandedValue, b: ExpandedValue): number {
  const expanded = Math.hypot(a.expandedUncertainty, b.expandedUncertainty);
  invariant(expanded > 0, 'an E_n number needs an uncertainty above zero');
  return (a.value - b.value) / expanded;
}
