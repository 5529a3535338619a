import type { Catalogue } from '../../src/core/catalogue/catalogue.js';
import { measurementOfReading } from '../../src/core/catalogue/catalogue.js';
import { READING_NAMES, type ReadingName } from '../../src/core/catalogue/measurement.js';
import type { Evidence } from '../../src/core/crosscheck/reconciliation.js';
import type { Estimate } from '../../src/core/estimate/estimate.js';
import { DEFAULT_MEASURING_SETTINGS } from '../../src/core/estimate/face-estimates.js';
import { addedByGauge, gaugedValue, type Gauge } from '../../src/core/reading/gauge.js';
import type { Reading } from '../../src/core/reading/reading.js';
import { readingOfRepeats } from '../../src/core/reading/reading.js';
import { freeOfDust } from '../../src/core/statistics/free-of-dust.js';
import { NORMAL_95 } from '../../src/core/statistics/normal.js';
import type { FittingRecord, RecordedEstimate, RecordedReading, RecordTable } from '../../src/session/record-table.js';
import { words } from '../../src/ui/language.js';

type Changeable<Values> = { -readonly [Name in keyof Values]: Values[Name] };

/** The gauges that a table of records speaks of: one for each measurement and amount that is added. */
export function gaugesOfTable(
  { zeroOffsets }: Pick<RecordTable, 'zeroOffsets'>,
  catalogue: Catalogue,
): readonly Gauge[] {
  const gauges = [...zeroOffsets].flatMap(([name, offsets]) =>
    offsets.map((zeroOffset) => gaugeOf(name, zeroOffset, catalogue)),
  );
  return [...new Map(gauges.map((gauge) => [gauge.id, gauge])).values()];
}

function gaugeOf(name: ReadingName, zeroOffset: number, catalogue: Catalogue): Gauge {
  const { id, resolution } = measurementOfReading(catalogue, name);
  return {
    id: `${id} ${zeroOffset}`,
    name: `the gauge for ${words.measurements[id].shortName}`,
    serves: [id],
    resolution,
    zeroOffset,
    bias: 0,
    checkedOn: null,
  };
}

/** What a record says, as the cross-check takes it; a number that cannot be is taken as well. */
export function evidenceOfRecord(record: FittingRecord, gauges: readonly Gauge[], catalogue: Catalogue): Evidence {
  const readings: Changeable<Evidence['readings']> = {};
  const estimates: Changeable<NonNullable<Evidence['estimates']>> = {};
  for (const name of READING_NAMES) {
    const recorded = record.readings[name];
    if (recorded !== undefined) readings[name] = readingOf(name, recorded, catalogue);
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

function readingOf(name: ReadingName, { scale, zeroOffset }: RecordedReading, catalogue: Catalogue): Reading {
  const gauge = zeroOffset === null ? null : gaugeOf(name, zeroOffset, catalogue);
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
