import type { ReadingName } from '../../src/core/catalogue/measurement.js';
import type { Practice } from '../../src/core/record/practice.js';
import { DEFAULT_PRACTICE } from '../../src/core/record/practice.js';
import { EMPTY_READER_SHEET, NO_READINGS } from '../../src/core/record/reader-sheet.js';
import type { SheetSettings, TypedSheet } from '../../src/core/record/typed-sheet.js';
import { DEFAULT_SHEET_SETTINGS, EMPTY_TYPED_SHEET } from '../../src/core/record/typed-sheet.js';

/** What was typed into some of the fields. */
export type SomeReadings = Partial<Record<ReadingName, string>>;

export interface Filling {
  readonly second?: SomeReadings;
  readonly settings?: Partial<Omit<SheetSettings, 'practice'>>;
  readonly practice?: Partial<Practice>;
}

/** A sheet on which readers A and B wrote these. */
export function filledSheet(
  first: SomeReadings,
  { second = {}, settings = {}, practice = {} }: Filling = {},
): TypedSheet {
  return {
    ...EMPTY_TYPED_SHEET,
    readers: {
      first: { ...EMPTY_READER_SHEET, reader: 'A', readings: { ...NO_READINGS, ...first } },
      second: { ...EMPTY_READER_SHEET, reader: 'B', readings: { ...NO_READINGS, ...second } },
    },
    settings: { ...DEFAULT_SHEET_SETTINGS, ...settings, practice: { ...DEFAULT_PRACTICE, ...practice } },
  };
}
