import { invariant } from '../result.js';
import { DEFINITIONS } from './definitions.js';
import type {
  Measurement,
  MeasurementId,
  PlausibleRange,
  PopulationSpread,
  ReadingName,
  Repeatability,
  SideDifferenceSpread,
  Tolerance,
} from './measurement.js';

/** What is known of the outside world, keyed by measurement; kept outside the core and handed in. */
export interface OutsideTables {
  readonly tolerances: Readonly<Record<MeasurementId, Tolerance>>;
  readonly plausible: Readonly<Record<MeasurementId, PlausibleRange>>;
  readonly population: Readonly<Record<MeasurementId, PopulationSpread>>;
  readonly repeatability: Readonly<Record<MeasurementId, Repeatability>>;
  /** null where the measurement has no sides */
  readonly sideDifferences: Readonly<Record<MeasurementId, SideDifferenceSpread | null>>;
}

/** All measurements, in the order of the sheet. */
export type Catalogue = readonly Measurement[];

/** Joins the definitions with what is known of the outside world. */
export function assembleCatalogue(tables: OutsideTables): Catalogue {
  return DEFINITIONS.map((definition) => ({
    ...definition,
    tolerance: tables.tolerances[definition.id],
    plausible: tables.plausible[definition.id],
    population: tables.population[definition.id],
    repeatability: tables.repeatability[definition.id],
    sideDifference: tables.sideDifferences[definition.id],
  }));
}

/** The measurement with this id. */
export function measurementById(catalogue: Catalogue, id: MeasurementId): Measurement {
  const found = catalogue.find((measurement) => measurement.id === id);
  invariant(found !== undefined, `the catalogue has no ${id}`);
  return found;
}

/** The measurement that a reading belongs to. */
export function measurementOfReading(catalogue: Catalogue, name: ReadingName): Measurement {
  const found = catalogue.find((measurement) => measurement.fields.some((field) => field.name === name));
  invariant(found !== undefined, `the catalogue has no place for ${name}`);
  return found;
}
