import type { MeasurementUnit } from '../core/catalogue/measurement.js';

const MINUS = '\u2212';

/** A number as short as it can be written, to at most three decimals, with a true minus sign. */
export function formatAmount(value: number): string {
  const text = String(Math.abs(Number(value.toFixed(3))));
  return value < 0 && text !== '0' ? MINUS + text : text;
}

/** The unit as it stands behind a number. */
export function unitSign(unit: MeasurementUnit): string {
  return unit === 'mm' ? 'mm' : '°';
}

/** The unit as it is spoken. */
export function unitName(unit: MeasurementUnit): string {
  return unit === 'mm' ? 'mm' : 'degrees';
}

/** An amount with its unit: degrees stand close to their number. */
export function withUnit(value: number, unit: MeasurementUnit): string {
  return unit === 'mm' ? `${formatAmount(value)} mm` : `${formatAmount(value)}°`;
}

/** How a scale reading becomes a value, such as `27 + 10 = 37`; the number alone where nothing is added or taken off. */
export function gaugeSum(scale: number, zeroOffset: number, bias: number): string {
  const parts = [...(zeroOffset === 0 ? [] : [signed(zeroOffset)]), ...(bias === 0 ? [] : [signed(-bias)])];
  if (parts.length === 0) return formatAmount(scale);
  return `${formatAmount(scale)} ${parts.join(' ')} = ${formatAmount(scale + zeroOffset - bias)}`;
}

function signed(value: number): string {
  return value < 0 ? `${MINUS} ${formatAmount(-value)}` : `+ ${formatAmount(value)}`;
}
