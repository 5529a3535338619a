import type { ReadingName } from '../core/catalogue/measurement.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { Conflict, Evidence, Explanation, Suspicion } from '../core/crosscheck/reconciliation.js';
import type { Restoration, Slip } from '../core/crosscheck/slip.js';
import type { SumFacts } from './conflict-words.js';
import { words } from './language.js';
import { formatPercent, plainNumber, tenthNumber, withUnit } from './numbers.js';
import {
  isOneMeasurement,
  listWords,
  measurementWords,
  placesWords,
  placeWords,
  restorationsByRow,
  sideLetter,
  sideOf,
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
  if (probability < 0.01) return words.slip.under(formatPercent(1, 0));
  if (probability > 0.99) return words.slip.over(formatPercent(99, 0));
  return formatPercent(100 * probability, 0);
}

/**
 * What probably happened, with what it would have been: `PD, distance was probably read at the wrong ten: 61 instead of 71 mm
 * (86 %).` It is said as something that may be where it is less probable than all else together, whatever it would restore.
 */
export function explanationSentence(explanations: readonly Explanation[], sheet: WrittenSheet): string | null {
  const [best] = explanations;
  if (best === undefined) return null;
  const isProbable = isProbableSlip(explanations);
  const said = probabilityWords(best.probability);
  const [first, second] = best.slips;
  const clause = slipClause(first, isProbable, sheet);
  if (second === undefined) return words.slip.explained(clause, instead(first, sheet), said);
  return words.slip.explainedByTwo(
    clause,
    instead(first, sheet),
    slipClause(second, isProbable, sheet),
    instead(second, sheet),
    said,
  );
}

/** The next best cause in a few words, as long as it is worth saying: `Next: right and left swapped (6 %).` */
export function nextSentence(explanations: readonly Explanation[], sheet: WrittenSheet): string | null {
  const [best, next] = explanations;
  if (best === undefined || next === undefined || next.probability < WORTH_SAYING) return null;
  const said = probabilityWords(next.probability);
  const [slip, second] = next.slips;
  const [restoration, other] = slip.restorations;
  if (isSameSlip(best, next) && restoration !== undefined && other === undefined && second === undefined) {
    return words.slip.nextSame(valueWords(restoration.name, restoration.restored, sheet), said);
  }
  const known = new Set(placesOf(best));
  return words.slip.next(listWords(next.slips.map((one) => nextPhrase(one, known, sheet))), said);
}

function nextPhrase(slip: Slip, known: ReadonlySet<ReadingName>, sheet: WrittenSheet): string {
  const [first, second] = slip.restorations;
  const phrase = words.slip.phrases[slip.kind];
  if (first === undefined) return phrase;
  const names = slip.restorations.map(({ name }) => name);
  const places = areBothSidesOfRows(slip, sheet) ? rowsWords(slip, sheet) : placesWords(names, sheet.catalogue);
  return words.slip.nextCause(
    names.every((name) => known.has(name)) ? null : places,
    phrase,
    second === undefined ? valueWords(first.name, first.restored, sheet) : null,
  );
}

/** What happened, without the numbers; a whole sentence but for its end. */
function slipClause(slip: Slip, isProbable: boolean, sheet: WrittenSheet): string {
  const names = slip.restorations.map(({ name }) => name);
  return words.slip.clauses[slip.kind]({
    places: placesWords(names, sheet.catalogue),
    count: names.length,
    isProbable,
    rows: areBothSidesOfRows(slip, sheet) ? rowsWords(slip, sheet) : null,
    ...gaugeAmount(slip, sheet),
  });
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

/** What a gauge needs; the gauge stays without a name where several need as much, or none. */
function gaugeAmount(
  slip: Slip,
  { readings, catalogue, gauges }: WrittenSheet,
): { readonly amount: string | null; readonly gauge: string | null } {
  const [first] = slip.restorations;
  if (first === undefined) return { amount: null, gauge: null };
  const { id, unit } = measurementOfReading(catalogue, first.name);
  const amount = Math.abs(first.restored - first.written);
  const inUse = readings[first.name]?.origin?.gauge ?? null;
  const fitting = (slip.kind === 'offset-twice' && inUse !== null ? [inUse] : gauges).filter(
    ({ serves, zeroOffset }) => serves.includes(id) && Math.abs(Math.abs(zeroOffset) - amount) < 1e-6,
  );
  const names = new Set(fitting.map(({ name }) => name));
  const [name] = names;
  return {
    amount: withUnit(plainNumber(amount), unit),
    // the gauges of a table have no names
    gauge: name === undefined || name === '' || names.size > 1 ? null : name,
  };
}

/** `61 instead of 71 mm`, for two places `R 5 instead of 3, L 3 instead of 5 mm`, for more row by row. */
function instead(slip: Slip, sheet: WrittenSheet): string {
  if (!areBothSidesOfRows(slip, sheet)) return insteadInRow(slip.restorations, sheet);
  return restorationsByRow(slip.restorations, sheet.catalogue)
    .map((row) => {
      const [first] = row;
      return words.slip.insteadAt(
        first === undefined ? '' : measurementWords(first.name, sheet.catalogue),
        insteadInRow(row, sheet),
      );
    })
    .join('; ');
}

function insteadInRow(restorations: readonly Restoration[], sheet: WrittenSheet): string {
  const { catalogue } = sheet;
  const units = new Set(restorations.map(({ name }) => measurementOfReading(catalogue, name).unit));
  const said = ({ name, written, restored }: Restoration, isLast: boolean): string => {
    const { unit } = measurementOfReading(catalogue, name);
    const number = tenthNumber(restored);
    const hasUnit = isLast || units.size > 1 || unit === 'deg';
    return words.slip.instead(writtenNumber(name, written, sheet), hasUnit ? withUnit(number, unit) : number);
  };
  const areSides = isOneMeasurement(
    restorations.map(({ name }) => name),
    catalogue,
  );
  return restorations
    .map((restoration, i) => {
      const text = said(restoration, i === restorations.length - 1);
      if (restorations.length === 1) return text;
      return words.slip.insteadAt(
        areSides ? sideLetter(restoration.name, catalogue) : placeWords(restoration.name, catalogue),
        text,
      );
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
  if (expected === null) return words.conflict.doesNotFit(place, written);
  return words.conflict.allElse(expectedWords(first, expected.value, sheet), place, written);
}

/** What a reading was held against, with the numbers of both: `R 36 and L 35 make 71 mm; 61 is written for both eyes.` */
export function conflictSentence(conflict: Conflict, sheet: WrittenSheet): string {
  const [first] = conflict.names;
  if (first === undefined) return '';
  const own = ownConflictSentence(conflict, sheet);
  if (own !== null) return own;
  return words.conflict.with[conflict.with]({
    from: fromOthers(conflict, sheet),
    expected: expectedWords(first, conflict.expected, sheet),
    place: placeWords(first, sheet.catalogue),
    written: writtenWords(first, sheet),
  });
}

/** What some rules say in their own way, where all their readings are there. */
function ownConflictSentence(conflict: Conflict, sheet: WrittenSheet): string | null {
  const relation = conflict.with;
  if (relation === 'eyes-sum' || relation === 'near-eyes-sum') {
    const facts = sumFacts(conflict.names, relation === 'near-eyes-sum', sheet);
    return facts === null ? null : words.conflict.eyesSum(facts);
  }
  if (relation === 'temples-in-head') return templesSentence(sheet);
  return relation === 'sides-alike' ? sidesSentence(conflict, sheet) : null;
}

/** `head width (150 mm)`, `length to bend (R 100, L 101 mm) and length of drop R (40 mm)`; null where no other is joined. */
function fromOthers({ names }: Conflict, sheet: WrittenSheet): string | null {
  const { catalogue } = sheet;
  const others = names.slice(1);
  if (others.length === 0) return null;
  const ids = [...new Set(others.map((name) => measurementOfReading(catalogue, name).id))];
  const groups = ids.map((id) => others.filter((name) => measurementOfReading(catalogue, name).id === id));
  return listWords(groups.map((group) => groupWords(group, sheet)));
}

/** The places of one measurement with what is written there. */
function groupWords(group: readonly ReadingName[], sheet: WrittenSheet): string {
  const { catalogue, readings } = sheet;
  const [first, second] = group;
  if (first === undefined) return '';
  if (second === undefined) {
    const { unit } = measurementOfReading(catalogue, first);
    const number = withUnit(writtenNumber(first, readings[first]?.value ?? 0, sheet), unit);
    const isOfBoth = sheet.joined?.has(first) === true;
    return words.conflict[isOfBoth ? 'placeWithMean' : 'placeWith'](placeWords(first, catalogue), number);
  }
  const values = group.map((name, i) => {
    const number = writtenNumber(name, readings[name]?.value ?? 0, sheet);
    const { unit } = measurementOfReading(catalogue, name);
    const isLast = i === group.length - 1;
    return `${sideLetter(name, catalogue)} ${isLast || unit === 'deg' ? withUnit(number, unit) : number}`;
  });
  return words.conflict.placeWith(measurementWords(first, catalogue), values.join(', '));
}

/** What both eyes make against the whole; null where one of the three is missing. */
export function sumFacts(names: readonly ReadingName[], isNear: boolean, sheet: WrittenSheet): SumFacts | null {
  const { readings, catalogue } = sheet;
  const of = (side: 'R' | 'L' | null) => {
    const name = names.find((one) => sideOf(one, catalogue) === side);
    const value = name === undefined ? undefined : readings[name]?.value;
    if (name === undefined || value === undefined) return null;
    return { value, said: withReadersNote(writtenNumber(name, value, sheet), name, sheet) };
  };
  const [right, left, whole] = [of('R'), of('L'), of(null)];
  if (right === null || left === null || whole === null) return null;
  const sum = tenthNumber(right.value + left.value);
  return { right: right.said, left: left.said, whole: whole.said, sum, isNear };
}

function templesSentence(sheet: WrittenSheet): string | null {
  const { headWidth, templeWidth } = sheet.readings;
  if (headWidth === undefined || templeWidth === undefined || templeWidth.value < headWidth.value) return null;
  return words.conflict.temples(
    placeWords('templeWidth', sheet.catalogue),
    writtenWords('templeWidth', sheet),
    placeWords('headWidth', sheet.catalogue),
    writtenWords('headWidth', sheet),
  );
}

function sidesSentence({ names }: Conflict, sheet: WrittenSheet): string | null {
  const { readings, catalogue } = sheet;
  const of = (side: 'R' | 'L') => names.find((name) => sideOf(name, catalogue) === side);
  const [right, left] = [of('R'), of('L')];
  if (right === undefined || left === undefined || !isOneMeasurement([right, left], catalogue)) return null;
  if (readings[right] === undefined || readings[left] === undefined) return null;
  return words.conflict.sides(placeWords(right, catalogue), writtenWords(right, sheet), writtenWords(left, sheet));
}

function writtenWords(name: ReadingName, sheet: WrittenSheet): string {
  const reading = sheet.readings[name];
  if (reading === undefined) return words.conflict.nothing;
  const { unit } = measurementOfReading(sheet.catalogue, name);
  return withReadersNote(withUnit(writtenNumber(name, reading.value, sheet), unit), name, sheet);
}

/** Says so where neither reader wrote that number. */
function withReadersNote(value: string, name: ReadingName, { joined }: WrittenSheet): string {
  return joined?.has(name) === true ? words.conflict.meanOfBoth(value) : value;
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
