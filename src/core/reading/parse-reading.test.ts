import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue } from '../catalogue/catalogue.js';
import { parseDecimal, parseReading } from './parse-reading.js';
import { takeReading } from './reading.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

describe('parsing what was typed', () => {
  it.each([
    ['63.5', 63.5],
    ['63,5', 63.5],
    [' 63 ', 63],
    ['63.', 63],
    ['+63', 63],
    ['063', 63],
  ])('reads %j as %d', (typed, value) => {
    const result = parseReading(typed, 'pdFar', catalogue);
    expect(result).toMatchObject({ ok: true, value: { name: 'pdFar', value } });
  });

  it.each(['', '   ', '\t'])('takes %j as not in yet', (typed) => {
    expect(parseReading(typed, 'pdFar', catalogue)).toEqual({ ok: false, failure: { kind: 'empty' } });
  });

  it.each(['abc', '63 mm', '6e1', '1,063.5', '63.5.1', '63,5,', '--63', '.', '0x3f', 'Infinity', 'NaN', '6 3', '９'])(
    'refuses %j as no number',
    (typed) => {
      expect(parseReading(typed, 'pdFar', catalogue)).toEqual({ ok: false, failure: { kind: 'not-a-number', typed } });
    },
  );

  it.each([
    ['0', 0],
    ['-63', -63],
    ['−63', -63],
  ])('refuses %j as not positive', (typed, value) => {
    expect(parseReading(typed, 'pdFar', catalogue)).toEqual({ ok: false, failure: { kind: 'not-positive', value } });
  });

  it.each([
    ['6.35', 6.35],
    ['635', 635],
    ['2.48', 2.48],
  ])('never converts %j', (typed, value) => {
    expect(parseReading(typed, 'pdFar', catalogue)).toEqual({
      ok: false,
      failure: { kind: 'impossible', value, range: { low: 30, high: 90 } },
    });
  });

  it('lets slips through that a face could show, so that they are questioned', () => {
    expect(parseReading('36.5', 'pdFar', catalogue).ok).toBe(true);
    expect(parseReading('31.5', 'pdFar', catalogue).ok).toBe(true);
  });

  it('gives back every decimal number that is written to half a millimetre', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.constantFrom('.', ','), (halves, point) => {
        const value = halves / 2;
        expect(parseDecimal(value.toFixed(1).replace('.', point))).toEqual({ ok: true, value });
      }),
    );
  });

  it('never throws and never gives a number that is not finite', () => {
    fc.assert(
      fc.property(fc.string(), (typed) => {
        const result = parseReading(typed, 'headWidth', catalogue);
        if (result.ok) expect(Number.isFinite(result.value.value)).toBe(true);
      }),
    );
  });
});

describe('doubt of one trained reading', () => {
  it('joins repeatability and scale step', () => {
    // s_w 0.404 mm from McMahon et al. 2012; with a 1 mm step u is 0.4965 and U (k = 2) 0.9931, with half a millimetre less
    const halfStep = takeReading('pdFar', 63, catalogue).standardUncertainty;
    expect(Math.abs(halfStep - Math.sqrt(0.404 ** 2 + 0.5 ** 2 / 12))).toBeLessThan(1e-12);
    const coarse = catalogue.map((one) => (one.id === 'binocularPd' ? { ...one, resolution: 1 } : one));
    expect(Math.abs(takeReading('pdFar', 63, coarse).standardUncertainty - 0.4965)).toBeLessThan(0.0005);
  });

  it('refuses a value that is not finite', () => {
    expect(() => takeReading('pdFar', Number.NaN, catalogue)).toThrow('finite');
  });
});
