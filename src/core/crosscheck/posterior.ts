import type { FaceModel } from './face-model.js';
import type { BlockFaults, Hypothesis, SheetFaults } from './hypotheses.js';
import { blockOf, gainOf, weighHypotheses } from './hypotheses.js';
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

/** An exchange between blocks that is less likely than this (logarithm, over nothing at all) is left out: six in a million. */
const NO_CROSSING = -12;

/**
 * The probability of everything that may have happened. Blocks have nothing to do with one another, so that each is weighed for
 * itself, and what happened in all of them is the product: a sum over sheets becomes a product of sums, Z = prod Z_b. Two numbers
 * of different blocks that changed places add e^gain prod Z_b over all other blocks, that is Z e^gain / (Z_a Z_b).
 *
 * @param asked the blocks of which it is asked; of others only those are weighed with which these, or others, may have exchanged
 */
export function posteriorOf(
  weighed: WeighedBlocks,
  faults: SheetFaults,
  sheet: ObservedSheet,
  model: FaceModel,
  asked: ReadonlySet<number>,
): Posterior {
  const gains = faults.across.map((fault) => gainOf(sheet, fault));
  const across = faults.across.flatMap((fault, i) => {
    if (gains[i]! <= NO_CROSSING) return [];
    return [{ fault, gain: gains[i]!, ends: [...new Set(fault.places.map((place) => blockOf(place, model)))] }];
  });
  for (const block of new Set([...asked, ...across.flatMap(({ ends }) => ends)])) {
    const own = faults.ofBlock(block);
    if (hasFaults(own) && !weighed.has(block)) weighed.set(block, weighBlock(sheet, own));
  }
  const crossings = across.map(({ fault, gain, ends }) => {
    const logShare = ends.reduce((rest, block) => rest - (weighed.get(block)?.logTotal ?? 0), gain);
    return { fault, ends, weight: Math.exp(logShare) };
  });
  const all = crossings.reduce((total, { weight }) => total + weight, 1);
  const hypotheses: ProbableHypothesis[] = [];
  for (const [block, { hypotheses: own, logTotal }] of weighed) {
    if (!hasFaults(faults.ofBlock(block))) continue;
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

function hasFaults({ atPlaces, joint }: BlockFaults): boolean {
  return atPlaces.length > 0 || joint.length > 0;
}

function weighBlock(sheet: ObservedSheet, faults: BlockFaults): WeighedBlock {
  const hypotheses = weighHypotheses(sheet, faults);
  const top = hypotheses.reduce((most, { gain }) => Math.max(most, gain), -Infinity);
  const total = hypotheses.reduce((sum, { gain }) => sum + Math.exp(gain - top), 0);
  return { hypotheses, logTotal: top + Math.log(total) };
}
