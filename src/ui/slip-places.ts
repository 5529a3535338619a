import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { MeasurementId, ReadingName } from '../core/catalogue/measurement.js';
import type { Restoration } from '../core/crosscheck/slip.js';
import type { Side } from '../core/units/side.js';
import { spokenTag, words } from './language.js';

/** The wearer's side of a place; null where it has none. */
export function sideOf(name: ReadingName, catalogue: Catalogue): Side | null {
  return measurementOfReading(catalogue, name).fields.find((field) => field.name === name)?.side ?? null;
}

/** The letter of that side; empty where it has none. */
export function sideLetter(name: ReadingName, catalogue: Catalogue): string {
  const side = sideOf(name, catalogue);
  return side === null ? '' : words.sheet.side[side];
}

/** The measurement as it is called within a sentence, without a side: `crest height`. */
export function measurementWords(name: ReadingName, catalogue: Catalogue): string {
  const measurement = measurementOfReading(catalogue, name);
  return words.measurements[measurement.id].inSentences;
}

/** The place as it is called within a sentence: `crest height R`. */
export function placeWords(name: ReadingName, catalogue: Catalogue): string {
  const side = sideOf(name, catalogue);
  const measurement = measurementWords(name, catalogue);
  return side === null ? measurement : `${measurement} ${words.sheet.side[side]}`;
}

/** `crest height R`, `crest height R and L`, `head width and temple width`. */
export function placesWords(names: readonly ReadingName[], catalogue: Catalogue): string {
  const [first] = names;
  if (first !== undefined && names.length > 1 && isOneMeasurement(names, catalogue)) {
    return `${measurementWords(first, catalogue)} ${listWords(names.map((name) => sideLetter(name, catalogue)))}`;
  }
  return listWords(names.map((name) => placeWords(name, catalogue)));
}

export function isOneMeasurement(names: readonly ReadingName[], catalogue: Catalogue): boolean {
  return new Set(names.map((name) => measurementOfReading(catalogue, name).id)).size === 1;
}

/** Restorations of the same row of the sheet together, in the order in which the rows first come. */
export function restorationsByRow(
  restorations: readonly Restoration[],
  catalogue: Catalogue,
): readonly (readonly Restoration[])[] {
  const idOf = ({ name }: Restoration): MeasurementId => measurementOfReading(catalogue, name).id;
  const ids = [...new Set(restorations.map(idOf))];
  return ids.map((id) => restorations.filter((restoration) => idOf(restoration) === id));
}

/** Several things in one sentence, such as `a, b and c`. */
export function listWords(parts: readonly string[]): string {
  return words.grammar.list(parts);
}

/** As a sentence begins. */
export function upperFirst(text: string): string {
  return text.charAt(0).toLocaleUpperCase(spokenTag) + text.slice(1);
}
