import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementById, measurementOfReading, readingNames } from '../catalogue/catalogue.js';
import type { Readings } from '../reading/reading.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { combineUncertainties } from '../statistics/uncertainty.js';
import { expectedNear, eyesSumResidual, nearResidual } from './constraints.js';
import type { Inconsistency } from './inconsistency.js';
import { ROUNDING_SLACK } from './rounding-slack.js';

/**
 * What does not fit among the hand readings themselves, contradictions first; empty where all fits or too few are in.
 * `workingDistanceMm` is from the spectacle plane to the near object. Rules: monocular PDs add up, near follows from far,
 * temples are narrower than the head, right resembles left, each is usual among adults.
 */
export function checkReadings(
  readings: Readings,
  catalogue: Catalogue,
  workingDistanceMm: number,
): readonly Inconsistency[] {
  const found = [
    ...checkEyesSum(readings, catalogue),
    ...checkNear(readings, workingDistanceMm),
    ...checkTemples(readings),
    ...checkSides(readings, catalogue),
    ...checkUsual(readings, catalogue),
  ];
  const ofGravity = (gravity: Inconsistency['gravity']) => found.filter((one) => one.gravity === gravity);
  return [...ofGravity('contradiction'), ...ofGravity('look-again')];
}

function checkEyesSum(readings: Readings, catalogue: Catalogue): readonly Inconsistency[] {
  const residual = eyesSumResidual(readings);
  if (residual === null || readings.pdFar === undefined) return [];
  const whole = measurementById(catalogue, 'binocularPd').resolution;
  const each = measurementById(catalogue, 'monocularPd').resolution;
  // each of the three may have been rounded by half of its step
  const roundingMm = (whole + 2 * each) / 2;
  const size = Math.abs(residual.residualMm) - ROUNDING_SLACK;
  if (size <= roundingMm) return [];
  return [
    {
      kind: 'eyes-do-not-add-up',
      gravity: size > NORMAL_95 * residual.standardUncertaintyMm ? 'contradiction' : 'look-again',
      names: ['pdFar', 'monoPdR', 'monoPdL'],
      wholeMm: readings.pdFar.value,
      sumMm: readings.pdFar.value - residual.residualMm,
      differenceMm: residual.residualMm,
      roundingMm,
    },
  ];
}

function checkNear(readings: Readings, workingDistanceMm: number): readonly Inconsistency[] {
  const { pdFar, pdNear } = readings;
  const residual = nearResidual(readings, workingDistanceMm);
  if (pdFar === undefined || pdNear === undefined || residual === null) return [];
  const names = ['pdFar', 'pdNear'] as const;
  const allowanceMm = NORMAL_95 * residual.standardUncertaintyMm;
  if (pdNear.value >= pdFar.value) {
    return [
      {
        kind: 'near-not-below-distance',
        gravity: 'contradiction',
        names,
        nearMm: pdNear.value,
        farMm: pdFar.value,
      },
    ];
  }
  if (Math.abs(residual.residualMm) <= allowanceMm) return [];
  return [
    {
      kind: 'near-unlike-distance',
      gravity: 'look-again',
      names,
      nearMm: pdNear.value,
      expectedNearMm: expectedNear(pdFar, workingDistanceMm).valueMm,
      allowanceMm,
    },
  ];
}

function checkTemples({ headWidth, templeWidth }: Readings): readonly Inconsistency[] {
  if (headWidth === undefined || templeWidth === undefined || templeWidth.value < headWidth.value) return [];
  const expanded = NORMAL_95 * combineUncertainties([headWidth.standardUncertainty, templeWidth.standardUncertainty]);
  return [
    {
      kind: 'temples-not-below-head',
      gravity: templeWidth.value - headWidth.value > expanded ? 'contradiction' : 'look-again',
      names: ['headWidth', 'templeWidth'],
      templeMm: templeWidth.value,
      headMm: headWidth.value,
    },
  ];
}

function checkSides(readings: Readings, catalogue: Catalogue): readonly Inconsistency[] {
  return catalogue.flatMap((measurement): readonly Inconsistency[] => {
    const right = measurement.fields.find((field) => field.side === 'R');
    const left = measurement.fields.find((field) => field.side === 'L');
    if (right === undefined || left === undefined || measurement.sideDifference === null) return [];
    const [valueR, valueL] = [readings[right.name]?.value, readings[left.name]?.value];
    if (valueR === undefined || valueL === undefined) return [];
    const differenceMm = valueR - valueL;
    const limitMm = measurement.sideDifference.value;
    if (Math.abs(differenceMm) < limitMm - ROUNDING_SLACK) return [];
    return [{ kind: 'sides-differ', gravity: 'look-again', names: [right.name, left.name], differenceMm, limitMm }];
  });
}

function checkUsual(readings: Readings, catalogue: Catalogue): readonly Inconsistency[] {
  return readingNames(catalogue).flatMap((name): readonly Inconsistency[] => {
    const value = readings[name]?.value;
    const range = measurementOfReading(catalogue, name).plausible.soft;
    if (value === undefined || (value >= range.low && value <= range.high)) return [];
    return [{ kind: 'unusual', gravity: 'look-again', names: [name], value, range }];
  });
}
