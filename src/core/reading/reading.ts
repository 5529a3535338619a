import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import { invariant } from '../result.js';
import { combineUncertainties, resolutionUncertainty } from '../statistics/uncertainty.js';

/** One number that a reader took by hand. It cannot be made without an uncertainty. */
export interface Reading {
  readonly name: ReadingName;
  /** in the unit of its measurement (millimetres for all lengths) */
  readonly value: number;
  /** one standard deviation, same unit; always positive */
  readonly standardUncertainty: number;
}

/** The readings that are in so far. */
export type Readings = { readonly [Name in ReadingName]?: Reading };

/**
 * A hand reading with the doubt of one trained reader: repeatability and step of the scale, u² = s² + q²/12
 * (JCGM 100:2008, 4.3.7 and F.2.2.1). The value is taken as it is; whether it can be at all is asked by `parseReading`.
 */
export function takeReading(name: ReadingName, value: number, catalogue: Catalogue): Reading {
  const { repeatability, resolution } = measurementOfReading(catalogue, name);
  invariant(repeatability !== null, `${name} is not read by hand`);
  invariant(Number.isFinite(value), `the value of ${name} must be finite, not ${value}`);
  return {
    name,
    value,
    standardUncertainty: combineUncertainties([repeatability.standardDeviation, resolutionUncertainty(resolution)]),
  };
}
