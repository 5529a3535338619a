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

/** Of each catalogue, the measurements by the names of their readings: they are asked for at every keystroke, for every row. */
const byReading = new WeakMap<Catalogue, ReadonlyMap<ReadingName, Measurement>>();

function measurementsByReading(catalogue: Catalogue): ReadonlyMap<ReadingName, Measurement> {
  const known = byReading.get(catalogue);
  if (known !== undefined) return known;
  const measurements = new Map(
    catalogue.flatMap((measurement) => measurement.fields.map((field) => [field.name, measurement] as const)),
  );
  byReading.set(catalogue, measurements);
  return measurements;
}

/** The measurement that a reading belongs to. */
export function measurementOfReading(catalogue: Catalogue, name: ReadingName): Measurement {
  const found = measurementsByReading(catalogue).get(name);
  invariant(found !== undefined, `the catalogue has no place for ${name}`);
  return found;
}
