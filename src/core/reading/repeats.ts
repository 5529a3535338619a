import type { GaugedValue } from './gauge.js';

/** The same thing read several times by one reader, in the unit of its measurement. */
export interface Repeats {
  /** at least one, in the order in which they were read */
  readonly values: readonly GaugedValue[];
  readonly mean: number;
  /** largest less smallest value; 0 for one */
  readonly range: number;
  /** standard deviation with n - 1; null for one value */
  readonly standardDeviation: number | null;
  /** the places in `values` that stand far from the others (modified z-score); needs at least three values */
  readonly farOff: readonly number[];
}
