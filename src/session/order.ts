import type { Measurement, MeasurementId, ReadingName } from '../core/catalogue/measurement.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { ReconciledValue, Reconciliation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { Gauge } from '../core/reading/gauge.js';
import { checkOfGauge } from '../core/reading/gauge.js';
import type { ReadingFailure } from '../core/reading/parse-reading.js';
import type { Reading } from '../core/reading/reading.js';
import { freeOfDust } from '../core/statistics/free-of-dust.js';
import { decimalsOf } from '../core/units/decimals-of.js';
import type { Side } from '../core/units/side.js';
import type { Confirmation } from '../core/record/confirmation.js';
import type { Misfit, SumMisfit } from './misfits.js';
import { sumMisfits } from './misfits.js';
import type { FieldRow, SheetRow } from './rows.js';
import type { SheetState } from './sheet.js';

/** One number of the order. */
export interface OrderValue {
  readonly name: ReadingName;
  readonly side: Side | null;
  /**
   * What was read by hand and confirmed, in the unit of the measurement: of several repeats or two readers their one value. It is
   * the number of `text`, so that whatever is worked out from it can be worked out again from the paper.
   */
  readonly value: number;
  /** as `confirmedText` gives it */
  readonly text: string;
  /** of the number itself, from its gauge, its reader and its repeats: one standard deviation, in the unit of the measurement */
  readonly standardUncertainty: number;
  /** what all that is written and the camera say together; null where nothing else says much */
  readonly reconciled: ReconciledValue | null;
  /** the reader's name as it stood when the number was confirmed; empty where none was typed */
  readonly by: string;
  /** ISO 8601 */
  readonly at: string;
}

/** One measurement of the order. */
export interface OrderLine {
  readonly measurement: Measurement;
  /** R above L; a side without a value that may be ordered is not there */
  readonly values: readonly OrderValue[];
}

/** What whoever works from the order has to know, as facts. */
export type OrderDoubt =
  /** the numbers do not fit: none of them is in the lines */
  | { readonly kind: 'suspected'; readonly suspicion: Suspicion }
  /** both eyes do not make the whole; the numbers are in the lines where they were confirmed all the same */
  | { readonly kind: 'does-not-add-up'; readonly misfit: SumMisfit }
  /** the camera contradicts a number that was confirmed all the same */
  | { readonly kind: 'camera-disagrees'; readonly name: ReadingName; readonly finding: Finding }
  /** the camera can neither confirm nor contradict a number that was confirmed */
  | { readonly kind: 'camera-cannot-tell'; readonly name: ReadingName; readonly finding: Finding }
  /** what stands there is no reading */
  | {
      readonly kind: 'refused';
      readonly name: ReadingName;
      readonly typed: string;
      readonly failure: Exclude<ReadingFailure, { kind: 'empty' }>;
    }
  /** both readers read it, too far apart to be one: read again; not in the lines */
  | { readonly kind: 'readers-differ'; readonly name: ReadingName }
  /** only the reader whose sheet is not open read these: they are not in the lines */
  | { readonly kind: 'read-by-other-only'; readonly names: readonly ReadingName[] }
  /** nobody confirmed these: they are not in the lines */
  | { readonly kind: 'unconfirmed'; readonly names: readonly ReadingName[] }
  /**
   * the gauge of numbers in the lines had not been checked within a year when they were confirmed; null where no day of a check
   * is noted that came before
   */
  | {
      readonly kind: 'gauge-overdue';
      readonly gauge: Gauge;
      readonly names: readonly ReadingName[];
      readonly daysSinceCheck: number | null;
    }
  /** both eyes never fixate together: these are to have been measured with one eye covered */
  | { readonly kind: 'squint'; readonly measurements: readonly MeasurementId[] }
  /** a pupil's diameter without the light in which it was read says little */
  | { readonly kind: 'pupil-without-light'; readonly names: readonly ReadingName[] }
  /** a progressive lens cannot be placed without these, and they are not in the lines */
  | { readonly kind: 'frame-incomplete'; readonly names: readonly ReadingName[] };

/** What the workshop gets: only numbers that were confirmed and that nothing speaks against. */
export interface Order {
  /** in the order of the sheet */
  readonly lines: readonly OrderLine[];
  readonly doubts: readonly OrderDoubt[];
  /** readings that are in and that nobody confirmed */
  readonly unconfirmed: readonly ReadingName[];
}

/** Without these a progressive lens cannot be placed before the eye, nor its corridor chosen. Common practice. */
const NEEDED_FOR_PROGRESSIVE: readonly ReadingName[] = [
  'monoPdR',
  'monoPdL',
  'boxLensWidth',
  'boxLensHeight',
  'distanceBetweenLenses',
  'fittingHeightR',
  'fittingHeightL',
];

/** A reading that the open reader took, with the row in which it stands. */
interface TakenReading {
  readonly row: SheetRow;
  readonly field: FieldRow;
  readonly reading: Reading;
}

/** One that stands in the lines. */
interface OrderedReading extends TakenReading {
  readonly confirmation: Confirmation;
}

/**
 * The order as it stands: what was confirmed and nothing speaks against, and all that is still open. Hidden rows are no part
 * of it.
 *
 * @param rows of the open reader
 * @param reconciliation of the readings in these rows
 */
export function orderOf(
  rows: readonly SheetRow[],
  reconciliation: Reconciliation,
  state: Pick<SheetState, 'notes' | 'prescription'>,
): Order {
  const taken = rows.flatMap((row) =>
    row.fields.flatMap((field): readonly TakenReading[] =>
      field.together === null ? [] : [{ row, field, reading: field.together }],
    ),
  );
  const suspected = suspectedReadings(reconciliation);
  const ordered = taken.flatMap((one): readonly OrderedReading[] => {
    const { field, readersDiffer, confirmation } = one.field;
    return confirmation === null || readersDiffer || suspected.has(field) ? [] : [{ ...one, confirmation }];
  });
  const unconfirmed = taken.filter(({ field }) => field.confirmation === null).map(({ field }) => field.field);
  return {
    lines: rows.flatMap((row) => {
      const values = ordered.filter((one) => one.row === row).map((one) => orderValue(one, reconciliation));
      return values.length === 0 ? [] : [{ measurement: row.measurement, values }];
    }),
    doubts: [
      ...reconciliation.suspicions.map((suspicion) => ({ kind: 'suspected', suspicion }) as const),
      ...sumMisfits(rows, reconciliation).map((misfit) => ({ kind: 'does-not-add-up', misfit }) as const),
      ...rows.flatMap(({ fields }) => fields.flatMap(fieldDoubts)),
      ...openDoubts(rows, unconfirmed),
      ...gaugeDoubts(ordered),
      ...wearerDoubts(ordered, state),
    ],
    unconfirmed,
  };
}

/** The values of an order by the names of their readings. */
export function valuesOfOrder({ lines }: Order): { readonly [Name in ReadingName]?: number } {
  return Object.fromEntries(lines.flatMap(({ values }) => values.map(({ name, value }) => [name, value])));
}

/**
 * The number that a confirmation stands for as it is printed, without its unit and with a true minus sign: as it was read, and to
 * tenths where it is worked out from several readings, halves up. It has at least the decimals of the measurement's steps, and is
 * never rounded to them: nobody confirmed that number.
 */
export function confirmedText({ value, origin }: Reading, { resolution }: Measurement): string {
  const isWorkedOut = origin === null || (origin.repeats?.values.length ?? 1) > 1;
  const most = isWorkedOut ? 1 : 2;
  // dust must not take a mean such as 63.25 below its half
  const rounded = Math.round(freeOfDust(value * 10 ** most)) / 10 ** most;
  const decimals = Math.min(most, Math.max(decimalsOf(resolution), decimalsOf(rounded)));
  const text = Math.abs(rounded).toFixed(decimals);
  return rounded < 0 && Number(text) !== 0 ? `\u2212${text}` : text;
}

/** The readings that are suspected: none of them is ordered, whatever else is said of it. */
export function suspectedReadings({ suspicions }: Reconciliation): ReadonlySet<ReadingName> {
  return new Set(suspicions.flatMap(({ names }) => names));
}

/**
 * The readings that nobody confirmed yet and that nothing speaks against: no misfit and no suspicion names them, and the readers
 * agree.
 *
 * @param misfits of these rows
 */
export function readyToConfirm(
  rows: readonly SheetRow[],
  misfits: readonly Pick<Misfit, 'names'>[],
  reconciliation: Reconciliation,
): readonly ReadingName[] {
  const doubtful = new Set([...suspectedReadings(reconciliation), ...misfits.flatMap(({ names }) => names)]);
  return rows
    .flatMap(({ fields }) => fields)
    .filter(({ together, confirmation, readersDiffer }) => together !== null && confirmation === null && !readersDiffer)
    .map(({ field }) => field)
    .filter((name) => !doubtful.has(name));
}

function orderValue({ row, field, reading, confirmation }: OrderedReading, { values }: Reconciliation): OrderValue {
  const text = confirmedText(reading, row.measurement);
  return {
    name: field.field,
    side: field.side,
    value: Number(text.replace('\u2212', '-')),
    text,
    standardUncertainty: reading.standardUncertainty,
    reconciled: values[field.field] ?? null,
    by: confirmation.by,
    at: confirmation.at,
  };
}

function fieldDoubts({ field, typed, reading, finding, readersDiffer, confirmation }: FieldRow): readonly OrderDoubt[] {
  const doubts: OrderDoubt[] = [];
  if (!reading.ok && reading.failure.kind !== 'empty') {
    doubts.push({ kind: 'refused', name: field, typed, failure: reading.failure });
  }
  if (readersDiffer) doubts.push({ kind: 'readers-differ', name: field });
  if (confirmation !== null && finding?.kind === 'disagrees') {
    doubts.push({ kind: 'camera-disagrees', name: field, finding });
  }
  if (confirmation !== null && finding?.kind === 'cannot-tell') {
    doubts.push({ kind: 'camera-cannot-tell', name: field, finding });
  }
  return doubts;
}

function openDoubts(rows: readonly SheetRow[], unconfirmed: readonly ReadingName[]): readonly OrderDoubt[] {
  const others = rows
    .flatMap(({ fields }) => fields)
    .filter(({ other, reading }) => other !== null && !reading.ok && reading.failure.kind === 'empty')
    .map(({ field }) => field);
  return [
    ...(others.length === 0 ? [] : [{ kind: 'read-by-other-only', names: others } as const]),
    ...(unconfirmed.length === 0 ? [] : [{ kind: 'unconfirmed', names: unconfirmed } as const]),
  ];
}

/** Held against the day of confirming: an order that is printed again later says the same. */
function gaugeDoubts(ordered: readonly OrderedReading[]): readonly OrderDoubt[] {
  const gauges = new Set(ordered.flatMap(({ row }) => row.gauge ?? []));
  return [...gauges].flatMap((gauge): readonly OrderDoubt[] => {
    const checks = ordered
      .filter(({ row }) => row.gauge === gauge)
      .map(({ field, confirmation }) => ({ name: field.field, check: checkOfGauge(gauge, confirmation.at) }));
    const overdue = checks.filter(({ check }) => check.kind !== 'recent');
    if (overdue.length === 0) return [];
    const days = overdue.flatMap(({ check }) => (check.kind === 'old' ? [check.daysAgo] : []));
    const daysSinceCheck = days.length === 0 ? null : Math.max(...days);
    return [{ kind: 'gauge-overdue', gauge, names: overdue.map(({ name }) => name), daysSinceCheck }];
  });
}

function wearerDoubts(
  ordered: readonly OrderedReading[],
  { notes, prescription }: Pick<SheetState, 'notes' | 'prescription'>,
): readonly OrderDoubt[] {
  const names = ordered.map(({ field }) => field.field);
  const withSquint = [...new Set(ordered.filter(({ row }) => row.withSquint).map(({ row }) => row.measurement.id))];
  const pupils = names.filter((name) => name === 'pupilDiameterR' || name === 'pupilDiameterL');
  const missing = NEEDED_FOR_PROGRESSIVE.filter((name) => !names.includes(name));
  const doubts: OrderDoubt[] = [];
  if (withSquint.length > 0) doubts.push({ kind: 'squint', measurements: withSquint });
  if (notes.light === null && pupils.length > 0) doubts.push({ kind: 'pupil-without-light', names: pupils });
  if (prescription.lensKind === 'progressive' && missing.length > 0) {
    doubts.push({ kind: 'frame-incomplete', names: missing });
  }
  return doubts;
}
