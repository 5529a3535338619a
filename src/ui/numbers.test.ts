import { afterEach, describe, expect, it } from 'vitest';
import { parseDecimal } from '../core/reading/parse-reading.js';
import { succeed } from '../core/result.js';
import { AVAILABLE_LANGUAGES } from './available-languages.js';
import { ENGLISH_TAG } from './language.js';
import {
  fieldNumber,
  formatDifference,
  formatEstimate,
  formatNumber,
  formatPercent,
  plainNumber,
  tenthNumber,
  withUnit,
  writeNumbersLike,
} from './numbers.js';

describe('numbers', () => {
  it('have a true minus sign, and none for nothing', () => {
    expect(formatNumber(-1.26, 1)).toBe('\u22121.3');
    expect(formatNumber(-0.04, 1)).toBe('0.0');
  });

  it('of differences carry their sign', () => {
    expect(formatDifference(2.84)).toBe('+2.8');
    expect(formatDifference(-2.84)).toBe('\u22122.8');
    expect(formatDifference(0.04)).toBe('0.0');
  });

  it('of estimates show half the width of the 95 % interval', () => {
    const estimate = { value: 62.43, standardUncertainty: 0.5, low: 61.4, high: 63.4, unit: 'mm', budget: [] } as const;
    expect(formatEstimate(estimate)).toBe('62.4\u202f±\u202f1.0');
  });
});

describe('numbers in sentences', () => {
  it.each([
    [63, '63'],
    [63.5, '63.5'],
    [60, '60'],
    [5.95, '5.95'],
    [-3, '\u22123'],
    [100, '100'],
  ])('have no more decimals than %s has', (value, said) => {
    expect(plainNumber(value)).toBe(said);
  });

  it.each([
    [35.8333, '35.8'],
    [36.04, '36'],
    [-0.04, '0'],
  ])('that are worked out stop at a tenth: %s', (value, said) => {
    expect(tenthNumber(value)).toBe(said);
  });

  it('carry their unit', () => {
    expect(withUnit('63.5', 'mm')).toBe('63.5 mm');
    expect(withUnit('12', 'deg')).toBe('12°');
  });
});

describe('numbers in other languages', () => {
  afterEach(() => {
    writeNumbersLike(ENGLISH_TAG);
  });

  // Unicode CLDR: de and fr part decimals by a comma, and the sign of per cent by a gap of their own; tr puts it in front
  it('have the decimal sign of the language', () => {
    for (const tag of ['de', 'fr']) {
      writeNumbersLike(tag);
      expect(formatNumber(-1.26, 1)).toBe('\u22121,3');
      expect(formatNumber(-0.04, 1)).toBe('0,0');
      expect(formatDifference(2.84)).toBe('+2,8');
      expect(formatDifference(0.04)).toBe('0,0');
      expect([plainNumber(63.5), plainNumber(60), plainNumber(5.95)]).toEqual(['63,5', '60', '5,95']);
      // a gap that does not break; which one in French depends on the edition
      expect(formatPercent(50.4, 1)).toMatch(/^50,4[\u00a0\u202f]%$/);
    }
    writeNumbersLike('tr');
    expect(formatPercent(50.4, 1)).toBe('%50,4');
  });

  it('are read again as the same number from a field, in every language', () => {
    for (const tag of ['de', 'fr', 'ar', ...AVAILABLE_LANGUAGES.map((language) => language.tag)]) {
      writeNumbersLike(tag);
      for (const value of [63, 63.5, -2.5, 0.125, 0]) expect(parseDecimal(fieldNumber(value))).toEqual(succeed(value));
      // with comma or point alike
      expect(parseDecimal('63,5')).toEqual(parseDecimal('63.5'));
    }
  });
});
