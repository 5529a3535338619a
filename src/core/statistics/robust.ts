import { invariant } from '../result.js';
import { mean } from './moments.js';

/** The middle value, or the mean of the two middle ones. Needs at least one value. */
export function median(values: readonly number[]): number {
  invariant(values.length > 0, 'a median needs at least one value');
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  invariant(upper !== undefined && lower !== undefined, 'the middle of a list lies in it');
  return (lower + upper) / 2;
}

/** Median of the distances from the median, unscaled. Needs at least one value. */
export function medianAbsoluteDeviation(values: readonly number[]): number {
  const centre = median(values);
  return median(values.map((value) => Math.abs(value - centre)));
}

/** 0.75 quantile of the normal distribution, rounded as published: makes the MAD comparable with a standard deviation. */
const MAD_TO_SIGMA = 0.6745;

/** sqrt(pi / 2), rounded as customary: makes the mean absolute deviation comparable with a standard deviation. */
const MEAN_DEVIATION_TO_SIGMA = 1.253314;

/** Beyond this a value stands out (Iglewicz and Hoaglin 1993, section 3.3). */
export const MODIFIED_Z_LIMIT = 3.5;

/**
 * How far each value stands from the median, in robust standard deviations (Iglewicz and Hoaglin 1993, section 3.3).
 * Where more than half of the values are equal, which is common in readings to half a millimetre, the mean absolute
 * deviation from the median takes the place of the MAD (widely used; from memory); all are 0 when all values are equal.
 * A MAD below `leastMad` is taken as that, for values which are known to be no finer.
 */
export function modifiedZScores(values: readonly number[], leastMad = 0): readonly number[] {
  const centre = median(values);
  const deviations = values.map((value) => value - centre);
  const mad = Math.max(medianAbsoluteDeviation(values), leastMad);
  if (mad > 0) return deviations.map((deviation) => (MAD_TO_SIGMA * deviation) / mad);
  const meanDeviation = mean(deviations.map(Math.abs));
  return deviations.map((deviation) => (meanDeviation > 0 ? deviation / (MEAN_DEVIATION_TO_SIGMA * meanDeviation) : 0));
}
