/** What a tried size was found to be. */
export type Verdict = 'loose' | 'fits' | 'tight';

/** One size that was tried, in the unit of the measurement. */
export interface Trial {
  readonly size: number;
  readonly verdict: Verdict;
}

/** What a series of trials says of the size that fits. */
export interface TrialResult {
  /** in the order in which they were tried */
  readonly trials: readonly Trial[];
  readonly value: number;
  /** the true size lies between these; both in the unit of the measurement */
  readonly low: number;
  readonly high: number;
  readonly standardUncertainty: number;
}
