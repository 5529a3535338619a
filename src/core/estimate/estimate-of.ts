import type { Propagation } from '../fitting/adjustment.js';
import { NORMAL_95 } from '../statistics/normal.js';
import type { BudgetSource, Estimate, EstimateUnit } from './estimate.js';

/** A doubt that is no part of the adjustment: of something that only this estimate follows from. */
export interface OwnDoubt {
  readonly source: BudgetSource;
  /** change of the estimate per unit of what is in doubt, at the parameters found */
  readonly sensitivity: (parameters: readonly number[]) => number;
  /** standard uncertainty of it */
  readonly uncertainty: number;
}

/** An adjustment, of one picture or of a sweep, through which the doubt of its parameters is carried. */
interface Propagating {
  readonly propagate: (output: (parameters: readonly number[]) => number) => Propagation<BudgetSource>;
}

/** An estimate with its 95 % interval and budget: first-order propagation through the adjustment (JCGM 100:2008, 5.1.2), own doubts added. */
export function estimateOf(
  adjustment: Propagating,
  unit: EstimateUnit,
  output: (parameters: readonly number[]) => number,
  ownDoubts: readonly OwnDoubt[] = [],
): Estimate {
  const { value, bySource } = adjustment.propagate(output);
  const squares = new Map([...bySource].map(([source, share]) => [source, share * share]));
  for (const { source, sensitivity, uncertainty } of ownDoubts) {
    const share = adjustment.propagate(sensitivity).value * uncertainty;
    squares.set(source, (squares.get(source) ?? 0) + share * share);
  }
  const standardUncertainty = Math.sqrt([...squares.values()].reduce((sum, square) => sum + square, 0));
  const half = NORMAL_95 * standardUncertainty;
  const budget = [...squares]
    .map(([source, square]) => ({ source, standardUncertainty: Math.sqrt(square) }))
    .filter((line) => line.standardUncertainty > 1e-6 * standardUncertainty)
    .sort((a, b) => b.standardUncertainty - a.standardUncertainty);
  return { value, standardUncertainty, low: value - half, high: value + half, unit, budget };
}
