import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import { invariant } from '../result.js';
import { combineUncertainties, resolutionUncertainty } from '../statistics/uncertainty.js';
import type { Gauge } from './gauge.js';
import type { Repeats } from './repeats.js';
import type { TrialResult } from './trial-series.js';

/** What a reader found at one place of the sheet. It cannot be made without an uncertainty. */
export interface Reading {
  readonly name: ReadingName;
  /** the mean of the repeats, or what a trial series ends at; in the unit of its measurement */
  readonly value: number;
  /** one standard deviation, same unit; always positive */
  readonly standardUncertainty: number;
  /** how the value came about; null for one number that was only typed */
  readonly origin: ReadingOrigin | null;
}

export interface ReadingOrigin {
  /** null: a plain rule that is read as it stands */
  readonly gauge: Gauge | null;
  /** what was read from a scale, once or several times; null for a trial series */
  readonly repeats: Repeats | null;
  /** what was found by trying sizes; null for readings from a scale */
  readonly trials: TrialResult | null;
}

/** The readings that are in so far. */
export type Readings = { readonly [Name in ReadingName]?: Reading };

/**
 * One number with the doubt of one trained reader: repeatability and step of the scale, u² = s² + q²/12
 * (JCGM 100:2008, 4.3.7 and F.2.2.1). The value is taken as it is; whether it can be at all is asked by `parseReading`.
 */
export function takeReading(name: ReadingName, value: number, catalogue: Catalogue): Reading {
  const { repeatability, resolution } = measurementOfReading(catalogue, name);
  invariant(Number.isFinite(value), `the value of ${name} must be finite, not ${value}`);
  return {
    name,
    value,
    standardUncertainty: combineUncertainties([repeatability.standardDeviation, resolutionUncertainty(resolution)]),
    origin: null,
  };
}
