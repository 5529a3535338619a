import type { ReaderId, ReaderSheet } from '../core/record/reader-sheet.js';
import { READER_IDS } from '../core/record/reader-sheet.js';
import type { ReadingEntry, ReadingHistory } from '../core/record/reading-history.js';
import { correctionsOf, lastEntered } from '../core/record/reading-history.js';

/** One entry as a history shows it. */
export interface HistoryLine {
  readonly reader: ReaderId;
  readonly entry: ReadingEntry;
  /** whether it is what counts now, was only added to, or was replaced by a later entry of the same reader */
  readonly standing: 'stands' | 'continued' | 'replaced';
  /** the other reader's number at a place that the open reader has not read yet: showing it would spoil the second reading */
  readonly isCovered: boolean;
}

/**
 * All entries of both readers, the oldest first; those without a time come before all others.
 *
 * @param open whose sheet is open
 */
export function historyLines(readers: Readonly<Record<ReaderId, ReaderSheet>>, open: ReaderId): readonly HistoryLine[] {
  const own = readers[open].history;
  const lines = READER_IDS.flatMap((reader) => {
    const { history } = readers[reader];
    return history.map((entry, place): HistoryLine => ({
      reader,
      entry,
      standing: standingOf(entry, history.slice(place + 1)),
      isCovered: reader !== open && lastEntered(own, entry.name).trim() === '',
    }));
  });
  return lines.toSorted((a, b) => timeOf(a.entry) - timeOf(b.entry));
}

function standingOf(entry: ReadingEntry, later: ReadingHistory): HistoryLine['standing'] {
  const next = later.find(({ name }) => name === entry.name);
  if (next === undefined) return 'stands';
  return correctionsOf([entry, next]).length > 0 ? 'replaced' : 'continued';
}

/** Before every time where none was kept; two such are equal. */
function timeOf({ at }: ReadingEntry): number {
  return at === null ? 0 : Date.parse(at);
}
