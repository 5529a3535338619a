import type { Catalogue } from '../../src/core/catalogue/catalogue.js';
import { measurementOfReading } from '../../src/core/catalogue/catalogue.js';
import type { MeasurementId, MeasurementUnit, ReadingName } from '../../src/core/catalogue/measurement.js';
import type { Evidence, Explanation, Reconciliation, Suspicion } from '../../src/core/crosscheck/reconciliation.js';
import type { Slip, SlipKind } from '../../src/core/crosscheck/slip.js';
import { freeOfDust } from '../../src/core/statistics/free-of-dust.js';
import type { CalibrationTally, Judgement } from './calibration.js';
import { tallyJudgements } from './calibration.js';

/** One simulated sheet and the slips that were made on it; none on a clean sheet. */
export interface SlippedSheet {
  readonly evidence: Evidence;
  readonly slips: readonly Slip[];
}

/**
 * How narrowly all else on the sheet tells what a reading should be: so that the 3 mm or 8 degrees stand out; worse than
 * that; or hardly better than what is known of people.
 */
export const CONSTRAINTS = ['narrow', 'wide', 'none'] as const;

export type Constraint = (typeof CONSTRAINTS)[number];

/** What became of one slip. */
export interface SlipOutcome {
  readonly kind: SlipKind;
  readonly measurement: MeasurementId;
  readonly unit: MeasurementUnit;
  /** the largest change that it made, in `unit` */
  readonly magnitude: number;
  readonly constraint: Constraint;
  /** a suspicion, or the slip that it names first, is of a place that was changed */
  readonly isFlagged: boolean;
  /** just this slip is named first, and restores what stood there before to within the tolerance of the measurement */
  readonly isNamedFirst: boolean;
  /** the first explanation restores what stood there before as well, whatever it calls the slip */
  readonly isRestored: boolean;
}

/** What became of one sheet; plain data, since it comes from another thread. */
export interface SheetOutcome {
  readonly slips: readonly SlipOutcome[];
  readonly suspicionCount: number;
  /** suspicions of places where nothing was changed */
  readonly falseSuspicionCount: number;
  /** each suspicion, true where a slip touched what it names */
  readonly suspicions: readonly Judgement[];
  /** each first explanation, true where just that happened there */
  readonly explanations: readonly Judgement[];
  /** the doubt of each reading, true where it was changed; in tenths, since there are some forty for each sheet */
  readonly doubts: readonly CalibrationTally[];
  /** time that the cross-check took */
  readonly ms: number;
}

/** Holds what the cross-check says against what was done. */
export function judgeFitting(
  { evidence, slips }: SlippedSheet,
  { suspicions, doubts }: Reconciliation,
  constraintOf: (slip: Slip, evidence: Evidence) => Constraint,
  ms: number,
): SheetOutcome {
  const changed = new Set(slips.flatMap(namesOf));
  const isOfChanged = (suspicion: Suspicion): boolean => suspectedNames(suspicion).some((name) => changed.has(name));
  return {
    slips: slips.map((slip) => judgeSlip(slip, suspicions, evidence.catalogue, constraintOf(slip, evidence))),
    suspicionCount: suspicions.length,
    falseSuspicionCount: suspicions.filter((suspicion) => !isOfChanged(suspicion)).length,
    suspicions: suspicions.map(({ names, probability }) => ({
      probability,
      isTrue: names.some((name) => changed.has(name)),
    })),
    explanations: suspicions.flatMap(({ explanations: [first] }) =>
      first === undefined
        ? []
        : [{ probability: first.probability, isTrue: isJustWhatHappened(first, slips, evidence.catalogue) }],
    ),
    doubts: tallyJudgements(
      (Object.entries(doubts) as [ReadingName, number][]).map(([name, probability]) => ({
        probability,
        isTrue: changed.has(name),
      })),
    ),
    ms,
  };
}

function namesOf({ restorations }: Slip): readonly ReadingName[] {
  return restorations.map(({ name }) => name);
}

/** What the suspicion names, and what the slip that it names first would change. */
function suspectedNames({ names, explanations: [first] }: Suspicion): readonly ReadingName[] {
  return [...names, ...(first?.slips ?? []).flatMap(namesOf)];
}

/** Whether a suspicion, or the slip that it names first, is of this place. */
export function isSuspected(name: ReadingName, { suspicions }: Reconciliation): boolean {
  return suspicions.some((suspicion) => suspectedNames(suspicion).includes(name));
}

function judgeSlip(
  slip: Slip,
  suspicions: readonly Suspicion[],
  catalogue: Catalogue,
  constraint: Constraint,
): SlipOutcome {
  const [first] = slip.restorations;
  if (first === undefined) throw new Error(`A slip of the kind ${slip.kind} changed nothing.`);
  const { id, unit } = measurementOfReading(catalogue, first.name);
  const names = namesOf(slip);
  const flagging = suspicions.filter((suspicion) => suspectedNames(suspicion).some((name) => names.includes(name)));
  const firstExplanations = flagging.flatMap(({ explanations }) => explanations[0]?.slips ?? []);
  return {
    kind: slip.kind,
    measurement: id,
    unit,
    magnitude: Math.max(...slip.restorations.map(({ written, restored }) => Math.abs(written - restored))),
    constraint,
    isFlagged: flagging.length > 0,
    isNamedFirst: firstExplanations.some((named) => named.kind === slip.kind && restoresSame(named, slip, catalogue)),
    isRestored: firstExplanations.some((named) => restoresSame(named, slip, catalogue)),
  };
}

/**
 * Whether both put the same numbers back at the same places. Where a slip follows from other readings (near from far, the whole
 * from both eyes), what it restores has their scatter: a difference within the tolerance of the measurement counts for nothing.
 * Of two places one may have been left as it was.
 */
function restoresSame(named: Slip, made: Slip, catalogue: Catalogue): boolean {
  const changes = (slip: Slip) =>
    slip.restorations.filter(({ written, restored }) => freeOfDust(written - restored) !== 0);
  const [some, others] = [changes(named), changes(made)];
  return (
    some.length === others.length &&
    others.every(({ name, restored }) => {
      const tolerance = measurementOfReading(catalogue, name).tolerance.value;
      return some.some((one) => one.name === name && freeOfDust(Math.abs(one.restored - restored)) <= tolerance);
    })
  );
}

/** Every slip that is named was made. Others elsewhere on the sheet have suspicions of their own. */
function isJustWhatHappened({ slips: named }: Explanation, made: readonly Slip[], catalogue: Catalogue): boolean {
  return named.every((one) => made.some((other) => one.kind === other.kind && restoresSame(one, other, catalogue)));
}
