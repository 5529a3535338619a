import type { Evidence, Reconcile } from '../../src/core/crosscheck/reconciliation.js';
import type { Slip } from '../../src/core/crosscheck/slip.js';
import type { FittingRecord } from '../../src/session/record-table.js';
import type { SimulationOptions } from '../simulation/simulate-fitting.js';
import type { Constraint, SheetOutcome, SlippedSheet } from './judge-fitting.js';
import { isSuspected, judgeFitting } from './judge-fitting.js';
import { recordOfEvidence } from './record-evidence.js';

/** Fittings that are simulated in one go. They depend on their seed alone, not on who simulates them. */
export interface Block {
  readonly seed: number;
  readonly count: number;
  /** number of the block's first fitting, from 0 */
  readonly first: number;
}

/** Chosen: some tenths of a second of work. */
export const BLOCK_SIZE = 100;

/** Blocks with seeds of their own; another seed shares none of them as long as there are fewer than ten thousand. */
export function blocksOf(seed: number, count: number): readonly Block[] {
  return Array.from({ length: Math.ceil(count / BLOCK_SIZE) }, (_, index) => ({
    seed: 10_000 * seed + index,
    count: Math.min(BLOCK_SIZE, count - index * BLOCK_SIZE),
    first: index * BLOCK_SIZE,
  }));
}

/** What a block is simulated and judged with. */
export interface SimulationTools {
  readonly simulate: (seed: number, count: number, options: SimulationOptions) => Iterable<SlippedSheet>;
  readonly reconcile: Reconcile;
  readonly constraintOf: (slip: Slip, evidence: Evidence) => Constraint;
  readonly nowMs: () => number;
}

export interface BlockOutcome {
  readonly sheets: readonly SheetOutcome[];
  /** what stood on the sheets; empty where nobody asked for it */
  readonly records: readonly FittingRecord[];
}

/** Simulates a block, has every sheet cross-checked, and judges what is said of it. */
export function judgeBlock(
  { seed, count, first }: Block,
  options: SimulationOptions,
  withRecords: boolean,
  { simulate, reconcile, constraintOf, nowMs }: SimulationTools,
): BlockOutcome {
  const sheets: SheetOutcome[] = [];
  const records: FittingRecord[] = [];
  for (const fitting of simulate(seed, count, options)) {
    const start = nowMs();
    const reconciliation = reconcile(fitting.evidence);
    const ms = nowMs() - start;
    if (withRecords) records.push(recordOfEvidence(fitting.evidence, String(first + sheets.length + 1)));
    sheets.push(judgeFitting(fitting, reconciliation, constraintOf, ms));
  }
  return { sheets, records };
}

/** A PD that is wrong by `WRONG_PD_MM`, all else written right. */
export interface WrongPdOutcome {
  /** nothing but the PD and the camera's estimates, so that no other reading can tell */
  readonly isAlone: boolean;
  readonly isFlagged: boolean;
}

/** The figure. */
export const WRONG_PD_MM = 1.5;

/** Clean sheets with a picture on which the PD is written too large and too small by turns. */
export function judgeWrongPds(
  { seed, count }: Block,
  options: SimulationOptions,
  { simulate, reconcile }: SimulationTools,
): readonly WrongPdOutcome[] {
  const outcomes: WrongPdOutcome[] = [];
  for (const { evidence } of simulate(seed, count, { ...options, slipShare: 0, secondSlipShare: 0, cameraShare: 1 })) {
    const { pdFar } = evidence.readings;
    if (pdFar === undefined) continue;
    const by = outcomes.length % 4 < 2 ? WRONG_PD_MM : -WRONG_PD_MM;
    const wrong = { ...pdFar, value: pdFar.value + by };
    for (const isAlone of [false, true]) {
      const readings = isAlone ? { pdFar: wrong } : { ...evidence.readings, pdFar: wrong };
      outcomes.push({ isAlone, isFlagged: isSuspected('pdFar', reconcile({ ...evidence, readings })) });
    }
  }
  return outcomes;
}
