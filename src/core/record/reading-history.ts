import type { ReadingName } from '../catalogue/measurement.js';
import { partsOfSeries } from '../reading/parse-reading.js';

/** What was entered at one place at one moment. */
export interface ReadingEntry {
  readonly name: ReadingName;
  /** as it was typed; empty where the place was cleared */
  readonly text: string;
  /** the reader's name as it stood then; empty where none was typed */
  readonly by: string;
  /** when that was noted, ISO 8601; null only for the first entry of a place, in sheets that kept no time of it */
  readonly at: string | null;
}

/** All that one reader ever entered, oldest first. It only grows. */
export type ReadingHistory = readonly ReadingEntry[];

/** An entry that was replaced later. It stays on the sheet, struck through. */
export interface Correction {
  readonly name: ReadingName;
  /** as it had been entered */
  readonly earlier: string;
  /** the name of the reader who replaced it; empty where none was typed */
  readonly by: string;
  /** when it was replaced, ISO 8601 */
  readonly at: string;
}

/** What was entered last at a place; empty where nothing was. */
export function lastEntered(history: ReadingHistory, name: ReadingName): string {
  return history.findLast((entry) => entry.name === name)?.text ?? '';
}

/**
 * The history with one more entry. What stood there before without an entry of its own (typed, and the page closed before the
 * reader went on) comes in front of it, so that nothing that counted is missing.
 */
export function withEntry(history: ReadingHistory, before: string, entry: ReadingEntry): ReadingHistory {
  const isKnown = lastEntered(history, entry.name) === before;
  const missed: ReadingHistory = isKnown ? [] : [{ name: entry.name, text: before, by: entry.by, at: entry.at }];
  return [...history, ...missed, entry];
}

/** The entries that were replaced, in the order in which that happened. */
export function correctionsOf(history: ReadingHistory): readonly Correction[] {
  const last = new Map<ReadingName, string>();
  return history.flatMap(({ name, text, by, at }) => {
    const earlier = last.get(name) ?? '';
    last.set(name, text);
    return at !== null && replaces(earlier, text) ? [{ name, earlier, by, at }] : [];
  });
}

/** Whether `later` is `earlier` with nothing taken away or changed: the histories of one session at two moments. */
export function isContinuedBy(earlier: ReadingHistory, later: ReadingHistory): boolean {
  return earlier.every((entry, place) => {
    const same = later[place];
    return (
      same !== undefined &&
      same.name === entry.name &&
      same.text === entry.text &&
      same.by === entry.by &&
      same.at === entry.at
    );
  });
}

/** Whether something that had been entered is gone: not where repeats or trials were only added behind it. */
function replaces(earlier: string, text: string): boolean {
  const now = partsOfSeries(text);
  return partsOfSeries(earlier).some((part, place) => now[place] !== part);
}
