import type { Catalogue } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import { conflictOf } from './conflict.js';
import type { FaceModel } from './face-model.js';
import { faceModel } from './face-model.js';
import type { Fault, Hypothesis } from './hypotheses.js';
import { interaction, weighHypotheses } from './hypotheses.js';
import type { Change, ObservedSheet } from './observed-sheet.js';
import { observeSheet, predictFromOthers, withChanges } from './observed-sheet.js';
import type { Evidence, Explanation, ReconciledValue, Reconciliation, Suspicion } from './reconciliation.js';

/**
 * From this probability on that something is wrong, it is said. Chosen so that of sheets without any slip fewer than one in a
 * hundred is questioned.
 */
const SUSPECTED = 0.5;

/** A reading whose own share is this much belongs to the suspected ones. */
const INVOLVED = 0.05;

/** Explanations below this probability are not worth a sentence. Chosen. */
const WORTH_SAYING = 0.02;

/** More suspicions than this say that the sheet belongs to several faces; the first ones are enough to begin with. */
const MOST_SUSPICIONS = 6;

/** Two changes that alter the sheet's likelihood by less than this (logarithm) together than apart concern different things. */
const APART = 0.5;

/**
 * Readings, camera and the rules between them as one normal distribution with possible gross errors (data reconciliation):
 * for each slip, alone and in pairs, the posterior probability that it happened. The most probable suspicion is taken as
 * settled and the rest is asked again, so that several slips in different corners of a sheet are all found.
 *
 * Method as in the literature on gross errors in steady-state data reconciliation; the hypotheses, their frequencies and the
 * distribution of faces are this project's. Nothing is changed: each explanation only tells the value that it would restore.
 */
export function reconcile(evidence: Evidence): Reconciliation {
  const model = modelOf(evidence.catalogue, evidence.workingDistanceMm);
  const observed = observeSheet(evidence, model);
  if (observed.names.length === 0) return { suspicions: [], values: {}, doubts: {} };
  const suspicions: Suspicion[] = [];
  const doubts: { [Name in ReadingName]?: number } = {};
  const settled = new Set<number>();
  let sheet = observed;
  while (suspicions.length < MOST_SUSPICIONS) {
    const posterior = posteriorOf(weighHypotheses(sheet, evidence, settled));
    observed.names.forEach((name, place) => {
      const doubt = posterior.wrongAt(new Set([place]));
      if (!settled.has(place)) doubts[name] = Math.max(doubts[name] ?? 0, doubt);
    });
    const suspected = suspectedPlaces(sheet, model, posterior, settled);
    if (suspected === null) break;
    const { suspicion, accepted } = explain(suspected, sheet, observed, evidence, model, posterior);
    suspicions.push(suspicion);
    sheet = accept(sheet, accepted, suspected);
    for (const place of [...suspected.places, ...accepted.flatMap(({ places }) => places)]) settled.add(place);
  }
  return { suspicions, values: reconciledValues(sheet, observed, settled, model), doubts };
}

const MODELS = new WeakMap<Catalogue, Map<number, FaceModel>>();

function modelOf(catalogue: Catalogue, workingDistanceMm: number): FaceModel {
  const known = MODELS.get(catalogue) ?? new Map<number, FaceModel>();
  MODELS.set(catalogue, known);
  const model = known.get(workingDistanceMm) ?? faceModel(catalogue, workingDistanceMm);
  known.set(workingDistanceMm, model);
  return model;
}

interface Posterior {
  readonly hypotheses: readonly (Hypothesis & { readonly probability: number })[];
  /** probability that something is wrong at one or more of these places */
  wrongAt(places: ReadonlySet<number>): number;
}

function posteriorOf(hypotheses: readonly Hypothesis[]): Posterior {
  const top = hypotheses.reduce((most, { gain }) => Math.max(most, gain), -Infinity);
  const total = hypotheses.reduce((sum, { gain }) => sum + Math.exp(gain - top), 0);
  const weighed = hypotheses.map((one) => ({ ...one, probability: Math.exp(one.gain - top) / total }));
  return {
    hypotheses: weighed,
    wrongAt: (places) =>
      weighed.reduce((sum, { faults, probability }) => (touches(faults, places) ? sum + probability : sum), 0),
  };
}

function touches(faults: readonly Fault[], places: ReadonlySet<number>): boolean {
  return faults.some((fault) => fault.places.some((place) => places.has(place)));
}

/** The places of which one or more are wrong, with the probability of it. */
interface Suspected {
  readonly places: ReadonlySet<number>;
  readonly probability: number;
}

/** One reading that is probably wrong; else the readings of one rule of which some is; null where all is probably right. */
function suspectedPlaces(
  { names, places }: ObservedSheet,
  { relations }: FaceModel,
  posterior: Posterior,
  settled: ReadonlySet<number>,
): Suspected | null {
  const single = names.map((_, place) => new Set([place])).filter(([place]) => !settled.has(place ?? -1));
  const joined = relations.flatMap(({ shares }) => {
    const all = (Object.keys(shares) as ReadingName[]).map((name) => places.get(name));
    return all.every((place) => place !== undefined && !settled.has(place)) ? [new Set(all as number[])] : [];
  });
  return mostSuspected(single, posterior) ?? mostSuspected(joined, posterior);
}

function mostSuspected(groups: readonly ReadonlySet<number>[], posterior: Posterior): Suspected | null {
  let most: Suspected | null = null;
  for (const places of groups) {
    const probability = posterior.wrongAt(places);
    if (probability >= SUSPECTED && probability > (most?.probability ?? 0)) most = { places, probability };
  }
  return most;
}

/** What probably happened at the suspected places, without what happened elsewhere and has nothing to do with it. */
function explain(
  suspected: Suspected,
  sheet: ObservedSheet,
  observed: ObservedSheet,
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
    const slips = faults.flatMap(({ slip }) => (slip === null ? [] : [slip]));
    if (slips.length < faults.length || probability < WORTH_SAYING) return [];
    return [{ slips: slips as unknown as Explanation['slips'], probability }];
  });
  const accepted = ranked[0]?.faults ?? [];
  const handPlaces = [...shares]
    .filter(([place, share]) => place < sheet.names.length && (share >= INVOLVED || suspected.places.has(place)))
    .sort(([, a], [, b]) => b - a)
    .map(([place]) => place);
  const [first] = handPlaces;
  const names = handPlaces.map((place) => sheet.names[place]!);
  return {
    accepted,
    suspicion: {
      names,
      probability: suspected.probability,
      explanations,
      conflict: first === undefined ? null : conflictOf(observed, sheet.names[first]!, evidence, model),
      expected: first === undefined ? null : expectedAt(first, sheet, accepted, model),
    },
  };
}

/** The faults of a hypothesis that touch the places, and those that they work together with. */
function connectedFaults(
  sheet: ObservedSheet,
  faults: readonly Fault[],
  places: ReadonlySet<number>,
): readonly Fault[] {
  const here = faults.filter((fault) => touches([fault], places));
  return faults.filter(
    (fault) => here.includes(fault) || here.some((one) => Math.abs(interaction(sheet, one, fault)) >= APART),
  );
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
function accept(sheet: ObservedSheet, faults: readonly Fault[], suspected: Suspected): ObservedSheet {
  const changed = withChanges(
    sheet,
    faults.flatMap(({ changes }) => changes),
  );
  const open = faults.flatMap(({ changes, places }) => (changes.length > 0 ? [] : places));
  const left = faults.length > 0 ? open : [...suspected.places];
  return left.length === 0 ? changed : leftOut(changed, left);
}

/** The sheet with the values at these places put where all others expect them, so that they say nothing any more. */
function leftOut(sheet: ObservedSheet, places: readonly number[]): ObservedSheet {
  const { off } = predictFromOthers(sheet, places);
  return withChanges(
    sheet,
    places.map((place, i): Change => ({ place, by: -off[i]! })),
  );
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
  const name = sheet.names[place]!;
  const variance = Math.max(covariance[0]![0]! - sheet.ownVariance[place]!, 0);
  if (variance > model.covarianceOf(name, name) / 4) return null;
  return { value: model.means[name] + changed.residual[place]! - off[0]!, standardUncertainty: Math.sqrt(variance) };
}

/**
 * The most probable true values: E[x | y] = y - u² (S^-1 r) with the variance u² - u⁴ (S^-1)_ii. Where a reading is suspected,
 * all others alone say what it should be.
 */
function reconciledValues(
  sheet: ObservedSheet,
  observed: ObservedSheet,
  settled: ReadonlySet<number>,
  model: FaceModel,
): Reconciliation['values'] {
  const open = [...settled].filter((place) => place < observed.size);
  const rest = open.length === 0 ? sheet : leftOut(sheet, open);
  const predicted = open.length === 0 ? null : predictFromOthers(sheet, open).covariance;
  const values: { [Name in ReadingName]?: ReconciledValue } = {};
  sheet.names.forEach((name, place) => {
    const own = sheet.ownVariance[place]!;
    const at = open.indexOf(place);
    const variance = at >= 0 ? predicted![at]![at]! - own : own - own ** 2 * sheet.precision[place]![place]!;
    values[name] = {
      value: model.means[name] + rest.residual[place]! - (at >= 0 ? 0 : own * rest.weighted[place]!),
      standardUncertainty: Math.sqrt(Math.max(variance, 0)),
    };
  });
  return values;
}
