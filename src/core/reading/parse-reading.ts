import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { Measurement, Range, ReadingName } from '../catalogue/measurement.js';
import type { Result } from '../result.js';
import { fail, succeed } from '../result.js';
import { freeOfDust } from '../statistics/free-of-dust.js';
import { addedByGauge, gaugedValue, type Gauge, type GaugedValue } from './gauge.js';
import { readingOfRepeats, readingOfTrials, type Reading } from './reading.js';
import { resultOfTrials, VERDICTS, type Trial, type TrialFailure, type TrialResult } from './trial-series.js';

/** Why a text is no number. */
export type NumberFailure =
  /** nothing was typed: the row is simply not in yet */
  | { readonly kind: 'empty' }
  /** not a plain decimal number: type digits with at most one point or comma */
  | { readonly kind: 'not-a-number'; readonly typed: string };

/** Which of several numbers or trials in one place, counted from 1; null where only one was typed. */
export interface InSeries {
  readonly place: number | null;
}

/** Why what was typed is no reading. One bad number in a series spoils the whole: which one was meant is not guessed. */
export type ReadingFailure =
  | Extract<NumberFailure, { kind: 'empty' }>
  /** `typed` is the part that is no number */
  | (Extract<NumberFailure, { kind: 'not-a-number' }> & InSeries)
  /** zero or less after the gauge's sum, where no face measures that; `scale` is what was typed */
  | ({ readonly kind: 'not-positive'; readonly value: number; readonly scale: number } & InSeries)
  /** after the gauge's sum outside of what any face measures; the reconciliation may know what was meant */
  | ({ readonly kind: 'impossible'; readonly value: number; readonly scale: number; readonly range: Range } & InSeries)
  /** a size without a verdict, or a word that is none: write each size with loose, fits or tight behind it */
  | ({ readonly kind: 'not-a-trial'; readonly typed: string } & InSeries)
  /** so many are a slip of the keyboard rather than patience */
  | { readonly kind: 'too-many-repeats'; readonly count: number; readonly limit: number }
  /** sizes as typed, before the gauge's sum */
  | TrialFailure;

/** Chosen: nobody reads one thing more often with a wearer waiting. */
export const MOST_REPEATS = 20;

/** What may part whole and broken digits of a number that is typed; both are read alike, whatever the language. */
export type DecimalSign = '.' | ',';

/** Digits with at most one point or comma: no exponents, no units, no thousands separators that could be mistaken. */
const DECIMAL = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;

/** What stands between the spaces and semicolons of a series; a comma is always a decimal comma. */
export function partsOfSeries(typed: string): readonly string[] {
  return typed.split(/[\s;]+/).filter((part) => part !== '');
}

/**
 * The number that a person typed: `63.5`, `63,5` or ` 63 `. Nothing is converted or repaired: 6.35 stays 6.35, whatever was meant.
 * Fails as `empty` or `not-a-number`.
 */
export function parseDecimal(typed: string): Result<number, NumberFailure> {
  const trimmed = typed.trim().replace(/^−/, '-');
  if (trimmed === '') return fail({ kind: 'empty' });
  const value = DECIMAL.test(trimmed) ? Number(trimmed.replace(',', '.')) : Number.NaN;
  return Number.isFinite(value) ? succeed(value) : fail({ kind: 'not-a-number', typed });
}

/**
 * The reading that a person typed into the place `name`, or why it is none. One number, or several repeats with spaces or
 * semicolons between them; where sizes are tried, also a series such as `10 loose 9 fits 8 tight` (first letters do). Numbers
 * are what the scale of `gauge` shows (null: a plain rule); the gauge's sum is the only thing that is ever done to them, and
 * limits are judged after it.
 */
export function parseReading(
  typed: string,
  name: ReadingName,
  catalogue: Catalogue,
  gauge: Gauge | null = null,
): Result<Reading, ReadingFailure> {
  const measurement = measurementOfReading(catalogue, name);
  if (typed.trim() === '') return fail({ kind: 'empty' });
  if (measurement.takenBy === 'trial') {
    const words = wordsOfTrials(typed);
    if (words.length > 1) {
      const trials = parseTrials(words, measurement, gauge);
      return trials.ok ? succeed(readingOfTrials(name, trials.value, catalogue, gauge)) : trials;
    }
  }
  const values = parseRepeats(typed, measurement, gauge);
  return values.ok ? succeed(readingOfRepeats(name, values.value, catalogue, gauge)) : values;
}

function parseRepeats(
  typed: string,
  measurement: Measurement,
  gauge: Gauge | null,
): Result<readonly GaugedValue[], ReadingFailure> {
  const parts = partsOfSeries(typed);
  if (parts.length === 0) return fail({ kind: 'not-a-number', typed, place: null });
  if (parts.length > MOST_REPEATS) return fail({ kind: 'too-many-repeats', count: parts.length, limit: MOST_REPEATS });
  const values: GaugedValue[] = [];
  for (const [i, part] of parts.entries()) {
    const value = parseScale(part, parts.length > 1 ? i + 1 : null, measurement, gauge);
    if (!value.ok) return value;
    values.push(value.value);
  }
  return succeed(values);
}

/** One scale reading, with the gauge's sum done, within what a face measures. */
function parseScale(
  part: string,
  place: number | null,
  measurement: Measurement,
  gauge: Gauge | null,
): Result<GaugedValue, ReadingFailure> {
  const parsed = parseDecimal(part);
  if (!parsed.ok) return fail({ kind: 'not-a-number', typed: part, place });
  return withinLimits(gaugedValue(parsed.value, gauge), place, measurement);
}

/** The number where a face can measure it after the gauge's sum; `place` as in `InSeries`. */
export function withinLimits(
  gauged: GaugedValue,
  place: number | null,
  { isSigned, plausible }: Measurement,
): Result<GaugedValue, Extract<ReadingFailure, { kind: 'not-positive' | 'impossible' }>> {
  const { scale, value } = gauged;
  if (!isSigned && value <= 0) return fail({ kind: 'not-positive', value, scale, place });
  const range = plausible.hard;
  if (value < range.low || value > range.high) return fail({ kind: 'impossible', value, scale, range, place });
  return succeed(gauged);
}

/** Sizes and verdicts in turn; `10l9f` is four words, and a comma behind a word only ends it. */
function wordsOfTrials(typed: string): readonly string[] {
  return partsOfSeries(typed.replace(/(\d[.,]?)(?=\p{L})|(\p{L})(?=\d)/gu, '$& ')).map((word) =>
    word.replace(/(\p{L}),$/u, '$1'),
  );
}

function parseTrials(
  words: readonly string[],
  measurement: Measurement,
  gauge: Gauge | null,
): Result<TrialResult, ReadingFailure> {
  const count = Math.ceil(words.length / 2);
  if (count > MOST_REPEATS) return fail({ kind: 'too-many-repeats', count, limit: MOST_REPEATS });
  const trials: Trial[] = [];
  for (let i = 0; i < words.length; i += 2) {
    const [size = '', word = size] = words.slice(i, i + 2);
    const place = i / 2 + 1;
    const gauged = parseScale(size, place, measurement, gauge);
    if (!gauged.ok) return gauged;
    const verdict = VERDICTS.find((one) => one.startsWith(word.toLowerCase()));
    if (verdict === undefined) return fail({ kind: 'not-a-trial', typed: word, place });
    trials.push({ size: gauged.value.scale, verdict });
  }
  // in the gauge's own sizes, so that what is wrong or has to be tried next is said in the numbers that stand on it
  const result = resultOfTrials(trials, gauge?.resolution ?? measurement.resolution);
  return result.ok ? succeed(afterGauge(result.value, gauge)) : result;
}

function afterGauge(result: TrialResult, gauge: Gauge | null): TrialResult {
  const add = addedByGauge(gauge);
  return {
    trials: result.trials.map(({ size, verdict }) => ({ size: freeOfDust(size + add), verdict })),
    value: freeOfDust(result.value + add),
    low: freeOfDust(result.low + add),
    high: freeOfDust(result.high + add),
    standardUncertainty: result.standardUncertainty,
  };
}
