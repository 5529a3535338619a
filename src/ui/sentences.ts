import type { Catalogue } from '../core/catalogue/catalogue.js';
import { measurementOfReading } from '../core/catalogue/catalogue.js';
import type { Measurement, MeasurementUnit, ReadingName } from '../core/catalogue/measurement.js';
import type { SourceStatus } from '../core/catalogue/source-status.js';
import type { Finding } from '../core/crosscheck/finding.js';
import type { BudgetSource } from '../core/estimate/estimate.js';
import type { PrintCheckFailure } from '../core/reading/print-check.js';
import type { ReadingFailure } from '../core/reading/parse-reading.js';
import { unreachable } from '../core/result.js';
import type { Side } from '../core/units/side.js';
import type { LengthFailure } from '../session/measuring-settings.js';
import { formatNumber, plainNumber, withUnit } from './numbers.js';
import { sideOf } from './slip-places.js';
import { words } from './language.js';

/** A source of doubt in words. */
export function sourceWords(source: BudgetSource): string {
  switch (source) {
    case 'card-size':
      return 'true size of the card';
    case 'card-edges':
      return 'where the card’s edges lie in the picture';
    case 'iris-edges':
      return 'where the iris edges lie in the picture';
    case 'lid-edges':
      return 'where the lid margins lie in the picture';
    case 'contact-depth':
      return 'how far the touched skin lies before the eyes';
    case 'camera':
      return 'field of view and distortion of the camera';
    case 'head-pose':
      return 'how the head is turned';
    case 'iris-size':
      return 'how wide this wearer’s irises are';
    case 'gaze':
      return 'where the eyes looked';
    case 'midline':
      return 'where the midline of the bridge lies';
    case 'head-shape':
      return 'how this head differs from the fitted one';
    case 'between-frames':
      return 'scatter between frames';
    default:
      return unreachable(source);
  }
}

/** How far a published or customary number may be relied on. */
export function statusWords(status: SourceStatus): string {
  switch (status) {
    case 'verified':
      return 'seen in the source';
    case 'verified-secondary':
      return 'seen in a text that reports the source';
    case 'computed':
      return 'computed from open data';
    case 'derived':
      return 'worked out from the source';
    case 'common-practice':
      return 'common practice';
    case 'from-memory':
      return 'from memory, not checked';
    case 'chosen':
      return 'chosen for this app';
    default:
      return unreachable(status);
  }
}

/** The same in a word or two, for the row of the sheet. */
export function statusShort(status: SourceStatus): string {
  switch (status) {
    case 'verified':
    case 'verified-secondary':
      return 'published';
    case 'computed':
      return 'computed';
    case 'derived':
      return 'derived';
    case 'common-practice':
      return 'customary';
    case 'from-memory':
      return 'unchecked';
    case 'chosen':
      return 'chosen';
    default:
      return unreachable(status);
  }
}

/** The name of a reading's place on the sheet, such as `lid aperture, right`. */
export function readingWords(name: ReadingName, catalogue: Catalogue): string {
  return spokenName(measurementOfReading(catalogue, name), sideOf(name, catalogue));
}

/** The same where the measurement and the side are at hand. */
export function spokenName({ id }: Measurement, side: Side | null): string {
  const { shortName } = words.measurements[id];
  return side === null ? shortName : `${shortName}, ${words.sheet.sideWord[side]}`;
}

/** Why what was typed is no reading; an empty field needs no sentence. */
export function readingFailureSentence(failure: ReadingFailure, unit: MeasurementUnit): string | null {
  switch (failure.kind) {
    case 'empty':
      return null;
    case 'not-a-number':
      return `“${failure.typed.trim()}” is not a number. ${numberHint(failure.typed.trim(), unit)}`;
    case 'not-positive':
      return `${onScale(failure, unit)}A reading must be above zero. Type the number that the gauge shows.`;
    case 'impossible':
      return `${onScale(failure, unit)}${withUnit(plainNumber(failure.value), unit)} cannot be: such a reading lies between ${plainNumber(failure.range.low)} and ${withUnit(plainNumber(failure.range.high), unit)}. Look at the gauge again.`;
    case 'not-a-trial':
      return `“${failure.typed.trim()}” is no trial. ${unitHint(failure.typed.trim(), unit) ?? ''}Type each size with loose, fits or tight behind it, such as 10 loose 9 fits 8 tight.`;
    case 'too-many-repeats':
      return `${failure.count} numbers stand here, and at most ${failure.limit} are taken. Leave out those that do not belong here.`;
    case 'trials-contradict':
      return contradictionSentence(failure, unit);
    case 'trials-one-sided':
      return `All sizes were ${failure.verdict} so far. Try ${withUnit(plainNumber(failure.tryNext), unit)} next.`;
    default:
      return unreachable(failure);
  }
}

/** Several numbers with something between them that parts no repeats: `64,64,65` or `64/65`. */
const JOINED_NUMBERS = /^[+-]?\d+(\.\d+)?([,/|+&-][+-]?\d+(\.\d+)?)+,?$/;

/** A unit, with or without a number before it: `152mm`, or `mm` where a space stands between. */
const WITH_UNIT = /^(?<number>[+\-\u2212]?\d+(?:[.,]\d*)?)?(?<unit>mm|cm|m|in|inch|inches|"|″|°|deg|degrees?)\.?$/i;

/** What to type instead of `typed`, as far as it can be seen what was meant. */
function numberHint(typed: string, unit: MeasurementUnit): string {
  const aboutUnit = unitHint(typed, unit);
  if (aboutUnit !== null) return aboutUnit.trim();
  if (JOINED_NUMBERS.test(typed)) return 'Put a space between repeats, such as 63 63.5 62.5.';
  return 'Type digits with at most one decimal point or comma, such as 63.5.';
}

/** That a unit is not to be typed; null where none was. */
function unitHint(typed: string, unit: MeasurementUnit): string | null {
  const said = WITH_UNIT.exec(typed)?.groups;
  if (said?.unit === undefined) return null;
  const isAngle = /^(°|deg)/i.test(said.unit);
  const isOwn = unit === 'deg' ? isAngle : /^mm$/i.test(said.unit);
  if (!isOwn) return `Type it in ${unit === 'deg' ? 'degrees' : 'mm'}, and leave the unit out. `;
  return `Leave the unit out${said.number === undefined ? '' : `: ${said.number}`}. `;
}

/** Where a gauge adds something, what is typed and what it stands for are two numbers. */
function onScale(
  { scale, value }: Extract<ReadingFailure, { kind: 'not-positive' | 'impossible' }>,
  unit: MeasurementUnit,
): string {
  return scale === value ? '' : `${plainNumber(scale)} on the scale stands for ${withUnit(plainNumber(value), unit)}. `;
}

function contradictionSentence(
  { smaller, larger }: Extract<ReadingFailure, { kind: 'trials-contradict' }>,
  unit: MeasurementUnit,
): string {
  const size = withUnit(plainNumber(smaller.size), unit);
  if (smaller.size === larger.size) {
    return `${size} is written as “${smaller.verdict}” and as “${larger.verdict}”. Try it again.`;
  }
  return `${size} is written as “${smaller.verdict}” and ${withUnit(plainNumber(larger.size), unit)} as “${larger.verdict}”, but a smaller size cannot be looser. Try both again.`;
}

/** The word of a finding, of one reading or of `R and L` together. */
export function findingWord(finding: Finding, isOfBoth = false): string {
  switch (finding.kind) {
    case 'agrees':
      return isOfBoth ? 'agree' : 'agrees';
    case 'disagrees':
      return isOfBoth ? 'disagree' : 'disagrees';
    case 'cannot-tell':
      return 'cannot tell';
    default:
      return unreachable(finding);
  }
}

/**
 * Why, in a few words. `areLidsFound` where the estimate rests on lid marks that no hand has set yet: setting them is the
 * one thing that makes a picture at hand surer.
 */
export function findingReason(
  finding: Finding,
  areLidsFound: boolean,
  source: 'picture' | 'sweep' = 'picture',
  unit: MeasurementUnit = 'mm',
): string {
  switch (finding.kind) {
    case 'agrees':
      return 'within the tolerance';
    case 'disagrees':
      return 'outside the tolerance, even allowing for the doubt of both: read again';
    case 'cannot-tell': {
      const { comparison, reason } = finding;
      switch (reason.kind) {
        case 'camera-too-uncertain': {
          const why = tooWideWords(comparison.cameraExpanded, comparison.tolerance.value, source, unit);
          return areLidsFound ? `${why}; set the lid marks under the loupe` : why;
        }
        case 'between':
          return `too close to call: ±\u00a0${withUnit(roundedDown(reason.neededCameraExpanded), unit)} would decide`;
        case 'hand-too-uncertain':
          return `the hand reading is too unsure; within ±\u00a0${withUnit(formatNumber(reason.neededHandExpanded, 1), unit)} would decide: read again`;
        default:
          return unreachable(reason);
      }
    }
    default:
      return unreachable(finding);
  }
}

function tooWideWords(doubt: number, tolerance: number, source: 'picture' | 'sweep', unit: MeasurementUnit): string {
  // A second decimal where the first does not show which of the two is larger.
  const decimals = formatNumber(doubt, 1) === formatNumber(tolerance, 1) ? 2 : 1;
  return `±\u00a0${withUnit(formatNumber(doubt, decimals), unit)} from one ${source} is too wide for ±\u00a0${formatNumber(tolerance, decimals)}`;
}

/** A limit that still decides as it is written: rounded down, with a second decimal where one would leave nothing. */
function roundedDown(limit: number): string {
  const decimals = limit < 0.1 ? 2 : 1;
  const step = 10 ** decimals;
  return formatNumber(Math.floor(limit * step + 1e-9) / step, decimals);
}

/** Why a working distance cannot be used. */
export function lengthFailureSentence(failure: LengthFailure): string {
  switch (failure.kind) {
    case 'not-a-number':
      return 'Type a length in mm, such as 400. Until then 400 mm is used.';
    case 'beyond-limits':
      return `Type a length between ${failure.lowestMm} and ${failure.highestMm} mm. Until then 400 mm is used.`;
    default:
      return unreachable(failure);
  }
}

/** Why a measured length of the printed line cannot be used. */
export function printCheckSentence(failure: PrintCheckFailure | { readonly kind: 'not-a-number' }): string {
  switch (failure.kind) {
    case 'not-a-number':
    case 'not-a-length':
      return 'Type the measured length in mm, such as 149.5. Until then the print is taken to be at true size.';
    case 'other-unit':
      return `Was ${failure.unit === 'cm' ? 'centimetres' : 'inches'} meant? Then type ${plainNumber(failure.lengthMm)} mm.`;
    case 'beyond-limits':
      return `${plainNumber(failure.measuredMm)} mm cannot be allowed for: a usable print shows ${plainNumber(failure.lowestMm)} to ${plainNumber(failure.highestMm)} mm. Print again at 100 %.`;
    default:
      return unreachable(failure);
  }
}
