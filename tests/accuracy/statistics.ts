/**
 * The value below which `share` of the values lie, linear between neighbours (type 7 of Hyndman and Fan, 1996: what most
 * programs take). Throws without values.
 */
export function percentile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new Error('No percentile of nothing.');
  const sorted = [...values].sort((a, b) => a - b);
  const place = share * (sorted.length - 1);
  const below = sorted[Math.floor(place)] ?? 0;
  const above = sorted[Math.ceil(place)] ?? below;
  return below + (above - below) * (place - Math.floor(place));
}

export function mean(values: readonly number[]): number {
  if (values.length === 0) throw new Error('No mean of nothing.');
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** One estimate beside its truth. */
export interface Comparison {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly truth: number;
}

/** How well one measurement did over many pictures. */
export interface ErrorSummary {
  readonly count: number;
  readonly medianError: number;
  readonly percentile95Error: number;
  /** mean of value minus truth */
  readonly bias: number;
  /** share of the pictures whose interval holds the truth */
  readonly coverage: number;
}

/** Null where there is nothing to compare. */
export function summariseErrors(comparisons: readonly Comparison[]): ErrorSummary | null {
  if (comparisons.length === 0) return null;
  const errors = comparisons.map(({ value, truth }) => value - truth);
  const sizes = errors.map(Math.abs);
  const held = comparisons.filter(({ low, high, truth }) => low <= truth && truth <= high);
  return {
    count: comparisons.length,
    medianError: percentile(sizes, 0.5),
    percentile95Error: percentile(sizes, 0.95),
    bias: mean(errors),
    coverage: held.length / comparisons.length,
  };
}
