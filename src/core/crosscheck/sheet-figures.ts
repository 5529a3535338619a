import { READING_NAMES } from '../catalogue/measurement.js';
import { addedByGauge } from '../reading/gauge.js';
import { CAMERA_PLACES, nameAt } from './observed-sheet.js';
import type { Evidence } from './reconciliation.js';

/**
 * What stands on a sheet in plain numbers, at the places of `ObservedSheet`: of a long table one after the other is filled into
 * the same arrays.
 */
export interface SheetFigures {
  /** 1 where something was observed */
  readonly isThere: Uint8Array;
  readonly value: Float64Array;
  /** of each value for a given true one */
  readonly ownVariance: Float64Array;
  /** what the gauge of each reading adds to what its scale shows; 0 for a plain rule */
  readonly added: Float64Array;
  /** spectacle plane to the near object, mm */
  workingDistanceMm: number;
}

export function emptyFigures(): SheetFigures {
  const count = 2 * READING_NAMES.length;
  return {
    isThere: new Uint8Array(count),
    value: new Float64Array(count),
    ownVariance: new Float64Array(count),
    added: new Float64Array(READING_NAMES.length),
    workingDistanceMm: 0,
  };
}

/** The figures of what a sheet says. */
export function figuresOf({ readings, estimates, workingDistanceMm }: Evidence): SheetFigures {
  const figures = emptyFigures();
  const { isThere, value, ownVariance, added } = figures;
  READING_NAMES.forEach((name, place) => {
    const reading = readings[name];
    if (reading === undefined) return;
    isThere[place] = 1;
    value[place] = reading.value;
    ownVariance[place] = reading.standardUncertainty ** 2;
    added[place] = addedByGauge(reading.origin?.gauge ?? null);
  });
  for (const place of CAMERA_PLACES) {
    const estimate = estimates?.[nameAt(place)];
    if (estimate === undefined) continue;
    isThere[place] = 1;
    value[place] = estimate.value;
    ownVariance[place] = estimate.standardUncertainty ** 2;
  }
  figures.workingDistanceMm = workingDistanceMm;
  return figures;
}
