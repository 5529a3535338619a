import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { MeasurementId, ReadingName } from '../core/catalogue/measurement.js';
import type { Restoration } from '../core/crosscheck/slip.js';
import type { Side } from '../core/units/side.js';

/** Where neither the name nor the short name of the column reads well within a sentence. */
const IN_SENTENCES: { readonly [Id in MeasurementId]?: string } = {
  binocularPd: 'PD, distance',
  monocularPd: 'PD',
  nearPd: 'PD, near',
  monocularNearPd: 'near PD',
  distanceBetweenRims10: 'distance between rims at 10 mm',
  distanceBetweenRims15: 'distance between rims at 15 mm',
};

/** The wearer's side of a place; null where it has none. */
export function sideOf(name: ReadingName, catalogue: Catalogue): Side | null {
  return measurementOfReading(catalogue, name).fields.find((field) => field.name === name)?.side ?? null;
}

/** The measurement as it is called within a sentence, without a side: `crest height`. */
export function measurementWords(name: ReadingName, catalogue: Catalogue): string {
  const measurement = measurementOfReading(catalogue, name);
  return IN_SENTENCES[measurement.id] ?? lowerFirst(measurement.name);
}

/** The place as it is called within a sentence: `crest height R`. */
export function placeWords(name: ReadingName, catalogue: Catalogue): string {
  const side = sideOf(name, catalogue);
  const words = measurementWords(name, catalogue);
  return side === null ? words : `${words} ${side}`;
}

/** `crest height R`, `crest height R and L`, `head width and temple width`. */
export function placesWords(names: readonly ReadingName[], catalogue: Catalogue): string {
  const [first] = names;
  if (first !== undefined && names.length > 1 && isOneMeasurement(names, catalogue)) {
    return `${measurementWords(first, catalogue)} ${listWords(names.map((name) => sideOf(name, catalogue) ?? ''))}`;
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

/** `a`, `a and b`, `a, b and c`. */
export function listWords(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) ?? ''}`;
}

/** As a sentence begins. */
export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** As what begins with a capital stands within a sentence; abbreviations such as PD stay. */
export function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
