import { readFileSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import { reconcile } from '../../src/core/crosscheck/reconcile.js';
import type { AuditTotals } from '../../src/session/audit.js';
import { createAuditTally } from '../../src/session/audit-findings.js';
import { createRecordAudit } from '../../src/session/audit-records.js';
import { gaugesOfTable } from '../../src/session/record-evidence.js';
import { decodeRecordFile, readRecordTable } from '../../src/session/record-table.js';
import { DEFAULT_SIMULATION, simulateFittings } from '../simulation/simulate-fitting.js';
import { constraintOf } from './constraint.js';
import type { SlipOutcome } from './judge-fitting.js';
import type { RecordFindings } from './record-findings.js';
import { findingsOfRecord, nameGauge } from './record-findings.js';
import type { Block, BlockOutcome, SimulationTools, WrongPdOutcome } from './simulate-block.js';
import { judgeBlock, judgeSwappedSides, judgeWrongPds } from './simulate-block.js';

/** A part of the work that a thread can do by itself. */
export type Job =
  | { readonly kind: 'simulation'; readonly block: Block; readonly withRecords: boolean }
  | { readonly kind: 'wrong-pds'; readonly block: Block }
  | { readonly kind: 'swapped-sides'; readonly block: Block }
  /** the records of a file that was read without problems, from one up to, not including, another, counted from 0 */
  | { readonly kind: 'records'; readonly file: string; readonly from: number; readonly to: number };

/** What a job gives, by its kind. */
export interface JobOutcomes {
  readonly simulation: BlockOutcome;
  readonly 'wrong-pds': readonly WrongPdOutcome[];
  readonly 'swapped-sides': readonly SlipOutcome[];
  readonly records: { readonly totals: AuditTotals; readonly records: readonly RecordFindings[] };
}

export const catalogue = assembleCatalogue(OUTSIDE_TABLES);

const TOOLS: SimulationTools = {
  simulate: simulateFittings,
  reconcile,
  constraintOf,
  nowMs: () => performance.now(),
};

export function runJob(job: Job): JobOutcomes[Job['kind']] {
  switch (job.kind) {
    case 'simulation':
      return judgeBlock(job.block, DEFAULT_SIMULATION, job.withRecords, TOOLS);
    case 'wrong-pds':
      return judgeWrongPds(job.block, DEFAULT_SIMULATION, TOOLS);
    case 'swapped-sides':
      return judgeSwappedSides(job.block, DEFAULT_SIMULATION, TOOLS);
    case 'records':
      return findingsOfRows(job.file, job.from, job.to);
  }
}

function findingsOfRows(file: string, from: number, to: number): JobOutcomes['records'] {
  const text = decodeRecordFile(readFileSync(file));
  const table = text.ok ? readRecordTable(text.value, catalogue) : text;
  if (!table.ok) throw new Error(`${file} was changed while it was read.`);
  const audit = createRecordAudit(catalogue, gaugesOfTable(table.value, catalogue, nameGauge));
  const tally = createAuditTally();
  const records: RecordFindings[] = [];
  let index = 0;
  for (const record of table.value.records()) {
    if (index >= to) break;
    if (index >= from) {
      const audited = audit(record);
      tally.add(audited.readingCount, audited.found?.misfits ?? []);
      records.push(findingsOfRecord(record, audited, catalogue));
    }
    index += 1;
  }
  return { totals: tally.totals(), records };
}
