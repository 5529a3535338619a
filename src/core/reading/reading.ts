import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { ReadingName } from '../catalogue/measurement.js';
import { invariant } from '../result.js';
import { combineUncertainties, resolutionUncertainty } from '../statistics/uncertainty.js';
import type { Gauge, GaugedValue } from './gauge.js';
import type { Repeats } from './repeats.js';
import { summariseRepeats } from './repeats.js';
import type { TrialResult } from './trial-series.js';

/** What a reader found at one place of the sheet. It cannot be made without an uncertainty. */
export interface Reading {
  readonly name: ReadingName;
  /** the mean of the repeats, or what a trial series ends at; in the unit of its measurement */
  readonly value: number;
  /** one standard deviation, same unit; always positive */
  readonly standardUncertainty: number;
  /** how the value came about; null where nobody typed it into this place: a number that is only weighed, two readers' joined */
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

/**
 * The mean of what was read one or more times in one place. Its doubt joins the scatter of the mean of so many readings and the
 * step of the scale, which repeats do not average out: u² = s²/n + q²/12. Here s is the reader's repeatability from the catalogue;
 * where the repeats lie further apart than that allows, it is their own standard deviation if that is larger. A repeat that is
 * far off stays in: it is pointed out, and only the reader may take it away.
 */
export function readingOfRepeats(
  name: ReadingName,
  values: readonly GaugedValue[],
  catalogue: Catalogue,
  gauge: Gauge | null,
): Reading {
  const measurement = measurementOfReading(catalogue, name);
  const repeatability = measurement.repeatability.standardDeviation;
  const step = gauge?.resolution ?? measurement.resolution;
  const repeats = summariseRepeats(values, { repeatability, step });
  const scatter =
    repeats.beyondRepeatability && repeats.standardDeviation !== null
      ? Math.max(repeatability, repeats.standardDeviation)
      : repeatability;
  return {
    name,
    value: repeats.mean,
    standardUncertainty: combineUncertainties([scatter / Math.sqrt(values.length), resolutionUncertainty(step)]),
    origin: { gauge, repeats, trials: null },
  };
}

/** What a trial series ends at. Its doubt joins the interval between the sizes and the reader's repeatability. */
export function readingOfTrials(
  name: ReadingName,
  trials: TrialResult,
  catalogue: Catalogue,
  gauge: Gauge | null,
): Reading {
  const { repeatability } = measurementOfReading(catalogue, name);
  return {
    name,
    value: trials.value,
    standardUncertainty: combineUncertainties([repeatability.standardDeviation, trials.standardUncertainty]),
    origin: { gauge, repeats: null, trials },
  };
}
