import type { Catalogue } from '../../src/core/catalogue/catalogue.js';
import { measurementOfReading } from '../../src/core/catalogue/catalogue.js';
import { READING_NAMES, type MeasurementUnit, type ReadingName } from '../../src/core/catalogue/measurement.js';
import { faceModel, type FaceModel } from '../../src/core/crosscheck/face-model.js';
import type { Evidence } from '../../src/core/crosscheck/reconciliation.js';
import type { Slip } from '../../src/core/crosscheck/slip.js';
import { invertSymmetric } from '../../src/core/fitting/linear-system.js';
import { invariant } from '../../src/core/result.js';
import type { Constraint } from './judge-fitting.js';

/** What the issue calls a slip that must be seen, in the unit of the measurement. */
export const MUST_BE_SEEN: Readonly<Record<MeasurementUnit, number>> = { mm: 3, deg: 8 };

/** So many standard deviations off is more than chance on any of some forty readings. Chosen. */
const STANDS_OUT = 4;

/** All else tells hardly more than the population does where it leaves more than this share of its spread. Chosen. */
const HARDLY_NARROWER = 0.9;

/**
 * How narrowly everything else on the sheet (other readings, camera) tells the readings that the slip touched, by the face model's
 * distribution: the standard deviation that it leaves between what is written and what it predicts. Of two places the narrower.
 */
export function constraintOf(slip: Slip, { readings, estimates, catalogue, workingDistanceMm }: Evidence): Constraint {
  const model = modelOf(catalogue, workingDistanceMm);
  const touched = slip.restorations.map(({ name }) => name);
  const others = READING_NAMES.filter((name) => readings[name] !== undefined && !touched.includes(name));
  const hasBothEyes = estimates?.monoPdR !== undefined && estimates.monoPdL !== undefined;
  // near distances follow from the far ones, and the whole from both eyes: said once, as the cross-check takes them
  const seen = READING_NAMES.filter(
    (name) =>
      estimates?.[name] !== undefined &&
      !['pdNear', 'monoNearR', 'monoNearL'].includes(name) &&
      !(name === 'pdFar' && hasBothEyes),
  );
  const all = [...touched, ...others, ...seen];
  const ownDoubt = (index: number): number => {
    const name = all[index]!;
    const from = index < all.length - seen.length ? readings[name] : estimates?.[name];
    return from?.standardUncertainty ?? 0;
  };
  const amongPeople = (a: ReadingName, b: ReadingName): number =>
    model.covariance[READING_NAMES.indexOf(a)]![READING_NAMES.indexOf(b)]!;
  const covariance = all.map((a, i) => all.map((b, j) => amongPeople(a, b) + (i === j ? ownDoubt(i) ** 2 : 0)));
  const precision = invertSymmetric(covariance);
  invariant(precision !== null, 'a covariance with own doubts in it is positive definite');
  // partitioned inverse: what all others leave of the touched ones
  const left = invertSymmetric(touched.map((_, i) => touched.map((__, j) => precision[i]![j]!)));
  invariant(left !== null, 'a part of a precision is positive definite');
  const classes = touched.map((name, i): Constraint => {
    const spread = Math.sqrt(left[i]![i]!);
    const { unit } = measurementOfReading(catalogue, name);
    // people alone tell an iris narrowly, but nothing else on the sheet does
    if (spread > HARDLY_NARROWER * Math.sqrt(covariance[i]![i]!)) return 'none';
    return STANDS_OUT * spread <= MUST_BE_SEEN[unit] ? 'narrow' : 'wide';
  });
  return classes.includes('narrow') ? 'narrow' : classes.includes('wide') ? 'wide' : 'none';
}

const MODELS = new WeakMap<Catalogue, Map<number, FaceModel>>();

function modelOf(catalogue: Catalogue, workingDistanceMm: number): FaceModel {
  const known = MODELS.get(catalogue) ?? new Map<number, FaceModel>();
  MODELS.set(catalogue, known);
  const model = known.get(workingDistanceMm) ?? faceModel(catalogue, workingDistanceMm);
  known.set(workingDistanceMm, model);
  return model;
}
