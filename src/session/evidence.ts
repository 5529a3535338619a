import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Evidence } from '../core/crosscheck/reconciliation.js';
import type { Estimate } from '../core/estimate/estimate.js';
import { writtenReadings } from './misfits.js';
import type { Practice } from '../core/record/practice.js';
import type { SheetRow } from './rows.js';

/**
 * What the rows say, for reconciling: all readings, refused numbers too, as a slip may explain them; of the camera only what is
 * not covered, so that nothing that follows tells what it saw before its time. Hidden rows are no part of it.
 *
 * @param hasPicture false without a measured picture or sweep
 */
export function sheetEvidence(
  rows: readonly SheetRow[],
  catalogue: Catalogue,
  given: { readonly hasPicture: boolean; readonly workingDistanceMm: number; readonly practice: Practice },
): Omit<Evidence, 'catalogue'> {
  return {
    readings: writtenReadings(rows, catalogue),
    estimates: given.hasPicture ? uncoveredEstimates(rows) : null,
    workingDistanceMm: given.workingDistanceMm,
    gauges: given.practice.gauges,
  };
}

function uncoveredEstimates(rows: readonly SheetRow[]): { readonly [Name in ReadingName]?: Estimate } {
  const seen = rows
    .filter(({ covered }) => !covered)
    .flatMap(({ fields }) => fields)
    .flatMap(({ field, estimate }) => (estimate === null ? [] : [[field, estimate] as const]));
  return Object.fromEntries(seen);
}
