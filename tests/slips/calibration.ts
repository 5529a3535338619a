import type { Rate } from './rate.js';
import { rateOf } from './rate.js';

/** What was said with some probability, and whether it was so. */
export interface Judgement {
  readonly probability: number;
  readonly isTrue: boolean;
}

/** Judgements of about the same probability. */
export interface CalibrationTally {
  readonly count: number;
  readonly probabilitySum: number;
  readonly trueCount: number;
}

/** Tenths from 0 to 1; a probability of just 1 belongs to the last. */
const BIN_COUNT = 10;

const NO_TALLY: CalibrationTally = { count: 0, probabilitySum: 0, trueCount: 0 };

export const NO_TALLIES: readonly CalibrationTally[] = Array.from({ length: BIN_COUNT }, () => NO_TALLY);

export function tallyJudgements(judgements: Iterable<Judgement>): readonly CalibrationTally[] {
  const tallies = NO_TALLIES.map((tally) => ({ ...tally }));
  for (const { probability, isTrue } of judgements) {
    const tally = tallies[Math.min(Math.floor(probability * BIN_COUNT), BIN_COUNT - 1)];
    if (tally === undefined) throw new Error(`${probability} is no probability.`);
    tally.count += 1;
    tally.probabilitySum += probability;
    tally.trueCount += isTrue ? 1 : 0;
  }
  return tallies;
}

export function addTallies(
  some: readonly CalibrationTally[],
  others: readonly CalibrationTally[],
): readonly CalibrationTally[] {
  return some.map((tally, index) => {
    const other = others[index] ?? NO_TALLY;
    return {
      count: tally.count + other.count,
      probabilitySum: tally.probabilitySum + other.probabilitySum,
      trueCount: tally.trueCount + other.trueCount,
    };
  });
}

/** One tenth: what was said on average and what came true. */
export interface CalibrationBin {
  readonly from: number;
  readonly to: number;
  /** null where nothing was said */
  readonly predicted: number | null;
  readonly observed: Rate;
}

export function calibrationBins(tallies: readonly CalibrationTally[]): readonly CalibrationBin[] {
  return tallies.map(({ count, probabilitySum, trueCount }, index) => ({
    from: index / BIN_COUNT,
    to: (index + 1) / BIN_COUNT,
    predicted: count === 0 ? null : probabilitySum / count,
    observed: rateOf(trueCount, count),
  }));
}
