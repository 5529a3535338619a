import type { MeasurementUnit } from '../core/catalogue/measurement.js';
import type { Estimate } from '../core/estimate/estimate.js';

const MINUS = '\u2212';
const NARROW_SPACE = '\u202f';

/** A number with fixed decimals and a true minus sign. */
export function formatNumber(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

/** A difference to a tenth with its sign; plus or minus nothing has none. */
export function formatDifference(difference: number): string {
  const text = formatNumber(difference, 1);
  return difference > 0 && Number(text) !== 0 ? `+${text}` : text;
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
  return formatNumber(value, 2).replace(/\.?0+$/, '');
}

/** The written number with its unit. */
export function withUnit(text: string, unit: MeasurementUnit): string {
  return unit === 'mm' ? `${text} mm` : `${text}°`;
}

/** To a tenth, as far as scales are read; for what is worked out, such as a mean. */
export function tenthNumber(value: number): string {
  return plainNumber(Math.round(10 * value) / 10);
}
