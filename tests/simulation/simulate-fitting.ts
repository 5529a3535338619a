import { EXAMPLE_GAUGES, OUTSIDE_TABLES } from '../../calibration/tables.js';
import type { Catalogue } from '../../src/core/catalogue/catalogue.js';
import { assembleCatalogue, measurementOfReading } from '../../src/core/catalogue/catalogue.js';
import type { ReadingName } from '../../src/core/catalogue/measurement.js';
import { READING_NAMES } from '../../src/core/catalogue/measurement.js';
import type { Evidence } from '../../src/core/crosscheck/reconciliation.js';
import type { Slip } from '../../src/core/crosscheck/slip.js';
import type { Estimate } from '../../src/core/estimate/estimate.js';
import type { Gauge } from '../../src/core/reading/gauge.js';
import type { Reading } from '../../src/core/reading/reading.js';
import { takeReading } from '../../src/core/reading/reading.js';
import { seededRandom, type SeededRandom } from '../support/seeded-random.js';
import { makeSlip, type GaugesInUse, type Written } from './make-slip.js';
import { drawFace, type TrueFace } from './true-face.js';

/** One simulated visit: what stands on the sheet, and what is true. */
export interface SimulatedFitting {
  readonly evidence: Evidence;
  readonly face: TrueFace;
  /** the slips that were made; empty for a clean sheet */
  readonly slips: readonly Slip[];
}

export interface SimulationOptions {
  /** share of the sheets that get a slip, and of those a second one; 0 to 1 */
  readonly slipShare: number;
  readonly secondSlipShare: number;
  /** share of the sheets with a picture by which the camera gives estimates */
  readonly cameraShare: number;
  /** each place is left empty with this probability */
  readonly emptyShare: number;
  /** how often each PD is read, far and near, both eyes and each */
  readonly pdRepeats: number;
}

export const DEFAULT_SIMULATION: SimulationOptions = {
  slipShare: 0.5,
  secondSlipShare: 0.1,
  cameraShare: 0.5,
  emptyShare: 0.1,
  pdRepeats: 1,
};

/** Spectacle plane to the near object, mm: what is asked for, and how far what is kept scatters around it (chosen). */
export const WORKING_DISTANCE_MM = 400;
const KEPT_DISTANCE_SD_MM = 40;

/**
 * One standard deviation of the estimates of one picture, mm: half of the 95 % intervals that the accuracy command finds for a
 * picture without a camera profile, over 1.96. The midline's doubt moves both eyes in opposite directions.
 */
const CAMERA = { pd: 0.75, midline: 0.8, aperture: 0.7, headWidth: 5.5, templeWidth: 6.6, iris: 0.3 } as const;

const catalogue: Catalogue = assembleCatalogue(OUTSIDE_TABLES);

/** Fittings one after the other; the same seed gives the same ones. */
export function* simulateFittings(
  seed: number,
  count: number,
  options: SimulationOptions = DEFAULT_SIMULATION,
): Generator<SimulatedFitting> {
  for (let i = 0; i < count; i += 1) {
    // a stream of its own for each, so that any share of the work gives the same fittings
    yield simulateFitting(seededRandom((seed * 1_000_003 + i) >>> 0), options);
  }
}

function simulateFitting(random: SeededRandom, options: SimulationOptions): SimulatedFitting {
  const { uniform, normal } = random;
  const face = drawFace(random, Math.max(normal(WORKING_DISTANCE_MM, KEPT_DISTANCE_SD_MM), 250));
  const read: { [Name in ReadingName]?: number } = {};
  for (const name of READING_NAMES) {
    const isEmpty = uniform() < options.emptyShare;
    const value = readByHand(face[name], name, options, random);
    if (!isEmpty) read[name] = value;
  }
  let written: Written = read;
  const inUse = chooseGauges(random);
  const slips: Slip[] = [];
  const wanted = uniform() < options.slipShare ? (uniform() < options.secondSlipShare ? 2 : 1) : 0;
  while (slips.length < wanted) {
    const touched = new Set(slips.flatMap(({ restorations }) => restorations.map(({ name }) => name)));
    const made = makeSlip(
      { written, inUse, gauges: EXAMPLE_GAUGES, workingDistanceMm: WORKING_DISTANCE_MM, catalogue },
      touched,
      random,
    );
    if (made === null) break;
    written = made.written;
    slips.push(made.slip);
  }
  const estimates = uniform() < options.cameraShare ? seeByCamera(face, random) : null;
  return { evidence: evidenceOf(written, inUse, estimates, options), face, slips };
}

/** Half of the measurements that a gauge with an offset serves are read with it, and the sheet knows. */
function chooseGauges({ uniform }: SeededRandom): GaugesInUse {
  const inUse: { [Name in ReadingName]?: Gauge } = {};
  for (const { id, fields } of catalogue) {
    const gauge = EXAMPLE_GAUGES.find(({ serves, zeroOffset }) => serves.includes(id) && zeroOffset !== 0);
    if (gauge === undefined || uniform() < 0.5) continue;
    for (const { name } of fields) inUse[name] = gauge;
  }
  return inUse;
}

/** The sheet on which these values stand. */
function evidenceOf(
  written: Written,
  inUse: GaugesInUse,
  estimates: Evidence['estimates'],
  { pdRepeats }: SimulationOptions,
): Evidence {
  const readings: { [Name in ReadingName]?: Reading } = {};
  for (const [name, value] of Object.entries(written) as [ReadingName, number][]) {
    const gauge = inUse[name];
    const one = takeReading(name, value, catalogue);
    const isRepeated = pdRepeats > 1 && isPd(name);
    const reading = isRepeated ? { ...one, standardUncertainty: one.standardUncertainty / Math.sqrt(pdRepeats) } : one;
    readings[name] = gauge === undefined ? reading : { ...reading, origin: { gauge, repeats: null, trials: null } };
  }
  return { readings, estimates, catalogue, workingDistanceMm: WORKING_DISTANCE_MM, gauges: EXAMPLE_GAUGES };
}

function isPd(name: ReadingName): boolean {
  return /^(pd|mono)/.test(name);
}

/**
 * What a trained reader takes down: scatter as published or chosen in the tables, then the step of the scale; the mean where a PD
 * is read several times.
 */
function readByHand(
  value: number,
  name: ReadingName,
  { pdRepeats }: SimulationOptions,
  { normal }: SeededRandom,
): number {
  const { repeatability, resolution } = measurementOfReading(catalogue, name);
  const count = isPd(name) ? pdRepeats : 1;
  let sum = 0;
  for (let i = 0; i < count; i += 1) {
    sum += resolution * Math.round(normal(value, repeatability.standardDeviation) / resolution);
  }
  return sum / count;
}

/** What one picture says of this face. */
function seeByCamera(face: TrueFace, { normal }: SeededRandom): NonNullable<Evidence['estimates']> {
  const pd = normal(face.pdFar, CAMERA.pd);
  const across = (face.monoPdR - face.monoPdL) / 2 + normal(0, CAMERA.midline);
  const eye = Math.hypot(CAMERA.pd / 2, CAMERA.midline);
  return {
    pdFar: estimate(pd, CAMERA.pd),
    monoPdR: estimate(pd / 2 + across, eye),
    monoPdL: estimate(pd / 2 - across, eye),
    apertureR: estimate(normal(face.apertureR, CAMERA.aperture), CAMERA.aperture),
    apertureL: estimate(normal(face.apertureL, CAMERA.aperture), CAMERA.aperture),
    headWidth: estimate(normal(face.headWidth, CAMERA.headWidth), CAMERA.headWidth),
    templeWidth: estimate(normal(face.templeWidth, CAMERA.templeWidth), CAMERA.templeWidth),
    irisDiameter: estimate(normal(face.irisDiameter, CAMERA.iris), CAMERA.iris),
  };
}

function estimate(value: number, standardUncertainty: number): Estimate {
  const half = 1.96 * standardUncertainty;
  return {
    value,
    standardUncertainty,
    low: value - half,
    high: value + half,
    unit: 'mm',
    budget: [{ source: 'contact-depth', standardUncertainty }],
  };
}
