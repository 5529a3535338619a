import type { MeasurementUnit } from '../core/catalogue/measurement.js';
import type { DecimalSign } from '../core/reading/parse-reading.js';
import type { Estimate } from '../core/estimate/estimate.js';

const MINUS = '\u2212';
const NARROW_SPACE = '\u202f';

/** How numbers are written in the language of this moment. */
let decimalSign = '.';
let isPercentInFront = false;
/** Between a number and the sign of per cent. */
let percentSpace = ' ';
/** A point or a comma stands between thousands, or a space. */
let counts = new Intl.NumberFormat('en-GB');

/** From now on numbers are written as in the language of this BCP-47 tag. */
export function writeNumbersLike(tag: string): void {
  const parts = new Intl.NumberFormat(tag, { style: 'percent', minimumFractionDigits: 1 }).formatToParts(0.5);
  decimalSign = parts.find(({ type }) => type === 'decimal')?.value ?? '.';
  isPercentInFront = parts[0]?.type === 'percentSign';
  // English, which would have none, is written with a space here.
  percentSpace = parts.find(({ type }) => type === 'literal')?.value ?? ' ';
  counts = new Intl.NumberFormat(tag);
}

/** How many of something, with the thousands parted as the language does: `100,000`. */
export function formatCount(count: number): string {
  return counts.format(count);
}

/** A number with fixed decimals, the decimal sign of the language and a true minus sign. */
export function formatNumber(value: number, decimals: number): string {
  const digits = Math.abs(value).toFixed(decimals);
  const text = digits.replace('.', decimalSign);
  return value < 0 && Number(digits) !== 0 ? MINUS + text : text;
}

/** Such as `50.4 %`: the value is in per cent already. */
export function formatPercent(percent: number, decimals: number): string {
  const text = formatNumber(percent, decimals);
  return isPercentInFront ? `%${text}` : `${text}${percentSpace}%`;
}

/**
 * A number as the program writes it into a field that a person types in: all its decimals, the language's decimal sign, and a minus
 * from the keyboard. Whatever the language, it is read again as the same number.
 */
export function fieldNumber(value: number): string {
  return String(value).replace('.', fieldDecimalSign());
}

/** The decimal sign of the language, as far as it is one that can be typed. */
export function fieldDecimalSign(): DecimalSign {
  return decimalSign === ',' ? ',' : '.';
}

/** A difference to a tenth with its sign; plus or minus nothing has none. */
export function formatDifference(difference: number): string {
  const text = formatNumber(difference, 1);
  return difference > 0 && hasDigitsBesidesZero(text) ? `+${text}` : text;
}

/** Whether a written number is anything but nothing. */
export function hasDigitsBesidesZero(text: string): boolean {
  return /[1-9]/.test(text);
}

/** Half the width of the 95 % interval, in the unit of the estimate. */
function halfWidth(estimate: Estimate): number {
  return (estimate.high - estimate.low) / 2;
}

/** Value and half width of the 95 % interval, such as `62.4 ± 1.0`. */
export function formatEstimate(estimate: Estimate, decimals = 1): string {
  return `${formatNumber(estimate.value, decimals)}${NARROW_SPACE}±${NARROW_SPACE}${formatNumber(halfWidth(estimate), decimals)}`;
}

/** A number as it would be written by hand: no more decimals than it has, two at most. */
export function plainNumber(value: number): string {
  return formatNumber(value, 2).replace(/\D?0+$/, '');
}

/** The written number with its unit. */
export function withUnit(text: string, unit: MeasurementUnit): string {
  return unit === 'mm' ? `${text} mm` : `${text}°`;
}

/** The unit as it stands beside a number or a field. */
export function unitSign(unit: MeasurementUnit): string {
  return unit === 'mm' ? 'mm' : '°';
}

/** To a tenth, as far as scales are read; for what is worked out, such as a mean. */
export function tenthNumber(value: number): string {
  return plainNumber(Math.round(10 * value) / 10);
}
