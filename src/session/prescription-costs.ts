import type { ReadingName } from '../core/catalogue/measurement.js';
import { FAR_DISTANCES, NEAR_DISTANCES } from '../core/catalogue/pupil-distances.js';
import type { Reconciliation } from '../core/crosscheck/reconciliation.js';
import type { CentrationStandard } from '../core/lenses/centration-standards.js';
import type { Cost, ReadingDifference, Verdict } from '../core/lenses/cost-of-difference.js';
import { costOfDifferences } from '../core/lenses/cost-of-difference.js';
import type { Prescription } from '../core/lenses/prescription.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import { combineUncertainties } from '../core/statistics/uncertainty.js';
import type { FieldRow, SheetRow } from './rows.js';

/** What a hand reading is held against. */
export type CostSource =
  | { readonly kind: 'camera'; readonly from: 'picture' | 'sweep' }
  /** empty where the other reader has no name */
  | { readonly kind: 'reader'; readonly name: string }
  /** what the likeliest cause would restore */
  | { readonly kind: 'suspicion' };

/** What differences on the sheet mean for this wearer. */
export interface SheetCost {
  readonly source: CostSource;
  /** written less the other value; R before L */
  readonly differences: readonly ReadingDifference[];
  readonly cost: Cost;
}

/** The costs worth a sentence each, the gravest first, and what differs without a meaning for lenses. */
export interface SheetCosts {
  readonly costs: readonly SheetCost[];
  /** names of readings that differ from something, but not through these lenses */
  readonly without: readonly Extract<Cost, { kind: 'none' }>[];
}

const GRAVEST_FIRST: readonly Verdict[] = ['beyond', 'open', 'within', 'negligible'];

/**
 * What the differences on the sheet cost: against what the likeliest cause of each suspicion would restore, against the camera where its
 * value is uncovered, and against the other reader. Right and left of a row are taken together.
 */
export function sheetCosts(
  rows: readonly SheetRow[],
  { suspicions }: Reconciliation,
  prescription: Prescription,
  standard: CentrationStandard,
): SheetCosts {
  const readable = new Set(
    rows.flatMap(({ fields }) => fields.filter(({ reading }) => reading.ok).map(({ field }) => field)),
  );
  const sets: { readonly source: CostSource; readonly differences: readonly ReadingDifference[] }[] = [];
  for (const { explanations } of suspicions) {
    const restorations = (explanations[0]?.slips ?? []).flatMap((slip) => slip.restorations);
    const differences = restorations
      .filter(({ name, written, restored }) => readable.has(name) && written !== restored)
      .map(({ name, written, restored }) => ({ name, differenceMm: written - restored, standardUncertaintyMm: 0 }));
    for (const together of byMeaning(differences)) sets.push({ source: { kind: 'suspicion' }, differences: together });
  }
  for (const { measurement, fields } of rows) {
    if (measurement.unit !== 'mm') continue;
    const camera = fields.flatMap(cameraDifference);
    const from = fields[0]?.source ?? 'picture';
    if (camera.some(isDifference)) sets.push({ source: { kind: 'camera', from }, differences: camera });
    const reader = fields.flatMap(readerDifference);
    const name = fields.find(({ other }) => other !== null)?.other?.reader ?? '';
    if (reader.some(isDifference)) sets.push({ source: { kind: 'reader', name }, differences: reader });
  }
  const all = sets.flatMap(({ source, differences }) =>
    costOfDifferences(prescription, standard, differences).map((cost): SheetCost => ({
      source,
      differences: differences.filter(({ name }) => cost.names.includes(name)),
      cost,
    })),
  );
  const rank = ({ cost }: SheetCost): number => (cost.kind === 'none' ? 0 : GRAVEST_FIRST.indexOf(cost.verdict));
  return {
    costs: all.filter(({ cost }) => cost.kind !== 'none').sort((a, b) => rank(a) - rank(b)),
    without: withoutRepeats(all.flatMap(({ cost }) => (cost.kind === 'none' ? [cost] : []))),
  };
}

/** Chosen: less than a tenth of a millimetre is not written, and is no difference. */
function isDifference({ differenceMm }: ReadingDifference): boolean {
  return Math.abs(differenceMm) >= 0.05;
}

function cameraDifference({ field, finding }: FieldRow): readonly ReadingDifference[] {
  if (finding === null) return [];
  const { difference, differenceLow, differenceHigh } = finding.comparison;
  const standardUncertaintyMm = (differenceHigh - differenceLow) / 2 / NORMAL_95;
  return [{ name: field, differenceMm: difference, standardUncertaintyMm }];
}

function readerDifference({ field, reading, other }: FieldRow): readonly ReadingDifference[] {
  if (!reading.ok || other?.reading?.ok !== true) return [];
  const theirs = other.reading.value;
  return [
    {
      name: field,
      differenceMm: reading.value.value - theirs.value,
      standardUncertaintyMm: combineUncertainties([reading.value.standardUncertainty, theirs.standardUncertainty]),
    },
  ];
}

const WHOLE: readonly ReadingName[] = [FAR_DISTANCES.whole, NEAR_DISTANCES.whole];

/** Both eyes' distance and each eye's say the same thing twice: they are not added up, where a slip exchanged them. */
function byMeaning(differences: readonly ReadingDifference[]): readonly (readonly ReadingDifference[])[] {
  const whole = differences.filter(({ name }) => WHOLE.includes(name));
  const others = differences.filter(({ name }) => !WHOLE.includes(name));
  return [...whole.map((one) => [one]), others].filter((together) => together.length > 0);
}

/** One for each reason, with all its names once. */
function withoutRepeats(costs: readonly Extract<Cost, { kind: 'none' }>[]): readonly Extract<Cost, { kind: 'none' }>[] {
  const names = new Map<(typeof costs)[number]['reason'], Set<ReadingName>>();
  for (const cost of costs) {
    const known = names.get(cost.reason) ?? new Set();
    for (const name of cost.names) known.add(name);
    names.set(cost.reason, known);
  }
  return [...names].map(([reason, those]) => ({ kind: 'none', names: [...those], reason }));
}
