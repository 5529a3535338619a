import { invariant, succeed, type Result } from '../result.js';
import {
  limitsOfAgreement,
  pairedRepeatability,
  type Agreement,
  type PairedRepeatability,
  type TooFewPairs,
} from '../statistics/agreement.js';
import type { Reading } from './reading.js';

/** What both readers found at one place. */
export interface ReadersPair {
  readonly first: Reading;
  readonly second: Reading;
}

/** How two readers differ over many places, and how well each repeats; in the unit that all places share. */
export interface ReaderAgreement {
  /** first less second */
  readonly differences: Agreement;
  /** from the first two repeats of every place that was read at least twice; null where no place was */
  readonly repeatability: { readonly first: PairedRepeatability | null; readonly second: PairedRepeatability | null };
}

/**
 * How the second reader differs from the first over all places that both read. All pairs must be in one unit: millimetres and
 * degrees are never joined. Places of one wearer scatter unequally and right resembles left, so this describes one sheet and
 * proves nothing of the readers; a bias whose interval leaves out zero is a reason to compare how both hold the gauge. Readers who
 * repeat badly cannot agree well, which is why their repeatability stands beside it (Bland and Altman 1986).
 */
export function readerAgreement(pairs: readonly ReadersPair[]): Result<ReaderAgreement, TooFewPairs> {
  for (const { first, second } of pairs) {
    invariant(
      first.name === second.name,
      `two readers are compared at one place, not ${first.name} and ${second.name}`,
    );
  }
  const differences = limitsOfAgreement(pairs.map(({ first, second }) => first.value - second.value));
  if (!differences.ok) return differences;
  return succeed({
    differences: differences.value,
    repeatability: {
      first: repeatabilityOf(pairs.map((pair) => pair.first)),
      second: repeatabilityOf(pairs.map((pair) => pair.second)),
    },
  });
}

function repeatabilityOf(readings: readonly Reading[]): PairedRepeatability | null {
  const pairs = readings.flatMap(({ origin }) => {
    const [one, other] = origin?.repeats?.values ?? [];
    return one === undefined || other === undefined ? [] : [[one.value, other.value] as const];
  });
  return pairs.length > 0 ? pairedRepeatability(pairs) : null;
}
