import type { ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import type { ReadingHistory } from './reading-history.js';

/**
 * What stands in each field, kept as it was typed: one number, several repeats separated by spaces or semicolons, or a trial
 * series; empty text where nothing was typed yet.
 */
export type TypedReadings = Readonly<Record<ReadingName, string>>;

export const NO_READINGS: TypedReadings = Object.fromEntries(READING_NAMES.map((name) => [name, ''])) as Record<
  ReadingName,
  string
>;

export const READER_IDS = ['first', 'second'] as const;

/** Which of two readers; each takes a sheet without seeing the other's. */
export type ReaderId = (typeof READER_IDS)[number];

/** All that one reader wrote. */
export interface ReaderSheet {
  /** name or initials, as typed */
  readonly reader: string;
  /** what stands in the fields at this moment */
  readonly readings: TypedReadings;
  /** all that was ever entered there */
  readonly history: ReadingHistory;
}

export const EMPTY_READER_SHEET: ReaderSheet = { reader: '', readings: NO_READINGS, history: [] };
