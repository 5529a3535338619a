import { measurementOfReading } from '../../src/core/catalogue/catalogue.js';
import type { MeasurementUnit } from '../../src/core/catalogue/measurement.js';
import { faceModel } from '../../src/core/crosscheck/face-model.js';
import { observeSheet, placeOf } from '../../src/core/crosscheck/observed-sheet.js';
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
export function constraintOf(slip: Slip, evidence: Evidence): Constraint {
  const model = faceModel(evidence.catalogue, evidence.workingDistanceMm);
  const { precision, ownVariance } = observeSheet(evidence, model);
  const changed = slip.restorations.filter(({ written, restored }) => written !== restored);
  const places = changed.map(({ name }) => placeOf(name));
  const change = changed.map(({ written, restored }) => restored - written);
  const amongPeople = places.map((a) => places.map((b) => model.covariance[a]![b]! + (a === b ? ownVariance[a]! : 0)));
  const alonePrecision = invertSymmetric(amongPeople);
  invariant(alonePrecision !== null, 'a covariance with own doubts in it is positive definite');
  const alone = spreadAlong(change, alonePrecision);
  const left = spreadAlong(
    change,
    places.map((a) => places.map((b) => precision[a]![b]!)),
  );
  // people alone tell an iris narrowly, but nothing else on the sheet does
  const limit = slip.kind === 'sides-swapped' ? HARDLY_NARROWER.order : HARDLY_NARROWER.number;
  if (left > limit * alone) return 'none';
  const { unit } = measurementOfReading(evidence.catalogue, changed[0]!.name);
  const size = Math.max(...change.map(Math.abs));
  return STANDS_OUT * size * left <= mustBeSeen(slip.kind, unit) ? 'narrow' : 'wide';
}

/** How many times the change d one standard deviation is, W being the precision of what is changed: (dᵀ W d)^-1/2. */
function spreadAlong(change: readonly number[], precision: readonly (readonly number[])[]): number {
  const square = change.reduce(
    (sum, a, i) => sum + change.reduce((inner, b, j) => inner + a * precision[i]![j]! * b, 0),
    0,
  );
  return 1 / Math.sqrt(square);
}
