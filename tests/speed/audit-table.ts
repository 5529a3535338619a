import type { Catalogue } from '../../src/core/catalogue/catalogue.js';
import { recordOfEvidence } from '../../src/session/record-evidence.js';
import type { FittingRecord, RecordedEstimate } from '../../src/session/record-table.js';
import { writeRecordTable } from '../../src/session/record-table.js';
import { DEFAULT_SIMULATION, simulateFittings } from '../simulation/simulate-fitting.js';

/** A part of a table of simulated fittings. */
export interface TablePart {
  /** CSV; its first line is the header */
  readonly text: string;
  /** for each record whether a slip was made in it */
  readonly slipped: readonly boolean[];
}

/** Chosen: so few slips that nearly all records are right, as in a table that a practice looks through. */
export const SLIP_SHARE = 0.05;

/** Large enough that every column is needed in each part. */
export const PART_RECORDS = 1000;

/** The part of this number, from 0; the same for the same seed and number. */
export function simulateTablePart(seed: number, part: number, catalogue: Catalogue): TablePart {
  const slipped: boolean[] = [];
  const records: FittingRecord[] = [];
  const options = { ...DEFAULT_SIMULATION, slipShare: SLIP_SHARE };
  for (const { evidence, slips } of simulateFittings(1000 * seed + part, PART_RECORDS, options)) {
    slipped.push(slips.length > 0);
    records.push(asExported(recordOfEvidence(evidence, `R${part * PART_RECORDS + records.length + 1}`)));
  }
  return { text: writeRecordTable(records, catalogue), slipped };
}

/** With the camera's values to a hundredth, as a program would write them. */
function asExported(record: FittingRecord): FittingRecord {
  const estimates = Object.fromEntries(
    Object.entries(record.estimates).map(([name, { value, standardUncertainty }]: [string, RecordedEstimate]) => [
      name,
      { value: toHundredth(value), standardUncertainty: toHundredth(standardUncertainty) },
    ]),
  );
  return { ...record, estimates };
}

function toHundredth(value: number): number {
  return Math.round(100 * value) / 100;
}
