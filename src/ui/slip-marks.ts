import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Explanation } from '../core/crosscheck/reconciliation.js';
import type { Misfit } from '../session/misfits.js';
import { explanationsOf } from '../session/explanations.js';
import { words } from './language.js';
import { plainNumber, tenthNumber } from './numbers.js';
import { listWords, placesWords, placeWords, restorationsByRow } from './slip-places.js';

/** Chosen: below this a cause is said as one that may be, and its number is not offered. */
const PROBABLE = 0.5;

/** The cause that may be offered: more probable than all others together. */
export function probableExplanation(misfit: Misfit): Explanation | null {
  const [best, next] = explanationsOf(misfit);
  if (best === undefined) return null;
  return isProbable(best.probability, next?.probability ?? 0) ? best : null;
}

/** Where another cause is as probable to the per cent, as where near and far distances contradict each other, neither is offered. */
function isProbable(probability: number, next: number): boolean {
  return probability >= PROBABLE && Math.round(100 * probability) > Math.round(100 * next);
}

/** The places that an explanation would change. */
export function placesOf({ slips }: Explanation): readonly ReadingName[] {
  return slips.flatMap(({ restorations }) => restorations.map(({ name }) => name));
}

/** Whether two explanations say the same of the same places, with other numbers. */
export function isSameSlip(one: Explanation, other: Explanation): boolean {
  const keyOf = ({ slips }: Explanation): string =>
    slips.map(({ kind, restorations }) => [kind, ...restorations.map(({ name }) => name)].join(' ')).join(', ');
  return keyOf(one) === keyOf(other);
}

/** Whether the best explanation is more probable than all else together, whatever it would restore. */
export function isProbableSlip(explanations: readonly Explanation[]): boolean {
  const [best] = explanations;
  if (best === undefined) return false;
  const ofSame = (isSame: boolean) =>
    explanations
      .filter((one) => isSameSlip(best, one) === isSame)
      .reduce((sum, { probability }) => sum + probability, 0);
  return isProbable(ofSame(true), ofSame(false));
}

/**
 * The short phrase beside the field `name`, such as `probably 71: wrong ten`; null where nothing about it does not fit, or where
 * its finding says so already.
 */
export function rowMark(name: ReadingName, sheet: { readonly misfits: readonly Misfit[] }): string | null {
  for (const misfit of sheet.misfits) {
    const restoring = restoringWords(misfit, name);
    if (restoring !== null) return restoring;
  }
  const own = sheet.misfits.find(({ kind, names }) => kind !== 'disagrees' && names.includes(name));
  return own === undefined ? null : markWords(own, name);
}

function restoringWords(misfit: Misfit, name: ReadingName): string | null {
  const explanations = explanationsOf(misfit);
  const [best] = explanations;
  if (best === undefined || !isProbableSlip(explanations)) return null;
  for (const { kind, restorations } of best.slips) {
    const restoration = restorations.find((one) => one.name === name);
    if (restoration === undefined) continue;
    const value = probableExplanation(misfit) !== null ? tenthNumber(restoration.restored) : null;
    return words.slip.probably(value, words.slipsInShort[kind]);
  }
  return null;
}

function markWords(misfit: Misfit, name: ReadingName): string {
  if (misfit.kind === 'refused') return words.slip.marks.refused[misfit.failure.kind];
  if (misfit.kind === 'suspected' && misfit.names[0] !== name) return words.slip.marks.inDoubt;
  return words.slip.marks[misfit.kind];
}

/** Leads to a field. */
export function readAgainWords(name: ReadingName, catalogue: Catalogue): string {
  return words.slip.readAgain(placeWords(name, catalogue));
}

/**
 * Offers what a slip would have replaced: `Use 71, keep 61 on record`, for two places
 * `Use 5 for crest height R and 3 for crest height L, keep 3 and 5 on record`, and for both sides of two rows
 * `Use 24 and 25 for frontal angle R and L, 18 and 19 for splay angle R and L, keep 18, 19, 24 and 25 on record`.
 */
export function offerWords({ slips }: Explanation, catalogue: Catalogue): string {
  const all = slips.flatMap(({ restorations }) => restorations);
  if (all.length > MOST_NAMED_SINGLY) {
    const rows = restorationsByRow(all, catalogue);
    const used = rows.map((row) =>
      words.slip.valueFor(
        listWords(row.map(({ restored }) => tenthNumber(restored))),
        placesWords(
          row.map(({ name }) => name),
          catalogue,
        ),
      ),
    );
    return words.slip.offer(used.join(', '), listWords(rows.flat().map(({ written }) => plainNumber(written))));
  }
  const used = all.map(({ name, restored }) =>
    all.length === 1 ? tenthNumber(restored) : words.slip.valueFor(tenthNumber(restored), placeWords(name, catalogue)),
  );
  const kept = all.map(({ written }) => plainNumber(written));
  return words.slip.offer(listWords(used), listWords(kept));
}

/** Chosen: more numbers are named row by row. */
const MOST_NAMED_SINGLY = 3;

/** Said after the offer to who hears it alone, where the offer itself names no place. */
export function offerPlaceWords(explanation: Explanation, catalogue: Catalogue): string {
  const [name, second] = placesOf(explanation);
  return name === undefined || second !== undefined ? '' : words.slip.offerPlace(placeWords(name, catalogue));
}
