import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { Measurement, MeasurementField, ReadingName } from '../core/catalogue/measurement.js';
import { FAR_DISTANCES, NEAR_DISTANCES } from '../core/catalogue/pupil-distances.js';
import { compareReading } from '../core/crosscheck/compare-reading.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { Estimate, FaceEstimates } from '../core/estimate/estimate.js';
import { compareReaders } from '../core/reading/compare-readers.js';
import type { Gauge } from '../core/reading/gauge.js';
import type { ReadingFailure } from '../core/reading/parse-reading.js';
import { parseReading } from '../core/reading/parse-reading.js';
import type { Reading } from '../core/reading/reading.js';
import type { Result } from '../core/result.js';
import type { Side } from '../core/units/side.js';
import { hasWritten, otherReader, standingConfirmation } from './entries.js';
import { gaugeInUse, shownMeasurements } from '../core/record/practice.js';
import type { Confirmation } from '../core/record/confirmation.js';
import type { Correction } from '../core/record/reading-history.js';
import { correctionsOf } from '../core/record/reading-history.js';
import type { SheetState } from './sheet.js';
import { openReader } from './sheet.js';
import { lidsByHand, measuredKind } from './picture-state.js';

/** What the other reader entered at the same place. */
export interface OtherReading {
  /** the other reader's name; empty where none was typed */
  readonly reader: string;
  /** null while it is covered: the open reader has not read this place yet */
  readonly reading: Result<Reading, ReadingFailure> | null;
}

/** One field of the sheet with all that stands beside it. */
export interface FieldRow {
  readonly field: ReadingName;
  readonly side: Side | null;
  /** as it stands in the field of the open reader */
  readonly typed: string;
  /** what the open reader entered: parsed, or why it cannot be */
  readonly reading: Result<Reading, ReadingFailure>;
  /** what the camera says; null without a measured picture, or where it is `notComparable` */
  readonly estimate: Estimate | null;
  /** why the camera's value is left out: with a squint both eyes never fixate together, as its distances take for granted */
  readonly notComparable: 'squint' | null;
  /** the estimate rests on lid marks as they were found: no hand has set them yet */
  readonly areLidsFound: boolean;
  /** what the estimate is made from */
  readonly source: 'picture' | 'sweep';
  /** of the open reader's own reading; null without reading or estimate, or where the row is covered */
  readonly finding: Finding | null;
  /** the open reader's entries of this place that were replaced, oldest first */
  readonly corrections: readonly Correction[];
  /** null where the other reader entered nothing here */
  readonly other: OtherReading | null;
  /** both readers' readings as one where both are in and agree, else the open reader's own; null without one */
  readonly together: Reading | null;
  /** both are in and lie too far apart to be one */
  readonly readersDiffer: boolean;
  /** null where nobody confirmed it, or something was entered since */
  readonly confirmation: Confirmation | null;
}

/** One row of the sheet: a measurement with R and L, or without sides. */
export interface SheetRow {
  /** with the practice's own tolerance where it has one */
  readonly measurement: Measurement;
  /** the gauge that it is read with; null for a plain rule */
  readonly gauge: Gauge | null;
  readonly fields: readonly FieldRow[];
  /** the camera's values of this row are hidden until all its hand readings are in */
  readonly covered: boolean;
  /** it is to be measured as is usual with a squint */
  readonly withSquint: boolean;
}

/** What is left out with a squint: as the camera works it out, both eyes look at the same thing. */
export const NEEDS_BOTH_EYES: readonly ReadingName[] = [FAR_DISTANCES, NEAR_DISTANCES].flatMap(({ whole, R, L }) => [
  whole,
  R,
  L,
]);

/**
 * The rows of the sheet as the open reader may see them: the blocks in the practice's order, without the rows that it hides.
 *
 * @param estimates null without a measured picture
 */
export function sheetRows(
  state: SheetState,
  estimates: FaceEstimates | null,
  catalogue: Catalogue,
): readonly SheetRow[] {
  const { practice } = state.settings;
  return shownMeasurements(practice, catalogue).map((measurement): SheetRow => {
    const gauge = gaugeInUse(practice, measurement.id);
    const read = measurement.fields.map((place) =>
      readField(place, { state, estimates, catalogue, measurement, gauge }),
    );
    const covered = state.settings.covered && !state.alone && !read.every(({ reading }) => reading.ok);
    const fields = read.map((row): FieldRow => {
      const { reading, estimate } = row;
      const comparable = reading.ok && estimate !== null && !covered;
      return {
        ...row,
        finding: comparable ? compareReading(reading.value, estimate, measurement.tolerance) : null,
      };
    });
    return { measurement, gauge, fields, covered, withSquint: state.notes.squint && measurement.changesWithSquint };
  });
}

interface RowContext {
  readonly state: SheetState;
  readonly estimates: FaceEstimates | null;
  readonly catalogue: Catalogue;
  readonly measurement: Measurement;
  readonly gauge: Gauge | null;
}

function readField(
  { name, side }: MeasurementField,
  { state, estimates, catalogue, measurement, gauge }: RowContext,
): Omit<FieldRow, 'finding'> {
  const open = openReader(state);
  const other = state.readers[otherReader(state.reader)];
  const reading = parseReading(open.entered[name], name, catalogue, gauge);
  const otherReading = parseReading(other.entered[name], name, catalogue, gauge);
  const both =
    reading.ok && otherReading.ok ? compareReaders(reading.value, otherReading.value, measurement.tolerance) : null;
  const notComparable = state.notes.squint && NEEDS_BOTH_EYES.includes(name) ? 'squint' : null;
  return {
    field: name,
    side,
    typed: open.readings[name],
    reading,
    estimate: notComparable === null ? estimateOf(estimates, name) : null,
    notComparable,
    areLidsFound: areLidsFound(state, name),
    source: measuredKind(state.picture) ?? 'picture',
    corrections: correctionsOf(open.history).filter((correction) => correction.name === name),
    other:
      other.entered[name].trim() === '' ? null : { reader: other.reader, reading: reading.ok ? otherReading : null },
    together: both?.agree === true ? both.together : reading.ok ? reading.value : null,
    readersDiffer: both !== null && !both.agree,
    confirmation: standingConfirmation(state, name),
  };
}

/** What the camera says of the same; null without a picture, or where it does not measure that, or could not this time. */
function estimateOf(estimates: FaceEstimates | null, name: ReadingName): Estimate | null {
  const known: { readonly [Name in ReadingName]?: Estimate } = estimates ?? {};
  return known[name] ?? null;
}

function areLidsFound({ picture }: SheetState, name: ReadingName): boolean {
  const byHand = lidsByHand(picture);
  if (byHand === null) return false;
  if (name === 'apertureR') return !byHand.R;
  if (name === 'apertureL') return !byHand.L;
  return false;
}

/** Whether any hand reading stands on the open sheet, readable or not. */
export function hasReadings(state: SheetState): boolean {
  return hasWritten(openReader(state));
}
