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
  return words.doubtSource[source];
}

/** How far a published or customary number may be relied on. */
export function statusWords(status: SourceStatus): string {
  return words.status.long[status];
}

/** The same in a word or two, for the row of the sheet. */
export function statusShort(status: SourceStatus): string {
  return words.status.short[status];
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
  const said = words.readingFailure;
  switch (failure.kind) {
    case 'empty':
      return null;
    case 'not-a-number':
      return `${said.notANumber(failure.typed.trim())} ${numberHint(failure.typed.trim(), unit)}`;
    case 'not-positive':
      return onScale(failure, unit) + said.notPositive;
    case 'impossible': {
      const high = withUnit(plainNumber(failure.range.high), unit);
      const value = withUnit(plainNumber(failure.value), unit);
      return onScale(failure, unit) + said.impossible(value, plainNumber(failure.range.low), high);
    }
    case 'not-a-trial': {
      const hint = unitHint(failure.typed.trim(), unit);
      return [said.notATrial(failure.typed.trim()), ...(hint === null ? [] : [hint]), said.howTrialsAreTyped].join(' ');
    }
    case 'too-many-repeats':
      return said.tooMany(failure.count, failure.limit);
    case 'trials-contradict':
      return contradictionSentence(failure, unit);
    case 'trials-one-sided':
      return said.oneSided[failure.verdict](withUnit(plainNumber(failure.tryNext), unit));
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
  return (
    unitHint(typed, unit) ??
    (JOINED_NUMBERS.test(typed) ? words.readingFailure.hints.joined : words.readingFailure.hints.digits)
  );
}

/** That a unit is not to be typed; null where none was. */
function unitHint(typed: string, unit: MeasurementUnit): string | null {
  const { hints } = words.readingFailure;
  const said = WITH_UNIT.exec(typed)?.groups;
  if (said?.unit === undefined) return null;
  const isAngle = /^(°|deg)/i.test(said.unit);
  const isOwn = unit === 'deg' ? isAngle : /^mm$/i.test(said.unit);
  if (!isOwn) return hints.otherUnit[unit];
  return said.number === undefined ? hints.ownUnit : hints.ownUnitBehind(said.number);
}

/** Where a gauge adds something, what is typed and what it stands for are two numbers. */
function onScale(
  { scale, value }: Extract<ReadingFailure, { kind: 'not-positive' | 'impossible' }>,
  unit: MeasurementUnit,
): string {
  if (scale === value) return '';
  return `${words.readingFailure.onScale(plainNumber(scale), withUnit(plainNumber(value), unit))} `;
}

function contradictionSentence(
  { smaller, larger }: Extract<ReadingFailure, { kind: 'trials-contradict' }>,
  unit: MeasurementUnit,
): string {
  const size = withUnit(plainNumber(smaller.size), unit);
  if (smaller.size === larger.size) {
    return words.readingFailure.writtenTwice(size, smaller.verdict, larger.verdict);
  }
  const largerSize = withUnit(plainNumber(larger.size), unit);
  return words.readingFailure.contradiction(size, smaller.verdict, largerSize, larger.verdict);
}

/** The word of a finding, of one reading or of `R and L` together. */
export function findingWord({ kind }: Finding, isOfBoth = false): string {
  return isOfBoth ? words.finding.ofBoth[kind] : words.finding.ofOne[kind];
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
      return words.finding.within;
    case 'disagrees':
      return words.finding.outside;
    case 'cannot-tell': {
      const { comparison, reason } = finding;
      switch (reason.kind) {
        case 'camera-too-uncertain': {
          const why = tooWideWords(comparison.cameraExpanded, comparison.tolerance.value, source, unit);
          return areLidsFound ? words.finding.setLidMarks(why) : why;
        }
        case 'between':
          return words.finding.between(withUnit(roundedDown(reason.neededCameraExpanded), unit));
        case 'hand-too-uncertain':
          return words.finding.handUnsure(withUnit(formatNumber(reason.neededHandExpanded, 1), unit));
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
  return words.finding.tooWide[source](
    withUnit(formatNumber(doubt, decimals), unit),
    formatNumber(tolerance, decimals),
  );
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
      return words.lengthFailure.noLength;
    case 'beyond-limits':
      return words.lengthFailure.beyond(plainNumber(failure.lowestMm), plainNumber(failure.highestMm));
    default:
      return unreachable(failure);
  }
}

/** Why a measured length of the printed line cannot be used. */
export function printCheckSentence(failure: PrintCheckFailure | { readonly kind: 'not-a-number' }): string {
  switch (failure.kind) {
    case 'not-a-number':
    case 'not-a-length':
      return words.lengthFailure.print.noLength;
    case 'other-unit':
      return words.lengthFailure.print.otherUnit[failure.unit](plainNumber(failure.lengthMm));
    case 'beyond-limits':
      return words.lengthFailure.print.beyond(
        plainNumber(failure.measuredMm),
        plainNumber(failure.lowestMm),
        plainNumber(failure.highestMm),
      );
    default:
      return unreachable(failure);
  }
}
