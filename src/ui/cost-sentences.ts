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
  sideOf,
  upperFirst,
} from './slip-places.js';

type PrismCost = Extract<Cost, { kind: 'prism' }>;

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
  const where = `${upperFirst(placesWords(names, catalogue))}, ${sourceWords(source)}`;
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
    numbers: `${apart}: ${numbers}`,
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
      return source.from === 'sweep' ? 'hand less sweep' : 'hand less camera';
    case 'reader':
      return source.name === '' ? 'this reader less the other' : `this reader less ${source.name}`;
    case 'suspicion':
      return 'written less what was probably meant';
    default:
      return unreachable(source);
  }
}

function sideOrName(name: ReadingName, names: readonly ReadingName[], catalogue: Catalogue): string {
  const side = isOneMeasurement(names, catalogue) ? sideOf(name, catalogue) : null;
  return side ?? placeWords(name, catalogue);
}

interface SaidLimit {
  readonly judged: Judged;
  /** of a part of a lens rather than of prism */
  readonly isPosition: boolean;
  readonly words: string;
}

function limitsOf({ horizontal, vertical, positions }: PrismCost): readonly SaidLimit[] {
  return [
    { judged: horizontal, isPosition: false, words: prismWords(horizontal, 'horizontal') },
    { judged: vertical, isPosition: false, words: prismWords(vertical, 'vertical') },
    ...positions.map((position) => ({ judged: position, isPosition: true, words: positionWords(position) })),
  ];
}

function isWithoutPrism(limits: readonly SaidLimit[]): boolean {
  return limits.every(({ judged }) => Number(judged.high.toFixed(2)) === 0);
}

function prismNumbers(cost: PrismCost, prescription: Prescription): string {
  const limits = limitsOf(cost);
  if (isWithoutPrism(limits)) {
    return 'no prism, as these lenses have no power that way.';
  }
  const through = throughWords(cost, prescription);
  const said = listWords(worthSaying(limits).map(({ words }) => words));
  return `${planeWords(cost.plane)}${said}.${through === null ? '' : ` ${through}`}`;
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

function planeWords(plane: PrismCost['plane']): string {
  switch (plane) {
    case 'distance':
      return '';
    case 'near':
      return 'in lenses made for near ';
    case 'segments':
      return 'through the segments ';
    default:
      return unreachable(plane);
  }
}

/** The prism of one direction against its limit, such as `1.8 Δ base in against 1.5 Δ allowed (2.5 mm at 6.00 D)`. */
function prismWords(prism: JudgedPrism, direction: 'horizontal' | 'vertical'): string {
  const { amount, interval, allowed } = amountWords(prism, 1);
  // Where the doubt reaches across nothing, nobody knows which way the base points.
  const isClear = prism.low > 0 || prism.high === prism.amount;
  const base = isClear ? `base ${prism.base}${direction === 'vertical' ? ' before R' : ''}` : direction;
  const rule =
    prism.rule.ofShift === null
      ? ''
      : ` (${formatNumber(prism.rule.ofShift.shiftMm, 1)} mm at ${formatNumber(prism.rule.ofShift.powerD, 2)} D)`;
  return `${amount} ${PRISM_SIGN} ${base}${interval} against ${allowed} ${PRISM_SIGN} allowed${rule}`;
}

function positionWords(position: JudgedPosition): string {
  const { amount, interval, allowed } = amountWords(position, 1);
  const way = position.direction === 'horizontal' ? 'sideways' : 'in height';
  const off = `${amount} mm${interval} off`;
  const limit = `(${allowed} mm allowed)`;
  if (position.side === null) return `the distance between the segments is ${off} ${limit}`;
  const part = position.part === 'fitting-point' ? 'fitting point' : 'segment';
  return `the ${position.side} ${part} lies ${off} ${way} ${limit}`;
}

function powerNumbers(powers: readonly JudgedPower[]): string {
  const limits = powers.map((power) => {
    const { amount, interval } = amountWords(power, 2);
    const way = power.changeD * power.powerD > 0 ? 'stronger' : 'weaker';
    return { judged: power, words: `${power.side} ${powerText(power.powerD)} acts ${amount} D ${way}${interval}` };
  });
  return `${listWords(worthSaying(limits).map(({ words }) => words))}. Half a step of prescribing is 0.125 D.`;
}

/**
 * Amount, its 95 % interval and the limit with as many decimals as they carry. What is exact has one more below one, and where it would
 * otherwise look alike on both sides of the limit.
 */
function amountWords(
  { amount, low, high, allowed }: Judged,
  decimals: number,
): { readonly amount: string; readonly interval: string; readonly allowed: string } {
  const limit = formatNumber(allowed, allowed < 1 ? 2 : 1).replace(/(\.\d)0$/, '$1');
  if (high !== amount) {
    const interval = ` (${formatNumber(low, decimals)} to ${formatNumber(high, decimals)})`;
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
    return text === prismText(prescription[side].prism) ? [] : [`${side} ${text ?? 'none'}`];
  });
  return eyes.length === 0 ? null : `With the prescribed prism: ${eyes.join('; ')}.`;
}

/** What differs without costing anything, in one sentence for each reason. */
export function withoutCostSentence({ names, reason }: Extract<Cost, { kind: 'none' }>, catalogue: Catalogue): string {
  const what = upperFirst(listWords([...new Set(names.map((name) => measurementWords(name, catalogue)))]));
  switch (reason) {
    case 'not-through-lenses':
      return `${what}: no effect through the lenses.`;
    case 'inset-of-design':
      return `${what}: progressive lenses bring their own near inset.`;
    case 'tilt-not-worked-out':
      return `${what}: tilt changes strong lenses a little; that is not worked out here.`;
    default:
      return unreachable(reason);
  }
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
  if (furtherMm === 0) return 'as tested';
  const where = `${formatNumber(Math.abs(furtherMm), 1)} mm ${furtherMm > 0 ? 'farther' : 'nearer'} than tested`;
  return matters
    ? `${where}: acts as about ${lensText(actsAs)}; ${lensText(compensated)} would act as prescribed`
    : `${where}: does not matter`;
}

/** The source of a standard's limits, as it is told below the costs. */
export function standardSources(standard: CentrationStandard, { lensKind }: Prescription): readonly string[] {
  const imbalance = imbalanceLimitsOf(standard, lensKind);
  return lensKind === 'single-vision' ? [imbalance.source] : [imbalance.source, standard.position.source];
}
