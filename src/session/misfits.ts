import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { checkReadings } from '../core/crosscheck/check-readings.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { Inconsistency } from '../core/crosscheck/inconsistency.js';
import { likelySlipsAmong } from '../core/crosscheck/likely-slips.js';
import type { Slip } from '../core/crosscheck/slip.js';
import type { Estimate } from '../core/estimate/estimate.js';
import type { Readings } from '../core/reading/reading.js';
import type { ReadingFailure } from '../core/reading/parse-reading.js';
import { takeReading } from '../core/reading/reading.js';
import type { SheetRow } from './rows.js';

/** Something on the sheet that does not fit, and what most likely went wrong. Nothing is changed by it. */
export type Misfit = { readonly names: readonly ReadingName[]; readonly slips: readonly Slip[] } & (
  | { readonly kind: 'refused'; readonly failure: Extract<ReadingFailure, { kind: 'impossible' }> }
  | { readonly kind: 'inconsistent'; readonly inconsistency: Inconsistency }
  | { readonly kind: 'disagrees'; readonly finding: Extract<Finding, { kind: 'disagrees' }> }
);

/** Causes below this share among those considered are not worth a sentence. Chosen. */
const SHOWN_WEIGHT = 0.15;
const SHOWN_SLIPS = 2;

/**
 * What does not fit: numbers that cannot be, readings that contradict each other, readings that the camera contradicts.
 * Covered estimates are left out, so that nothing here tells what the camera saw.
 */
export function sheetMisfits(
  rows: readonly SheetRow[],
  catalogue: Catalogue,
  workingDistanceMm: number,
): readonly Misfit[] {
  const fields = rows.flatMap((row) => row.fields.map((field) => ({ ...field, covered: row.covered })));
  const readings: { -readonly [Name in keyof Readings]: Readings[Name] } = {};
  const refused: { name: ReadingName; failure: Extract<ReadingFailure, { kind: 'impossible' }> }[] = [];
  const estimates: Partial<Record<ReadingName, Estimate>> = {};
  for (const { field, reading, estimate, covered } of fields) {
    if (reading.ok) readings[field] = reading.value;
    else if (reading.failure.kind === 'impossible') refused.push({ name: field, failure: reading.failure });
    if (estimate !== null && !covered) estimates[field] = estimate;
  }
  const slipsOf = (names: readonly ReadingName[], known: Readings): readonly Slip[] =>
    likelySlipsAmong(names, { readings: known, estimates, catalogue, workingDistanceMm })
      .filter((slip) => slip.weight >= SHOWN_WEIGHT)
      .slice(0, SHOWN_SLIPS);

  const misfits: Misfit[] = [];
  const explained = new Set<ReadingName>();
  for (const { name, failure } of refused) {
    const known = { ...readings, [name]: takeReading(name, failure.value, catalogue) };
    misfits.push({ kind: 'refused', names: [name], failure, slips: slipsOf([name], known) });
  }
  for (const inconsistency of checkReadings(readings, catalogue, workingDistanceMm)) {
    const slips = slipsOf(inconsistency.names, readings);
    misfits.push({ kind: 'inconsistent', names: inconsistency.names, inconsistency, slips });
    for (const slip of slips) for (const { name } of slip.restorations) explained.add(name);
  }
  for (const { field, finding } of fields) {
    if (finding?.kind !== 'disagrees' || explained.has(field)) continue;
    misfits.push({ kind: 'disagrees', names: [field], finding, slips: slipsOf([field], readings) });
  }
  return misfits;
}
