import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import { READING_NAMES, type MeasurementId, type ReadingName } from '../core/catalogue/measurement.js';
import type { Evidence } from '../core/crosscheck/reconciliation.js';
import type { Estimate } from '../core/estimate/estimate.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import { addedByGauge, gaugedValue, type Gauge } from '../core/reading/gauge.js';
import type { Reading } from '../core/reading/reading.js';
import { readingOfRepeats } from '../core/reading/reading.js';
import { freeOfDust } from '../core/statistics/free-of-dust.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import type { FittingRecord, RecordedEstimate, RecordedReading, RecordTable } from './record-table.js';

/** What the gauge of a measurement is called; a table gives none of them a name. */
export type NameGauge = (id: MeasurementId) => string;

type Changeable<Values> = { -readonly [Name in keyof Values]: Values[Name] };

/** The gauges that a table of records speaks of: one for each measurement and amount that is added. */
export function gaugesOfTable(
  { zeroOffsets }: Pick<RecordTable, 'zeroOffsets'>,
  catalogue: Catalogue,
  nameGauge: NameGauge,
): readonly Gauge[] {
  const gauges = [...zeroOffsets].flatMap(([name, offsets]) =>
    offsets.map((zeroOffset) => gaugeOf(name, zeroOffset, catalogue, nameGauge)),
  );
  return [...new Map(gauges.map((gauge) => [gauge.id, gauge])).values()];
}

function gaugeOf(name: ReadingName, zeroOffset: number, catalogue: Catalogue, nameGauge: NameGauge): Gauge {
  const { id, resolution } = measurementOfReading(catalogue, name);
  return {
    id: `${id} ${zeroOffset}`,
    name: nameGauge(id),
    serves: [id],
    resolution,
    zeroOffset,
    bias: 0,
    checkedOn: null,
  };
}

/**
 * What a record says, as the cross-check takes it; a number that cannot be is taken as well.
 *
 * @param gauges of the table, as `gaugesOfTable` names them
 * @param names the places that are asked for
 */
export function evidenceOfRecord(
  record: FittingRecord,
  gauges: readonly Gauge[],
  catalogue: Catalogue,
  names: readonly ReadingName[] = READING_NAMES,
): Evidence {
  const readings: Changeable<Evidence['readings']> = {};
  const estimates: Changeable<NonNullable<Evidence['estimates']>> = {};
  for (const name of names) {
    const recorded = record.readings[name];
    if (recorded !== undefined) readings[name] = readingOfRecord(name, recorded, gauges, catalogue);
    const estimate = record.estimates[name];
    if (estimate !== undefined) estimates[name] = estimateOfRecord(name, estimate, catalogue);
  }
  return {
    readings,
    estimates: Object.keys(estimates).length === 0 ? null : estimates,
    catalogue,
    workingDistanceMm: record.workingDistanceMm ?? DEFAULT_MEASURING_SETTINGS.workingDistanceMm,
    gauges,
  };
}

/** What is written at one place of a record. */
export function readingOfRecord(
  name: ReadingName,
  { scale, zeroOffset }: RecordedReading,
  gauges: readonly Gauge[],
  catalogue: Catalogue,
): Reading {
  const { id } = measurementOfReading(catalogue, name);
  const gauge =
    zeroOffset === null
      ? null
      : (gauges.find((one) => one.zeroOffset === zeroOffset && one.serves.includes(id)) ??
        gaugeOf(name, zeroOffset, catalogue, () => ''));
  const values = scale.map((one) => gaugedValue(one, gauge));
  return readingOfRepeats(name, values, catalogue, gauge);
}

/** A table does not say where the doubt comes from: the budget has no lines. */
function estimateOfRecord(
  name: ReadingName,
  { value, standardUncertainty }: RecordedEstimate,
  catalogue: Catalogue,
): Estimate {
  const half = NORMAL_95 * standardUncertainty;
  const { unit } = measurementOfReading(catalogue, name);
  return { value, standardUncertainty, low: value - half, high: value + half, unit, budget: [] };
}

/** What was written, as a record: scale readings with what their gauge adds; of a trial series the size that it ends at. */
export function recordOfEvidence({ readings, estimates, workingDistanceMm }: Evidence, id: string): FittingRecord {
  const recorded: Changeable<FittingRecord['readings']> = {};
  const cameras: Changeable<FittingRecord['estimates']> = {};
  for (const name of READING_NAMES) {
    const reading = readings[name];
    if (reading !== undefined) recorded[name] = recordedOf(reading);
    const estimate = estimates?.[name];
    if (estimate !== undefined) {
      const { value, standardUncertainty } = estimate;
      cameras[name] = { value, standardUncertainty };
    }
  }
  return { id, workingDistanceMm, readings: recorded, estimates: cameras };
}

function recordedOf({ value, origin }: Reading): RecordedReading {
  const gauge = origin?.gauge ?? null;
  const added = addedByGauge(gauge);
  const scale = origin?.repeats?.values.map((one) => one.scale) ?? [freeOfDust(value - added)];
  return { scale, zeroOffset: gauge === null ? null : added };
}
