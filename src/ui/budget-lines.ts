import type { BudgetSource, Estimate } from '../core/estimate/estimate.js';

/** One bar of a budget: a source, or the sources that are too small to be named one by one. */
export interface BudgetBar {
  readonly of:
    { readonly kind: 'source'; readonly source: BudgetSource } | { readonly kind: 'small'; readonly count: number };
  /** in the unit of the estimate */
  readonly standardUncertainty: number;
  /** of the variance, 0 to 1: shares of variances add up to the whole, those of deviations do not */
  readonly share: number;
}

/** A source with less of the variance than this moves no digit of the whole, and gets no line of its own. Chosen. */
const LEAST_SHARE = 0.01;

/** The bars of a budget, the largest first; small ones, where there are several, together at the end. */
export function budgetBars(estimate: Estimate): readonly BudgetBar[] {
  const variance = estimate.budget.reduce((sum, line) => sum + line.standardUncertainty ** 2, 0);
  const bars = estimate.budget.map(({ source, standardUncertainty }): BudgetBar => {
    return { of: { kind: 'source', source }, standardUncertainty, share: standardUncertainty ** 2 / variance };
  });
  const small = bars.filter(({ share }) => share < LEAST_SHARE);
  if (small.length < 2) return bars;
  const together = Math.hypot(...small.map(({ standardUncertainty }) => standardUncertainty));
  return [
    ...bars.filter(({ share }) => share >= LEAST_SHARE),
    { of: { kind: 'small', count: small.length }, standardUncertainty: together, share: together ** 2 / variance },
  ];
}
