import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import type { Change, ObservedSheet } from './observed-sheet.js';
import { gainOfChanges, predictFromOthers } from './observed-sheet.js';
import type { Evidence } from './reconciliation.js';
import type { Slip } from './slip.js';
import { causesOfOne, causesOfTwo, halvedEyes, SLIP_FREQUENCY } from './slip-causes.js';

/** One thing that may be wrong with some values of a sheet: a slip with what it would restore, or a value that is just wrong. */
export interface Fault {
  /** null for a value that no usual slip explains, or that of a misled camera */
  readonly slip: Slip | null;
  /** the places of the sheet that it concerns */
  readonly places: readonly number[];
  /** what it changes; empty where the values say nothing at all and are left out */
  readonly changes: readonly Change[];
  /** logarithm of its frequency, and of the density with which it writes what stands there */
  readonly logPrior: number;
}

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

/** How many of the best single faults are joined with every other one. Chosen: more finds no other pairs in simulations. */
const BEAM = 6;

/**
 * What may have happened to a sheet: nothing, one fault, or two together, each with its gain. Places in `settled` are left
 * alone. All that could matter is in the list: what is missing is less likely than the best by `NEGLIGIBLE`.
 */
export function weighHypotheses(
  sheet: ObservedSheet,
  evidence: Evidence,
  settled: ReadonlySet<number>,
): readonly Hypothesis[] {
  const faults = faultsOf(sheet, evidence).filter(({ places }) => !places.some((place) => settled.has(place)));
  const singles = faults.map((fault): Hypothesis => ({ faults: [fault], gain: gainOf(sheet, fault) }));
  const nothing: Hypothesis = { faults: [], gain: 0 };
  const best = singles.reduce((most, { gain }) => Math.max(most, gain), 0);
  const pairs = [...pairsByPlace(sheet, singles, best), ...pairsOfTheBest(sheet, singles, best)];
  const top = pairs.reduce((most, { gain }) => Math.max(most, gain), best);
  return [nothing, ...singles, ...distinct(pairs)].filter(({ gain }) => gain > top - NEGLIGIBLE);
}

function faultsOf(sheet: ObservedSheet, evidence: Evidence): readonly Fault[] {
  const { names, places, cameraNames } = sheet;
  const withSlip = (slip: Slip, logPrior: number): Fault => {
    const changes = slip.restorations.map(({ name, written, restored }) => ({
      place: places.get(name) ?? 0,
      by: restored - written,
    }));
    return { slip, places: changes.map(({ place }) => place), changes, logPrior };
  };
  const faults: Fault[] = [];
  names.forEach((name, place) => {
    for (const { slip, logFrequency } of causesOfOne(name, evidence)) faults.push(withSlip(slip, logFrequency));
    faults.push(unexplained([place], [name], evidence.catalogue, UNEXPLAINED_FREQUENCY));
  });
  for (const { slip, logFrequency } of causesOfTwo(evidence)) faults.push(withSlip(slip, logFrequency));
  for (const pair of halvedEyes(evidence.readings)) faults.push(halved(sheet, evidence, pair));
  cameraNames.forEach((name, i) => {
    faults.push(unexplained([names.length + i], [name], evidence.catalogue, MISLED_FREQUENCY));
  });
  return faults;
}

/** Anything may stand there: evenly over all that is possible. */
function unexplained(
  places: readonly number[],
  names: readonly ReadingName[],
  catalogue: Catalogue,
  frequency: number,
): Fault {
  const logWidth = names.reduce((total, name) => {
    const { low, high } = measurementOfReading(catalogue, name).plausible.hard;
    return total + Math.log(high - low);
  }, 0);
  return { slip: null, places, changes: [], logPrior: Math.log(frequency) - logWidth };
}

/** Just the halves stand there, whatever is true: the values say nothing, and would not be equal but by chance. */
function halved(
  sheet: ObservedSheet,
  { readings, catalogue }: Evidence,
  pair: readonly [ReadingName, ReadingName],
): Fault {
  const places = pair.map((name) => sheet.places.get(name) ?? 0);
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
    logPrior: Math.log(SLIP_FREQUENCY.halved) - 2 * Math.log(resolution),
  };
}

/** How much likelier the sheet is with this fault than without any. */
function gainOf(sheet: ObservedSheet, fault: Fault): number {
  if (fault.changes.length > 0) return fault.logPrior + gainOfChanges(sheet, fault.changes);
  const [place, second] = fault.places;
  if (place === undefined || second !== undefined)
    return fault.logPrior - predictFromOthers(sheet, fault.places).logDensity;
  // One value: its prediction has the variance 1 / W_ii.
  const precision = sheet.precision[place]![place]!;
  return fault.logPrior + 0.5 * (sheet.weighted[place]! ** 2 / precision + Math.log((2 * Math.PI) / precision));
}

/** Both faults together; they concern different places. */
function jointGain(sheet: ObservedSheet, a: Hypothesis, b: Hypothesis): number {
  const [one, other] = [a.faults[0]!, b.faults[0]!];
  if (one.changes.length > 0 && other.changes.length > 0) return a.gain + b.gain - interaction(sheet, one, other);
  const [changed, left] = one.changes.length > 0 ? [a, other] : [b, one];
  const fault = changed.faults[0]!;
  if (fault.changes.length === 0) {
    const places = [...one.places, ...other.places];
    return one.logPrior + other.logPrior - predictFromOthers(sheet, places).logDensity;
  }
  // First the change, then what is left out is predicted from the changed sheet.
  const weighted = left.places.map((place) => {
    const pull = sheet.weighted[place]!;
    return fault.changes.reduce((total, { place: at, by }) => total + by * sheet.precision[place]![at]!, pull);
  });
  if (left.places.length === 1) {
    const place = left.places[0]!;
    const precision = sheet.precision[place]![place]!;
    return changed.gain + left.logPrior + 0.5 * (weighted[0]! ** 2 / precision + Math.log((2 * Math.PI) / precision));
  }
  const replaced = [...sheet.weighted];
  left.places.forEach((place, i) => (replaced[place] = weighted[i]!));
  return changed.gain + left.logPrior - predictFromOthers({ ...sheet, weighted: replaced }, left.places).logDensity;
}

/** dᵃᵀ W dᵇ: what two changes do to one another; zero where they concern things that have nothing to do with one another. */
export function interaction(sheet: ObservedSheet, a: Fault, b: Fault): number {
  let total = 0;
  for (const one of a.changes) {
    for (const other of b.changes) total += one.by * other.by * sheet.precision[one.place]![other.place]!;
  }
  return total;
}

/**
 * Pairs of faults at one place each, also such as hide one another. A pair of places is only looked into if leaving out both
 * of them would explain enough: no restoration explains more.
 */
function pairsByPlace(sheet: ObservedSheet, singles: readonly Hypothesis[], best: number): readonly Hypothesis[] {
  const byPlace = new Map<number, Hypothesis[]>();
  for (const single of singles) {
    const { places } = single.faults[0]!;
    if (places.length !== 1) continue;
    const place = places[0]!;
    const list = byPlace.get(place);
    if (list === undefined) byPlace.set(place, [single]);
    else list.push(single);
  }
  const lists = [...byPlace];
  const priors = lists.map(([, list]) =>
    list.reduce((most, { faults }) => Math.max(most, faults[0]!.logPrior), -Infinity),
  );
  const pairs: Hypothesis[] = [];
  let floor = best - NEGLIGIBLE;
  for (let a = 0; a < lists.length; a += 1) {
    const [placeA, listA] = lists[a]!;
    for (let b = 0; b < a; b += 1) {
      const [placeB, listB] = lists[b]!;
      if (priors[a]! + priors[b]! + 0.5 * explained(sheet, placeA, placeB) < floor) continue;
      for (const one of listA) {
        for (const other of listB) {
          const gain = jointGain(sheet, one, other);
          if (gain < floor) continue;
          floor = Math.max(floor, gain - NEGLIGIBLE);
          pairs.push({ faults: [one.faults[0]!, other.faults[0]!], gain });
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

/** The best single faults, each with every exchange of two places, and exchanges with all others. */
function pairsOfTheBest(sheet: ObservedSheet, singles: readonly Hypothesis[], best: number): readonly Hypothesis[] {
  const ranked = [...singles].sort((a, b) => b.gain - a.gain).slice(0, BEAM);
  const pairs: Hypothesis[] = [];
  const floor = best - NEGLIGIBLE;
  for (const one of ranked) {
    const first = one.faults[0]!;
    for (const other of singles) {
      const second = other.faults[0]!;
      // pairs of single places are looked through elsewhere
      if (first.places.length === 1 && second.places.length === 1) continue;
      if (second.places.some((place) => first.places.includes(place))) continue;
      const gain = jointGain(sheet, one, other);
      if (gain > floor) pairs.push({ faults: [first, second], gain });
    }
  }
  return pairs;
}

/** Each pair once. */
function distinct(pairs: readonly Hypothesis[]): readonly Hypothesis[] {
  return pairs.filter(
    ({ faults: [a, b] }, i) =>
      !pairs.slice(0, i).some(({ faults: [c, d] }) => (a === c && b === d) || (a === d && b === c)),
  );
}
