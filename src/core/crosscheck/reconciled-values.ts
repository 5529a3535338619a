import type { ReadingName } from '../catalogue/measurement.js';
import type { FaceModel } from './face-model.js';
import type { ObservedSheet } from './observed-sheet.js';
import { leftOut, nameAt, predictFromOthers } from './observed-sheet.js';
import type { ReconciledValue, Reconciliation } from './reconciliation.js';

/**
 * The most probable true values: E[x | y] = y - u² (S^-1 r) with the variance u² - u⁴ (S^-1)_ii. Where a reading is suspected,
 * all others alone say what it should be.
 */
export function reconciledValues(
  sheet: ObservedSheet,
  settled: ReadonlySet<number>,
  model: FaceModel,
): Reconciliation['values'] {
  const open = [...settled];
  const rest = open.length === 0 ? sheet : leftOut(sheet, open);
  const predicted = open.length === 0 ? null : predictFromOthers(sheet, open).covariance;
  const values: { [Name in ReadingName]?: ReconciledValue } = {};
  for (const place of sheet.handPlaces) {
    const own = sheet.ownVariance[place]!;
    const at = open.indexOf(place);
    const variance = at >= 0 ? predicted![at]![at]! - own : own - own ** 2 * sheet.precision[place]![place]!;
    values[nameAt(place)] = {
      value: model.means[nameAt(place)] + rest.residual[place]! - (at >= 0 ? 0 : own * rest.weighted[place]!),
      standardUncertainty: Math.sqrt(Math.max(variance, 0)),
    };
  }
  return values;
}
