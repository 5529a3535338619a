import { READING_NAMES } from '../catalogue/measurement.js';
import type { FaceModel } from './face-model.js';
import type { Hypothesis } from './hypotheses.js';
import { gainOf, weighHypotheses } from './hypotheses.js';
import type { ObservedSheet } from './observed-sheet.js';
import type { Fault } from './slip-faults.js';

/** Some faults that happened together, with their probability; none where all is right. */
interface ProbableHypothesis {
  readonly faults: readonly Fault[];
  readonly probability: number;
}

export interface Posterior {
  readonly hypotheses: readonly ProbableHypothesis[];
  /** for each place the probability that it is wrong */
  readonly wrongAt: ReadonlyMap<number, number>;
}

/** What may have happened within a block, and the logarithm of the sum of all it could have been over nothing at all. */
interface WeighedBlock {
  readonly hypotheses: readonly Hypothesis[];
  readonly logTotal: number;
}

/** The blocks that were weighed already, by their number; whoever changes a block's values takes it out. */
export type WeighedBlocks = Map<number, WeighedBlock>;

/** The block of a place, whether it is the hand's or the camera's. */
export function blockOf(place: number, { blockAt }: FaceModel): number {
  return blockAt[place % READING_NAMES.length]!;
}

/**
 * The probability of everything that may have happened. Blocks have nothing to do with one another, so that each is weighed for
 * itself, and what happened in all of them is the product: a sum over sheets becomes a product of sums, Z = prod Z_b. Two numbers
 * of different blocks that changed places add e^gain prod Z_b over all other blocks, that is Z e^gain / (Z_a Z_b).
 */
export function posteriorOf(
  weighed: WeighedBlocks,
  faults: readonly Fault[],
  sheet: ObservedSheet,
  model: FaceModel,
): Posterior {
  const inBlock = new Map<number, Fault[]>();
  const across: Fault[] = [];
  for (const fault of faults) {
    const [first, second] = fault.places;
    const block = blockOf(first!, model);
    if (second !== undefined && blockOf(second, model) !== block) across.push(fault);
    else if (inBlock.has(block)) inBlock.get(block)!.push(fault);
    else inBlock.set(block, [fault]);
  }
  for (const [block, own] of inBlock) {
    if (!weighed.has(block)) weighed.set(block, weighBlock(sheet, own));
  }
  const crossings = across.map((fault) => {
    const ends = [...new Set(fault.places.map((place) => blockOf(place, model)))];
    const logShare = ends.reduce((rest, block) => rest - (weighed.get(block)?.logTotal ?? 0), gainOf(sheet, fault));
    return { fault, ends, weight: Math.exp(logShare) };
  });
  const all = crossings.reduce((total, { weight }) => total + weight, 1);
  const hypotheses: ProbableHypothesis[] = [];
  for (const [block, { hypotheses: own, logTotal }] of weighed) {
    if (!inBlock.has(block)) continue;
    const elsewhere = crossings.reduce((total, { ends, weight }) => (ends.includes(block) ? total : total + weight), 1);
    for (const { faults: together, gain } of own) {
      hypotheses.push({ faults: together, probability: (Math.exp(gain - logTotal) * elsewhere) / all });
    }
  }
  for (const { fault, weight } of crossings) {
    hypotheses.push({ faults: [fault], probability: weight / all });
  }
  const wrongAt = new Map<number, number>();
  for (const { faults: together, probability } of hypotheses) {
    for (const { places } of together) {
      for (const place of places) wrongAt.set(place, (wrongAt.get(place) ?? 0) + probability);
    }
  }
  return { hypotheses, wrongAt };
}

function weighBlock(sheet: ObservedSheet, faults: readonly Fault[]): WeighedBlock {
  const hypotheses = weighHypotheses(sheet, faults);
  const top = hypotheses.reduce((most, { gain }) => Math.max(most, gain), -Infinity);
  const total = hypotheses.reduce((sum, { gain }) => sum + Math.exp(gain - top), 0);
  return { hypotheses, logTotal: top + Math.log(total) };
}
