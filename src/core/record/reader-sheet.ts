import type { ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';

/**
 * What stands in each field, kept as it was typed: one number, several repeats separated by spaces or semicolons, or a trial
 * series; empty text where nothing was typed yet.
 */
export type TypedReadings = Readonly<Record<ReadingName, string>>;

export const NO_READINGS: TypedReadings = Object.fromEntries(READING_NAMES.map((name) => [name, ''])) as Record<
  ReadingName,
  string
>;

/** Which of two readers; each takes a sheet without seeing the other's. */
export type ReaderId = 'first' | 'second';

/** An entry that was replaced later. It stays on the sheet, struck through. */
export interface Correction {
  readonly name: ReadingName;
  /** as it had been entered */
  readonly earlier: string;
  /** the reader's name as it stood then; empty where none was typed */
  readonly by: string;
  /** when it was replaced, ISO 8601 */
  readonly at: string;
}

/** All that one reader wrote. */
export interface ReaderSheet {
  /** name or initials, as typed */
  readonly reader: string;
  /** what stands in the fields at this moment */
  readonly readings: TypedReadings;
  /** oldest first; never shortened while the wearer's sheet stands */
  readonly corrections: readonly Correction[];
}

export const EMPTY_READER_SHEET: ReaderSheet = { reader: '', readings: NO_READINGS, corrections: [] };
