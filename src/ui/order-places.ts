import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { MeasurementId, ReadingName } from '../core/catalogue/measurement.js';
import { SIDES } from '../core/units/side.js';
import { words } from './language.js';
import { sideOf } from './slip-places.js';

/** A place as the tables of the order call it: `PD of each eye R`. */
export function orderPlaceWords(name: ReadingName, catalogue: Catalogue): string {
  return [words.measurements[measurementOfReading(catalogue, name).id].shortName, ...sideWords([name], catalogue)].join(
    ' ',
  );
}

/** Several places, R and L of one measurement together: `PD, distance; PD of each eye R, L`. Some names have a comma of their own. */
export function orderPlacesWords(names: readonly ReadingName[], catalogue: Catalogue): string {
  const ids = [...new Set(names.map((name) => measurementOfReading(catalogue, name).id))];
  return ids
    .map((id) => {
      const sides = sideWords(
        names.filter((name) => measurementOfReading(catalogue, name).id === id),
        catalogue,
      );
      return [words.measurements[id].shortName, sides.join(', ')].filter((part) => part !== '').join(' ');
    })
    .join('; ');
}

/** Measurements without sides: `PD, distance; Lid aperture`. */
export function orderMeasurementsWords(ids: readonly MeasurementId[]): string {
  return ids.map((id) => words.measurements[id].shortName).join('; ');
}

function sideWords(names: readonly ReadingName[], catalogue: Catalogue): readonly string[] {
  const sides = names.map((name) => sideOf(name, catalogue));
  return SIDES.filter((side) => sides.includes(side)).map((side) => words.sheet.side[side]);
}
