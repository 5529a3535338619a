import type { Evidence, Reconcile } from '../../src/core/crosscheck/reconciliation.js';
import type { Slip } from '../../src/core/crosscheck/slip.js';
import { recordOfEvidence } from '../../src/session/record-evidence.js';
import type { FittingRecord } from '../../src/session/record-table.js';
import type { SimulationOptions } from '../simulation/simulate-fitting.js';
import { mustBeSeen } from './constraint.js';
import type { Constraint, SheetOutcome, SlipOutcome, SlippedSheet } from './judge-fitting.js';
import { isSuspected, judgeFitting } from './judge-fitting.js';

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

/** With what a wrong PD is held against the picture: all other readings, each PD read once or three times; or nothing else. */
export const WRONG_PD_CONDITIONS = ['read-once', 'read-three-times', 'alone'] as const;

export type WrongPdCondition = (typeof WRONG_PD_CONDITIONS)[number];

/** A PD that is wrong by `WRONG_PD_MM`, all else written right. */
export interface WrongPdOutcome {
  readonly condition: WrongPdCondition;
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
  const clean = { ...options, slipShare: 0, secondSlipShare: 0, cameraShare: 1 };
  return WRONG_PD_CONDITIONS.flatMap((condition) => {
    const outcomes: WrongPdOutcome[] = [];
    const sheets = simulate(seed, count, { ...clean, pdRepeats: condition === 'read-three-times' ? 3 : 1 });
    for (const { evidence } of sheets) {
      const { pdFar } = evidence.readings;
      if (pdFar === undefined) continue;
      const by = outcomes.length % 2 === 0 ? WRONG_PD_MM : -WRONG_PD_MM;
      const wrong = { ...pdFar, value: pdFar.value + by };
      const readings = condition === 'alone' ? { pdFar: wrong } : { ...evidence.readings, pdFar: wrong };
      outcomes.push({ condition, isFlagged: isSuspected('pdFar', reconcile({ ...evidence, readings })) });
    }
    return outcomes;
  });
}

/** Clean sheets on which each measurement in turn has its sides swapped, where these differ by what the issue asks for. */
export function judgeSwappedSides(
  { seed, count }: Block,
  options: SimulationOptions,
  { simulate, reconcile, constraintOf }: SimulationTools,
): readonly SlipOutcome[] {
  const outcomes: SlipOutcome[] = [];
  for (const { evidence } of simulate(seed, count, { ...options, slipShare: 0, secondSlipShare: 0 })) {
    for (const { fields, unit } of evidence.catalogue) {
      const [right, left] = fields.flatMap(({ name }) => evidence.readings[name] ?? []);
      if (right === undefined || left === undefined) continue;
      if (Math.abs(right.value - left.value) < mustBeSeen('sides-swapped', unit)) continue;
      const readings = {
        ...evidence.readings,
        [right.name]: { ...right, value: left.value },
        [left.name]: { ...left, value: right.value },
      };
      const restorations = [
        { name: right.name, written: left.value, restored: right.value },
        { name: left.name, written: right.value, restored: left.value },
      ];
      const swapped: SlippedSheet = {
        evidence: { ...evidence, readings },
        slips: [{ kind: 'sides-swapped', restorations }],
      };
      outcomes.push(...judgeFitting(swapped, reconcile(swapped.evidence), constraintOf, 0).slips);
    }
  }
  return outcomes;
}
