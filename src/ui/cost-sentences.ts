import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { CentrationStandard } from '../core/lenses/centration-standards.js';
import { imbalanceLimitsOf } from '../core/lenses/centration-standards.js';
import type {
  Cost,
  Judged,
  JudgedPosition,
  JudgedPower,
  JudgedPrism,
  Verdict,
} from '../core/lenses/cost-of-difference.js';
import type { Prescription } from '../core/lenses/prescription.js';
import { unreachable } from '../core/result.js';
import { SIDES } from '../core/units/side.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import type { CostSource, SheetCost } from '../session/prescription-costs.js';
import type { LensInFrame, VertexEffect } from '../session/prescription-frame.js';
import { lensText, plusMinus, powerText, prismText, PRISM_SIGN } from './lens-sentences.js';
import { words } from './language.js';
import { formatDifference, formatNumber } from './numbers.js';
import {
  isOneMeasurement,
  listWords,
  measurementWords,
  placesWords,
  placeWords,
  sideLetter,
  upperFirst,
} from './slip-places.js';

type PrismCost = Extract<Cost, { kind: 'prism' }>;

/** Prescriptions go in quarters of a dioptre. */
const HALF_STEP_D = 0.125;

/** Sums of binary fractions must not lie beyond a tolerance that they reach exactly. */
const ROUNDING_MM = 1e-9;

/** What is said of one cost: which readings, the verdict in a few words, and the numbers. */
export interface CostSaying {
  readonly verdict: Verdict;
  /** which readings, and against what */
  readonly where: string;
  readonly word: string;
  readonly numbers: string;
}

/** What a cost is said for. */
export interface CostContext {
  readonly prescription: Prescription;
  readonly standard: CentrationStandard;
  readonly catalogue: Catalogue;
  /** how far the sheet lets two values of a reading lie apart, mm */
  readonly toleranceOf: (name: ReadingName) => number;
}

/** A cost of the sheet in words; null for what has no effect through the lenses. */
export function costSaying(
  { source, differences, cost }: SheetCost,
  { prescription, standard, catalogue, toleranceOf }: CostContext,
): CostSaying | null {
  if (cost.kind === 'none') return null;
  const names = differences.map(({ name }) => name);
  const where = words.costSaying.where(upperFirst(placesWords(names, catalogue)), sourceWords(source));
  const apart = differences
    .map(({ name, differenceMm, standardUncertaintyMm }) => {
      const side = names.length > 1 ? `${sideOrName(name, names, catalogue)} ` : '';
      const doubt = standardUncertaintyMm === 0 ? null : formatNumber(NORMAL_95 * standardUncertaintyMm, 1);
      const amount = formatDifference(differenceMm);
      return `${side}${doubt === null ? amount : plusMinus(amount, doubt)} mm`;
    })
    .join(', ');
  const isAllowed = cost.verdict === 'negligible' || cost.verdict === 'within';
  // What the lenses forgive is still a slip of reading.
  const isReadAgain =
    isAllowed && differences.some(({ name, differenceMm }) => Math.abs(differenceMm) > toleranceOf(name) + ROUNDING_MM);
  const numbers = cost.kind === 'prism' ? prismNumbers(cost, prescription) : powerNumbers(cost.powers);
  return {
    verdict: cost.verdict,
    where,
    word: `${verdictWords(cost, prescription, standard)}${isReadAgain ? words.cost.readAgain : ''}`,
    numbers: words.costSaying.numbers(apart, numbers),
  };
}

/** The verdict, marked where limits that nobody has looked up stand behind it. */
function verdictWords(
  cost: Exclude<Cost, { kind: 'none' }>,
  { lensKind }: Prescription,
  standard: CentrationStandard,
): string {
  if (cost.kind === 'power') return words.cost.powerVerdicts[cost.verdict];
  const limits = limitsOf(cost);
  const statuses = isWithoutPrism(limits)
    ? []
    : worthSaying(limits).map(({ isPosition }) =>
        isPosition ? standard.position.status : imbalanceLimitsOf(standard, lensKind).status,
      );
  return `${words.cost.verdicts[cost.verdict]}${statuses.includes('from-memory') ? words.cost.valuesFromMemory : ''}`;
}

function sourceWords(source: CostSource): string {
  switch (source.kind) {
    case 'camera':
      return source.from === 'sweep' ? words.costSaying.handLessSweep : words.costSaying.handLessCamera;
    case 'reader':
      return words.costSaying.readerLess(source.name);
    case 'suspicion':
      return words.costSaying.writtenLessMeant;
    default:
      return unreachable(source);
  }
}

function sideOrName(name: ReadingName, names: readonly ReadingName[], catalogue: Catalogue): string {
  const side = isOneMeasurement(names, catalogue) ? sideLetter(name, catalogue) : '';
  return side === '' ? placeWords(name, catalogue) : side;
}

interface SaidLimit {
  readonly judged: Judged;
  /** of a part of a lens rather than of prism */
  readonly isPosition: boolean;
  readonly text: string;
}

function limitsOf({ horizontal, vertical, positions }: PrismCost): readonly SaidLimit[] {
  return [
    { judged: horizontal, isPosition: false, text: prismWords(horizontal, 'horizontal') },
    { judged: vertical, isPosition: false, text: prismWords(vertical, 'vertical') },
    ...positions.map((position) => ({ judged: position, isPosition: true, text: positionWords(position) })),
  ];
}

function isWithoutPrism(limits: readonly SaidLimit[]): boolean {
  return limits.every(({ judged }) => Number(judged.high.toFixed(2)) === 0);
}

function prismNumbers(cost: PrismCost, prescription: Prescription): string {
  const limits = limitsOf(cost);
  if (isWithoutPrism(limits)) return words.costSaying.withoutPrism;
  const through = throughWords(cost, prescription);
  const said = words.costSaying.inPlane[cost.plane](listWords(worthSaying(limits).map(({ text }) => text)));
  return through === null ? said : `${said} ${through}`;
}

/**
 * What the verdict rests on: of limits that are judged alike, those against which something was found and not only doubted. Where nothing
 * matters, the one that uses up most.
 */
function worthSaying<Limit extends { readonly judged: Judged }>(limits: readonly Limit[]): readonly Limit[] {
  for (const verdict of ['beyond', 'open', 'within'] as const) {
    const those = limits.filter(({ judged }) => judged.verdict === verdict);
    const found = those.filter(({ judged }) => judged.share > 0.02);
    if (those.length > 0) return found.length > 0 ? found : those;
  }
  const use = ({ judged }: Limit): number => judged.high / judged.allowed;
  return limits.filter((one) => limits.every((other) => use(one) >= use(other))).slice(0, 1);
}

/** The prism of one direction against its limit, such as `1.8 Δ base in against 1.5 Δ allowed (2.5 mm at 6.00 D)`. */
function prismWords(prism: JudgedPrism, direction: 'horizontal' | 'vertical'): string {
  const { amount, interval, allowed } = amountWords(prism, 1);
  // Where the doubt reaches across nothing, nobody knows which way the base points.
  const isClear = prism.low > 0 || prism.high === prism.amount;
  const base = words.costSaying.bases[prism.base];
  const { ofShift } = prism.rule;
  return words.costSaying.prism({
    amount: `${amount} ${PRISM_SIGN}`,
    way: isClear
      ? direction === 'vertical'
        ? words.costSaying.beforeRight(base)
        : base
      : words.costSaying.directions[direction],
    interval,
    allowed: `${allowed} ${PRISM_SIGN}`,
    rule:
      ofShift === null
        ? ''
        : words.costSaying.ruleOfShift(formatNumber(ofShift.shiftMm, 1), formatNumber(ofShift.powerD, 2)),
  });
}

function positionWords(position: JudgedPosition): string {
  const { amount, interval, allowed } = amountWords(position, 1);
  const said = words.costSaying.position;
  if (position.side === null) return said.betweenSegments(amount, interval, allowed);
  const part = position.part === 'fitting-point' ? said.fittingPoint : said.segment;
  return part[position.direction](words.sheet.side[position.side], amount, interval, allowed);
}

function powerNumbers(powers: readonly JudgedPower[]): string {
  const limits = powers.map((power) => {
    const { amount, interval } = amountWords(power, 2);
    const way = power.changeD * power.powerD > 0 ? 'stronger' : 'weaker';
    const text = words.costSaying.acts[way](words.sheet.side[power.side], powerText(power.powerD), amount, interval);
    return { judged: power, text };
  });
  return words.costSaying.powers(listWords(worthSaying(limits).map(({ text }) => text)), formatNumber(HALF_STEP_D, 3));
}

/**
 * Amount, its 95 % interval and the limit with as many decimals as they carry. What is exact has one more below one, and where it would
 * otherwise look alike on both sides of the limit.
 */
function amountWords(
  { amount, low, high, allowed }: Judged,
  decimals: number,
): { readonly amount: string; readonly interval: string; readonly allowed: string } {
  const limit = formatNumber(allowed, allowed < 1 ? 2 : 1).replace(/(\D\d)0$/, '$1');
  if (high !== amount) {
    const interval = words.costSaying.interval(formatNumber(low, decimals), formatNumber(high, decimals));
    return { amount: formatNumber(amount, decimals), interval, allowed: limit };
  }
  const isAlike = formatNumber(amount, decimals) === formatNumber(allowed, decimals) && amount > allowed;
  return {
    amount: formatNumber(amount, amount < 1 || isAlike ? 2 : decimals),
    interval: '',
    allowed: isAlike ? formatNumber(allowed, 2) : limit,
  };
}

/** What the eyes look through altogether where prism is prescribed. */
function throughWords({ through, plane }: PrismCost, prescription: Prescription): string | null {
  if (plane === 'segments') return null;
  if (prismText(prescription.R.prism) === null && prismText(prescription.L.prism) === null) return null;
  const tenths = (amount: number): number => Math.round(amount * 10) / 10;
  const eyes = SIDES.flatMap((side) => {
    const { horizontal, vertical } = through[side];
    const text = prismText({
      horizontal: { ...horizontal, amount: tenths(horizontal.amount) },
      vertical: { ...vertical, amount: tenths(vertical.amount) },
    });
    return text === prismText(prescription[side].prism)
      ? []
      : [`${words.sheet.side[side]} ${text ?? words.costSaying.noPrism}`];
  });
  return eyes.length === 0 ? null : words.costSaying.through(eyes.join('; '));
}

/** What differs without costing anything, in one sentence for each reason. */
export function withoutCostSentence({ names, reason }: Extract<Cost, { kind: 'none' }>, catalogue: Catalogue): string {
  const what = upperFirst(listWords([...new Set(names.map((name) => measurementWords(name, catalogue)))]));
  return words.costSaying.without[reason](what);
}

/** How far a reading may be off, in mm: rounded down, so that it still keeps to the standard as it is written. */
export function roomText(roomMm: number): string {
  if (!Number.isFinite(roomMm)) return words.cost.anyAmount;
  if (roomMm > 10) return words.cost.overTen;
  return formatNumber(Math.floor(roomMm * 10 + 1e-6) / 10, 1);
}

/** The cells of one lens in the chosen frame; null for what is not known yet. */
export function frameTexts(lens: LensInFrame): {
  readonly inward: string | null;
  readonly up: string | null;
  readonly blank: string | null;
  readonly inset: string | null;
} {
  const mm = (value: number): string => `${formatNumber(value, 1)} mm`;
  return {
    inward: lens.inwardMm === null ? null : mm(lens.inwardMm),
    up: lens.upMm === null ? null : mm(lens.upMm),
    blank: lens.blank === null ? null : `${formatNumber(Math.ceil(lens.blank.diameterMm - 1e-6), 0)} mm`,
    inset: lens.nearInsetMm === null ? null : mm(lens.nearInsetMm),
  };
}

/** What the vertex distance does to one lens. */
export function vertexSentence({ furtherMm, actsAs, compensated, matters }: VertexEffect): string {
  const said = words.costSaying.vertex;
  if (furtherMm === 0) return said.asTested;
  const where = said[furtherMm > 0 ? 'farther' : 'nearer'](formatNumber(Math.abs(furtherMm), 1));
  return matters ? said.matters(where, lensText(actsAs), lensText(compensated)) : said.doesNotMatter(where);
}

/** The source of a standard's limits, as it is told below the costs. */
export function standardSources(standard: CentrationStandard, { lensKind }: Prescription): readonly string[] {
  const imbalance = imbalanceLimitsOf(standard, lensKind);
  return lensKind === 'single-vision' ? [imbalance.source] : [imbalance.source, standard.position.source];
}
