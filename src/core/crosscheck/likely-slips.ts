import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading, readingNames } from '../catalogue/catalogue.js';
import type { Measurement, ReadingName } from '../catalogue/measurement.js';
import type { Estimate } from '../estimate/estimate.js';
import { nearCentrationDistanceMm, pdFarFromNearCentrationMm } from '../estimate/gaze.js';
import type { Reading, Readings } from '../reading/reading.js';
import { NORMAL_95, normalDensity } from '../statistics/normal.js';
import type { Residual } from './constraints.js';
import { eyesSumResidual, nearResidual } from './constraints.js';
import { withDigitsSwapped, withOneDigitChanged } from './digits.js';
import { ROUNDING_SLACK } from './rounding-slack.js';
import type { Restoration, Slip, SlipKind } from './slip.js';

/** All that speaks for or against what is written. */
export interface Sheet {
  readonly readings: Readings;
  /** the camera's estimates that may be used: leave out those that are still covered; null without a picture */
  readonly estimates: { readonly [Name in ReadingName]?: Estimate } | null;
  readonly catalogue: Catalogue;
  /** spectacle plane to the near object, mm */
  readonly workingDistanceMm: number;
}

/**
 * How often each slip happens to one reading. Chosen, since nobody has counted: they only rank causes that explain the numbers
 * equally well, and all together leave a reading right nineteen times in twenty.
 */
const FREQUENCY: Readonly<Record<SlipKind, number>> = {
  'digits-swapped': 0.008,
  'sides-swapped': 0.008,
  'digit-wrong': 0.008,
  'ten-off': 0.006,
  'half-for-whole': 0.005,
  'whole-for-half': 0.005,
  'rows-swapped': 0.004,
  'near-for-distance': 0.003,
  'distance-for-near': 0.003,
  'point-moved': 0.003,
  centimetres: 0.003,
  inches: 0.001,
};

/** How often evidence misleads altogether: another reading is wrong too, or the camera saw something else. Chosen. */
const MISLEADING = 0.02;

/** How often a head is not wider than its temples, as calipers find it. Chosen; bony faces do it in 4 of 1000 (ANSUR II). */
const TEMPLES_NOT_BELOW_HEAD = 0.01;

interface Cause {
  readonly kind: SlipKind;
  readonly restorations: readonly Restoration[];
  /** natural logarithm of its frequency */
  readonly logFrequency: number;
}

/**
 * What most likely went wrong with the reading `name`, best first; empty where nothing explains the numbers better than what is
 * written, or where the reading is not in. Nothing is changed: each slip only tells the value it would restore.
 *
 * Every cause is weighed by its frequency times the likelihood of the sheet with the restored values: differences from the
 * camera, from the rules between readings, and from the spread among adults, each normal with a few misleading ones. A cause
 * must also restore a value that differs from the camera by no more than both doubts explain (95 %), or without a camera fits
 * a rule between readings, or without one the usual range. Estimates of one picture share doubts that are taken as independent
 * here. For a number that was refused as impossible, put `takeReading` of it into the sheet.
 */
export function likelySlips(name: ReadingName, sheet: Sheet): readonly Slip[] {
  return likelySlipsAmong([name], sheet);
}

/** The same for several readings of which one is suspected, such as the three of a sum that does not fit. */
export function likelySlipsAmong(names: readonly ReadingName[], sheet: Sheet): readonly Slip[] {
  const asWritten = logLikelihood(sheet);
  const weighed = names
    .flatMap((name) => causesFor(name, sheet))
    .map((cause) => {
      const restored = restoredSheet(sheet, cause.restorations);
      return { cause, restored, gain: cause.logFrequency + logLikelihood(restored) - asWritten };
    })
    .filter(({ cause, restored, gain }) => gain > 0 && cause.restorations.every((one) => fits(one.name, restored)))
    .sort((a, b) => b.gain - a.gain);

  // one line for each value restored and for each kind: the best of each speaks
  const seen = new Set<string>();
  const best = weighed.filter(({ cause }) => {
    const places = cause.restorations.map((one) => one.name).sort();
    const values = cause.restorations.map((one) => `${one.name}=${one.restored}`).sort();
    const keys = [values.join(), `${cause.kind} ${places.join()}`];
    if (keys.some((key) => seen.has(key))) return false;
    keys.forEach((key) => seen.add(key));
    return true;
  });

  const top = best[0]?.gain ?? 0;
  const total = best.reduce((sum, { gain }) => sum + Math.exp(gain - top), Math.exp(-top));
  return best.map(({ cause, gain }) => ({
    kind: cause.kind,
    restorations: cause.restorations,
    weight: Math.exp(gain - top) / total,
  }));
}

/** Every cause that could have led to what is written at `name`. */
function causesFor(name: ReadingName, sheet: Sheet): readonly Cause[] {
  const written = sheet.readings[name]?.value;
  if (written === undefined) return [];
  return [
    ...digitCauses(name, written, sheet),
    ...unitCauses(name, written, sheet),
    ...halfCauses(name, written, sheet),
    ...nearCauses(name, written, sheet),
    ...exchangeCauses(name, sheet),
  ];
}

/** Several values of one kind share its frequency. */
function causes(kind: SlipKind, name: ReadingName, written: number, restored: readonly number[]): readonly Cause[] {
  return restored.map((value) => ({
    kind,
    // sums of decimal numbers miss their value in the last binary digit
    restorations: [{ name, written, restored: Number(value.toFixed(6)) }],
    logFrequency: Math.log(FREQUENCY[kind] / restored.length),
  }));
}

function digitCauses(name: ReadingName, written: number, sheet: Sheet): readonly Cause[] {
  const { resolution } = measurementOfReading(sheet.catalogue, name);
  const onScale = (value: number): boolean => Math.abs(value - roundToStep(value, resolution)) < ROUNDING_SLACK;
  // a gauge that shows halves was not read to a tenth: 65.3 is no likely origin of 63.5
  const readable = (values: readonly number[]) => (onScale(written) ? values.filter(onScale) : values);
  return [
    ...causes('digits-swapped', name, written, readable(withDigitsSwapped(written))),
    ...causes('digit-wrong', name, written, readable(withOneDigitChanged(written))),
    ...causes('ten-off', name, written, written > 10 ? [written - 10, written + 10] : [written + 10]),
  ];
}

function unitCauses(name: ReadingName, written: number, sheet: Sheet): readonly Cause[] {
  const { resolution } = measurementOfReading(sheet.catalogue, name);
  const shifted = (power: number): number => Number(`${written}e${power}`);
  return [
    ...causes('centimetres', name, written, [shifted(1)]),
    ...causes('point-moved', name, written, [shifted(-1), shifted(2), shifted(-2)]),
    ...causes('inches', name, written, [roundToStep(written * 25.4, resolution)]),
  ];
}

function halfCauses(name: ReadingName, written: number, { readings }: Sheet): readonly Cause[] {
  if (name === 'pdFar' || name === 'pdNear') {
    const sides = [readings.monoPdR, readings.monoPdL].flatMap((one) => (one === undefined ? [] : [one.value]));
    const whole = [...new Set([written, ...(name === 'pdFar' ? sides : [])].map((other) => written + other))];
    return causes('half-for-whole', name, written, whole);
  }
  if (name === 'monoPdR' || name === 'monoPdL') {
    const other = name === 'monoPdR' ? readings.monoPdL : readings.monoPdR;
    const half = other === undefined ? written / 2 : written - other.value;
    return half > 0 ? causes('whole-for-half', name, written, [half]) : [];
  }
  return [];
}

function nearCauses(name: ReadingName, written: number, sheet: Sheet): readonly Cause[] {
  const { resolution } = measurementOfReading(sheet.catalogue, name);
  if (name === 'pdFar') {
    const far = roundToStep(pdFarFromNearCentrationMm(written, sheet.workingDistanceMm), resolution);
    return causes('near-for-distance', name, written, [far]);
  }
  if (name === 'pdNear') {
    const near = roundToStep(nearCentrationDistanceMm(written, sheet.workingDistanceMm), resolution);
    return causes('distance-for-near', name, written, [near]);
  }
  return [];
}

function exchangeCauses(name: ReadingName, sheet: Sheet): readonly Cause[] {
  const written = sheet.readings[name]?.value;
  return partnersOf(name, sheet.catalogue).flatMap((partner): readonly Cause[] => {
    const other = sheet.readings[partner]?.value;
    if (written === undefined || other === undefined || other === written) return [];
    const kind =
      measurementOfReading(sheet.catalogue, name) === measurementOfReading(sheet.catalogue, partner)
        ? 'sides-swapped'
        : 'rows-swapped';
    return [
      {
        kind,
        restorations: [
          { name, written, restored: other },
          { name: partner, written: other, restored: written },
        ],
        logFrequency: Math.log(FREQUENCY[kind]),
      },
    ];
  });
}

/** The places that are easily taken for `name`: the other side, the rows next to its own, near and far. */
function partnersOf(name: ReadingName, catalogue: Catalogue): readonly ReadingName[] {
  const rows = catalogue.filter((measurement) => measurement.fields.length > 0);
  const row = rows.findIndex((measurement) => measurement.fields.some((field) => field.name === name));
  const near: readonly ReadingName[] = name === 'pdFar' ? ['pdNear'] : name === 'pdNear' ? ['pdFar'] : [];
  const around = [rows[row], rows[row - 1], rows[row + 1]]
    .filter((measurement): measurement is Measurement => measurement !== undefined)
    .flatMap((measurement) => measurement.fields.map((field) => field.name));
  return [...new Set([...around, ...near])].filter((partner) => partner !== name);
}

function roundToStep(value: number, step: number): number {
  return Math.round(value / step) * step;
}

function restoredSheet(sheet: Sheet, restorations: readonly Restoration[]): Sheet {
  const changed: { [Name in ReadingName]?: Reading } = { ...sheet.readings };
  for (const { name, restored } of restorations) {
    const reading = changed[name];
    if (reading !== undefined) changed[name] = { ...reading, value: restored };
  }
  return { ...sheet, readings: changed };
}

/** Whether what is written at `name` lands where a true value would. */
function fits(name: ReadingName, sheet: Sheet): boolean {
  const reading = sheet.readings[name];
  if (reading === undefined) return false;
  const measurement = measurementOfReading(sheet.catalogue, name);
  const estimate = sheet.estimates?.[name];
  if (estimate !== undefined) {
    const spread = Math.hypot(reading.standardUncertainty, estimate.standardUncertainty);
    return Math.abs(reading.value - estimate.value) <= NORMAL_95 * spread;
  }
  const residuals = residualsOf(name, sheet);
  if (residuals.length > 0) {
    return residuals.some((one) => Math.abs(one.residualMm) <= NORMAL_95 * one.standardUncertaintyMm);
  }
  const { low, high } = measurement.plausible.soft;
  return reading.value >= low && reading.value <= high;
}

function residualsOf(name: ReadingName, { readings, workingDistanceMm }: Sheet): readonly Residual[] {
  const sum = name === 'pdFar' || name === 'monoPdR' || name === 'monoPdL' ? eyesSumResidual(readings) : null;
  const near = name === 'pdFar' || name === 'pdNear' ? nearResidual(readings, workingDistanceMm) : null;
  return [sum, near].filter((one) => one !== null);
}

/** Natural logarithm of the likelihood of all that is written, up to a constant that does not depend on it. */
function logLikelihood(sheet: Sheet): number {
  const { readings, estimates, catalogue, workingDistanceMm } = sheet;
  const terms: number[] = [];
  for (const name of readingNames(catalogue)) {
    const reading = readings[name];
    if (reading === undefined) continue;
    const { plausible, population } = measurementOfReading(catalogue, name);
    const widthOfAll = plausible.hard.high - plausible.hard.low;
    terms.push(logDensity(reading.value - population.mean, population.standardDeviation, widthOfAll));
    const estimate = estimates?.[name];
    if (estimate !== undefined) {
      const spread = Math.hypot(reading.standardUncertainty, estimate.standardUncertainty);
      terms.push(logDensity(reading.value - estimate.value, spread, widthOfAll));
    }
  }
  const { hard } = measurementOfReading(catalogue, 'pdFar').plausible;
  for (const residual of [eyesSumResidual(readings), nearResidual(readings, workingDistanceMm)]) {
    if (residual === null) continue;
    terms.push(logDensity(residual.residualMm, residual.standardUncertaintyMm, hard.high - hard.low));
  }
  for (const measurement of catalogue) {
    const [right, left] = measurement.fields.map(({ name }) => readings[name]);
    if (measurement.sideDifference === null || right === undefined || left === undefined) continue;
    // A limit that one in a hundred exceeds lies 2.33 standard deviations out (normal distribution, one tail).
    const spread = measurement.sideDifference.value / 2.33;
    const { low, high } = measurement.plausible.hard;
    terms.push(logDensity(right.value - left.value, spread, high - low));
  }
  const { headWidth, templeWidth } = readings;
  if (headWidth !== undefined && templeWidth !== undefined) {
    const narrower = templeWidth.value < headWidth.value;
    terms.push(Math.log(narrower ? 1 - TEMPLES_NOT_BELOW_HEAD : TEMPLES_NOT_BELOW_HEAD));
  }
  return terms.reduce((sum, term) => sum + term, 0);
}

/** Normal about 0, with a few misleading ones spread evenly over `widthOfAll`. */
function logDensity(residual: number, spread: number, widthOfAll: number): number {
  return Math.log(((1 - MISLEADING) * normalDensity(residual / spread)) / spread + MISLEADING / widthOfAll);
}
