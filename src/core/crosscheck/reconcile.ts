import { measurementOfReading } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import { roundToStep } from '../units/round-to-step.js';
import { conflictOf } from './conflict.js';
import type { FaceModel } from './face-model.js';
import { faceModel } from './face-model.js';
import { blockOf, faultsElsewhere, faultsOf, gainOf, interaction } from './hypotheses.js';
import type { ObservedSheet } from './observed-sheet.js';
import { leftOut, nameAt, observeSheet, placeOf, predictFromOthers, withChanges } from './observed-sheet.js';
import type { Posterior, WeighedBlocks } from './posterior.js';
import { posteriorOf } from './posterior.js';
import { reconciledValues } from './reconciled-values.js';
import type { Evidence, Explanation, Reconciliation, Suspicion } from './reconciliation.js';
import type { Slip, SlipKind } from './slip.js';
import type { Fault } from './slip-faults.js';
import { SUSPECTED } from './suspected.js';

/** From this probability on one reading is named alone. */
const SURE_WHICH = 0.8;

/** Several readings are named where one of them is wrong more probably than the most doubtful alone, by this much. */
const SURER_TOGETHER = 0.15;

/** From this probability on an explanation is taken as what happened while other places are looked at. */
const TAKEN_AS_TRUE = 0.6;

/** Where others know a PD this well, one standard deviation, what they expect is what is offered. Chosen: two trained readings. */
const KNOWN_BY_OTHERS_MM = 0.65;

/** A reading whose own share is this much belongs to the suspected ones. */
const INVOLVED = 0.05;

/** Explanations below this probability are not worth a sentence. Chosen. */
const WORTH_SAYING = 0.02;

/** More suspicions than this say that the sheet belongs to several faces; the first ones are enough to begin with. */
const MOST_SUSPICIONS = 6;

/** Two changes that alter the sheet's likelihood by less than this (logarithm) together than apart concern different things. */
const APART = 0.5;

/** Nor do two that each explain so much that this share of it is more than what they do to one another. Chosen. */
const APART_SHARE = 0.2;

/**
 * Readings, camera and the rules between them as one normal distribution with possible gross errors (data reconciliation):
 * for each slip, alone and in pairs, the posterior probability that it happened. The most probable suspicion is taken as
 * settled and the rest is asked again, so that several slips in different corners of a sheet are all found.
 *
 * Method as in the literature on gross errors in steady-state data reconciliation; the hypotheses, their frequencies and the
 * distribution of faces are this project's. Nothing is changed: each explanation only tells the value that it would restore.
 */
export function reconcile(evidence: Evidence): Reconciliation {
  const model = faceModel(evidence.catalogue, evidence.workingDistanceMm);
  const observed = observeSheet(evidence, model);
  const { suspicions, doubts, sheet, settled } = suspect(observed, evidence, model, new Set(model.blocks.keys()));
  return {
    suspicions,
    values: reconciledValues(sheet, settled, model),
    doubts: Object.fromEntries(observed.handPlaces.map((place) => [nameAt(place), doubts[place]!])),
  };
}

/**
 * The suspicions alone, and of some blocks alone: the same that `reconcile` has, where nothing can be suspected in the other blocks
 * (see `suspicion-bound.ts`).
 */
export function suspicionsWithin(blocks: ReadonlySet<number>, evidence: Evidence): readonly Suspicion[] {
  const model = faceModel(evidence.catalogue, evidence.workingDistanceMm);
  return suspect(observeSheet(evidence, model), evidence, model, blocks).suspicions;
}

/** What is suspected, and the sheet once all of it was put right. */
interface Suspected {
  readonly suspicions: readonly Suspicion[];
  /** by place: the largest probability that it is wrong as long as it was not settled */
  readonly doubts: Float64Array;
  readonly sheet: ObservedSheet;
  readonly settled: ReadonlySet<number>;
}

function suspect(
  observed: ObservedSheet,
  evidence: Evidence,
  model: FaceModel,
  blocks: ReadonlySet<number>,
): Suspected {
  const suspicions: Suspicion[] = [];
  const doubts = new Float64Array(READING_NAMES.length);
  const settled = new Set<number>();
  const weighed: WeighedBlocks = new Map();
  let sheet = observed;
  let faults = faultsOf(observed, evidence, model);
  while (suspicions.length < MOST_SUSPICIONS) {
    const posterior = posteriorOf(weighed, faults, sheet, model, blocks);
    for (const place of observed.handPlaces) {
      if (!settled.has(place)) doubts[place] = Math.max(doubts[place]!, posterior.wrongAt.get(place) ?? 0);
    }
    const suspected = suspectedPlaces(sheet, model, posterior, settled);
    if (suspected === null) break;
    const { suspicion, accepted } = explain(suspected, sheet, evidence, model, posterior);
    suspicions.push(suspicion);
    sheet = accept(sheet, accepted);
    const touched = [...suspected.places, ...accepted.flatMap(({ places }) => places)];
    for (const place of touched) {
      settled.add(place);
      weighed.delete(blockOf(place, model));
    }
    faults = faultsElsewhere(faults, touched);
  }
  return { suspicions, doubts, sheet, settled };
}

function touches(faults: readonly Fault[], places: ReadonlySet<number>): boolean {
  return faults.some((fault) => fault.places.some((place) => places.has(place)));
}

/** The places of which one or more are wrong, with the probability of it. */
interface SuspectedPlaces {
  readonly places: ReadonlySet<number>;
  readonly probability: number;
}

/**
 * One reading that is probably wrong; or the readings of one rule, where it is much surer that one of them is wrong than
 * which; null where all is probably right.
 */
function suspectedPlaces(
  { precision }: ObservedSheet,
  { relations }: FaceModel,
  { hypotheses, wrongAt }: Posterior,
  settled: ReadonlySet<number>,
): SuspectedPlaces | null {
  let single: SuspectedPlaces | null = null;
  for (const [place, probability] of wrongAt) {
    if (place >= READING_NAMES.length || settled.has(place)) continue;
    if (probability > (single?.probability ?? 0)) single = { places: new Set([place]), probability };
  }
  if (single !== null && single.probability >= SURE_WHICH) return single;
  let joined: SuspectedPlaces | null = null;
  for (const { shares } of relations) {
    const places = new Set((Object.keys(shares) as ReadingName[]).map(placeOf));
    if ([...places].some((place) => precision[place]![place] === 0 || settled.has(place))) continue;
    // no more than what each of them has
    const most = [...places].reduce((sum, place) => sum + (wrongAt.get(place) ?? 0), 0);
    if (most < SUSPECTED) continue;
    const probability = hypotheses.reduce((sum, one) => (touches(one.faults, places) ? sum + one.probability : sum), 0);
    if (probability > (joined?.probability ?? 0)) joined = { places, probability };
  }
  const most = joined !== null && joined.probability > (single?.probability ?? 0) + SURER_TOGETHER ? joined : single;
  return most !== null && most.probability >= SUSPECTED ? most : null;
}

/** What probably happened at the suspected places, without what happened elsewhere and has nothing to do with it. */
function explain(
  suspected: SuspectedPlaces,
  sheet: ObservedSheet,
  evidence: Evidence,
  model: FaceModel,
  posterior: Posterior,
): { readonly suspicion: Suspicion; readonly accepted: readonly Fault[] } {
  const told = new Map<string, { faults: readonly Fault[]; probability: number; best: number }>();
  const shares = new Map<number, number>();
  for (const { faults, probability } of posterior.hypotheses) {
    if (!touches(faults, suspected.places)) continue;
    const here = connectedFaults(sheet, faults, suspected.places);
    for (const place of new Set(here.flatMap(({ places }) => places))) {
      shares.set(place, (shares.get(place) ?? 0) + probability);
    }
    const key = keyOf(here);
    const before = told.get(key);
    // kinds that restore the same values are one explanation: the most probable kind speaks
    if (before === undefined) told.set(key, { faults: here, probability, best: probability });
    else {
      told.set(key, {
        faults: probability > before.best ? here : before.faults,
        probability: before.probability + probability,
        best: Math.max(probability, before.best),
      });
    }
  }
  const ranked = [...told.values()].sort((a, b) => b.probability - a.probability);
  const explanations = ranked.flatMap(({ faults, probability }): readonly Explanation[] => {
    const slips = faults.flatMap(({ slip }) =>
      slip === null ? [] : [restoredByOthers(slip, sheet, faults, evidence, model)],
    );
    if (slips.length < faults.length || probability < WORTH_SAYING) return [];
    return [{ slips: slips as unknown as Explanation['slips'], probability }];
  });
  const [best] = ranked;
  const isTaken = best !== undefined && best.probability >= TAKEN_AS_TRUE;
  const involved = isTaken ? new Set(best.faults.flatMap(({ places }) => places)) : null;
  const handPlaces = [...shares]
    .filter(([place, share]) => {
      if (place >= READING_NAMES.length) return false;
      return suspected.places.has(place) || (involved === null ? share >= INVOLVED : involved.has(place));
    })
    .sort(([, a], [, b]) => b - a)
    .map(([place]) => place);
  const first = handPlaces[0] ?? [...suspected.places][0]!;
  const accepted = isTaken
    ? best.faults
    : [{ slip: null, places: handPlaces, changes: [], scatter: Infinity, logPrior: 0 }];
  return {
    accepted,
    suspicion: {
      names: handPlaces.map(nameAt),
      probability: suspected.probability,
      explanations,
      conflict: conflictOf(sheet, nameAt(first), evidence, model),
      expected: expectedAt(first, sheet, best?.faults ?? [], model),
    },
  };
}

/** The kinds that restore a number computed from the one that was written, which others may know better. */
const COMPUTED: readonly SlipKind[] = ['near-for-distance', 'distance-for-near'];

/** The slip with the number that all others expect, where they know it to a reading's doubt. */
function restoredByOthers(
  slip: Slip,
  sheet: ObservedSheet,
  faults: readonly Fault[],
  { catalogue }: Evidence,
  model: FaceModel,
): Slip {
  const [restoration] = slip.restorations;
  if (restoration === undefined || !COMPUTED.includes(slip.kind)) return slip;
  const expected = expectedAt(placeOf(restoration.name), sheet, faults, model);
  if (expected === null || expected.standardUncertainty > KNOWN_BY_OTHERS_MM) return slip;
  const restored = roundToStep(expected.value, measurementOfReading(catalogue, restoration.name).resolution);
  return restored === restoration.written ? slip : { ...slip, restorations: [{ ...restoration, restored }] };
}

/** The faults of a hypothesis that touch the places, and those that they work together with. */
function connectedFaults(
  sheet: ObservedSheet,
  faults: readonly Fault[],
  places: ReadonlySet<number>,
): readonly Fault[] {
  const here = faults.filter((fault) => touches([fault], places));
  return faults.filter((fault) => here.includes(fault) || here.some((one) => workTogether(sheet, one, fault)));
}

/** Whether two faults explain together what neither explains alone, or hide one another. */
function workTogether(sheet: ObservedSheet, a: Fault, b: Fault): boolean {
  const weight = Math.min(gainOf(sheet, a), gainOf(sheet, b));
  return Math.abs(interaction(sheet, a, b)) >= Math.max(APART, APART_SHARE * weight);
}

function keyOf(faults: readonly Fault[]): string {
  return faults
    .flatMap(({ slip, places }) =>
      slip === null
        ? places.map((place) => `${place}?`)
        : slip.restorations.map(({ name, restored }) => `${name}=${restored}`),
    )
    .sort()
    .join(' ');
}

/** The sheet as if what probably happened had been put right; places that no slip explains are left out of account. */
function accept(sheet: ObservedSheet, faults: readonly Fault[]): ObservedSheet {
  const changes = faults.flatMap((fault) => fault.changes);
  const changed = changes.length > 0 ? withChanges(sheet, changes) : sheet;
  const open = faults.flatMap((fault) => (fault.changes.length > 0 ? [] : fault.places));
  return open.length === 0 ? changed : leftOut(changed, open);
}

/** What all else says of a place, the accepted faults put right; null where that is hardly more than what faces are like. */
function expectedAt(
  place: number,
  sheet: ObservedSheet,
  accepted: readonly Fault[],
  model: FaceModel,
): Suspicion['expected'] {
  const others = accepted.flatMap(({ changes }) => changes.filter((change) => change.place !== place));
  const changed = withChanges(sheet, others);
  const open = accepted.flatMap(({ changes, places }) => (changes.length > 0 ? [] : places));
  const places = [place, ...open.filter((one) => one !== place)];
  const { off, covariance } = predictFromOthers(changed, places);
  const name = nameAt(place);
  const variance = Math.max(covariance[0]![0]! - sheet.ownVariance[place]!, 0);
  if (variance > model.covariance[place]![place]! / 4) return null;
  return { value: model.means[name] + changed.residual[place]! - off[0]!, standardUncertainty: Math.sqrt(variance) };
}
