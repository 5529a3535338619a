import type { MeasurementId } from '../../src/core/catalogue/measurement.js';
import type { SlipKind } from '../../src/core/crosscheck/slip.js';
import { percentile } from '../accuracy/statistics.js';
import type { CalibrationBin } from './calibration.js';
import { addTallies, calibrationBins, NO_TALLIES, tallyJudgements } from './calibration.js';
import { mustBeSeen } from './constraint.js';
import type { Constraint, SheetOutcome, SlipOutcome } from './judge-fitting.js';
import { CONSTRAINTS } from './judge-fitting.js';
import type { Rate } from './rate.js';
import type { WrongPdCondition, WrongPdOutcome } from './simulate-block.js';
import { WRONG_PD_CONDITIONS } from './simulate-block.js';
import { rateAmong, rateText } from './rate.js';

/** What was simulated, and how long the cross-check took for it. */
export interface SimulationRun {
  readonly seed: number;
  readonly workers: number;
  /** from the start of the workers to their end, simulation included */
  readonly seconds: number;
  readonly sheets: readonly SheetOutcome[];
  readonly wrongPds: readonly WrongPdOutcome[];
  /** sides swapped on clean sheets, one measurement at a time */
  readonly swappedSides: readonly SlipOutcome[];
}

/** Slips of one sort. */
export interface SlipRates {
  readonly flagged: Rate;
  readonly namedFirst: Rate;
  /** the first explanation restores the right numbers, whatever it calls the slip */
  readonly restored: Rate;
}

/** One of the figures. */
export interface Target {
  readonly name: string;
  readonly asked: number;
  readonly isAtMost: boolean;
  readonly rate: Rate;
  /** null where nothing of the kind was simulated */
  readonly isMet: boolean | null;
}

/** The figures of a simulation, as they go into the JSON report. */
export interface SimulationReport {
  readonly seed: number;
  readonly workers: number;
  readonly fittings: number;
  readonly seconds: number;
  readonly fittingsPerSecond: number;
  /** the cross-check of one sheet */
  readonly reconcileMs: { readonly median: number; readonly percentile95: number; readonly longest: number };
  readonly targets: readonly Target[];
  /** clean sheets on which nothing is suspected */
  readonly specificity: Rate;
  /** sheets with a slip on which, besides, something is suspected that is right */
  readonly falselySuspectedToo: Rate;
  readonly byKind: readonly ({ readonly kind: SlipKind } & SlipRates)[];
  readonly byConstraint: readonly ({
    readonly constraint: Constraint;
    readonly size: 'small' | 'large';
  } & SlipRates)[];
  readonly byMeasurement: readonly ({ readonly measurement: MeasurementId } & SlipRates)[];
  /** sides swapped on clean sheets, by measurement and by how narrowly all else tells them apart */
  readonly swappedSides: readonly ({
    readonly measurement: MeasurementId;
    readonly constraint: Constraint;
  } & SlipRates)[];
  readonly calibration: {
    readonly suspicions: readonly CalibrationBin[];
    readonly explanations: readonly CalibrationBin[];
    readonly doubts: readonly CalibrationBin[];
  };
}

export function reportOf({ seed, workers, seconds, sheets, wrongPds, swappedSides }: SimulationRun): SimulationReport {
  const clean = sheets.filter(({ slips }) => slips.length === 0);
  const slips = sheets.flatMap((sheet) => sheet.slips);
  const times = sheets.map(({ ms }) => ms);
  return {
    seed,
    workers,
    fittings: sheets.length,
    seconds,
    fittingsPerSecond: sheets.length / seconds,
    reconcileMs: {
      median: percentile(times, 0.5),
      percentile95: percentile(times, 0.95),
      longest: times.reduce((most, ms) => Math.max(most, ms), 0),
    },
    targets: targetsOf(clean, slips, wrongPds, swappedSides),
    specificity: rateAmong(clean, ({ suspicionCount }) => suspicionCount === 0),
    falselySuspectedToo: rateAmong(
      sheets.filter((sheet) => sheet.slips.length > 0),
      ({ falseSuspicionCount }) => falseSuspicionCount > 0,
    ),
    byKind: grouped(slips, ({ kind }) => kind).map(([kind, some]) => ({ kind, ...slipRates(some) })),
    byConstraint: CONSTRAINTS.flatMap((constraint) =>
      (['large', 'small'] as const).map((size) => ({
        constraint,
        size,
        ...slipRates(slips.filter((slip) => slip.constraint === constraint && isLarge(slip) === (size === 'large'))),
      })),
    ),
    byMeasurement: grouped(slips, ({ measurement }) => measurement).map(([measurement, some]) => ({
      measurement,
      ...slipRates(some),
    })),
    swappedSides: grouped(swappedSides, ({ measurement }) => measurement).flatMap(([measurement, some]) =>
      grouped(some, ({ constraint }) => constraint).map(([constraint, those]) => ({
        measurement,
        constraint,
        ...slipRates(those),
      })),
    ),
    calibration: {
      suspicions: calibrationBins(tallyJudgements(sheets.flatMap((sheet) => sheet.suspicions))),
      explanations: calibrationBins(tallyJudgements(sheets.flatMap((sheet) => sheet.explanations))),
      doubts: calibrationBins(sheets.map((sheet) => sheet.doubts).reduce(addTallies, NO_TALLIES)),
    },
  };
}

function isLarge({ kind, magnitude, unit }: SlipOutcome): boolean {
  return magnitude >= mustBeSeen(kind, unit);
}

function targetsOf(
  clean: readonly SheetOutcome[],
  slips: readonly SlipOutcome[],
  wrongPds: readonly WrongPdOutcome[],
  swappedSides: readonly SlipOutcome[],
): readonly Target[] {
  const large = slips.filter(isLarge);
  const constrained = large.filter(({ kind, constraint }) => constraint === 'narrow' && kind !== 'sides-swapped');
  const swappedLengths = swappedSides.filter(({ unit }) => unit === 'mm');
  const target = (name: string, asked: number, isAtMost: boolean, rate: Rate): Target => ({
    name,
    asked,
    isAtMost,
    rate,
    isMet: rate.share === null ? null : isAtMost ? rate.share <= asked : rate.share >= asked,
  });
  const isFlagged = (one: { readonly isFlagged: boolean }): boolean => one.isFlagged;
  return [
    target(
      'clean sheets flagged',
      0.01,
      true,
      rateAmong(clean, ({ suspicionCount }) => suspicionCount > 0),
    ),
    target('constrained, 3 mm or 8° and more: flagged', 0.95, false, rateAmong(constrained, isFlagged)),
    target(
      'the same: true slip named first',
      0.8,
      false,
      rateAmong(constrained, ({ isNamedFirst }) => isNamedFirst),
    ),
    target(
      'sides swapped, 2 mm and more, told apart: flagged',
      0.85,
      false,
      rateAmong(
        swappedLengths.filter(({ constraint }) => constraint === 'narrow'),
        isFlagged,
      ),
    ),
    target('sides swapped, 2 mm and more, all: flagged', 0.85, false, rateAmong(swappedLengths, isFlagged)),
    ...WRONG_PD_CONDITIONS.map((condition) =>
      target(
        WRONG_PDS[condition],
        0.95,
        false,
        rateAmong(
          wrongPds.filter((outcome) => outcome.condition === condition),
          isFlagged,
        ),
      ),
    ),
  ];
}

function slipRates(slips: readonly SlipOutcome[]): SlipRates {
  return {
    flagged: rateAmong(slips, ({ isFlagged }) => isFlagged),
    namedFirst: rateAmong(slips, ({ isNamedFirst }) => isNamedFirst),
    restored: rateAmong(slips, ({ isRestored }) => isRestored),
  };
}

const WRONG_PDS: Readonly<Record<WrongPdCondition, string>> = {
  'read-once': 'PD 1.5 mm wrong, with a picture: flagged',
  'read-three-times': 'the same, each PD read three times',
  alone: 'the same, only the PD and the picture',
};

/** In the order of the alphabet, so that two reports can be laid side by side. */
function grouped<Item, Key extends string>(
  items: readonly Item[],
  keyOf: (item: Item) => Key,
): readonly (readonly [Key, readonly Item[]])[] {
  const groups = new Map<Key, Item[]>();
  for (const item of items) {
    const group = groups.get(keyOf(item));
    if (group === undefined) groups.set(keyOf(item), [item]);
    else group.push(item);
  }
  return [...groups].sort(([a], [b]) => a.localeCompare(b));
}

const NAME_WIDTH = 56;
const CELL_WIDTH = 26;

function row(name: string, cells: readonly string[]): string {
  return `  ${name.padEnd(NAME_WIDTH)}${cells.map((cell) => cell.padStart(CELL_WIDTH)).join('')}`.trimEnd();
}

/** The report as text, rates with their 95 % intervals. */
export function writeReport(report: SimulationReport): string {
  return [
    `Simulated fittings: ${report.fittings}, seed ${report.seed}`,
    targetsPart(report.targets),
    [
      'Right sheets and right readings',
      row('clean sheets with no suspicion', [rateText(report.specificity)]),
      row('a right reading suspected beside a slip', [rateText(report.falselySuspectedToo)]),
    ].join('\n'),
    slipsPart(
      'Slips by how narrowly all else tells the reading (large: 3 mm or 8° and more, swapped sides 2 mm)',
      report.byConstraint.map(({ constraint, size, ...rates }) => [`${constraint}, ${size}`, rates]),
    ),
    slipsPart(
      'Slips by kind',
      report.byKind.map(({ kind, ...rates }) => [kind, rates]),
    ),
    slipsPart(
      'Slips by measurement',
      report.byMeasurement.map(({ measurement, ...rates }) => [measurement, rates]),
    ),
    slipsPart(
      'Sides swapped on clean sheets (2 mm or 8° and more), by how narrowly all else tells them apart',
      report.swappedSides.map(({ measurement, constraint, ...rates }) => [`${measurement}, ${constraint}`, rates]),
    ),
    calibrationPart('Suspicions: said, and so', report.calibration.suspicions),
    calibrationPart('First explanations: said, and just that', report.calibration.explanations),
    calibrationPart('Doubt of each reading: said, and changed', report.calibration.doubts),
    timingPart(report),
  ].join('\n\n');
}

function targetsPart(targets: readonly Target[]): string {
  return [
    'What was asked',
    ...targets.map(({ name, asked, isAtMost, rate, isMet }) =>
      row(name, [
        rateText(rate),
        `of ${rate.trials}`,
        `asked ${isAtMost ? 'at most' : 'at least'} ${(100 * asked).toFixed(0)} %`,
        isMet === null ? 'not tried' : isMet ? 'met' : 'NOT MET',
      ]),
    ),
  ].join('\n');
}

function slipsPart(title: string, groups: readonly (readonly [string, SlipRates])[]): string {
  return [
    title,
    row('', ['number', 'flagged', 'named first', 'right number first']),
    ...groups.map(([name, { flagged, namedFirst, restored }]) =>
      row(name, [String(flagged.trials), rateText(flagged), rateText(namedFirst), rateText(restored)]),
    ),
  ].join('\n');
}

function calibrationPart(title: string, bins: readonly CalibrationBin[]): string {
  return [
    title,
    row('', ['number', 'said on average', 'came true']),
    ...bins.map(({ from, to, predicted, observed }) =>
      row(`${(100 * from).toFixed(0)} to ${(100 * to).toFixed(0)} %`, [
        String(observed.trials),
        predicted === null ? '-' : `${(100 * predicted).toFixed(1)} %`,
        rateText(observed),
      ]),
    ),
  ].join('\n');
}

function timingPart({ fittings, seconds, fittingsPerSecond, workers, reconcileMs }: SimulationReport): string {
  const { median, percentile95, longest } = reconcileMs;
  return [
    `Time: ${fittings} fittings in ${seconds.toFixed(1)} s with ${workers} ${workers === 1 ? 'worker' : 'workers'}, ${fittingsPerSecond.toFixed(0)} a second`,
    `Cross-check of one sheet: median ${median.toFixed(2)} ms, 95 % ${percentile95.toFixed(2)} ms, longest ${longest.toFixed(1)} ms`,
  ].join('\n');
}
