import type { Result } from '../result.js';
import { fail, invariant, succeed } from '../result.js';
import type { Agreement, SampledNumber, TooFewPairs } from './agreement.js';
import { mean, standardDeviation } from './moments.js';
import { NORMAL_95 } from './normal.js';
import { coverageFactor } from './student-t.js';

/** An agreement of differences that come in groups, each of them something that is common to all its differences. */
export interface GroupedAgreement extends Agreement {
  /** the groups; intervals rest on their number, not on that of the differences */
  readonly groups: number;
}

/** With fewer than two groups nothing is known of how they scatter. */
const LEAST_GROUPS = 2;

const CONFIDENCE = 0.95;

/**
 * Limits of agreement where several differences belong together, such as right and left of one visit, which share the camera's
 * scale: each counts, but no two of a group count as two. The scatter of one difference is that between groups and that
 * inside them, from one-way analysis of variance (Bland and Altman 2007, J Biopharm Stat 17:571-582, where the true value
 * varies; from memory); a share between groups that comes out negative is taken as none.
 *
 * Standard errors: of the mean √(Σn_i² s_b²/N² + s_w²/N); of a limit that joined with k times the one of the standard deviation
 * (Bland and Altman 1999, Stat Methods Med Res 8:135-160: √(1/n + k²/(2(n - 1))) s, which is what is left where each group has one
 * difference; the paper of 1986 rounds it to √(3/n) s). Intervals are Student's t with one degree of freedom less than groups.
 * Fails with fewer than two groups. Each group has at least one difference.
 */
export function groupedLimitsOfAgreement(
  groups: readonly (readonly number[])[],
  k = NORMAL_95,
): Result<GroupedAgreement, TooFewPairs> {
  const m = groups.length;
  invariant(
    groups.every((group) => group.length > 0),
    'a group has at least one difference',
  );
  if (m < LEAST_GROUPS) return fail({ kind: 'too-few-pairs', got: m, needed: LEAST_GROUPS });
  const all = groups.flat();
  const bias = mean(all);
  const { deviation, biasError, deviationError } = scatterOf(groups, all, bias);
  const limitError = Math.hypot(biasError, k * deviationError);
  const t = coverageFactor(CONFIDENCE, m - 1);
  const sampled = (value: number, standardError: number): SampledNumber => ({
    value,
    standardError,
    interval: { low: value - t * standardError, high: value + t * standardError },
  });
  return succeed({
    count: all.length,
    groups: m,
    bias: sampled(bias, biasError),
    standardDeviation: deviation,
    lowerLimit: sampled(bias - k * deviation, limitError),
    upperLimit: sampled(bias + k * deviation, limitError),
  });
}

interface Scatter {
  /** of one difference */
  readonly deviation: number;
  /** standard errors of the mean and of `deviation` */
  readonly biasError: number;
  readonly deviationError: number;
}

function scatterOf(groups: readonly (readonly number[])[], all: readonly number[], bias: number): Scatter {
  const m = groups.length;
  const n = all.length;
  const inside = groups.reduce((sum, group) => sum + squaresAround(group, mean(group)), 0);
  const between = groups.reduce((sum, group) => sum + group.length * (mean(group) - bias) ** 2, 0);
  const meanBetween = between / (m - 1);
  const meanInside = n === m ? 0 : inside / (n - m);
  if (n > m && meanBetween <= meanInside) {
    // the groups tell nothing apart
    const deviation = standardDeviation(all);
    return { deviation, biasError: deviation / Math.sqrt(n), deviationError: deviation / Math.sqrt(2 * (n - 1)) };
  }
  const sizes = groups.reduce((sum, group) => sum + group.length ** 2, 0);
  // as many differences as a group has, where all have as many
  const usual = (n - sizes / n) / (m - 1);
  const varianceBetween = (meanBetween - meanInside) / usual;
  const variance = varianceBetween + meanInside;
  // both mean squares are independent, with a relative variance of two over their degrees of freedom
  const varianceOfVariance =
    (2 * (meanBetween / usual) ** 2) / (m - 1) + (n === m ? 0 : (2 * ((1 - 1 / usual) * meanInside) ** 2) / (n - m));
  const deviation = Math.sqrt(variance);
  return {
    deviation,
    biasError: Math.sqrt((varianceBetween * sizes) / n ** 2 + meanInside / n),
    deviationError: deviation === 0 ? 0 : Math.sqrt(varianceOfVariance) / (2 * deviation),
  };
}

function squaresAround(values: readonly number[], centre: number): number {
  return values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
}
