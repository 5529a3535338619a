import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { CentrationStandard } from '../core/lenses/centration-standards.js';
import { CENTRATION_STANDARDS } from '../core/lenses/centration-standards.js';
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
import { NORMAL_95 } from '../core/statistics/normal.js';
import type { CostSource, SheetCost } from '../session/prescription-costs.js';
import type { LensInFrame, VertexEffect } from '../session/prescription-frame.js';
import { costWords, lensText, plusMinus, powerText, prismText, PRISM_SIGN } from './lens-words.js';
import { formatDifference, formatNumber } from './numbers.js';
import { listWords, measurementWords, placeWords, upperFirst } from './slip-places.js';

/** What is said of one cost: which readings, the verdict in a few words, and the numbers. */
export interface CostSaying {
  readonly verdict: Verdict;
  /** which readings, and against what */
  readonly where: string;
  readonly word: string;
  readonly numbers: string;
}

/** A cost of the sheet in words; null for what has no effect through the lenses. */
export function costSaying(
  { source, differences, cost }: SheetCost,
  prescription: Prescription,
  standard: CentrationStandard,
  catalogue: Catalogue,
): CostSaying | null {
  if (cost.kind === 'none') return null;
  const names = differences.map(({ name }) => name);
  const where = `${upperFirst(namesWords(names, catalogue))}, ${sourceWords(source)}`;
  const apart = differences
    .map(({ name, differenceMm, standardUncertaintyMm }) => {
      const side = names.length > 1 ? `${sideOrName(name, names, catalogue)} ` : '';
      const doubt = standardUncertaintyMm === 0 ? null : formatNumber(NORMAL_95 * standardUncertaintyMm, 1);
      const amount = formatDifference(differenceMm);
      return `${side}${doubt === null ? amount : plusMinus(amount, doubt)} mm`;
    })
    .join(', ');
  const numbers = cost.kind === 'prism' ? prismNumbers(cost, prescription, standard) : powerNumbers(cost.powers);
  return {
    verdict: cost.verdict,
    where,
    word: (cost.kind === 'prism' ? costWords.verdicts : costWords.powerVerdicts)[cost.verdict],
    numbers: `${apart}: ${numbers}`,
  };
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

/** `PD R and L` for both sides of one measurement, else each by its name. */
function namesWords(names: readonly ReadingName[], catalogue: Catalogue): string {
  const measurements = [...new Set(names.map((name) => measurementWords(name, catalogue)))];
  const [only] = measurements;
  if (names.length > 1 && measurements.length === 1 && only !== undefined) return `${only} R and L`;
  return listWords(names.map((name) => placeWords(name, catalogue)));
}

function sideOrName(name: ReadingName, names: readonly ReadingName[], catalogue: Catalogue): string {
  const isOne = new Set(names.map((one) => measurementWords(one, catalogue))).size === 1;
  return isOne ? name.slice(-1) : placeWords(name, catalogue);
}

function prismNumbers(
  cost: Extract<Cost, { kind: 'prism' }>,
  prescription: Prescription,
  standard: CentrationStandard,
): string {
  const parts = [
    prismSentence(cost.horizontal, 'horizontal'),
    prismSentence(cost.vertical, 'vertical'),
    ...cost.positions.map(positionSentence),
  ].filter((part) => part !== null);
  const said = parts.length === 0 ? [`no prism: lenses without power that way`] : parts;
  const through = throughWords(cost, prescription);
  return [
    `${planeWords(cost.plane)}${said.join('; ')}.`,
    ...(through === null ? [] : [through]),
    ...(isFromMemory(cost, prescription, standard) ? [`(${standard.name} ${costWords.fromMemory}.)`] : []),
  ].join(' ');
}

function planeWords(plane: Extract<Cost, { kind: 'prism' }>['plane']): string {
  switch (plane) {
    case 'distance':
      return '';
    case 'near':
      return 'in lenses made for near, ';
    case 'segments':
      return 'through the segments, ';
    default:
      return unreachable(plane);
  }
}

/** Whether a limit that was used is from memory. */
function isFromMemory(
  { positions }: Extract<Cost, { kind: 'prism' }>,
  { lensKind }: Prescription,
  standard: CentrationStandard,
): boolean {
  const imbalance = lensKind === 'progressive' ? standard.progressiveImbalance : standard.imbalance;
  return imbalance.status === 'from-memory' || (positions.length > 0 && standard.position.status === 'from-memory');
}

/** The prism of one direction against its limit; null where there is none to speak of. */
function prismSentence(prism: JudgedPrism, direction: 'horizontal' | 'vertical'): string | null {
  const { amount, allowed } = amountWords(prism);
  if (Number(prism.high.toFixed(2)) === 0) return null;
  const isClear = prism.low > 0 || prism.high === prism.amount;
  const base = isClear
    ? direction === 'horizontal'
      ? ` base ${prism.base}`
      : ` base ${prism.base} before R`
    : ` ${direction}`;
  const rule =
    prism.rule.ofShift === null
      ? ''
      : `, ${formatNumber(prism.rule.ofShift.shiftMm, 1)} mm at ${formatNumber(prism.rule.ofShift.powerD, 2)} D`;
  return `${amount} ${PRISM_SIGN}${base} of ${allowed} allowed${rule}`;
}

function positionSentence(position: JudgedPosition): string {
  const { amount, allowed } = amountWords(position, false);
  const which =
    position.part === 'fitting-point'
      ? `${position.side ?? ''} fitting point ${position.direction === 'horizontal' ? 'aside' : 'in height'}`
      : position.side === null
        ? 'distance of the segments'
        : `${position.side} segment in height`;
  return `${which} off by ${amount} of ${allowed} mm`;
}

function powerNumbers(powers: readonly JudgedPower[]): string {
  const parts = powers.map((power) => {
    const { amount } = amountWords(power);
    return `${power.side} ${powerText(power.powerD)} would act ${amount} D ${power.changeD * power.powerD > 0 ? 'stronger' : 'weaker'}`;
  });
  return `${parts.join('; ')}. Half a step of prescribing is 0.125 D.`;
}

/**
 * Amount and limit with as many decimals as they carry: a doubt allows one, and where both would then look alike although they are not,
 * there is one more; so for less than one of what is `fine`.
 */
function amountWords(judged: Judged, isFine = true): { readonly amount: string; readonly allowed: string } {
  const { amount, low, high, allowed } = judged;
  const allowedText = formatNumber(allowed, 2).replace(/0$/, '');
  const isExact = high === amount;
  if (!isExact)
    return {
      amount: `${formatNumber(amount, 1)} (${formatNumber(low, 1)} to ${formatNumber(high, 1)})`,
      allowed: allowedText,
    };
  const short = formatNumber(amount, 1);
  const looksOtherwise = Number(short) <= allowed !== amount <= allowed || (amount > 0 && Number(short) === 0);
  return { amount: (isFine && amount < 1) || looksOtherwise ? formatNumber(amount, 2) : short, allowed: allowedText };
}

/** What the eyes look through altogether where prism is prescribed. */
function throughWords({ through, plane }: Extract<Cost, { kind: 'prism' }>, prescription: Prescription): string | null {
  if (plane === 'segments') return null;
  if (prismText(prescription.R.prism) === null && prismText(prescription.L.prism) === null) return null;
  const eye = (side: 'R' | 'L'): string => {
    const { horizontal, vertical } = through[side];
    const rounded = prismText({
      horizontal: { ...horizontal, amount: Math.round(horizontal.amount * 10) / 10 },
      vertical: { ...vertical, amount: Math.round(vertical.amount * 10) / 10 },
    });
    return `${side} ${rounded ?? 'none'}`;
  };
  return `With the prescribed prism: ${eye('R')}; ${eye('L')}.`;
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
  if (!Number.isFinite(roomMm)) return costWords.anyAmount;
  if (roomMm > 10) return costWords.overTen;
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
    blank:
      lens.blank === null
        ? null
        : `${lens.blank.isBound ? costWords.atMost : ''}${formatNumber(Math.ceil(lens.blank.diameterMm - 1e-6), 0)} mm`,
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
  const imbalance = lensKind === 'progressive' ? standard.progressiveImbalance : standard.imbalance;
  return lensKind === 'single-vision' ? [imbalance.source] : [imbalance.source, standard.position.source];
}

/** All standards in the order in which they are offered. */
export const STANDARDS = Object.values(CENTRATION_STANDARDS);
