import type { ReadingName } from '../core/catalogue/measurement.js';
import type { SheetRow } from '../session/rows.js';
import { spokenName } from './sentences.js';
import { words } from './language.js';

/** A place of the sheet by the names that it goes by. */
export interface NamedPlace {
  readonly name: ReadingName;
  /** as it is shown */
  readonly label: string;
  /** the words in which it is sought, in lower case: its names, side and block */
  readonly terms: readonly string[];
  /** its names and those that the trade has besides, whole and in lower case */
  readonly wholeNames: readonly string[];
}

/** All places of the rows, in their order. */
export function namedPlaces(rows: readonly SheetRow[]): readonly NamedPlace[] {
  return rows.flatMap(({ measurement, fields }) => {
    const { name, shortName, alsoCalled } = words.measurements[measurement.id];
    return fields.map(({ field, side }) => ({
      name: field,
      label: spokenName(measurement, side),
      terms: termsOf(
        shortName,
        side === null ? '' : `${words.sheet.side[side]} ${words.sheet.sideWord[side]}`,
        name,
        words.sheet.groups[measurement.group],
        ...alsoCalled,
      ),
      wholeNames: [shortName, name, ...alsoCalled].map((whole) => whole.toLowerCase()),
    }));
  });
}

function termsOf(...texts: readonly string[]): readonly string[] {
  return texts.flatMap((text) => text.toLowerCase().match(/[\p{L}\d]+/gu) ?? []);
}

/**
 * The places that are meant by `typed`: every word of it begins a word of the place. Those that are called just that come first (A is the
 * width of a box before it begins an angle), then those whose name begins with the first word; otherwise they stay in their order.
 */
export function matchingPlaces(typed: string, places: readonly NamedPlace[]): readonly NamedPlace[] {
  const sought = termsOf(typed);
  const [first] = sought;
  if (first === undefined) return places;
  const found = places.filter(({ terms }) => sought.every((word) => terms.some((term) => term.startsWith(word))));
  const whole = sought.join(' ');
  const rank = ({ terms, wholeNames }: NamedPlace): number =>
    wholeNames.includes(whole) ? 0 : terms[0]?.startsWith(first) === true ? 1 : 2;
  return found.toSorted((one, other) => rank(one) - rank(other));
}
