import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { Measurement } from '../core/catalogue/measurement.js';
import { compareReading } from '../core/crosscheck/compare-reading.js';
import type { Evidence } from '../core/crosscheck/reconciliation.js';
import { withinLimits, type ReadingFailure } from '../core/reading/parse-reading.js';
import type { Reading } from '../core/reading/reading.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { SheetRow } from './rows.js';

/**
 * What a record says, laid out as on the sheet, so that the same is found in it: one reader, nothing covered, no notes.
 *
 * @param measurements the rows
 */
export function rowsOfEvidence(
  { readings, estimates }: Pick<Evidence, 'readings' | 'estimates'>,
  measurements: Catalogue,
): readonly SheetRow[] {
  return measurements.map((measurement) => ({
    measurement,
    gauge: null,
    covered: false,
    withSquint: false,
    fields: measurement.fields.map(({ name, side }) => {
      const written = readings[name];
      const reading: Result<Reading, ReadingFailure> =
        written === undefined ? fail({ kind: 'empty' }) : judgeReading(written, measurement);
      const estimate = estimates?.[name] ?? null;
      return {
        field: name,
        side,
        typed: '',
        reading,
        estimate,
        notComparable: null,
        areLidsFound: false,
        source: 'picture',
        finding:
          reading.ok && estimate !== null ? compareReading(reading.value, estimate, measurement.tolerance) : null,
        corrections: [],
        other: null,
        together: reading.ok ? reading.value : null,
        readersDiffer: false,
        confirmation: null,
      };
    }),
  }));
}

/** The limits that the sheet sets to what is typed, on numbers that are read already. */
function judgeReading(reading: Reading, measurement: Measurement): Result<Reading, ReadingFailure> {
  const values = reading.origin?.repeats?.values ?? [{ scale: reading.value, value: reading.value }];
  for (const [index, one] of values.entries()) {
    const judged = withinLimits(one, values.length > 1 ? index + 1 : null, measurement);
    if (!judged.ok) return judged;
  }
  return succeed(reading);
}
