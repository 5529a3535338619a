import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import { READING_NAMES, type ReadingName } from '../core/catalogue/measurement.js';

/** What a column of a table of records holds. */
export type ColumnRole =
  /** what the practice calls the fitting; any text */
  | { readonly kind: 'record' }
  /** spectacle plane to the near object, mm */
  | { readonly kind: 'working-distance' }
  /** what the reader wrote: the scale as it was read, once or several times */
  | { readonly kind: 'reading'; readonly name: ReadingName }
  /** what the gauge needs added to each scale reading of the same row */
  | { readonly kind: 'offset'; readonly name: ReadingName }
  /** the camera's estimate of the same measurement */
  | { readonly kind: 'camera'; readonly name: ReadingName }
  /** the estimate's standard uncertainty */
  | { readonly kind: 'camera-uncertainty'; readonly name: ReadingName };

export const RECORD_COLUMN = 'record';
export const WORKING_DISTANCE_COLUMN = 'working_distance_mm';

/** What is put behind a reading's column for what belongs to it. */
export const SUFFIXES = {
  reading: '',
  offset: '_offset',
  camera: '_camera',
  'camera-uncertainty': '_camera_u',
} as const;

/** The column of a reading: its name in snake case, then its unit, such as `mono_pd_r_mm` for `monoPdR`. */
export function columnOfReading(name: ReadingName, catalogue: Catalogue): string {
  const words = name.replace(/[A-Z]|\d+/g, (part) => `_${part.toLowerCase()}`);
  return `${words}_${measurementOfReading(catalogue, name).unit}`;
}

/** Every column that a table of records may have, in the order in which it is written. */
export function recordColumns(catalogue: Catalogue): ReadonlyMap<string, ColumnRole> {
  const columns = new Map<string, ColumnRole>([
    [RECORD_COLUMN, { kind: 'record' }],
    [WORKING_DISTANCE_COLUMN, { kind: 'working-distance' }],
  ]);
  for (const name of READING_NAMES) {
    const column = columnOfReading(name, catalogue);
    for (const kind of ['reading', 'offset', 'camera', 'camera-uncertainty'] as const)
      columns.set(`${column}${SUFFIXES[kind]}`, { kind, name });
  }
  return columns;
}

/** Chosen: a name of which more than this share would have to change is no misspelling. */
const LARGEST_CHANGE = 0.4;

/** The known name that `name` was most likely meant for; null where none is near. */
export function nearestName(name: string, known: Iterable<string>): string | null {
  const asSnake = name
    .trim()
    .replace(/([a-z\d])([A-Z])/g, '$1_$2')
    .replace(/[\s.-]+/g, '_')
    .toLowerCase();
  let nearest: string | null = null;
  let least = Infinity;
  for (const one of known) {
    const steps = editSteps(asSnake, one);
    if (steps < least) {
      least = steps;
      nearest = one;
    }
  }
  return nearest !== null && least <= LARGEST_CHANGE * Math.max(asSnake.length, nearest.length) ? nearest : null;
}

/** Letters to insert, leave out, replace or swap with their neighbour (Damerau 1964, optimal string alignment). */
export function editSteps(from: string, to: string): number {
  let before: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let i = 1; i <= from.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= to.length; j += 1) {
      const isSame = from[i - 1] === to[j - 1];
      let steps = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + (isSame ? 0 : 1));
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1])
        steps = Math.min(steps, (before[j - 2] ?? 0) + 1);
      row.push(steps);
    }
    before = last;
    last = row;
  }
  return last[to.length] ?? 0;
}
