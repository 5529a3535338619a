import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { Measurement } from '../core/catalogue/measurement.js';
import { compareReading } from '../core/crosscheck/compare-reading.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { Estimate } from '../core/estimate/estimate.js';
import type { FaceEstimates } from '../core/estimate/estimate.js';
import type { ReadingFailure } from '../core/reading/parse-reading.js';
import { parseReading } from '../core/reading/parse-reading.js';
import type { Reading } from '../core/reading/reading.js';
import type { Result } from '../core/result.js';
import type { Side } from '../core/units/side.js';
import type { SheetState } from './sheet.js';
import type { ReadingField } from './typed-sheet.js';
import { READING_FIELDS } from './typed-sheet.js';

/** One field of the sheet with all that stands beside it. */
export interface FieldRow {
  readonly field: ReadingField;
  readonly side: Side | null;
  /** as it stands in the field */
  readonly typed: string;
  /** what was entered: parsed, or why it cannot be */
  readonly reading: Result<Reading, ReadingFailure>;
  /** what the camera says; null without a measured picture */
  readonly estimate: Estimate | null;
  /** the estimate rests on lid marks as they were found: no hand has set them yet */
  readonly areLidsFound: boolean;
  /** what the estimate is made from */
  readonly source: 'picture' | 'sweep';
  /** null without both, or where the row is covered */
  readonly finding: Finding | null;
}

/** One row of the sheet: a measurement with R and L, or without sides. */
export interface SheetRow {
  readonly measurement: Measurement;
  readonly fields: readonly FieldRow[];
  /** the camera's values of this row are hidden until all its hand readings are in */
  readonly covered: boolean;
}

function isReadingField(name: string): name is ReadingField {
  return (READING_FIELDS as readonly string[]).includes(name);
}

function areLidsFound({ picture }: SheetState, field: ReadingField): boolean {
  if (picture.kind !== 'measured') return false;
  const { lids } = picture.marking.features;
  if (field === 'apertureR') return lids.R.source !== 'hand';
  if (field === 'apertureL') return lids.L.source !== 'hand';
  return false;
}

/** The rows of the sheet in the order of the catalogue; `estimates` is null without a measured picture. */
export function sheetRows(
  state: SheetState,
  estimates: FaceEstimates | null,
  catalogue: Catalogue,
): readonly SheetRow[] {
  const rows: SheetRow[] = [];
  for (const measurement of catalogue) {
    const places = measurement.fields.flatMap(({ name, side }) =>
      isReadingField(name) ? [{ field: name, side }] : [],
    );
    if (places.length === 0) continue;
    const read = places.map(({ field, side }) => ({
      field,
      side,
      typed: state.readings[field],
      reading: parseReading(state.entered[field], field, catalogue),
      estimate: estimates?.[field] ?? null,
      areLidsFound: areLidsFound(state, field),
      source: state.picture.kind === 'swept' ? ('sweep' as const) : ('picture' as const),
    }));
    const covered = state.settings.covered && !state.alone && !read.every(({ reading }) => reading.ok);
    const fields = read.map((row): FieldRow => {
      const { reading, estimate } = row;
      const comparable = reading.ok && estimate !== null && !covered;
      return {
        ...row,
        finding: comparable ? compareReading(reading.value, estimate, measurement.tolerance) : null,
      };
    });
    rows.push({ measurement, fields, covered });
  }
  return rows;
}

/** Whether any hand reading stands on the sheet, readable or not. */
export function hasReadings(state: SheetState): boolean {
  return READING_FIELDS.some((field) => state.readings[field].trim() !== '');
}
