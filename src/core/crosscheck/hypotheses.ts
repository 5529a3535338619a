import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { MeasurementId, ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import { invertSymmetric, logDeterminant, multiplyMatrixVector } from '../fitting/linear-system.js';
import { invariant } from '../result.js';
import { roundToStep } from '../units/round-to-step.js';
import type { FaceModel } from './face-model.js';
import type { ObservedSheet } from './observed-sheet.js';
import { gainOfChange, gainOfChanges, nameAt, placeOf, predictFromOthers } from './observed-sheet.js';
import type { Evidence } from './reconciliation.js';
import type { Fault, NumberFaults } from './slip-faults.js';
import {
  faultsBesideOthers,
  faultsInNumber,
  faultsOfExchanges,
  halvedEyes,
  NO_FAULTS,
  repeatedRows,
  SLIP_FREQUENCY,
} from './slip-faults.js';

/** Some faults that happened together; none for a sheet without any. */
export interface Hypothesis {
  readonly faults: readonly Fault[];
  /** logarithm of its probability over that of a sheet without any fault */
  readonly gain: number;
}

/** How often a reading is wrong in a way that no usual slip explains, and how often the camera is misled. Chosen. */
export const UNEXPLAINED_FREQUENCY = 0.0005;
export const MISLED_FREQUENCY = 0.003;

/**
 * How often a reading is badly taken: a rule held askew, the wrong edge of an iris. It is then off by more than its repeatability,
 * about as much as its tolerance (chosen, as the frequencies are: PDs are read through the air, past one's own nose).
 */
const BADLY_TAKEN_FREQUENCY = { pd: 0.01, other: 0.0005 } as const;
const PD_ROWS: readonly MeasurementId[] = ['binocularPd', 'monocularPd', 'nearPd', 'monocularNearPd'];

/** Hypotheses that are less likely than the best by more than this (logarithm) are left out: 3 in ten thousand. */
const NEGLIGIBLE = 8;

/** What leaving a value out may gain beyond putting it right, logarithm. Generous. */
const MARGIN = 1;

/** An exchange that makes the sheet this much less likely (logarithm) is not mended by a second fault. Chosen. */
const HOPELESS = -150;

/** How many of the best single faults are joined with every exchange of two numbers. Chosen. */
const BEAM = 6;

/** All single faults that a sheet may have. */
export interface SheetFaults {
  /** of the block that all their places belong to, by its number; worked out when first asked for */
  readonly ofBlock: (block: number) => BlockFaults;
  /** exchanges between blocks */
  readonly across: readonly Fault[];
}

export interface BlockFaults {
  readonly atPlaces: readonly PlaceFaults[];
  /** exchanges, and what else concerns several places */
  readonly joint: readonly Fault[];
}

/** The faults that concern one place alone. */
interface PlaceFaults {
  readonly place: number;
  readonly inNumber: NumberFaults;
  readonly others: readonly Fault[];
}

export function faultsOf(sheet: ObservedSheet, evidence: Evidence, model: FaceModel): SheetFaults {
  const exchanges = faultsOfExchanges(evidence);
  const repeated = repeatedRows(evidence);
  const blocksOf = exchanges.map(({ places }) => new Set(places.map((place) => blockOf(place, model))));
  return {
    ofBlock: onceForEach((block) => ({
      atPlaces: faultsAtPlaces(block, repeated, sheet, evidence, model),
      joint: [
        ...exchanges.filter((_, i) => blocksOf[i]!.size === 1 && blocksOf[i]!.has(block)),
        ...halvedEyes(evidence.readings)
          .filter(([right]) => blockOf(placeOf(right), model) === block)
          .map((eyes) => written('halved', eyes, sheet, evidence)),
      ],
    })),
    across: exchanges.filter((_, i) => blocksOf[i]!.size > 1),
  };
}

function onceForEach(make: (block: number) => BlockFaults): (block: number) => BlockFaults {
  const made: BlockFaults[] = [];
  return (block) => (made[block] ??= make(block));
}

function faultsAtPlaces(
  block: number,
  repeated: readonly ReadingName[],
  sheet: ObservedSheet,
  evidence: Evidence,
  model: FaceModel,
): readonly PlaceFaults[] {
  const { catalogue } = evidence;
  const isHere = (place: number): boolean => blockOf(place, model) === block;
  const byHand = sheet.handPlaces.filter(isHere).map((place): PlaceFaults => {
    const name = nameAt(place);
    const others = [
      ...faultsBesideOthers(name, evidence),
      unexplained(place, catalogue, UNEXPLAINED_FREQUENCY),
      badlyTaken(place, catalogue),
      ...(repeated.includes(name) ? [written('row-repeated', [name], sheet, evidence)] : []),
    ];
    return { place, inNumber: faultsInNumber(name, evidence), others };
  });
  const byCamera = sheet.cameraPlaces.filter(isHere).map((place): PlaceFaults => {
    return { place, inNumber: NO_FAULTS, others: [unexplained(place, catalogue, MISLED_FREQUENCY)] };
  });
  return [...byHand, ...byCamera];
}

/** The block of a place, whether it is the hand's or the camera's. */
export function blockOf(place: number, { blockAt }: FaceModel): number {
  return blockAt[place % READING_NAMES.length]!;
}

/** The faults that touch none of these places. */
export function faultsElsewhere({ ofBlock, across }: SheetFaults, places: readonly number[]): SheetFaults {
  const isElsewhere = (fault: Fault): boolean => !fault.places.some((place) => places.includes(place));
  return {
    ofBlock: onceForEach((block) => {
      const { atPlaces, joint } = ofBlock(block);
      return {
        atPlaces: atPlaces.filter(({ place }) => !places.includes(place)),
        joint: joint.filter(isElsewhere),
      };
    }),
    across: across.filter(isElsewhere),
  };
}

/** Anything may stand there: evenly over all that is possible. */
function unexplained(place: number, catalogue: Catalogue, frequency: number): Fault {
  const { low, high } = measurementOfReading(catalogue, nameAt(place)).plausible.hard;
  return { slip: null, places: [place], changes: [], scatter: Infinity, logPrior: Math.log(frequency / (high - low)) };
}

function badlyTaken(place: number, catalogue: Catalogue): Fault {
  const { frequency, scatter } = badTaking(nameAt(place), catalogue);
  return { slip: null, places: [place], changes: [], scatter, logPrior: Math.log(frequency) };
}

/** How often a reading is badly taken, and the variance that this adds to it. */
export function badTaking(
  name: ReadingName,
  catalogue: Catalogue,
): { readonly frequency: number; readonly scatter: number } {
  const { id, tolerance } = measurementOfReading(catalogue, name);
  return { frequency: BADLY_TAKEN_FREQUENCY[PD_ROWS.includes(id) ? 'pd' : 'other'], scatter: tolerance.value ** 2 };
}

/**
 * Just the halves, or the number of the neighbouring row, stand there, whatever is true: the values say nothing, and would not be
 * these but by chance. What they should be is what all others expect.
 */
function written(
  kind: 'halved' | 'row-repeated',
  names: readonly ReadingName[],
  sheet: ObservedSheet,
  { readings, catalogue }: Evidence,
): Fault {
  const places = names.map(placeOf);
  const { off } = predictFromOthers(sheet, places);
  const steps = names.map((name) => measurementOfReading(catalogue, name).resolution);
  const restorations = names.map((name, i) => {
    const value = readings[name]?.value ?? 0;
    return { name, written: value, restored: roundToStep(value - off[i]!, steps[i]!) };
  });
  return {
    slip: { kind, restorations },
    places,
    changes: [],
    scatter: Infinity,
    logPrior: steps.reduce((rest, step) => rest - Math.log(step), Math.log(SLIP_FREQUENCY[kind])),
  };
}

/**
 * What may have happened to a sheet: nothing, one of the faults, or two together, each with its gain. All that could matter is
 * in the list: what is missing is less likely than the best by `NEGLIGIBLE`.
 */
export function weighHypotheses(sheet: ObservedSheet, block: BlockFaults): readonly Hypothesis[] {
  const weighed = weighSingles(sheet, block);
  const { faults, gains } = weighed;
  const best = gains.reduce((most, gain) => Math.max(most, gain), 0);
  const pairs = [...pairsByPlace(sheet, weighed, best), ...pairsWithExchanges(sheet, weighed, best)];
  const top = pairs.reduce((most, { gain }) => Math.max(most, gain), best);
  const hypotheses: Hypothesis[] = [{ faults: [], gain: 0 }];
  for (let i = 0; i < faults.length; i += 1) {
    if (gains[i]! > top - NEGLIGIBLE) hypotheses.push({ faults: [faults[i]!], gain: gains[i]! });
  }
  for (const pair of pairs) if (pair.gain > top - NEGLIGIBLE) hypotheses.push(pair);
  return hypotheses;
}

/** The single faults of a block, each with its gain. */
interface WeighedSingles {
  readonly faults: readonly Fault[];
  readonly gains: Float64Array;
  /** where among them those of each place stand */
  readonly ranges: readonly PlaceRange[];
  /** where the first stands that concerns several places; the others follow it */
  readonly joint: number;
}

interface PlaceRange {
  readonly place: number;
  /** the largest `logPrior` among them */
  readonly prior: number;
  readonly from: number;
  /** behind the last */
  readonly to: number;
}

function weighSingles(sheet: ObservedSheet, { atPlaces, joint }: BlockFaults): WeighedSingles {
  const faults: Fault[] = [];
  const ranges: PlaceRange[] = [];
  for (const { place, inNumber, others } of atPlaces) {
    const from = faults.length;
    let prior = inNumber.mostPrior;
    for (const fault of inNumber.faults) faults.push(fault);
    for (const fault of others) {
      faults.push(fault);
      prior = Math.max(prior, fault.logPrior);
    }
    ranges.push({ place, prior, from, to: faults.length });
  }
  const singles = faults.length;
  for (const fault of joint) faults.push(fault);
  const gains = new Float64Array(faults.length);
  atPlaces.forEach(({ place, inNumber, others }, i) => {
    let at = ranges[i]!.from;
    const { by, logPrior } = inNumber;
    // as in gainOfChange
    const [pull, own] = [sheet.weighted[place]!, sheet.precision[place]![place]!];
    for (let k = 0; k < by.length; k += 1, at += 1) {
      gains[at] = logPrior[k]! - by[k]! * pull - 0.5 * by[k]! * by[k]! * own;
    }
    for (const fault of others) {
      gains[at] = gainOf(sheet, fault);
      at += 1;
    }
  });
  for (let k = singles; k < faults.length; k += 1) gains[k] = gainOf(sheet, faults[k]!);
  return { faults, gains, ranges, joint: singles };
}

/** How much likelier the sheet is with this fault than without any. */
export function gainOf(sheet: ObservedSheet, fault: Fault): number {
  const { places, changes, scatter, logPrior } = fault;
  if (changes.length === 1) return logPrior + gainOfChange(sheet, changes[0]!);
  if (changes.length > 0) return logPrior + gainOfChanges(sheet, changes);
  const [place, second] = places;
  if (second !== undefined) return logPrior + loosenedTogether(sheet, [fault]);
  return logPrior + loosened(sheet, place!, sheet.weighted[place!]!, scatter);
}

/**
 * What one value gains if it scatters more by a variance v. All others predict it with the variance s² = 1 / W_ii, and it lies
 * r = (W r)_i / W_ii off: ln N(r; 0, s² + v) - ln N(r; 0, s²); without the first term where it says nothing at all.
 */
function loosened({ precision }: ObservedSheet, place: number, weighted: number, scatter: number): number {
  const own = precision[place]![place]!;
  const distance = weighted ** 2 / own;
  if (scatter === Infinity) return 0.5 * (distance + Math.log((2 * Math.PI) / own));
  const share = 1 / (1 + scatter * own);
  return 0.5 * (distance * (1 - share) + Math.log(share));
}

/** The same for several values at once. */
function loosenedTogether(sheet: ObservedSheet, faults: readonly Fault[]): number {
  const places = faults.flatMap((fault) => fault.places);
  if (faults.length === 2 && places.length === 2) return loosenedPair(sheet, faults[0]!, faults[1]!);
  const { off, covariance, logDensity } = predictFromOthers(sheet, places);
  const scatters = faults.flatMap((fault) => fault.places.map(() => fault.scatter));
  const bound = scatters.flatMap((scatter, i) => (scatter === Infinity ? [] : [i]));
  if (bound.length === 0) return -logDensity;
  const looser = bound.map((i) => bound.map((j) => covariance[i]![j]! + (i === j ? scatters[i]! : 0)));
  const inverse = invertSymmetric(looser);
  invariant(inverse !== null, 'a covariance is positive definite');
  const offBound = bound.map((i) => off[i]!);
  const distance = multiplyMatrixVector(inverse, offBound).reduce((total, one, i) => total + one * offBound[i]!, 0);
  return -0.5 * (distance + bound.length * Math.log(2 * Math.PI) + logDeterminant(looser)) - logDensity;
}

/** The same for two values, written out: most of the time goes here. */
function loosenedPair({ weighted, precision }: ObservedSheet, a: Fault, b: Fault): number {
  const [i, j] = [a.places[0]!, b.places[0]!];
  const [p, q, r] = [precision[i]![i]!, precision[j]![j]!, precision[i]![j]!];
  const determinant = p * q - r * r;
  // the covariance of written less predicted, (W_BB)^-1, and how far each is off
  const [varianceA, varianceB, shared] = [q / determinant, p / determinant, -r / determinant];
  const offA = varianceA * weighted[i]! + shared * weighted[j]!;
  const offB = shared * weighted[i]! + varianceB * weighted[j]!;
  const before = logDensityOfTwo(offA, offB, varianceA, varianceB, shared);
  const [looseA, looseB] = [varianceA + a.scatter, varianceB + b.scatter];
  if (a.scatter === Infinity && b.scatter === Infinity) return -before;
  if (a.scatter === Infinity) return logDensityOfOne(offB, looseB) - before;
  if (b.scatter === Infinity) return logDensityOfOne(offA, looseA) - before;
  return logDensityOfTwo(offA, offB, looseA, looseB, shared) - before;
}

function logDensityOfOne(off: number, variance: number): number {
  return -0.5 * (off ** 2 / variance + Math.log(2 * Math.PI * variance));
}

function logDensityOfTwo(a: number, b: number, varianceA: number, varianceB: number, shared: number): number {
  const determinant = varianceA * varianceB - shared ** 2;
  const distance = (varianceB * a * a - 2 * shared * a * b + varianceA * b * b) / determinant;
  return -0.5 * (distance + 2 * Math.log(2 * Math.PI) + Math.log(determinant));
}

/** Both faults together; they concern different places. `gainA` and `gainB` are those of each alone. */
function jointGain(sheet: ObservedSheet, a: Fault, gainA: number, b: Fault, gainB: number): number {
  if (a.changes.length > 0 && b.changes.length > 0) return gainA + gainB - interaction(sheet, a, b);
  if (a.changes.length === 0 && b.changes.length === 0) {
    return a.logPrior + b.logPrior + loosenedTogether(sheet, [a, b]);
  }
  const [changed, gain, loose] = a.changes.length > 0 ? [a, gainA, b] : [b, gainB, a];
  // First the change, then what is loosened is predicted from the changed sheet.
  const [place, second] = loose.places;
  if (second === undefined) {
    return gain + loose.logPrior + loosened(sheet, place!, weightedAfter(sheet, changed, place!), loose.scatter);
  }
  const weighted = sheet.weighted.slice();
  for (const one of loose.places) weighted[one] = weightedAfter(sheet, changed, one);
  return gain + loose.logPrior + loosenedTogether({ ...sheet, weighted }, [loose]);
}

/** (W r) at a place once a fault is put right. */
function weightedAfter({ weighted, precision }: ObservedSheet, { changes }: Fault, place: number): number {
  let after = weighted[place]!;
  for (const { place: at, by } of changes) after += by * precision[place]![at]!;
  return after;
}

/** dᵃᵀ W dᵇ: what two changes do to one another; zero where they concern things that have nothing to do with one another. */
export function interaction({ precision }: ObservedSheet, a: Fault, b: Fault): number {
  let total = 0;
  for (const one of a.changes) {
    for (const other of b.changes) total += one.by * other.by * precision[one.place]![other.place]!;
  }
  return total;
}

/**
 * Pairs of faults at one place each, also such as hide one another. A pair of places is only looked into if leaving out both
 * of them would explain enough: no restoration explains more.
 */
function pairsByPlace(
  sheet: ObservedSheet,
  { faults, gains, ranges }: WeighedSingles,
  best: number,
): readonly Hypothesis[] {
  const pairs: Hypothesis[] = [];
  let floor = best - NEGLIGIBLE;
  for (let a = 0; a < ranges.length; a += 1) {
    const one = ranges[a]!;
    for (let b = 0; b < a; b += 1) {
      const other = ranges[b]!;
      const both = 0.5 * explained(sheet, one.place, other.place) + MARGIN;
      if (one.prior + other.prior + both < floor) continue;
      for (let i = one.from; i < one.to; i += 1) {
        const { changes, logPrior } = faults[i]!;
        const most = changes.length > 0 ? gains[i]! + explainedAfter(sheet, faults[i]!, other.place) : logPrior + both;
        if (most + other.prior < floor) continue;
        for (let j = other.from; j < other.to; j += 1) {
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
function explainedAfter(sheet: ObservedSheet, first: Fault, place: number): number {
  if (first.changes.length === 0) return Infinity;
  return 0.5 * (weightedAfter(sheet, first, place) ** 2 / sheet.precision[place]![place]!) + MARGIN;
}

/** The best single faults, each with every exchange of two numbers; and the best exchanges with every single one. */
function pairsWithExchanges(
  sheet: ObservedSheet,
  { faults, gains, ranges, joint }: WeighedSingles,
  best: number,
): readonly Hypothesis[] {
  const exchanges: number[] = [];
  for (let j = joint; j < faults.length; j += 1) if (gains[j]! > HOPELESS) exchanges.push(j);
  if (exchanges.length === 0) return [];
  const ranked = bestOf(gains, BEAM);
  const pairs: Hypothesis[] = [];
  const floor = best - NEGLIGIBLE;
  for (let rank = 0; rank < ranked.length; rank += 1) {
    const i = ranked[rank]!;
    const one = faults[i]!;
    for (const j of one.places.length === 1 ? exchanges : partnersOf(sheet, one, gains[i]!, exchanges, ranges, floor)) {
      const other = faults[j]!;
      // two of the best would come twice
      const otherRank = ranked.indexOf(j);
      if (otherRank >= 0 && otherRank <= rank) continue;
      if (other.places.some((place) => one.places.includes(place))) continue;
      const gain = jointGain(sheet, one, gains[i]!, other, gains[j]!);
      if (gain > floor) pairs.push({ faults: [one, other], gain });
    }
  }
  return pairs;
}

/** What an exchange may be joined with: other exchanges, and single faults at places where enough is left to be explained. */
function partnersOf(
  sheet: ObservedSheet,
  exchange: Fault,
  gain: number,
  exchanges: readonly number[],
  ranges: readonly PlaceRange[],
  floor: number,
): readonly number[] {
  const partners = [...exchanges];
  for (const { place, prior, from, to } of ranges) {
    if (gain + prior + explainedAfter(sheet, exchange, place) <= floor) continue;
    for (let i = from; i < to; i += 1) partners.push(i);
  }
  return partners;
}

/** The places of the largest few, largest first. */
function bestOf(values: Float64Array, count: number): readonly number[] {
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
