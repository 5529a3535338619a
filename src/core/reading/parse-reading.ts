import type { Catalogue } from '../catalogue/catalogue.js';
import { measurementOfReading } from '../catalogue/catalogue.js';
import type { Range, ReadingName } from '../catalogue/measurement.js';
import type { Result } from '../result.js';
import { fail, succeed } from '../result.js';
import type { Reading } from './reading.js';
import { takeReading } from './reading.js';

/** Why what was typed is no reading. */
export type ReadingFailure =
  /** nothing was typed: the row is simply not in yet */
  | { readonly kind: 'empty' }
  /** not a plain decimal number: type digits with at most one point or comma */
  | { readonly kind: 'not-a-number'; readonly typed: string }
  /** zero or less: no face measures that */
  | { readonly kind: 'not-positive'; readonly value: number }
  /** outside of what any face measures; `likelySlips` may know what was meant */
  | { readonly kind: 'impossible'; readonly value: number; readonly range: Range };

/** Digits with at most one point or comma: no exponents, no units, no thousands separators that could be mistaken. */
const DECIMAL = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;

/**
 * The number that a person typed: `63.5`, `63,5` or ` 63 `. Nothing is converted or repaired: 6.35 stays 6.35, whatever was meant.
 * Fails as `empty` or `not-a-number`.
 */
export function parseDecimal(
  typed: string,
): Result<number, Extract<ReadingFailure, { kind: 'empty' | 'not-a-number' }>> {
  const trimmed = typed.trim().replace(/^−/, '-');
  if (trimmed === '') return fail({ kind: 'empty' });
  const value = DECIMAL.test(trimmed) ? Number(trimmed.replace(',', '.')) : Number.NaN;
  return Number.isFinite(value) ? succeed(value) : fail({ kind: 'not-a-number', typed });
}

/** The reading that a person typed into the place `name`, or why it is none. The number is never changed. */
export function parseReading(typed: string, name: ReadingName, catalogue: Catalogue): Result<Reading, ReadingFailure> {
  const parsed = parseDecimal(typed);
  if (!parsed.ok) return parsed;
  const value = parsed.value;
  if (value <= 0) return fail({ kind: 'not-positive', value });
  const range = measurementOfReading(catalogue, name).plausible.hard;
  if (value < range.low || value > range.high) return fail({ kind: 'impossible', value, range });
  return succeed(takeReading(name, value, catalogue));
}
