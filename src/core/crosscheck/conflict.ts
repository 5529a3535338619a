import type { ReadingName } from '../catalogue/measurement.js';
import type { FaceModel, LinearRelation } from './face-model.js';
import type { ObservedSheet } from './observed-sheet.js';
import { placeOf } from './observed-sheet.js';
import type { Conflict, Evidence } from './reconciliation.js';

/** A conflict shows from here on, standard deviations. Chosen. */
const SHOWS = 2;

/** What a reading conflicts with most: a rule between readings, the camera, or what is usual; null where nothing shows it. */
export function conflictOf(
  sheet: ObservedSheet,
  name: ReadingName,
  evidence: Evidence,
  model: FaceModel,
): Conflict | null {
  const written = evidence.readings[name]?.value;
  if (written === undefined) return null;
  const withRules = model.relations.flatMap((relation) =>
    conflictWithRule(sheet, name, written, relation, evidence, model),
  );
  const withOthers = [...withRules, ...conflictWithCamera(name, evidence)];
  const clearest = mostClear(withOthers, written);
  return clearest ?? mostClear([conflictWithPeople(sheet, name, model)], written);
}

function mostClear(conflicts: readonly Conflict[], written: number): Conflict | null {
  const clearness = ({ expected, standardUncertainty }: Conflict): number =>
    Math.abs(written - expected) / standardUncertainty;
  const [first] = [...conflicts].sort((a, b) => clearness(b) - clearness(a));
  return first !== undefined && clearness(first) >= SHOWS ? first : null;
}

/** sum of share_k y_k against its constant, whose scatter follows from the distribution of faces and each reading's doubt. */
function conflictWithRule(
  sheet: ObservedSheet,
  name: ReadingName,
  written: number,
  { id, shares, constant }: LinearRelation,
  { readings }: Evidence,
  model: FaceModel,
): readonly Conflict[] {
  const own = shares[name];
  const joined = Object.entries(shares) as [ReadingName, number][];
  if (own === undefined || joined.some(([one]) => readings[one] === undefined)) return [];
  let residual = -constant;
  let variance = 0;
  for (const [one, share] of joined) {
    residual += share * (readings[one]?.value ?? 0);
    variance += share ** 2 * sheet.ownVariance[placeOf(one)]!;
    for (const [other, otherShare] of joined)
      variance += share * otherShare * model.covariance[placeOf(one)]![placeOf(other)]!;
  }
  return [
    {
      with: id,
      names: [name, ...joined.map(([one]) => one).filter((one) => one !== name)],
      expected: written - residual / own,
      standardUncertainty: Math.sqrt(variance) / Math.abs(own),
    },
  ];
}

function conflictWithCamera(name: ReadingName, { readings, estimates }: Evidence): readonly Conflict[] {
  const [reading, estimate] = [readings[name], estimates?.[name]];
  if (reading === undefined || estimate === undefined) return [];
  return [
    {
      with: 'camera',
      names: [name],
      expected: estimate.value,
      standardUncertainty: Math.hypot(reading.standardUncertainty, estimate.standardUncertainty),
    },
  ];
}

function conflictWithPeople(sheet: ObservedSheet, name: ReadingName, model: FaceModel): Conflict {
  const own = sheet.ownVariance[placeOf(name)]!;
  return {
    with: 'population',
    names: [name],
    expected: model.means[name],
    standardUncertainty: Math.sqrt(model.covariance[placeOf(name)]![placeOf(name)]! + own),
  };
}
