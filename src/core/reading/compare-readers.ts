import type { Tolerance } from '../catalogue/measurement.js';
import { invariant } from '../result.js';
import { enNumber } from '../statistics/en-number.js';
import { freeOfDust } from '../statistics/free-of-dust.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { weightedMean } from '../statistics/weighted-mean.js';
import type { Reading } from './reading.js';

/** What two readers found at the same place. */
export interface ReadersComparison {
  /** false: one of the two has to read again; do not use `together` */
  readonly agree: boolean;
  /** both as one reading */
  readonly together: Reading;
}

/**
 * Holds two readers' readings of the same place against each other; all in the unit of the measurement.
 *
 * | difference | E_n (doubts at 95 %) | |
 * | --- | --- | --- |
 * | within the tolerance | any | agree: it does not matter |
 * | beyond the tolerance | within 1 | agree: the readers' doubts explain it |
 * | beyond the tolerance | beyond 1 | differ |
 *
 * E_n as in ISO 13528. There is no third answer as with the camera: readers who differ read again, and what is within the tolerance
 * or the doubts is carried on as their mean.
 *
 * Together they are the mean weighted with the inverse of their variances. Its uncertainty is the larger of the one that follows
 * from theirs and the one that follows from how far they lie apart (Birge 1932; from memory), since readers also differ in ways that
 * neither sees in repeats of their own; but never more than the worse of the two had alone. Readers who agree must not hide
 * what one of them would have shown: a second reading makes a place no less certain. What a gauge is off by, unknown to both, is
 * in both alike and not in this uncertainty.
 */
export function compareReaders(first: Reading, second: Reading, tolerance: Tolerance): ReadersComparison {
  invariant(first.name === second.name, `two readers are compared at one place, not ${first.name} and ${second.name}`);
  const expanded = ({ value, standardUncertainty }: Reading) => ({
    value,
    expandedUncertainty: NORMAL_95 * standardUncertainty,
  });
  const isWithin = freeOfDust(Math.abs(first.value - second.value)) <= tolerance.value;
  const joined = weightedMean([first, second]);
  const doubt = joined.standardUncertainty * Math.max(1, joined.birgeRatio ?? 1);
  return {
    agree: isWithin || Math.abs(enNumber(expanded(first), expanded(second))) <= 1,
    together: {
      name: first.name,
      value: freeOfDust(joined.value),
      standardUncertainty: Math.min(doubt, Math.max(first.standardUncertainty, second.standardUncertainty)),
      origin: null,
    },
  };
}
