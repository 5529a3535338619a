import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import type { ReadingName } from '../../src/core/catalogue/measurement.js';
import type { SlipKind } from '../../src/core/crosscheck/slip.js';
import { takeReading } from '../../src/core/reading/reading.js';
import type { FlaggedRecord, WrittenThere } from '../../src/session/audit.js';
import type { Misfit } from '../../src/session/misfits.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

/** A record of a table in which these do not fit; its line is two more than its place. */
export function flaggedRecord(
  place: number,
  record: string | null,
  misfits: readonly Misfit[],
  values: { readonly [Name in ReadingName]?: number } = {},
): FlaggedRecord {
  const readings = Object.fromEntries(
    (Object.entries(values) as [ReadingName, number][]).map(([name, value]) => [
      name,
      takeReading(name, value, catalogue),
    ]),
  ) as WrittenThere['readings'];
  return {
    place,
    origin: { kind: 'table', record, line: place + 2 },
    readingCount: Object.keys(values).length,
    misfits,
    written: { readings, gauges: [], joined: new Set() },
  };
}

/** A reading that is suspected, with one slip that explains it. */
export function suspectedBy(
  kind: SlipKind,
  name: ReadingName,
  [written, restored]: readonly [written: number, restored: number],
  [wrong, cause]: readonly [wrong: number, cause: number],
): Misfit {
  return {
    kind: 'suspected',
    names: [name],
    suspicion: {
      names: [name],
      probability: wrong,
      explanations: [{ slips: [{ kind, restorations: [{ name, written, restored }] }], probability: cause }],
      conflict: null,
      expected: null,
    },
  };
}

/** A value that is seldom found. */
export function unusualAt(name: ReadingName, value: number): Misfit {
  return { kind: 'unusual', names: [name], value, usual: { low: value + 1, high: value + 20 } };
}
