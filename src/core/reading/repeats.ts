import { invariant } from '../result.js';
import { criticalRange } from '../statistics/critical-range.js';
import { freeOfDust } from '../statistics/free-of-dust.js';
import { mean, standardDeviation } from '../statistics/moments.js';
import { median, MODIFIED_Z_LIMIT, modifiedZScores } from '../statistics/robust.js';
import { combineUncertainties, resolutionUncertainty } from '../statistics/uncertainty.js';
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
  /** range that so many readings of a trained reader keep to in 95 of 100 cases (ISO 5725-6); null for one value */
  readonly criticalRange: number | null;
  /** whether `range` is beyond the critical range: then take more readings. Of two readings it asks whether they lie further apart than r. */
  readonly beyondRepeatability: boolean;
}

/** How single readings of one thing scatter, in its unit. */
export interface ReadingScatter {
  /** standard deviation of one trained reader, without the step of the scale */
  readonly repeatability: number;
  /** step of the scale */
  readonly step: number;
}

/** Fewer values cannot tell which of them is the odd one. */
const LEAST_FOR_FAR_OFF = 3;

/** What repeats of one thing say together; from one value to as many as `criticalRange` knows. */
export function summariseRepeats(values: readonly GaugedValue[], scatter: ReadingScatter): Repeats {
  const numbers = values.map((one) => one.value);
  invariant(numbers.length > 0, 'repeats have at least one value');
  const range = freeOfDust(Math.max(...numbers) - Math.min(...numbers));
  const oneReading = combineUncertainties([scatter.repeatability, resolutionUncertainty(scatter.step)]);
  const allowed = numbers.length > 1 ? criticalRange(numbers.length, oneReading) : null;
  return {
    values,
    mean: freeOfDust(mean(numbers)),
    range,
    standardDeviation: numbers.length > 1 ? standardDeviation(numbers) : null,
    farOff: farOffPlaces(numbers, scatter.step, criticalRange(2, oneReading)),
    criticalRange: allowed,
    beyondRepeatability: allowed !== null && range > allowed,
  };
}

/**
 * Where the modified z-score is beyond its limit, as far as a reader could see it: nothing within one step of the scale, or
 * within the repeatability limit `r`, of the median is far off, however closely the others happen to agree. Values that are
 * written to a step hide deviations of up to half of it, so the MAD is taken as at least that; equal readings would otherwise
 * leave no scale to judge the odd one by (of three or four values the usual fallback never finds it).
 */
function farOffPlaces(values: readonly number[], step: number, r: number): readonly number[] {
  if (values.length < LEAST_FOR_FAR_OFF) return [];
  const centre = median(values);
  const scores = modifiedZScores(values, step / 2);
  return values.flatMap((value, place) => {
    const distance = freeOfDust(Math.abs(value - centre));
    return distance > step && distance > r && Math.abs(scores[place] ?? 0) > MODIFIED_Z_LIMIT ? [place] : [];
  });
}
