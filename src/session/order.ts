import type { Measurement, MeasurementId, ReadingName } from '../core/catalogue/measurement.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { ReconciledValue, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { Gauge } from '../core/reading/gauge.js';
import type { ReadingFailure } from '../core/reading/parse-reading.js';
import type { Side } from '../core/units/side.js';

/** One number of the order. */
export interface OrderValue {
  readonly name: ReadingName;
  readonly side: Side | null;
  /** what was read by hand and confirmed, in the unit of the measurement: of several repeats or two readers their one value */
  readonly value: number;
  /** `value` rounded to the resolution of the measurement, without its unit; a true minus sign */
  readonly text: string;
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
  /** the gauge of numbers in the lines had not been checked for long when they were confirmed; null: never that is noted */
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
  /** a progressive lens cannot be made up without these, and they are not in the lines */
  | { readonly kind: 'frame-incomplete'; readonly names: readonly ReadingName[] };

/** What the workshop gets: only numbers that were confirmed and that nothing speaks against. */
export interface Order {
  /** in the order of the sheet */
  readonly lines: readonly OrderLine[];
  readonly doubts: readonly OrderDoubt[];
  /** readings that are in and that nobody confirmed */
  readonly unconfirmed: readonly ReadingName[];
}
