import type { FindingCounts } from '../core/record/session-record.js';
import type { Misfit } from './misfits.js';
import type { SheetRow } from './rows.js';

/** How many places of the sheet stand how, for a list that does not work them out again. */
export function findingCounts(rows: readonly SheetRow[], misfits: readonly Misfit[]): FindingCounts {
  const fields = rows.flatMap((row) => row.fields);
  const found = (kind: string): number => fields.filter(({ finding }) => finding?.kind === kind).length;
  return {
    written: fields.filter(({ typed }) => typed.trim() !== '').length,
    confirmed: fields.filter(({ confirmation }) => confirmation !== null).length,
    agrees: found('agrees'),
    disagrees: found('disagrees'),
    cannotTell: found('cannot-tell'),
    misfits: misfits.length,
  };
}
