import type { Measurement } from '../../src/core/catalogue/measurement.js';
import { compareReading } from '../../src/core/crosscheck/compare-reading.js';
import type { Evidence } from '../../src/core/crosscheck/reconciliation.js';
import { withinLimits, type ReadingFailure } from '../../src/core/reading/parse-reading.js';
import type { Reading } from '../../src/core/reading/reading.js';
import type { Result } from '../../src/core/result.js';
import { fail, succeed } from '../../src/core/result.js';
import type { SheetRow } from '../../src/session/rows.js';

/** What a record says, laid out as on the sheet, so that the same is found in it: one reader, nothing covered, no notes. */
export function rowsOfEvidence({ readings, estimates, catalogue }: Evidence): readonly SheetRow[] {
  return catalogue.map((measurement) => ({
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
