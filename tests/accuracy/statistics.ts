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
  /** one standard deviation */
  readonly uncertainty: number;
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
  /** root mean square of error over uncertainty: 1 where the uncertainties are what they claim to be */
  readonly errorOverUncertainty: number;
}

/** Null where there is nothing to compare. */
export function summariseErrors(comparisons: readonly Comparison[]): ErrorSummary | null {
  if (comparisons.length === 0) return null;
  const errors = comparisons.map(({ value, truth }) => value - truth);
  const sizes = errors.map(Math.abs);
  return {
    count: comparisons.length,
    medianError: percentile(sizes, 0.5),
    percentile95Error: percentile(sizes, 0.95),
    bias: mean(errors),
    coverage: comparisons.filter(isHeld).length / comparisons.length,
    errorOverUncertainty: Math.sqrt(
      mean(comparisons.map(({ value, truth, uncertainty }) => ((value - truth) / uncertainty) ** 2)),
    ),
  };
}

/** Whether the 95 % interval holds the truth; its bounds belong to it. */
export function isHeld({ low, high, truth }: Comparison): boolean {
  return low <= truth && truth <= high;
}

/** Share of the comparisons whose error is at most `factor` standard uncertainties. Throws without comparisons. */
export function shareWithin(comparisons: readonly Comparison[], factor: number): number {
  return mean(
    comparisons.map(({ value, truth, uncertainty }) => (Math.abs(value - truth) <= factor * uncertainty ? 1 : 0)),
  );
}

/**
 * The share of successes that `count` independent trials stay within in at least 95 % of all cases, each succeeding with
 * `probability` (0 to 1): from the 2.5 % to the 97.5 % quantile of the binomial distribution, over `count`.
 */
export function binomialBand(count: number, probability: number): { readonly low: number; readonly high: number } {
  return {
    low: binomialQuantile(count, probability, 0.025) / count,
    high: binomialQuantile(count, probability, 0.975) / count,
  };
}

/** The least number of successes that is not exceeded with at least this probability. */
function binomialQuantile(count: number, probability: number, share: number): number {
  if (probability <= 0) return 0;
  if (probability >= 1) return count;
  // logarithms, since the first terms vanish for many trials
  let logTerm = count * Math.log1p(-probability);
  let sum = Math.exp(logTerm);
  let successes = 0;
  while (sum < share && successes < count) {
    successes += 1;
    logTerm += Math.log(((count - successes + 1) / successes) * (probability / (1 - probability)));
    sum += Math.exp(logTerm);
  }
  return successes;
}
