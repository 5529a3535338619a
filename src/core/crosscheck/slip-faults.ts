import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { Measurement, ReadingName } from '../catalogue/measurement.js';
import { READING_NAMES } from '../catalogue/measurement.js';
import { FAR_DISTANCES, NEAR_DISTANCES } from '../catalogue/pupil-distances.js';
import { nearCentrationDistanceMm, pdFarFromNearCentrationMm } from '../estimate/gaze.js';
import type { Reading, Readings } from '../reading/reading.js';
import { addedByGauge } from '../reading/gauge.js';
import { freeOfDust } from '../statistics/free-of-dust.js';
import { roundToStep } from '../units/round-to-step.js';
import { withDigitsSwapped, withOneDigitChanged } from './digits.js';
import type { Evidence } from './reconciliation.js';
import type { Change } from './observed-sheet.js';
import { placeOf } from './observed-sheet.js';
import { ROUNDING_SLACK } from './rounding-slack.js';
import type { Restoration, Slip, SlipKind } from './slip.js';

/**
 * How often each slip happens to one reading (or one pair of them). Chosen, since nobody has counted: they rank causes that
 * explain the numbers equally well, and leave a sheet of forty readings without any slip three times in four.
 */
export const SLIP_FREQUENCY: Readonly<Record<SlipKind, number>> = {
  'digits-swapped': 0.001,
  'sides-swapped': 0.008,
  'offset-forgotten': 0.001,
  'offset-twice': 0.001,
  'near-for-distance': 0.003,
  'distance-for-near': 0.003,
  'half-for-whole': 0.0005,
  'whole-for-half': 0.0005,
  halved: 0.001,
  'point-moved': 0.0003,
  centimetres: 0.0003,
  inches: 0.0001,
  'rows-swapped': 0.002,
  'row-repeated': 0.001,
  'ten-off': 0.001,
  'digit-wrong': 0.001,
  'sign-lost': 0.001,
};

/** One thing that may be wrong with some values of a sheet: a slip with what it would restore, or a value that is just wrong. */
export interface Fault {
  /** null for a value that no usual slip explains, or that of a misled camera */
  readonly slip: Slip | null;
  /** the places of the sheet that it concerns */
  readonly places: readonly number[];
  /** what it changes; empty where nobody knows what was meant */
  readonly changes: readonly Change[];
  /**
   * variance that it adds to what the values say; infinite where they say nothing at all and are left out; 0 where `changes` tell
   * what was meant
   */
  readonly scatter: number;
  /** logarithm of its frequency, and of the density with which it writes what stands there */
  readonly logPrior: number;
}

/** A slip that put one or two numbers in place of others; its frequency is shared among the values that it could restore. */
function faultOf(kind: SlipKind, restorations: readonly Restoration[], amongValues: number): Fault {
  const changes = restorations.map(({ name, written, restored }) => ({ place: placeOf(name), by: restored - written }));
  return {
    slip: { kind, restorations },
    places: changes.map(({ place }) => place),
    changes,
    scatter: 0,
    logPrior: Math.log(SLIP_FREQUENCY[kind] / amongValues),
  };
}

/** Every slip that could have led to one number alone. */
export function faultsOfOne(name: ReadingName, evidence: Evidence): readonly Fault[] {
  return [...faultsInNumber(name, evidence).faults, ...faultsBesideOthers(name, evidence)];
}

/** The slips that could have led to one number, as far as they follow from what else is on the sheet, or from the gauges at hand. */
export function faultsBesideOthers(name: ReadingName, evidence: Evidence): readonly Fault[] {
  const reading = evidence.readings[name];
  if (reading === undefined) return [];
  const place = { name, reading, measurement: measurementOfReading(evidence.catalogue, name) };
  return [
    ...offsetFaults(place, evidence),
    ...wholeFaults(place, evidence.readings),
    ...nearFaults(place, evidence.workingDistanceMm),
  ];
}

/**
 * Faults that each change one and the same place, with their numbers apart: of all that may have been written only a few weigh
 * anything, and nobody needs to look at the others.
 */
export interface NumberFaults {
  readonly faults: readonly Fault[];
  /** what each changes */
  readonly by: Float64Array;
  readonly logPrior: Float64Array;
  /** the largest of them; minus infinity where there are none */
  readonly mostPrior: number;
}

function numbersApart(faults: readonly Fault[]): NumberFaults {
  return {
    faults,
    by: Float64Array.from(faults, ({ changes }) => changes[0]!.by),
    logPrior: Float64Array.from(faults, ({ logPrior }) => logPrior),
    mostPrior: faults.reduce((most, { logPrior }) => Math.max(most, logPrior), -Infinity),
  };
}

/** Of a place of the camera. */
export const NO_FAULTS = numbersApart([]);

/** What can be wrong with a number that was read in one way. */
interface KnownFaults extends NumberFaults {
  readonly shift: number;
  readonly step: number;
  readonly isRepeated: boolean;
}

/** By place, and by the number there. */
interface KnownNumbers {
  readonly atPlace: readonly Map<number, readonly KnownFaults[]>[];
  count: number;
}

const KNOWN_NUMBERS = new WeakMap<Catalogue, KnownNumbers>();

/** Numbers come again and again: this many are kept, which takes some ten kilobytes each. */
const MOST_KNOWN = 8_000;

function knownNumbers(catalogue: Catalogue): KnownNumbers {
  const known = KNOWN_NUMBERS.get(catalogue);
  if (known !== undefined && known.count < MOST_KNOWN) return known;
  const empty = { atPlace: READING_NAMES.map(() => new Map<number, readonly KnownFaults[]>()), count: 0 };
  KNOWN_NUMBERS.set(catalogue, empty);
  return empty;
}

/** What can be wrong with a number whatever else is on the sheet. */
export function faultsInNumber(name: ReadingName, { readings, catalogue }: Evidence): NumberFaults {
  const reading = readings[name];
  if (reading === undefined) return NO_FAULTS;
  const measurement = measurementOfReading(catalogue, name);
  const step = reading.origin?.gauge?.resolution ?? measurement.resolution;
  const [shift, repeated] = [shiftOf(reading), isRepeated(reading)];
  const known = knownNumbers(catalogue);
  const ofPlace = known.atPlace[placeOf(name)]!;
  const ofNumber = ofPlace.get(reading.value) ?? [];
  for (const one of ofNumber) {
    if (one.shift === shift && one.step === step && one.isRepeated === repeated) return one;
  }
  const place = { name, reading, measurement };
  const found = numbersApart([...digitFaults(place), ...unitFaults(place), ...signFaults(place)]);
  ofPlace.set(reading.value, [...ofNumber, { ...found, shift, step, isRepeated: repeated }]);
  known.count += 1;
  return found;
}

/** Every exchange of numbers, two of them or both sides of two rows, that could have led to what is written. */
export function faultsOfExchanges({ readings, catalogue }: Evidence): readonly Fault[] {
  const faults: Fault[] = [];
  for (const { kind, pairs } of layoutOf(catalogue).exchanges) {
    if (pairs.some(([a, b]) => readings[a] === undefined || readings[b] === undefined)) continue;
    const restorations: Restoration[] = [];
    for (const [a, b] of pairs) {
      const [one, other] = [readings[a]!, readings[b]!];
      // What changed places is what was read from the scales.
      restorations.push(
        { name: a, written: one.value, restored: freeOfDust(scaleOf(other) + shiftOf(one)) },
        { name: b, written: other.value, restored: freeOfDust(scaleOf(one) + shiftOf(other)) },
      );
    }
    if (restorations.every(({ written, restored }) => written === restored)) continue;
    if (restorations.every(({ name, restored }) => isPossible(restored, measurementOfReading(catalogue, name))))
      faults.push(faultOf(kind, restorations, 1));
  }
  return faults;
}

/** Places where just the number of a neighbouring row stands, as if it had been written twice. */
export function repeatedRows({ readings, catalogue }: Evidence): readonly ReadingName[] {
  const repeated = layoutOf(catalogue).neighbours.flatMap(([a, b]) => {
    const [one, other] = [readings[a], readings[b]];
    return one === undefined || other === undefined || one.value !== other.value ? [] : [a, b];
  });
  return [...new Set(repeated)].filter(isEasilyRepeated);
}

/** Whether a neighbouring row may have been written there again; PDs have kinds of their own for it. */
export function isEasilyRepeated(name: ReadingName): boolean {
  return !isFarPd(name) && !isNearPd(name);
}

/**
 * How often some slip led to a number alone, all kinds together that `faultsOfOne` may find of it: each kind shares its frequency
 * among the values that it could restore.
 */
export function frequencyOfSlips(name: ReadingName, catalogue: Catalogue): number {
  const { takenBy, unit, isSigned } = measurementOfReading(catalogue, name);
  const isWhole = PD_SETS.some(({ whole }) => whole === name);
  const isOfOneEye = PD_SETS.some(({ R, L }) => R === name || L === name);
  const kinds: readonly (readonly [boolean, readonly SlipKind[]])[] = [
    [takenBy !== 'trial', ['digits-swapped', 'digit-wrong', 'ten-off']],
    [true, ['point-moved', 'offset-twice', 'offset-forgotten']],
    [unit === 'mm', ['centimetres', 'inches']],
    [isSigned, ['sign-lost']],
    [isWhole, ['half-for-whole']],
    [isOfOneEye, ['whole-for-half']],
    [isFarPd(name), ['near-for-distance']],
    [isNearPd(name), ['distance-for-near']],
  ];
  return kinds.flatMap(([applies, some]) => (applies ? some : [])).reduce((sum, kind) => sum + SLIP_FREQUENCY[kind], 0);
}

/** Both eyes written as just half of the whole, as if nobody had measured each: which readings these are. */
export function halvedEyes(readings: Readings): readonly (readonly [ReadingName, ReadingName])[] {
  return PD_SETS.flatMap(({ whole, R, L }) => {
    const [all, right, left] = [readings[whole], readings[R], readings[L]];
    if (right === undefined || left === undefined || Math.abs(right.value - left.value) > ROUNDING_SLACK) return [];
    if (all === undefined || Math.abs(all.value - 2 * right.value) > ROUNDING_SLACK) return [];
    return [[R, L] as const];
  });
}

interface Place {
  readonly name: ReadingName;
  readonly reading: Reading;
  readonly measurement: Measurement;
}

/** What the gauge adds to each scale reading. */
function shiftOf({ origin }: Reading): number {
  return addedByGauge(origin?.gauge ?? null);
}

function isRepeated({ origin }: Reading): boolean {
  return (origin?.repeats?.values.length ?? 1) > 1;
}

function scaleOf(reading: Reading): number {
  return freeOfDust(reading.value - shiftOf(reading));
}

function isPossible(value: number, { isSigned, plausible }: Measurement): boolean {
  return (isSigned || value > 0) && value >= plausible.hard.low && value <= plausible.hard.high;
}

/** Several scale readings of one kind share its frequency, also those that no face could show. */
function faults(kind: SlipKind, { name, reading, measurement }: Place, scales: readonly number[]): readonly Fault[] {
  const shift = shiftOf(reading);
  return scales.flatMap((scale): readonly Fault[] => {
    const restored = freeOfDust(scale + shift);
    if (Math.abs(restored - reading.value) < ROUNDING_SLACK || !isPossible(restored, measurement)) return [];
    return [faultOf(kind, [{ name, written: reading.value, restored }], scales.length)];
  });
}

/** The same for values that follow from other readings, not from figures of the scale. */
function faultsOfValues(kind: SlipKind, place: Place, values: readonly number[]): readonly Fault[] {
  const shift = shiftOf(place.reading);
  return faults(
    kind,
    place,
    values.map((value) => value - shift),
  );
}

/** One number was read or typed wrongly; of several repeats one would stand far off, and is pointed out by itself. */
function digitFaults(place: Place): readonly Fault[] {
  const { reading, measurement } = place;
  if (isRepeated(reading) || measurement.takenBy === 'trial') return [];
  const scale = scaleOf(reading);
  const step = reading.origin?.gauge?.resolution ?? measurement.resolution;
  // a gauge that shows halves was not read to a tenth: 65.3 is no likely origin of 63.5
  const readable = (values: readonly number[]) =>
    isOnScale(scale, step) ? values.filter((value) => isOnScale(value, step)) : values;
  const size = Math.abs(scale);
  const signed = (values: readonly number[]): readonly number[] => values.map((value) => (scale < 0 ? -value : value));
  return [
    ...faults('digits-swapped', place, signed(readable(withDigitsSwapped(size)))),
    ...faults('digit-wrong', place, signed(readable(withOneDigitChanged(size)))),
    ...faults('ten-off', place, [scale - 10, scale + 10]),
  ];
}

function unitFaults(place: Place): readonly Fault[] {
  const { reading, measurement } = place;
  const scale = scaleOf(reading);
  if (scale === 0) return [];
  // 4.14 mm on a scale of whole millimetres was never read; means of repeats may be anything
  const shifted = (...powers: readonly number[]): readonly number[] =>
    powers
      .map((power) => Number(`${scale}e${power}`))
      .filter((value) => isRepeated(reading) || isOnScale(value, measurement.resolution / 2));
  if (measurement.unit === 'deg') return faults('point-moved', place, shifted(1, -1));
  return [
    ...faults('centimetres', place, shifted(1)),
    ...faults('point-moved', place, shifted(-1, 2, -2)),
    ...faults('inches', place, [roundToStep(scale * 25.4, measurement.resolution)]),
  ];
}

function signFaults(place: Place): readonly Fault[] {
  return place.measurement.isSigned ? faults('sign-lost', place, [-scaleOf(place.reading)]) : [];
}

/** The sheet adds what the gauge in use needs: the reader may have added it too, or have used another gauge than was set. */
function offsetFaults(place: Place, { gauges }: Evidence): readonly Fault[] {
  const { reading, measurement } = place;
  const inUse = reading.origin?.gauge ?? null;
  const scale = scaleOf(reading);
  const twice = inUse === null || inUse.zeroOffset === 0 ? [] : [scale - inUse.zeroOffset];
  const forgotten = gauges
    .filter(({ id, serves, zeroOffset }) => id !== inUse?.id && serves.includes(measurement.id) && zeroOffset !== 0)
    .map(({ zeroOffset }) => scale + zeroOffset);
  return [...faults('offset-twice', place, twice), ...faults('offset-forgotten', place, [...new Set(forgotten)])];
}

const PD_SETS = [FAR_DISTANCES, NEAR_DISTANCES];

function wholeFaults(place: Place, readings: Readings): readonly Fault[] {
  const written = place.reading.value;
  for (const { whole, R, L } of PD_SETS) {
    if (place.name === whole) {
      const sides = [R, L].flatMap((name) => readings[name]?.value ?? []);
      return faultsOfValues('half-for-whole', place, [...new Set([written, ...sides].map((other) => written + other))]);
    }
    if (place.name !== R && place.name !== L) continue;
    const other = readings[place.name === R ? L : R]?.value;
    return faultsOfValues('whole-for-half', place, [other === undefined ? written / 2 : written - other]);
  }
  return [];
}

function isFarPd(name: ReadingName): boolean {
  return Object.values<ReadingName>(FAR_DISTANCES).includes(name);
}

function isNearPd(name: ReadingName): boolean {
  return Object.values<ReadingName>(NEAR_DISTANCES).includes(name);
}

function nearFaults(place: Place, workingDistanceMm: number): readonly Fault[] {
  const { resolution } = place.measurement;
  const written = place.reading.value;
  if (isFarPd(place.name)) {
    const far = roundToStep(pdFarFromNearCentrationMm(written, workingDistanceMm), resolution);
    return faultsOfValues('near-for-distance', place, [far]);
  }
  if (isNearPd(place.name)) {
    const near = roundToStep(nearCentrationDistanceMm(written, workingDistanceMm), resolution);
    return faultsOfValues('distance-for-near', place, [near]);
  }
  return [];
}

type Pair = readonly [ReadingName, ReadingName];

interface Exchange {
  readonly kind: 'sides-swapped' | 'rows-swapped';
  /** one pair, or those of both sides */
  readonly pairs: readonly Pair[];
}

/** What stands beside what on a sheet. */
interface Layout {
  /** places of neighbouring rows that are easily taken for one another */
  readonly neighbours: readonly Pair[];
  readonly exchanges: readonly Exchange[];
}

/** Both are numbers of the frame that are read off one line: 52 and 18. */
const BOX_AND_BRIDGE: Pair = ['boxLensWidth', 'distanceBetweenLenses'];

const LAYOUTS = new WeakMap<Catalogue, Layout>();

/** What stands beside what on the sheets of a catalogue. */
export function layoutOf(catalogue: Catalogue): Layout {
  const known = LAYOUTS.get(catalogue);
  if (known !== undefined) return known;
  const sides = catalogue.flatMap(({ fields: [right, left] }): readonly Pair[] =>
    right === undefined || left === undefined ? [] : [[right.name, left.name]],
  );
  const rows = catalogue.slice(1).map((row, i) => neighbouringPairs(catalogue[i]!, row));
  const far = (['whole', 'R', 'L'] as const).map((which): Pair => [FAR_DISTANCES[which], NEAR_DISTANCES[which]]);
  const bothSides = [...rows, far.slice(1)].filter((pairs) => pairs.length === 2 && isSided(pairs));
  const neighbours = rows.flat();
  const exchanges = [
    ...sides.map((pair): Exchange => ({ kind: 'sides-swapped', pairs: [pair] })),
    ...[...neighbours, ...far, BOX_AND_BRIDGE].map((pair): Exchange => ({ kind: 'rows-swapped', pairs: [pair] })),
    ...bothSides.map((pairs): Exchange => ({ kind: 'rows-swapped', pairs })),
  ];
  const layout: Layout = { neighbours, exchanges: exchanges.filter(isFirstOfItsKind) };
  LAYOUTS.set(catalogue, layout);
  return layout;
}

/** Sides stand under sides; a row without sides may be taken for either side of the next one. Units are never mistaken. */
function neighbouringPairs(above: Measurement, below: Measurement): readonly Pair[] {
  if (above.unit !== below.unit) return [];
  return above.fields.flatMap((one) =>
    below.fields
      .filter((other) => one.side === null || other.side === null || one.side === other.side)
      .map((other): Pair => [one.name, other.name]),
  );
}

/** Two pairs with four places: right with right, and left with left. */
function isSided(pairs: readonly Pair[]): boolean {
  return new Set(pairs.flat()).size === 4;
}

function isFirstOfItsKind({ pairs }: Exchange, i: number, all: readonly Exchange[]): boolean {
  const key = (exchange: readonly Pair[]): string => exchange.flat().sort().join(' ');
  return all.findIndex((other) => key(other.pairs) === key(pairs)) === i;
}

function isOnScale(value: number, step: number): boolean {
  return Math.abs(value - roundToStep(value, step)) < ROUNDING_SLACK;
}
