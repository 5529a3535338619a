import type { ReadingName } from '../core/catalogue/measurement.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { Conflict, Evidence, Explanation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { Restoration, Slip } from '../core/crosscheck/slip.js';
import { unreachable } from '../core/result.js';
import { plainNumber, tenthNumber, withUnit } from './numbers.js';
import {
  isOneMeasurement,
  listWords,
  measurementWords,
  placesWords,
  placeWords,
  restorationsByRow,
  sideOf,
  upperFirst,
} from './slip-places.js';
import { isProbableSlip, isSameSlip, placesOf } from './slip-marks.js';

/** What a sentence about slips draws on besides the slip: the numbers that stand beside it, and what things are called. */
export type WrittenSheet = Pick<Evidence, 'readings' | 'catalogue' | 'gauges'> & {
  /** where two readers' numbers stand as one, which nobody wrote; left out where there is only one reader */
  readonly joined?: ReadonlySet<ReadingName>;
};

/** Chosen: a cause that is less probable is not worth a sentence beside a better one. */
const WORTH_SAYING = 0.1;

/** A probability as it is said: never quite nothing, never certain. */
export function probabilityWords(probability: number): string {
  if (probability < 0.01) return 'under 1 %';
  if (probability > 0.99) return 'over 99 %';
  return `${(100 * probability).toFixed(0)} %`;
}

/**
 * What probably happened, with what it would have been: `PD, distance was probably read at the wrong ten: 61 instead of 71 mm
 * (86 %).` It is said as something that may be where it is less probable than all else together, whatever it would restore.
 */
export function explanationSentence(explanations: readonly Explanation[], sheet: WrittenSheet): string | null {
  const [best] = explanations;
  if (best === undefined) return null;
  const adverb = isProbableSlip(explanations) ? 'probably' : 'perhaps';
  const said = probabilityWords(best.probability);
  const [first, second] = best.slips;
  const clause = slipClause(first, adverb, sheet);
  if (second === undefined) return `${upperFirst(clause)}: ${instead(first, sheet)} (${said}).`;
  return `Two things (${said}): ${clause} (${instead(first, sheet)}), and ${slipClause(second, adverb, sheet)} (${instead(second, sheet)}).`;
}

/** The next best cause in a few words, as long as it is worth saying: `Next: right and left swapped (6 %).` */
export function nextSentence(explanations: readonly Explanation[], sheet: WrittenSheet): string | null {
  const [best, next] = explanations;
  if (best === undefined || next === undefined || next.probability < WORTH_SAYING) return null;
  const said = probabilityWords(next.probability);
  const [slip, second] = next.slips;
  const [restoration, other] = slip.restorations;
  if (isSameSlip(best, next) && restoration !== undefined && other === undefined && second === undefined) {
    return `Next: the same, but ${valueWords(restoration.name, restoration.restored, sheet)} (${said}).`;
  }
  const known = new Set(placesOf(best));
  return `Next: ${listWords(next.slips.map((one) => nextPhrase(one, known, sheet)))} (${said}).`;
}

function nextPhrase(slip: Slip, known: ReadonlySet<ReadingName>, sheet: WrittenSheet): string {
  const [first, second] = slip.restorations;
  const phrase = SLIP_PHRASES[slip.kind];
  if (first === undefined) return phrase;
  const names = slip.restorations.map(({ name }) => name);
  const places = areBothSidesOfRows(slip, sheet) ? rowsWords(slip, sheet) : placesWords(names, sheet.catalogue);
  const where = names.every((name) => known.has(name)) ? '' : `${places}, `;
  return second === undefined
    ? `${where}${phrase}, then ${valueWords(first.name, first.restored, sheet)}`
    : where + phrase;
}

/** What happened, without the numbers; a whole sentence but for its end. */
function slipClause(slip: Slip, adverb: 'probably' | 'perhaps', sheet: WrittenSheet): string {
  const places = placesWords(
    slip.restorations.map(({ name }) => name),
    sheet.catalogue,
  );
  const were = `${slip.restorations.length > 1 ? 'were' : 'was'} ${adverb}`;
  switch (slip.kind) {
    case 'digits-swapped':
      return `${places} ${were} written with two digits swapped`;
    case 'rows-swapped':
      if (areBothSidesOfRows(slip, sheet)) return `the rows ${rowsWords(slip, sheet)} ${were} swapped, right and left`;
      return `${places} ${were} swapped`;
    case 'row-repeated':
      return `the number of the row above or below was ${adverb} written again for ${places}`;
    case 'sides-swapped':
      return `${places} ${were} swapped`;
    case 'offset-forgotten':
      return `${places} ${were} written without the ${gaugeAmountWords(slip, sheet)}`;
    case 'offset-twice':
      return `the ${gaugeAmountWords(slip, sheet)} was ${adverb} added twice to ${places}`;
    case 'near-for-distance':
      return `the near distance was ${adverb} written for ${places}`;
    case 'distance-for-near':
      return `the far distance was ${adverb} written for ${places}`;
    case 'half-for-whole':
      return `one eye’s distance was ${adverb} written for ${places}`;
    case 'whole-for-half':
      return `both eyes’ distance was ${adverb} written for ${places}`;
    case 'halved':
      return `${places} ${were} not measured but taken as half of the whole`;
    case 'point-moved':
      return `${places} ${were} written with the decimal point moved or lost`;
    case 'centimetres':
      return `${places} ${were} written in centimetres`;
    case 'inches':
      return `${places} ${were} written in inches`;
    case 'ten-off':
      return `${places} ${were} read at the wrong ten`;
    case 'digit-wrong':
      return `${places} ${were} written with one digit wrong`;
    case 'sign-lost':
      return `${places} ${were} written with the wrong sign`;
    default:
      return unreachable(slip.kind);
  }
}

/** Whether right and left of two rows changed places. */
function areBothSidesOfRows({ restorations }: Slip, { catalogue }: WrittenSheet): boolean {
  return restorations.length === 4 && restorationsByRow(restorations, catalogue).length === 2;
}

/** `frontal angle and splay angle`. */
function rowsWords({ restorations }: Slip, { catalogue }: WrittenSheet): string {
  const rows = restorationsByRow(restorations, catalogue);
  return listWords(rows.flatMap(([first]) => (first === undefined ? [] : [measurementWords(first.name, catalogue)])));
}

/** What went wrong, in a few words that stand after `Next:`. */
const SLIP_PHRASES: Readonly<Record<Slip['kind'], string>> = {
  'digits-swapped': 'two digits swapped',
  'sides-swapped': 'right and left swapped',
  'offset-forgotten': 'without what a gauge needs',
  'offset-twice': 'with what the gauge needs added twice',
  'near-for-distance': 'the near distance written for the far one',
  'distance-for-near': 'the far distance written for the near one',
  'half-for-whole': 'one eye’s distance written for both',
  'whole-for-half': 'both eyes’ distance written for one',
  halved: 'half of the whole written',
  'point-moved': 'decimal point moved or lost',
  centimetres: 'written in centimetres',
  inches: 'written in inches',
  'rows-swapped': 'two rows swapped',
  'row-repeated': 'the number of the row above or below written again',
  'ten-off': 'read at the wrong ten',
  'digit-wrong': 'one digit wrong',
  'sign-lost': 'the wrong sign',
};

/** `4 mm that the gauge “Rule B” needs`; the gauge stays without a name where several need as much, or none. */
function gaugeAmountWords(slip: Slip, { readings, catalogue, gauges }: WrittenSheet): string {
  const [first] = slip.restorations;
  if (first === undefined) return 'amount that a gauge needs';
  const { id, unit } = measurementOfReading(catalogue, first.name);
  const amount = Math.abs(first.restored - first.written);
  const inUse = readings[first.name]?.origin?.gauge ?? null;
  const fitting = (slip.kind === 'offset-twice' && inUse !== null ? [inUse] : gauges).filter(
    ({ serves, zeroOffset }) => serves.includes(id) && Math.abs(Math.abs(zeroOffset) - amount) < 1e-6,
  );
  const names = new Set(fitting.map(({ name }) => name));
  const [name] = names;
  return `${withUnit(plainNumber(amount), unit)} that ${name === undefined || names.size > 1 ? 'a gauge' : `the gauge “${name}”`} needs`;
}

/** `61 instead of 71 mm`, for two places `R 5 instead of 3, L 3 instead of 5 mm`, for more row by row. */
function instead(slip: Slip, sheet: WrittenSheet): string {
  if (!areBothSidesOfRows(slip, sheet)) return insteadInRow(slip.restorations, sheet);
  return restorationsByRow(slip.restorations, sheet.catalogue)
    .map((row) => {
      const [first] = row;
      return `${first === undefined ? '' : measurementWords(first.name, sheet.catalogue)} ${insteadInRow(row, sheet)}`;
    })
    .join('; ');
}

function insteadInRow(restorations: readonly Restoration[], sheet: WrittenSheet): string {
  const { catalogue } = sheet;
  const units = new Set(restorations.map(({ name }) => measurementOfReading(catalogue, name).unit));
  const words = ({ name, written, restored }: Restoration, isLast: boolean): string => {
    const { unit } = measurementOfReading(catalogue, name);
    const number = tenthNumber(restored);
    return `${writtenNumber(name, written, sheet)} instead of ${isLast || units.size > 1 || unit === 'deg' ? withUnit(number, unit) : number}`;
  };
  const areSides = isOneMeasurement(
    restorations.map(({ name }) => name),
    catalogue,
  );
  return restorations
    .map((restoration, i) => {
      const text = words(restoration, i === restorations.length - 1);
      if (restorations.length === 1) return text;
      return `${areSides ? (sideOf(restoration.name, catalogue) ?? '') : placeWords(restoration.name, catalogue)} ${text}`;
    })
    .join(', ');
}

function valueWords(name: ReadingName, value: number, { catalogue }: WrittenSheet): string {
  return withUnit(tenthNumber(value), measurementOfReading(catalogue, name).unit);
}

/** Why a reading is suspected: what it conflicts with, in numbers. */
export function suspicionSentence({ names, conflict, expected }: Suspicion, sheet: WrittenSheet): string {
  if (conflict !== null) return conflictSentence(conflict, sheet);
  const [first] = names;
  if (first === undefined) return '';
  const place = placeWords(first, sheet.catalogue);
  const written = writtenWords(first, sheet);
  if (expected === null) return `${upperFirst(place)}: ${written} does not fit the rest.`;
  return `All else says about ${expectedWords(first, expected.value, sheet)} for ${place}; ${written} is written.`;
}

/** What a reading was held against, with the numbers of both: `R 36 and L 35 make 71 mm; 61 is written for both eyes.` */
export function conflictSentence(conflict: Conflict, sheet: WrittenSheet): string {
  const [first] = conflict.names;
  if (first === undefined) return '';
  const { catalogue } = sheet;
  const place = placeWords(first, catalogue);
  const written = writtenWords(first, sheet);
  const expected = expectedWords(first, conflict.expected, sheet);
  const follows = `${fromOthers(conflict, sheet)} about ${expected} follows for ${place}; ${written} is written.`;
  switch (conflict.with) {
    case 'eyes-sum':
    case 'near-eyes-sum':
      return eyesSumSentence(conflict, sheet) ?? upperFirst(follows);
    case 'near-from-far':
    case 'nose-flanks':
      return upperFirst(follows);
    case 'side-sum':
      return `A side is as long as its way to the bend and its drop: ${follows}`;
    case 'tangent-before-bend':
      return `The tangent comes a little before the bend: ${follows}`;
    case 'temples-in-head':
      return templesSentence(sheet) ?? `Temples follow the head: ${follows}`;
    case 'frame-around-pd':
      return `The frame’s centres usually stand about as far apart as the eyes: ${follows}`;
    case 'eye-heights':
      return `Where one eye is higher, crest and fitting heights show it: ${follows}`;
    case 'ear-heights':
      return `The side on the higher ear is flatter: ${follows}`;
    case 'lean-of-front':
      return `The front leans about as its sides are angled: ${follows}`;
    case 'sides-alike':
      return sidesSentence(conflict, sheet) ?? upperFirst(follows);
    case 'camera':
      return `The camera says about ${expected} for ${place}; ${written} is written.`;
    case 'population':
      return `${upperFirst(written)} for ${place} is rare among people: about ${expected} is usual.`;
    default:
      return unreachable(conflict.with);
  }
}

/** `from head width (150 mm)`, `from length to bend (R 100, L 101 mm) and length of drop R (40 mm)`. */
function fromOthers({ names }: Conflict, sheet: WrittenSheet): string {
  const { catalogue } = sheet;
  const others = names.slice(1);
  if (others.length === 0) return 'from the other readings';
  const ids = [...new Set(others.map((name) => measurementOfReading(catalogue, name).id))];
  const groups = ids.map((id) => others.filter((name) => measurementOfReading(catalogue, name).id === id));
  return `from ${listWords(groups.map((group) => groupWords(group, sheet)))}`;
}

/** The places of one measurement with what is written there. */
function groupWords(group: readonly ReadingName[], sheet: WrittenSheet): string {
  const { catalogue, readings } = sheet;
  const [first, second] = group;
  if (first === undefined) return '';
  if (second === undefined) {
    const { unit } = measurementOfReading(catalogue, first);
    const number = withUnit(writtenNumber(first, readings[first]?.value ?? 0, sheet), unit);
    return `${placeWords(first, catalogue)} (${number}${sheet.joined?.has(first) === true ? `, ${OF_BOTH}` : ''})`;
  }
  const values = group.map((name, i) => {
    const number = writtenNumber(name, readings[name]?.value ?? 0, sheet);
    const { unit } = measurementOfReading(catalogue, name);
    const isLast = i === group.length - 1;
    return `${sideOf(name, catalogue) ?? ''} ${isLast || unit === 'deg' ? withUnit(number, unit) : number}`;
  });
  return `${measurementWords(first, catalogue)} (${values.join(', ')})`;
}

function eyesSumSentence({ names, with: relation }: Conflict, sheet: WrittenSheet): string | null {
  const sum = sumWords(names, relation === 'near-eyes-sum', sheet);
  return sum === null ? null : `${sum} for both eyes.`;
}

/**
 * What both eyes make against the whole, a sentence but for its end: `R 36 and L 35 make 71 mm; 61 is written`; null where one
 * of the three is missing.
 */
export function sumWords(names: readonly ReadingName[], isNear: boolean, sheet: WrittenSheet): string | null {
  const { readings, catalogue } = sheet;
  const of = (side: 'R' | 'L' | null) => {
    const name = names.find((one) => sideOf(one, catalogue) === side);
    const value = name === undefined ? undefined : readings[name]?.value;
    if (name === undefined || value === undefined) return null;
    return { value, said: writtenNumber(name, value, sheet) + bothReadersNote(name, sheet) };
  };
  const [right, left, whole] = [of('R'), of('L'), of(null)];
  if (right === null || left === null || whole === null) return null;
  const sum = tenthNumber(right.value + left.value);
  return `${isNear ? 'Near, ' : ''}R ${right.said} and L ${left.said} make ${sum} mm; ${whole.said} is written`;
}

function templesSentence(sheet: WrittenSheet): string | null {
  const { headWidth, templeWidth } = sheet.readings;
  if (headWidth === undefined || templeWidth === undefined || templeWidth.value < headWidth.value) return null;
  return `Temples are narrower than the head, but ${placeWords('templeWidth', sheet.catalogue)} is written as ${writtenWords('templeWidth', sheet)} and ${placeWords('headWidth', sheet.catalogue)} as ${writtenWords('headWidth', sheet)}.`;
}

function sidesSentence({ names }: Conflict, sheet: WrittenSheet): string | null {
  const { readings, catalogue } = sheet;
  const of = (side: 'R' | 'L') => names.find((name) => sideOf(name, catalogue) === side);
  const [right, left] = [of('R'), of('L')];
  if (right === undefined || left === undefined || !isOneMeasurement([right, left], catalogue)) return null;
  if (readings[right] === undefined || readings[left] === undefined) return null;
  return `${upperFirst(placeWords(right, catalogue))} is ${writtenWords(right, sheet)} and L ${writtenWords(left, sheet)}: right and left seldom differ so much.`;
}

function writtenWords(name: ReadingName, sheet: WrittenSheet): string {
  const reading = sheet.readings[name];
  if (reading === undefined) return 'nothing';
  const { unit } = measurementOfReading(sheet.catalogue, name);
  return withUnit(writtenNumber(name, reading.value, sheet), unit) + bothReadersNote(name, sheet);
}

const OF_BOTH = 'mean of both readers';

/** Said behind a number that neither reader wrote. */
function bothReadersNote(name: ReadingName, { joined }: WrittenSheet): string {
  return joined?.has(name) === true ? ` (${OF_BOTH})` : '';
}

/** A number as it is written; a mean of several is worked out, and said to a tenth. */
export function writtenNumber(name: ReadingName, value: number, { readings, joined }: WrittenSheet): string {
  const count = readings[name]?.origin?.repeats?.values.length ?? 1;
  return count > 1 || joined?.has(name) === true ? tenthNumber(value) : plainNumber(value);
}

/** To a tenth where the reading is written to less than a whole, else to a whole. */
function expectedWords(name: ReadingName, value: number, sheet: WrittenSheet): string {
  const { resolution } = measurementOfReading(sheet.catalogue, name);
  return valueWords(name, resolution < 1 ? Math.round(10 * value) / 10 : Math.round(value), sheet);
}
