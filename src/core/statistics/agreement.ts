import type { Result } from '../result.js';
import { fail, invariant, succeed } from '../result.js';
import { mean, standardDeviation } from './moments.js';
import { NORMAL_95 } from './normal.js';
import { coverageFactor } from './student-t.js';

/** Both ends of a 95 % confidence interval. */
export interface ConfidenceInterval {
  readonly low: number;
  readonly high: number;
}

/** A number found from a sample, with the standard error and the 95 % interval (Student t) that the sample's size leaves. */
export interface SampledNumber {
  readonly value: number;
  readonly standardError: number;
  readonly interval: ConfidenceInterval;
}

/** How two methods or two readers differ, in the unit of what they measure. With few pairs the intervals are wide: show them. */
export interface Agreement {
  readonly count: number;
  /** mean of the differences, first less second */
  readonly bias: SampledNumber;
  /** of the differences, with n - 1 */
  readonly standardDeviation: number;
  /** between these most differences lie: bias ± k standard deviations */
  readonly lowerLimit: SampledNumber;
  readonly upperLimit: SampledNumber;
}

/** A scatter is not known from less than two pairs: take more. */
export interface TooFewPairs {
  readonly kind: 'too-few-pairs';
  readonly got: number;
  readonly needed: number;
}

const LEAST_PAIRS = 2;

const CONFIDENCE = 0.95;

/**
 * Limits of agreement of paired measurements, from their differences (Bland and Altman 1986): bias ± k sd, with standard errors
 * sd/√n of the bias and √(3/n) sd of a limit, and confidence intervals by Student's t with n - 1 degrees of freedom. The error of
 * a limit is the paper's, a good approximation for k about 2 and not too few pairs. The paper took k = 2; 1.96 is later usage.
 */
export function limitsOfAgreement(differences: readonly number[], k = NORMAL_95): Result<Agreement, TooFewPairs> {
  const count = differences.length;
  if (count < LEAST_PAIRS) return fail({ kind: 'too-few-pairs', got: count, needed: LEAST_PAIRS });
  const bias = mean(differences);
  const sd = standardDeviation(differences);
  const t = coverageFactor(CONFIDENCE, count - 1);
  const sampled = (value: number, standardError: number): SampledNumber => ({
    value,
    standardError,
    interval: { low: value - t * standardError, high: value + t * standardError },
  });
  const limitError = Math.sqrt(3 / count) * sd;
  return succeed({
    count,
    bias: sampled(bias, sd / Math.sqrt(count)),
    standardDeviation: sd,
    lowerLimit: sampled(bias - k * sd, limitError),
    upperLimit: sampled(bias + k * sd, limitError),
  });
}

/** How well one method or reader repeats itself. */
export interface PairedRepeatability {
  readonly count: number;
  /** of one reading, from the pairs: s_w² is half of the mean squared difference */
  readonly withinStandardDeviation: number;
  /** two readings of one thing lie no further apart than this in 95 of 100 cases */
  readonly coefficient: number;
}

/**
 * Repeatability from things that were each measured twice (Bland and Altman 1986): coefficient k √(mean d²), the mean difference
 * taken as zero since nothing changed in between. Needs at least one pair.
 */
export function pairedRepeatability(pairs: readonly (readonly [number, number])[], k = NORMAL_95): PairedRepeatability {
  invariant(pairs.length > 0, 'a repeatability needs at least one pair');
  const meanSquare = mean(pairs.map(([one, other]) => (one - other) ** 2));
  return {
    count: pairs.length,
    withinStandardDeviation: Math.sqrt(meanSquare / 2),
    coefficient: k * Math.sqrt(meanSquare),
  };
}
