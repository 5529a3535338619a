import type { Result } from '../result.js';
import { fail, invariant, succeed } from '../result.js';
import { freeOfDust } from '../statistics/free-of-dust.js';
import { combineUncertainties, rectangularUncertainty } from '../statistics/uncertainty.js';

/** What a tried size was found to be: too large, just right, or too small. */
export const VERDICTS = ['loose', 'fits', 'tight'] as const;

export type Verdict = (typeof VERDICTS)[number];

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
  /** of the interval alone: anything within it is equally likely */
  readonly standardUncertainty: number;
}

/** Why trials give no size. */
export type TrialFailure =
  /** the smaller size was found looser than the larger one, or one size two things: one verdict is wrong, try both again */
  | { readonly kind: 'trials-contradict'; readonly smaller: Trial; readonly larger: Trial }
  /** everything was loose, or everything tight: try `tryNext` */
  | { readonly kind: 'trials-one-sided'; readonly verdict: 'loose' | 'tight'; readonly tryNext: number };

/** The order in which verdicts come as sizes grow. */
const RANK: Readonly<Record<Verdict, number>> = { tight: 0, fits: 1, loose: 2 };

/**
 * The size that fits, after at least one trial with sizes that come in steps of `step` (all above zero, one unit).
 *
 * Where something fits, the value is the middle of what fits, and the true size lies between the points half way to the nearest
 * sizes that were found loose and tight; where no such neighbour was tried, the next size might have fitted as well, and the
 * interval ends one whole step away. Where nothing fits, the value is midway between the largest tight and the smallest loose
 * size, and the interval reaches from one to the other. The uncertainty is that of an even chance all over the interval
 * (JCGM 100:2008, 4.3.7), about the value, which need not be its middle.
 */
export function resultOfTrials(trials: readonly Trial[], step: number): Result<TrialResult, TrialFailure> {
  invariant(trials.length > 0, 'a series has at least one trial');
  invariant(step > 0, `sizes come in steps above zero, got ${step}`);
  const contradiction = findContradiction(trials);
  if (contradiction !== null) return fail(contradiction);

  const sizes = (verdict: Verdict): readonly number[] =>
    trials.filter((trial) => trial.verdict === verdict).map((trial) => trial.size);
  const fitting = sizes('fits');
  const largestTight = sizes('tight').length > 0 ? Math.max(...sizes('tight')) : null;
  const smallestLoose = sizes('loose').length > 0 ? Math.min(...sizes('loose')) : null;

  if (fitting.length > 0) {
    const [from, to] = [Math.min(...fitting), Math.max(...fitting)];
    return succeed({
      trials,
      ...within(
        (from + to) / 2,
        largestTight === null ? from - step : (largestTight + from) / 2,
        smallestLoose === null ? to + step : (to + smallestLoose) / 2,
      ),
    });
  }
  if (largestTight === null) {
    invariant(smallestLoose !== null, 'a trial without verdict');
    const below = freeOfDust(smallestLoose - step);
    return fail({ kind: 'trials-one-sided', verdict: 'loose', tryNext: below > 0 ? below : smallestLoose / 2 });
  }
  if (smallestLoose === null) {
    return fail({ kind: 'trials-one-sided', verdict: 'tight', tryNext: freeOfDust(largestTight + step) });
  }
  return succeed({ trials, ...within((largestTight + smallestLoose) / 2, largestTight, smallestLoose) });
}

function within(value: number, low: number, high: number): Omit<TrialResult, 'trials'> {
  const fromMiddle = value - (low + high) / 2;
  return {
    value: freeOfDust(value),
    low: freeOfDust(low),
    high: freeOfDust(high),
    standardUncertainty: combineUncertainties([rectangularUncertainty((high - low) / 2), fromMiddle]),
  };
}

/**
 * Two trials of which one must be wrong: the smaller size was found looser than the larger one, or one size was found to be two
 * things. Of several such pairs the first that was tried.
 */
function findContradiction(trials: readonly Trial[]): Extract<TrialFailure, { kind: 'trials-contradict' }> | null {
  for (const [i, later] of trials.entries()) {
    for (const earlier of trials.slice(0, i)) {
      const [smaller, larger] = earlier.size <= later.size ? [earlier, later] : [later, earlier];
      const isSameSize = smaller.size === larger.size;
      if (isSameSize ? smaller.verdict !== larger.verdict : RANK[smaller.verdict] > RANK[larger.verdict]) {
        return { kind: 'trials-contradict', smaller, larger };
      }
    }
  }
  return null;
}
