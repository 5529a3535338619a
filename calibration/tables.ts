import type { OutsideTables } from '../src/core/catalogue/catalogue.js';
import type { Range } from '../src/core/catalogue/measurement.js';
import type { Sourced } from '../src/core/catalogue/source-status.js';
import type { Gauge } from '../src/core/reading/gauge.js';
import cards from './cards.json' with { type: 'json' };
import gauges from './gauges.json' with { type: 'json' };
import population from './population.json' with { type: 'json' };
import repeatability from './repeatability.json' with { type: 'json' };
import tolerances from './tolerances.json' with { type: 'json' };

/** A nominal length with its source, mm. */
export interface NominalLength extends Sourced {
  readonly value: number;
}

/** What is known of a reference card; lengths in millimetres. Limits are those of manufacture, any value within equally likely. */
export interface CardTable {
  readonly widthMm: NominalLength;
  readonly heightMm: NominalLength;
  readonly thicknessMm: NominalLength & Range;
  readonly cornerRadiusMm: NominalLength & Range;
  readonly widthLimitsMm: Sourced & Range;
  readonly heightLimitsMm: Sourced & Range;
}

// A JSON module types every word as any text; a test beside this file holds the words to the narrower types.

export const ID1_CARD = cards.id1 as CardTable;

export const OUTSIDE_TABLES = {
  tolerances,
  plausible: population.plausible,
  population: population.adults,
  repeatability,
  sideDifferences: population.sideDifferences,
} as OutsideTables;

/** Gauges as the trade has them, to begin a practice's own list with: invented, no maker's. */
export const EXAMPLE_GAUGES: readonly Gauge[] = (gauges as readonly (Gauge & Sourced)[]).map(
  ({ id, name, serves, resolution, zeroOffset, bias, checkedOn }) => ({
    id,
    name,
    serves,
    resolution,
    zeroOffset,
    bias,
    checkedOn,
  }),
);
