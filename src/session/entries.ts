import type { DecimalSign } from '../core/reading/parse-reading.js';
import { definitionOfReading } from '../core/catalogue/definitions.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { Restoration } from '../core/crosscheck/slip.js';
import { addedByGauge } from '../core/reading/gauge.js';
import { unreachable } from '../core/result.js';
import { decimalsOf } from '../core/units/decimals-of.js';
import type { Practice } from '../core/record/practice.js';
import { gaugeOfReading } from '../core/record/practice.js';
import type { Confirmation, Confirmations } from '../core/record/confirmation.js';
import { withEntry } from '../core/record/reading-history.js';
import type { ReaderId, ReaderSheet, TypedReadings } from '../core/record/reader-sheet.js';
import { EMPTY_READER_SHEET } from '../core/record/reader-sheet.js';
import { clipText } from '../core/record/typed-text.js';

/** One reader's sheet as it stands on the screen. */
export interface ReaderEntries extends ReaderSheet {
  /**
   * What stood in each field when the reader last went on from it. Covers and findings follow from this, so that half a
   * number that is still being typed neither uncovers the camera's value nor is judged.
   */
  readonly entered: TypedReadings;
}

/** What both readers wrote, and what of it was confirmed. */
export interface Entries {
  readonly readers: Readonly<Record<ReaderId, ReaderEntries>>;
  /** whose sheet is open */
  readonly reader: ReaderId;
  readonly confirmations: Confirmations;
}

export type EntryEvent =
  | { readonly kind: 'reading-typed'; readonly field: ReadingName; readonly text: string }
  /** the reader went on from a field; `at` in ISO 8601 */
  | { readonly kind: 'reading-entered'; readonly field: ReadingName; readonly at: string }
  | { readonly kind: 'reader-chosen'; readonly reader: ReaderId }
  | { readonly kind: 'reader-named'; readonly reader: ReaderId; readonly name: string }
  /** places where the open reader entered nothing are passed over */
  | { readonly kind: 'readings-confirmed'; readonly names: readonly ReadingName[]; readonly at: string }
  | { readonly kind: 'confirmation-withdrawn'; readonly names: readonly ReadingName[] }
  /** the reader takes numbers that a slip would have replaced: as if they were typed and entered */
  | {
      readonly kind: 'restoration-taken';
      readonly restorations: readonly Restoration[];
      readonly at: string;
      readonly decimalSign?: DecimalSign;
    };

export function openEntries(sheet: ReaderSheet): ReaderEntries {
  return { ...sheet, entered: sheet.readings };
}

export const NO_ENTRIES: ReaderEntries = openEntries(EMPTY_READER_SHEET);

export function otherReader(reader: ReaderId): ReaderId {
  return reader === 'first' ? 'second' : 'first';
}

/** What a confirmation of this place stands for: what the readers entered there; empty where neither did. */
export function textToConfirm(readers: Entries['readers'], name: ReadingName): string {
  return [readers.first.entered[name].trim(), readers.second.entered[name].trim()]
    .filter((text) => text !== '')
    .join(' | ');
}

/** The confirmation of a place while it counts: nothing was entered there since, and the open reader read it. */
export function standingConfirmation(
  { readers, reader, confirmations }: Entries,
  name: ReadingName,
): Confirmation | null {
  const confirmation = confirmations[name];
  if (confirmation === undefined || readers[reader].entered[name].trim() === '') return null;
  return confirmation.text === textToConfirm(readers, name) ? confirmation : null;
}

/** What both readers wrote after an event. Gauges are needed to turn a restored value back into what the scale shows. */
export function entriesReducer(entries: Entries, event: EntryEvent, practice: Practice): Entries {
  switch (event.kind) {
    case 'reading-typed':
      return withOpenReader(entries, (open) => typed(open, event.field, event.text));
    case 'reading-entered':
      return withOpenReader(entries, (open) => enter(open, event.field, event.at));
    case 'reader-chosen':
      return entries.reader === event.reader ? entries : { ...entries, reader: event.reader };
    case 'reader-named': {
      const named = { ...entries.readers[event.reader], reader: clipText(event.name) };
      return { ...entries, readers: { ...entries.readers, [event.reader]: named } };
    }
    case 'readings-confirmed':
      return { ...entries, confirmations: confirm(entries, event.names, event.at) };
    case 'confirmation-withdrawn':
      return { ...entries, confirmations: without(entries.confirmations, event.names) };
    case 'restoration-taken':
      return withOpenReader(entries, (open) =>
        event.restorations.reduce(
          (sheet, { name, restored }) =>
            enter(typed(sheet, name, scaleText(restored, name, practice, event.decimalSign)), name, event.at),
          open,
        ),
      );
    default:
      return unreachable(event);
  }
}

/** Whether this reader wrote anything, readable or not. */
export function hasWritten({ readings }: ReaderSheet): boolean {
  return READING_NAMES.some((name) => readings[name].trim() !== '');
}

/** Confirmations of numbers that another gauge makes another value of are gone. */
export function confirmationsUnder(confirmations: Confirmations, before: Practice, now: Practice): Confirmations {
  if (before.gauges === now.gauges && before.gaugeInUse === now.gaugeInUse) return confirmations;
  const changed = READING_NAMES.filter(
    (name) => addedByGauge(gaugeOfReading(before, name)) !== addedByGauge(gaugeOfReading(now, name)),
  );
  return changed.some((name) => confirmations[name] !== undefined) ? without(confirmations, changed) : confirmations;
}

/** What the scale of the gauge in use shows for a value, to a tenth or, where the scale is finer, to its decimals, as it would be typed. */
export function scaleText(
  value: number,
  name: ReadingName,
  practice: Practice,
  decimalSign: DecimalSign = '.',
): string {
  const gauge = gaugeOfReading(practice, name);
  const steps = [gauge?.resolution ?? 1, definitionOfReading(name).resolution];
  const scale = value - addedByGauge(gauge);
  return String(Number(scale.toFixed(Math.max(1, ...steps.map(decimalsOf))))).replace('.', decimalSign);
}

function withOpenReader(entries: Entries, change: (open: ReaderEntries) => ReaderEntries): Entries {
  const open = entries.readers[entries.reader];
  const changed = change(open);
  return changed === open ? entries : { ...entries, readers: { ...entries.readers, [entries.reader]: changed } };
}

function typed(sheet: ReaderEntries, field: ReadingName, text: string): ReaderEntries {
  return { ...sheet, readings: { ...sheet.readings, [field]: clipText(text) } };
}

function enter(sheet: ReaderEntries, field: ReadingName, at: string): ReaderEntries {
  const earlier = sheet.entered[field];
  const text = sheet.readings[field];
  if (earlier === text) return sheet;
  return {
    ...sheet,
    entered: { ...sheet.entered, [field]: text },
    history: withEntry(sheet.history, earlier, { name: field, text, by: sheet.reader, at }),
  };
}

function confirm(
  { readers, reader, confirmations }: Entries,
  names: readonly ReadingName[],
  at: string,
): Confirmations {
  const open = readers[reader];
  const confirmed = names
    .filter((name) => open.entered[name].trim() !== '')
    .map((name): [ReadingName, Confirmation] => [name, { text: textToConfirm(readers, name), by: open.reader, at }]);
  return { ...confirmations, ...Object.fromEntries(confirmed) };
}

function without(confirmations: Confirmations, names: readonly ReadingName[]): Confirmations {
  return Object.fromEntries(Object.entries(confirmations).filter(([name]) => !names.includes(name as ReadingName)));
}
