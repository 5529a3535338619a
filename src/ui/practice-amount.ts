import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { MeasurementUnit } from '../core/catalogue/measurement.js';
import type { Gauge } from '../core/reading/gauge.js';
import { plainNumber } from './numbers.js';
import { exampleScale } from './practice-gauge-draft.js';
import { words } from './language.js';

const MINUS = '\u2212';

/** The unit as it is spoken. */
export function unitName(unit: MeasurementUnit): string {
  return words.practice.unitNames[unit];
}

/** How a scale reading becomes a value, such as `27 + 10 = 37`; the number alone where nothing is added or taken off. */
export function gaugeSum(scale: number, zeroOffset: number, bias: number): string {
  const parts = [...(zeroOffset === 0 ? [] : [signed(zeroOffset)]), ...(bias === 0 ? [] : [signed(-bias)])];
  if (parts.length === 0) return plainNumber(scale);
  return `${plainNumber(scale)} ${parts.join(' ')} = ${plainNumber(scale + zeroOffset - bias)}`;
}

/** One reading with the gauge: `the scale shows 27: 27 + 10 = 37 mm.` */
export function gaugeExample(gauge: Gauge, unit: MeasurementUnit, catalogue: Catalogue): string {
  const scale = exampleScale(gauge, catalogue);
  return words.practice.exampleSum(plainNumber(scale), gaugeSum(scale, gauge.zeroOffset, gauge.bias), unitName(unit));
}

function signed(value: number): string {
  return value < 0 ? `${MINUS} ${plainNumber(-value)}` : `+ ${plainNumber(value)}`;
}
