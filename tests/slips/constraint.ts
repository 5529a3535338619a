import { measurementOfReading } from '../../src/core/catalogue/catalogue.js';
import { READING_NAMES, type MeasurementUnit, type ReadingName } from '../../src/core/catalogue/measurement.js';
import { faceModel } from '../../src/core/crosscheck/face-model.js';
import type { Evidence } from '../../src/core/crosscheck/reconciliation.js';
import type { Slip, SlipKind } from '../../src/core/crosscheck/slip.js';
import { invertSymmetric } from '../../src/core/fitting/linear-system.js';
import { invariant } from '../../src/core/result.js';
import type { Constraint } from './judge-fitting.js';

/** From what change on the issue asks that a slip is seen, in the unit of the measurement. */
export function mustBeSeen(kind: SlipKind, unit: MeasurementUnit): number {
  if (unit === 'deg') return 8;
  return kind === 'sides-swapped' ? 2 : 3;
}

/** So many standard deviations off is more than chance on any of some forty readings. Chosen. */
const STANDS_OUT = 4;

/**
 * All else tells hardly more than the population does where it leaves more than this share of its spread. Of two sides it must tell
 * the order, and that sides are alike is as true of either order. Chosen.
 */
const HARDLY_NARROWER = { number: 0.9, order: 0.6 } as const;

/**
 * How narrowly everything else on the sheet (other readings, camera) tells what the slip changed, by the face model's
 * distribution: the standard deviation that it leaves to the written values in the direction of the change. Of two sides that
 * changed places, that is their difference, which other readings may leave open where they tell the sum.
 */
export function constraintOf(slip: Slip, { readings, estimates, catalogue, workingDistanceMm }: Evidence): Constraint {
  const model = faceModel(catalogue, workingDistanceMm);
  const changed = slip.restorations.filter(({ written, restored }) => written !== restored);
  const touched = changed.map(({ name }) => name);
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
  const change = changed.map(({ written, restored }) => restored - written);
  const size = Math.max(...change.map(Math.abs));
  const left = spreadAlong(change, covariance);
  const alone = spreadAlong(
    change,
    touched.map((_, i) => covariance[i]!.slice(0, touched.length)),
  );
  // people alone tell an iris narrowly, but nothing else on the sheet does
  const limit = slip.kind === 'sides-swapped' ? HARDLY_NARROWER.order : HARDLY_NARROWER.number;
  if (left > limit * alone) return 'none';
  const { unit } = measurementOfReading(catalogue, touched[0]!);
  return STANDS_OUT * size * left <= mustBeSeen(slip.kind, unit) ? 'narrow' : 'wide';
}

/** How many times the change one standard deviation is, the places behind those of the change being known: (dᵀ W d)^-1/2. */
function spreadAlong(change: readonly number[], covariance: readonly (readonly number[])[]): number {
  const precision = invertSymmetric(covariance);
  invariant(precision !== null, 'a covariance with own doubts in it is positive definite');
  const square = change.reduce(
    (sum, a, i) => sum + change.reduce((inner, b, j) => inner + a * precision[i]![j]! * b, 0),
    0,
  );
  return 1 / Math.sqrt(square);
}
