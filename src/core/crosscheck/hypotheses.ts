import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import type { ObservedSheet } from './observed-sheet.js';
import { gainOfChanges, nameAt, placeOf, predictFromOthers } from './observed-sheet.js';
import type { Evidence } from './reconciliation.js';
import type { Fault } from './slip-faults.js';
import { faultsOfOne, faultsOfTwo, halvedEyes, SLIP_FREQUENCY } from './slip-faults.js';

/** Some faults that happened together; none for a sheet without any. */
export interface Hypothesis {
  readonly faults: readonly Fault[];
  /** logarithm of its probability over that of a sheet without any fault */
  readonly gain: number;
}

/** How often a reading is wrong in a way that no usual slip explains, and how often the camera is misled. Chosen. */
const UNEXPLAINED_FREQUENCY = 0.0005;
const MISLED_FREQUENCY = 0.003;

/** Hypotheses that are less likely than the best by more than this (logarithm) are left out: 3 in ten thousand. */
const NEGLIGIBLE = 8;

/** What leaving a value out may gain beyond putting it right, logarithm. Generous. */
const MARGIN = 1;

/** How many of the best single faults are joined with every exchange of two numbers. Chosen. */
const BEAM = 6;

/** All single faults that a sheet may have. */
export function faultsOf(sheet: ObservedSheet, evidence: Evidence): readonly Fault[] {
  const { handPlaces, cameraPlaces } = sheet;
  const faults: Fault[] = [];
  for (const place of handPlaces) {
    faults.push(...faultsOfOne(nameAt(place), evidence));
    faults.push(unexplained(place, evidence.catalogue, UNEXPLAINED_FREQUENCY));
  }
  faults.push(...faultsOfTwo(evidence));
  for (const pair of halvedEyes(evidence.readings)) faults.push(halved(sheet, evidence, pair));
  for (const place of cameraPlaces) faults.push(unexplained(place, evidence.catalogue, MISLED_FREQUENCY));
  return faults;
}

/** Anything may stand there: evenly over all that is possible. */
function unexplained(place: number, catalogue: Catalogue, frequency: number): Fault {
  const { low, high } = measurementOfReading(catalogue, nameAt(place)).plausible.hard;
  return { slip: null, places: [place], changes: [], logPrior: Math.log(frequency / (high - low)) };
}

/** Just the halves stand there, whatever is true: the values say nothing, and would not be equal but by chance. */
function halved(sheet: ObservedSheet, evidence: Evidence, pair: readonly [ReadingName, ReadingName]): Fault {
  const { readings, catalogue } = evidence;
  const places = pair.map(placeOf);
  const { off } = predictFromOthers(sheet, places);
  const { resolution } = measurementOfReading(catalogue, pair[0]);
  const restorations = pair.map((name, i) => {
    const written = readings[name]?.value ?? 0;
    return { name, written, restored: Math.round((written - off[i]!) / resolution) * resolution };
  });
  return {
    slip: { kind: 'halved', restorations },
    places,
    changes: [],
    logPrior: Math.log(SLIP_FREQUENCY.halved / resolution ** 2),
  };
}

/**
 * What may have happened to a sheet: nothing, one of the faults, or two together, each with its gain. All that could matter is
 * in the list: what is missing is less likely than the best by `NEGLIGIBLE`.
 */
export function weighHypotheses(sheet: ObservedSheet, faults: readonly Fault[]): readonly Hypothesis[] {
  const gains = faults.map((fault) => gainOf(sheet, fault));
  const best = gains.reduce((most, gain) => Math.max(most, gain), 0);
  const places = faultsByPlace(faults);
  const pairs = [
    ...pairsByPlace(sheet, faults, gains, places, best),
    ...pairsWithExchanges(sheet, faults, gains, places, best),
  ];
  const top = pairs.reduce((most, { gain }) => Math.max(most, gain), best);
  const hypotheses: Hypothesis[] = [{ faults: [], gain: 0 }];
  faults.forEach((fault, i) => {
    const gain = gains[i]!;
    if (gain > top - NEGLIGIBLE) hypotheses.push({ faults: [fault], gain });
  });
  for (const pair of pairs) if (pair.gain > top - NEGLIGIBLE) hypotheses.push(pair);
  return hypotheses;
}

/** How much likelier the sheet is with this fault than without any. */
function gainOf(sheet: ObservedSheet, { places, changes, logPrior }: Fault): number {
  if (changes.length > 0) return logPrior + gainOfChanges(sheet, changes);
  if (places.length > 1) return logPrior - predictFromOthers(sheet, places).logDensity;
  return logPrior + leavingOut(sheet, places[0]!, sheet.weighted[places[0]!]!);
}

/** Less the logarithm of the density of one value given all others, its prediction having the variance 1 / W_ii. */
function leavingOut({ precision }: ObservedSheet, place: number, weighted: number): number {
  const own = precision[place]![place]!;
  return 0.5 * (weighted ** 2 / own + Math.log((2 * Math.PI) / own));
}

/** Both faults together; they concern different places. `gainA` and `gainB` are those of each alone. */
function jointGain(sheet: ObservedSheet, a: Fault, gainA: number, b: Fault, gainB: number): number {
  if (a.changes.length > 0 && b.changes.length > 0) return gainA + gainB - interaction(sheet, a, b);
  if (a.changes.length === 0 && b.changes.length === 0) {
    return a.logPrior + b.logPrior - predictFromOthers(sheet, [...a.places, ...b.places]).logDensity;
  }
  const [changed, gain, left] = a.changes.length > 0 ? [a, gainA, b] : [b, gainB, a];
  // First the change, then what is left out is predicted from the changed sheet.
  const pullAt = (place: number): number =>
    changed.changes.reduce(
      (total, { place: at, by }) => total + by * sheet.precision[place]![at]!,
      sheet.weighted[place]!,
    );
  const [place, second] = left.places;
  if (second === undefined) return gain + left.logPrior + leavingOut(sheet, place!, pullAt(place!));
  const weighted = [...sheet.weighted];
  for (const one of left.places) weighted[one] = pullAt(one);
  return gain + left.logPrior - predictFromOthers({ ...sheet, weighted }, left.places).logDensity;
}

/** dᵃᵀ W dᵇ: what two changes do to one another; zero where they concern things that have nothing to do with one another. */
export function interaction({ precision }: ObservedSheet, a: Fault, b: Fault): number {
  let total = 0;
  for (const one of a.changes) {
    for (const other of b.changes) total += one.by * other.by * precision[one.place]![other.place]!;
  }
  return total;
}

/** The faults that concern one place alone. */
interface PlaceFaults {
  readonly place: number;
  /** the largest `logPrior` among them */
  prior: number;
  /** their places in the list of all faults */
  readonly faults: number[];
}

function faultsByPlace(faults: readonly Fault[]): readonly PlaceFaults[] {
  const byPlace = new Map<number, PlaceFaults>();
  faults.forEach(({ places, logPrior }, i) => {
    const [place, second] = places;
    if (place === undefined || second !== undefined) return;
    const known = byPlace.get(place);
    if (known === undefined) byPlace.set(place, { place, prior: logPrior, faults: [i] });
    else {
      known.prior = Math.max(known.prior, logPrior);
      known.faults.push(i);
    }
  });
  return [...byPlace.values()];
}

/**
 * Pairs of faults at one place each, also such as hide one another. A pair of places is only looked into if leaving out both
 * of them would explain enough: no restoration explains more.
 */
function pairsByPlace(
  sheet: ObservedSheet,
  faults: readonly Fault[],
  gains: readonly number[],
  lists: readonly PlaceFaults[],
  best: number,
): readonly Hypothesis[] {
  const pairs: Hypothesis[] = [];
  let floor = best - NEGLIGIBLE;
  for (let a = 0; a < lists.length; a += 1) {
    const one = lists[a]!;
    for (let b = 0; b < a; b += 1) {
      const other = lists[b]!;
      if (one.prior + other.prior + 0.5 * explained(sheet, one.place, other.place) + MARGIN < floor) continue;
      for (const i of one.faults) {
        if (gains[i]! + other.prior + explainedAfter(sheet, faults[i]!, other.place) < floor) continue;
        for (const j of other.faults) {
          const gain = jointGain(sheet, faults[i]!, gains[i]!, faults[j]!, gains[j]!);
          if (gain < floor) continue;
          floor = Math.max(floor, gain - NEGLIGIBLE);
          pairs.push({ faults: [faults[i]!, faults[j]!], gain });
        }
      }
    }
  }
  return pairs;
}

/** What leaving out two values takes off the squared distance of the sheet: (W r)_Bᵀ (W_BB)^-1 (W r)_B. */
function explained({ weighted, precision }: ObservedSheet, a: number, b: number): number {
  const [p, q, r] = [precision[a]![a]!, precision[b]![b]!, precision[a]![b]!];
  const [u, v] = [weighted[a]!, weighted[b]!];
  return (q * u * u - 2 * r * u * v + p * v * v) / (p * q - r * r);
}

/** The most that any fault at `place` can add once `first` is put right; without limit where that says nothing. */
function explainedAfter({ weighted, precision }: ObservedSheet, { changes }: Fault, place: number): number {
  if (changes.length === 0) return Infinity;
  let pull = weighted[place]!;
  for (const { place: at, by } of changes) pull += by * precision[place]![at]!;
  return 0.5 * (pull ** 2 / precision[place]![place]!) + MARGIN;
}

/** The best single faults, each with every exchange of two numbers; and the best exchanges with every single one. */
function pairsWithExchanges(
  sheet: ObservedSheet,
  faults: readonly Fault[],
  gains: readonly number[],
  lists: readonly PlaceFaults[],
  best: number,
): readonly Hypothesis[] {
  const ranked = bestOf(gains, BEAM);
  const exchanges = faults.flatMap(({ places }, j) => (places.length > 1 ? [j] : []));
  const pairs: Hypothesis[] = [];
  const floor = best - NEGLIGIBLE;
  ranked.forEach((i, rank) => {
    const one = faults[i]!;
    const join = (j: number): void => {
      const other = faults[j]!;
      // two of the best would come twice
      if (ranked.indexOf(j) >= 0 && ranked.indexOf(j) <= rank) return;
      if (other.places.some((place) => one.places.includes(place))) return;
      const gain = jointGain(sheet, one, gains[i]!, other, gains[j]!);
      if (gain > floor) pairs.push({ faults: [one, other], gain });
    };
    exchanges.forEach(join);
    // pairs of single places are looked through elsewhere
    if (one.places.length === 1) return;
    for (const { place, prior, faults: single } of lists) {
      if (gains[i]! + prior + explainedAfter(sheet, one, place) > floor) single.forEach(join);
    }
  });
  return pairs;
}

/** The places of the largest few, largest first. */
function bestOf(values: readonly number[], count: number): readonly number[] {
  const found: number[] = [];
  values.forEach((value, i) => {
    const last = found[count - 1];
    if (last !== undefined && values[last]! >= value) return;
    const at = found.findIndex((one) => values[one]! < value);
    found.splice(at < 0 ? found.length : at, 0, i);
    if (found.length > count) found.pop();
  });
  return found;
}
