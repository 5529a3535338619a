import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import { FAR_DISTANCES, NEAR_DISTANCES } from '../catalogue/pupil-distances.js';
import { invertInPlace } from '../fitting/invert-in-place.js';
import type { FaceModel } from './face-model.js';
import { faceModel } from './face-model.js';
import { badTaking, MISLED_FREQUENCY, UNEXPLAINED_FREQUENCY } from './hypotheses.js';
import { CAMERA_PLACES, nameAt, placeOf, sharedDoubt } from './observed-sheet.js';
import { ROUNDING_SLACK } from './rounding-slack.js';
import type { SheetFigures } from './sheet-figures.js';
import type { Fault } from './slip-faults.js';
import { frequencyOfSlips, isEasilyRepeated, layoutOf, SLIP_FREQUENCY } from './slip-faults.js';
import { SUSPECTED } from './suspected.js';

// Of many sheets nearly all are right, and to weigh all that may have happened to each takes far longer than to see that nothing
// can be suspected. Here is a bound for that: whatever `reconcile` weighs is together no more than what is summed up here.
//
// As in hypotheses.ts W is the precision of what was observed, u = W r, and a fault f makes the sheet e^gain(f) times as likely. A
// block is wrong with the probability T / (1 + T), where T is the sum of e^gain over all its faults and pairs of them. Whatever the
// value at a place is changed to, the squared distance of the sheet falls by u_i² / W_ii at most, and for two places by
// E = u_Bᵀ (W_BB)^-1 u_B. So a place needs no list of all restorations: its slips share one mass, the sum of their frequencies.

const HAND_COUNT = READING_NAMES.length;
const PLACE_COUNT = 2 * HAND_COUNT;
const TWO_PI = 2 * Math.PI;
const [CAMERA_PD, CAMERA_R, CAMERA_L] = (['pdFar', 'monoPdR', 'monoPdL'] as const).map(
  (name) => HAND_COUNT + placeOf(name),
) as [number, number, number];

/** Sums of rounded numbers may come out a little below what they stand for. */
const LIMIT = SUSPECTED - 1e-6;

/** Numbers that may have changed places: at each of `places` stands what belongs to the place of `others` at the same index. */
interface Exchange {
  /** its number among all exchanges */
  readonly id: number;
  readonly frequency: number;
  readonly places: readonly number[];
  readonly others: readonly number[];
}

/** What is the same for all sheets of a working distance. */
interface Rules {
  readonly means: Float64Array;
  readonly covariance: FaceModel['covariance'];
  readonly blocks: readonly BlockRules[];
  readonly exchanges: readonly Exchange[];
  /** by place: the frequencies of all slips that lead to one number alone, together */
  readonly slips: Float64Array;
  /** by place: how often a reading is badly taken, and the variance that this adds */
  readonly badlyTaken: Float64Array;
  readonly scatter: Float64Array;
  /** by place: the density with which any value at all stands there, unexplained or by a misled camera */
  readonly anything: Float64Array;
  /** neighbouring places where one number may have been written twice */
  readonly neighbours: readonly (readonly [number, number])[];
  /** by place: the density with which just the neighbour's number stands there; 0 where that has other names */
  readonly repeated: Float64Array;
}

interface BlockRules {
  /** the hand's, then the camera's */
  readonly places: readonly number[];
  readonly exchanges: readonly Exchange[];
  /** of each exchange the ones before it that touch none of its places */
  readonly apart: readonly (readonly Exchange[])[];
  /** exchanges with another block */
  readonly crossings: readonly Exchange[];
  /** places of whole, R and L where R and L may just be halves, and the density of that */
  readonly halves: readonly { readonly places: readonly [number, number, number]; readonly density: number }[];
}

const RULES = new WeakMap<FaceModel, Rules>();

function rulesOf(model: FaceModel, catalogue: Catalogue): Rules {
  const known = RULES.get(model);
  if (known !== undefined) return known;
  const rules = makeRules(model, catalogue);
  RULES.set(model, rules);
  return rules;
}

function makeRules(model: FaceModel, catalogue: Catalogue): Rules {
  const byPlace = (ofHand: (name: ReadingName) => number, ofCamera: (name: ReadingName) => number): Float64Array =>
    Float64Array.from({ length: PLACE_COUNT }, (_, place) =>
      place < HAND_COUNT ? ofHand(nameAt(place)) : ofCamera(nameAt(place)),
    );
  const stepOf = (name: ReadingName): number => measurementOfReading(catalogue, name).resolution;
  const anywhere = (frequency: number) => (name: ReadingName) => {
    const { low, high } = measurementOfReading(catalogue, name).plausible.hard;
    return frequency / (high - low);
  };
  const exchanges = layoutOf(catalogue).exchanges.map(({ kind, pairs }, id): Exchange => {
    const both = pairs.flatMap(([a, b]) => [[placeOf(a), placeOf(b)] as const, [placeOf(b), placeOf(a)] as const]);
    return {
      id,
      frequency: SLIP_FREQUENCY[kind],
      places: both.map(([place]) => place),
      others: both.map(([, other]) => other),
    };
  });
  const isWithin = (places: readonly number[], block: number): boolean =>
    places.every((place) => model.blockAt[place] === block);
  const isPartly = (places: readonly number[], block: number): boolean =>
    !isWithin(places, block) && places.some((place) => model.blockAt[place] === block);
  return {
    means: byPlace(
      (name) => model.means[name],
      (name) => model.means[name],
    ),
    covariance: model.covariance,
    exchanges,
    blocks: model.blocks.map((own, block) => {
      const within = exchanges.filter(({ places }) => isWithin(places, block));
      return {
        places: [...own, ...own.map((place) => HAND_COUNT + place).filter((place) => CAMERA_PLACES.includes(place))],
        exchanges: within,
        apart: within.map((one, i) =>
          within.slice(0, i).filter((other) => !other.places.some((place) => one.places.includes(place))),
        ),
        crossings: exchanges.filter(({ places }) => isPartly(places, block)),
        halves: [FAR_DISTANCES, NEAR_DISTANCES]
          .map(({ whole, R, L }) => ({
            places: [placeOf(whole), placeOf(R), placeOf(L)] as const,
            density: SLIP_FREQUENCY.halved / (stepOf(R) * stepOf(L)),
          }))
          .filter(({ places }) => isWithin(places, block)),
      };
    }),
    slips: byPlace(
      (name) => frequencyOfSlips(name, catalogue),
      () => 0,
    ),
    badlyTaken: byPlace(
      (name) => badTaking(name, catalogue).frequency,
      () => 0,
    ),
    scatter: byPlace(
      (name) => badTaking(name, catalogue).scatter,
      () => 0,
    ),
    anything: byPlace(anywhere(UNEXPLAINED_FREQUENCY), anywhere(MISLED_FREQUENCY)),
    neighbours: layoutOf(catalogue).neighbours.map(([a, b]) => [placeOf(a), placeOf(b)]),
    repeated: byPlace(
      (name) => (isEasilyRepeated(name) ? SLIP_FREQUENCY['row-repeated'] / stepOf(name) : 0),
      () => 0,
    ),
  };
}

/**
 * The blocks of a sheet in which something may be suspected, none where nothing can: never without a block in which `reconcile` has
 * a suspicion.
 *
 * @param faultsAt the slips that could have led to the reading at a place alone, as `faultsOfOne` finds them; asked for few places
 */
export type BlocksInDoubt = (
  figures: SheetFigures,
  faultsAt: (place: number) => readonly Fault[],
) => ReadonlySet<number>;

/** The bound for the sheets of a catalogue. It works in arrays of its own, so that a long table makes no garbage. */
export function createSuspicionBound(catalogue: Catalogue): BlocksInDoubt {
  const work = workingArrays();
  return (figures, faultsAt) => {
    const rules = rulesOf(faceModel(catalogue, figures.workingDistanceMm), catalogue);
    noteRepeatedRows(work, rules, figures);
    noteExchanges(work, rules, figures);
    for (let block = 0; block < rules.blocks.length; block += 1) {
      const odds = oddsOfBlock(block, rules, figures, work);
      const isClear = probabilityOf(odds) < LIMIT;
      work.blockOdds[block] = isClear
        ? odds
        : odds - oddsOfSingles(rules, work, null) + oddsOfSingles(rules, work, faultsAt);
    }
    let inDoubt = NO_BLOCKS;
    for (let block = 0; block < rules.blocks.length; block += 1) {
      const probability = probabilityOf(work.blockOdds[block]!) + crossingsOf(rules.blocks[block]!, work);
      // what is not a number is in doubt as well
      if (!(probability < LIMIT)) inDoubt = new Set([...inDoubt, block]);
    }
    return inDoubt;
  };
}

const NO_BLOCKS: ReadonlySet<number> = new Set();

function probabilityOf(odds: number): number {
  return odds / (1 + odds);
}

/** e^x, or a little more where that is next to nothing: most is, and need not be worked out. */
function expOrTiny(x: number): number {
  return x < -30 ? 1e-13 : Math.exp(x);
}

/** More than any block has places, and a sheet exchanges. */
const MOST_PLACES = PLACE_COUNT;
const MOST_EXCHANGED = 4;

/** What one sheet and one block of it are worked out in. What is counted by `i`, `j` or `k` is a place among those of the block. */
interface WorkingArrays {
  /** of the block: how many places are observed, and which */
  count: number;
  readonly places: Int32Array;
  /** by place of the sheet: its number among those of the block; -1 where it is not observed there */
  readonly indexAt: Int32Array;
  /** the block's W, row after row */
  readonly precision: Float64Array;
  /** u */
  readonly weighted: Float64Array;
  /** all that a single fault may be at each place, as if it explained nothing */
  readonly mass: Float64Array;
  /** by place of the sheet: density with which its number is only its neighbour's */
  readonly repeated: Float64Array;
  /** the changes of one exchange, and their places in the block */
  readonly by: Float64Array;
  readonly at: Int32Array;
  /** by exchange: the logarithm of its frequency, and of crossings what they gain as well; minus infinity where it cannot have happened */
  readonly exchanges: Float64Array;
  readonly blockOdds: Float64Array;
}

function workingArrays(): WorkingArrays {
  return {
    count: 0,
    places: new Int32Array(MOST_PLACES),
    indexAt: new Int32Array(PLACE_COUNT).fill(-1),
    precision: new Float64Array(MOST_PLACES ** 2),
    weighted: new Float64Array(MOST_PLACES),
    mass: new Float64Array(MOST_PLACES),
    repeated: new Float64Array(PLACE_COUNT),
    by: new Float64Array(MOST_EXCHANGED),
    at: new Int32Array(MOST_EXCHANGED),
    exchanges: new Float64Array(4 * PLACE_COUNT),
    blockOdds: new Float64Array(PLACE_COUNT),
  };
}

function noteRepeatedRows({ repeated }: WorkingArrays, rules: Rules, { isThere, value }: SheetFigures): void {
  repeated.fill(0);
  for (const [a, b] of rules.neighbours) {
    if (isThere[a] === 0 || isThere[b] === 0 || value[a] !== value[b]) continue;
    repeated[a] = rules.repeated[a]!;
    repeated[b] = rules.repeated[b]!;
  }
}

function noteExchanges({ exchanges }: WorkingArrays, rules: Rules, figures: SheetFigures): void {
  for (const exchange of rules.exchanges) {
    exchanges[exchange.id] = changesAnything(exchange, figures) ? Math.log(exchange.frequency) : -Infinity;
  }
}

/** Whether all its numbers are there, and one of them would become another. */
function changesAnything({ places, others }: Exchange, figures: SheetFigures): boolean {
  let changes = false;
  for (let a = 0; a < places.length; a += 1) {
    if (figures.isThere[places[a]!] === 0) return false;
    if (Math.abs(changeOf(places[a]!, others[a]!, figures)) > ROUNDING_SLACK) changes = true;
  }
  return changes;
}

/** What is added to the number at a place if what the other's scale showed belongs there. */
function changeOf(place: number, other: number, { value, added }: SheetFigures): number {
  return value[other]! - added[other]! + added[place]! - value[place]!;
}

/** No less than the odds of all faults and pairs of faults of a block, over none at all. */
function oddsOfBlock(number: number, rules: Rules, figures: SheetFigures, work: WorkingArrays): number {
  const block = rules.blocks[number]!;
  if (!observeBlock(block, rules, figures, work)) return Infinity;
  weighCrossings(block, figures, work);
  return (
    oddsOfSingles(rules, work, null) +
    oddsOfPairs(work) +
    oddsOfExchanges(block, figures, work) +
    oddsOfHalves(block, figures, work)
  );
}

/** Precision and weighted residuals of the block; false where there is no inverse. */
function observeBlock({ places }: BlockRules, rules: Rules, figures: SheetFigures, work: WorkingArrays): boolean {
  const { isThere, value, ownVariance } = figures;
  const { precision, weighted, indexAt } = work;
  for (let k = 0; k < work.count; k += 1) indexAt[work.places[k]!] = -1;
  const hasBothEyes = isThere[CAMERA_R] === 1 && isThere[CAMERA_L] === 1;
  let count = 0;
  for (const place of places) {
    if (isThere[place] === 0 || (place === CAMERA_PD && hasBothEyes)) continue;
    work.places[count] = place;
    indexAt[place] = count;
    count += 1;
  }
  work.count = count;
  for (let i = 0; i < count; i += 1) {
    const a = work.places[i]!;
    const row = rules.covariance[a % HAND_COUNT]!;
    for (let j = 0; j < count; j += 1) precision[i * count + j] = row[work.places[j]! % HAND_COUNT]!;
    precision[i * count + i]! += ownVariance[a]!;
  }
  const [i, j] = [indexAt[CAMERA_R]!, indexAt[CAMERA_L]!];
  if (i >= 0 && j >= 0 && isThere[CAMERA_PD] === 1) {
    const shared = sharedDoubt(ownVariance[CAMERA_PD]!, ownVariance[CAMERA_R]!, ownVariance[CAMERA_L]!);
    precision[i * count + j]! += shared;
    precision[j * count + i]! += shared;
  }
  if (!invertInPlace(precision, count)) return false;
  for (let k = 0; k < count; k += 1) {
    let sum = 0;
    for (let l = 0; l < count; l += 1) {
      const place = work.places[l]!;
      sum += precision[k * count + l]! * (value[place]! - rules.means[place]!);
    }
    weighted[k] = sum;
  }
  return true;
}

/** Chosen: below these odds a place needs no closer look. */
const CLOSER_FROM = 0.01;

/**
 * Single faults at one place; see `gainOf`. Slips are taken as if each explained the most, but with `faultsAt` where that weighs
 * something by what they would restore.
 */
function oddsOfSingles(
  rules: Rules,
  work: WorkingArrays,
  faultsAt: ((place: number) => readonly Fault[]) | null,
): number {
  const { count, places, precision, weighted, mass, repeated } = work;
  let odds = 0;
  for (let k = 0; k < count; k += 1) {
    const place = places[k]!;
    const own = precision[k * count + k]!;
    const half = (0.5 * weighted[k]! ** 2) / own;
    const share = 1 / (1 + rules.scatter[place]! * own);
    const anything = (rules.anything[place]! + repeated[place]!) * Math.sqrt(TWO_PI / own);
    const slips = rules.slips[place]!;
    const most = slips * Math.exp(half);
    odds += most > CLOSER_FROM && faultsAt !== null ? oddsOfSlips(faultsAt(place), own, weighted[k]!) : most;
    odds += anything * Math.exp(half);
    odds += rules.badlyTaken[place]! * Math.sqrt(share) * Math.exp(half * (1 - share));
    mass[k] = slips + anything + rules.badlyTaken[place]!;
  }
  return odds;
}

/** Slips at one place by what each would change; see `gainOfChanges`. */
function oddsOfSlips(faults: readonly Fault[], own: number, weighted: number): number {
  let odds = 0;
  for (const { logPrior, changes } of faults) {
    const by = changes[0]!.by;
    odds += Math.exp(logPrior - by * weighted - 0.5 * by * by * own);
  }
  return odds;
}

/**
 * Pairs of single faults: mass_i mass_j e^(E/2), over √(1 - ρ²) as two values that say nothing may be anything together, where ρ is
 * the correlation of W at the two.
 */
function oddsOfPairs({ count, precision, weighted, mass }: WorkingArrays): number {
  let odds = 0;
  for (let i = 0; i < count; i += 1) {
    const [p, u] = [precision[i * count + i]!, weighted[i]!];
    for (let j = 0; j < i; j += 1) {
      const [q, r, v] = [precision[j * count + j]!, precision[i * count + j]!, weighted[j]!];
      const determinant = p * q - r * r;
      const explained = (q * u * u - 2 * r * u * v + p * v * v) / determinant;
      odds += mass[i]! * mass[j]! * Math.sqrt((p * q) / determinant) * Math.exp(0.5 * explained);
    }
  }
  return odds;
}

/** Takes the changes of an exchange in this block into `work`; returns how many there are. */
function takeChanges({ places, others }: Exchange, figures: SheetFigures, work: WorkingArrays): number {
  let taken = 0;
  for (let a = 0; a < places.length; a += 1) {
    const index = work.indexAt[places[a]!]!;
    if (index < 0) continue;
    work.at[taken] = index;
    work.by[taken] = changeOf(places[a]!, others[a]!, figures);
    taken += 1;
  }
  return taken;
}

/** -dᵀ u - ½ dᵀ W d for the changes that were taken; see `gainOfChanges`. */
function gainOfTaken(taken: number, { count, precision, weighted, at, by }: WorkingArrays): number {
  let gain = 0;
  for (let a = 0; a < taken; a += 1) {
    gain -= by[a]! * weighted[at[a]!]!;
    for (let b = 0; b < taken; b += 1) gain -= 0.5 * by[a]! * by[b]! * precision[at[a]! * count + at[b]!]!;
  }
  return gain;
}

/** Exchanges alone, with a single fault at a place that they leave, and with one another. */
function oddsOfExchanges({ exchanges, apart }: BlockRules, figures: SheetFigures, work: WorkingArrays): number {
  const { count, precision, weighted, mass, at, by } = work;
  let odds = 0;
  for (let one = 0; one < exchanges.length; one += 1) {
    const exchange = exchanges[one]!;
    if (work.exchanges[exchange.id] === -Infinity) continue;
    const taken = takeChanges(exchange, figures, work);
    const gain = gainOfTaken(taken, work);
    let together = expOrTiny(gain);
    for (let k = 0; k < count; k += 1) {
      let after = weighted[k]!;
      let isTouched = false;
      for (let a = 0; a < taken; a += 1) {
        after += by[a]! * precision[k * count + at[a]!]!;
        isTouched ||= at[a] === k;
      }
      if (!isTouched) together += mass[k]! * expOrTiny(gain + (0.5 * after * after) / precision[k * count + k]!);
    }
    for (const second of apart[one]!) {
      if (work.exchanges[second.id] === -Infinity) continue;
      together += second.frequency * expOrTiny(gain + gainAfter(second, taken, figures, work));
    }
    odds += exchange.frequency * together;
  }
  return odds;
}

/** The gain of an exchange once the changes that were taken are made. */
function gainAfter({ places, others }: Exchange, taken: number, figures: SheetFigures, work: WorkingArrays): number {
  const { count, precision, weighted, indexAt, at, by } = work;
  let gain = 0;
  for (let b = 0; b < places.length; b += 1) {
    const [index, change] = [indexAt[places[b]!]!, changeOf(places[b]!, others[b]!, figures)];
    let after = weighted[index]!;
    for (let a = 0; a < taken; a += 1) after += by[a]! * precision[index * count + at[a]!]!;
    for (let c = 0; c < places.length; c += 1) {
      after += 0.5 * changeOf(places[c]!, others[c]!, figures) * precision[index * count + indexAt[places[c]!]!]!;
    }
    gain -= change * after;
  }
  return gain;
}

/**
 * R and L written as just the halves of the whole: both say nothing any more, so that their E explains all that they could. Alone, and
 * with a single fault or an exchange elsewhere, which is then weighed with what is left of W.
 */
function oddsOfHalves({ halves, exchanges }: BlockRules, figures: SheetFigures, work: WorkingArrays): number {
  const { count, precision, weighted, mass, indexAt } = work;
  const { value } = figures;
  let odds = 0;
  let applying = 0;
  for (const { places, density } of halves) {
    const [whole, right, left] = places;
    const [i, j] = [indexAt[right]!, indexAt[left]!];
    if (i < 0 || j < 0 || indexAt[whole]! < 0) continue;
    if (Math.abs(value[right]! - value[left]!) > ROUNDING_SLACK) continue;
    if (Math.abs(value[whole]! - 2 * value[right]!) > ROUNDING_SLACK) continue;
    applying += 1;
    const [p, q, r] = [precision[i * count + i]!, precision[j * count + j]!, precision[i * count + j]!];
    const determinant = p * q - r * r;
    const explains = (u: number, v: number): number => (0.5 * (q * u * u - 2 * r * u * v + p * v * v)) / determinant;
    const alone = explains(weighted[i]!, weighted[j]!);
    let together = Math.exp(alone);
    for (let k = 0; k < count; k += 1) {
      if (k === i || k === j) continue;
      // what the two left out leave of the precision, and of u, at k
      const [a, b] = [precision[k * count + i]!, precision[k * count + j]!];
      const own = precision[k * count + k]!;
      const left = own - (q * a * a - 2 * r * a * b + p * b * b) / determinant;
      const [u, v] = [weighted[i]!, weighted[j]!];
      const rest = weighted[k]! - (a * (q * u - r * v) + b * (p * v - r * u)) / determinant;
      together += mass[k]! * Math.sqrt(own / left) * Math.exp(alone + (0.5 * rest * rest) / left);
    }
    for (const exchange of exchanges) {
      if (exchange.places.includes(right) || exchange.places.includes(left)) continue;
      if (work.exchanges[exchange.id] === -Infinity) continue;
      const taken = takeChanges(exchange, figures, work);
      let [u, v] = [weighted[i]!, weighted[j]!];
      for (let a = 0; a < taken; a += 1) {
        u += work.by[a]! * precision[i * count + work.at[a]!]!;
        v += work.by[a]! * precision[j * count + work.at[a]!]!;
      }
      together += exchange.frequency * Math.exp(gainOfTaken(taken, work) + explains(u, v));
    }
    odds += density * (TWO_PI / Math.sqrt(determinant)) * together;
  }
  // two sets of halves at once are left to the whole cross-check
  return applying > 1 ? Infinity : odds;
}

/** Adds to each exchange with another block what it gains in this one: blocks have no precision in common. */
function weighCrossings({ crossings }: BlockRules, figures: SheetFigures, work: WorkingArrays): void {
  for (const crossing of crossings) {
    if (work.exchanges[crossing.id] === -Infinity) continue;
    work.exchanges[crossing.id]! += gainOfTaken(takeChanges(crossing, figures, work), work);
  }
}

/** No less than the probability of all exchanges of a block's numbers with those of others. */
function crossingsOf({ crossings }: BlockRules, work: WorkingArrays): number {
  let sum = 0;
  for (const { id } of crossings) sum += Math.exp(work.exchanges[id]!);
  return sum;
}
