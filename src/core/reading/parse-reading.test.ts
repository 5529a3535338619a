import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue, measurementOfReading, type Catalogue } from '../catalogue/catalogue.js';
import { READING_NAMES, type Measurement, type MeasurementId } from '../catalogue/measurement.js';
import type { Gauge } from './gauge.js';
import { MOST_REPEATS, parseDecimal, parseReading } from './parse-reading.js';
import { takeReading, type Reading } from './reading.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

/** The catalogue with some things of one measurement set, so that a sum does not hang on a table that may change. */
const catalogueWith = (id: MeasurementId, change: Partial<Measurement>): Catalogue =>
  catalogue.map((one) => (one.id === id ? { ...one, ...change } : one));

const spread = (standardDeviation: number) => ({ standardDeviation, source: 'test', status: 'chosen' }) as const;

const gauge: Gauge = {
  id: 'g',
  name: 'Gauge',
  serves: [],
  resolution: 0.5,
  zeroOffset: 10,
  bias: 0,
  checkedOn: null,
};

/** The reading, or an error that tells the failure. */
function read(typed: string, name: Reading['name'], used: Gauge | null = null, from: Catalogue = catalogue): Reading {
  const result = parseReading(typed, name, from, used);
  if (!result.ok) throw new Error(JSON.stringify(result.failure));
  return result.value;
}

const failureOf = (typed: string, name: Reading['name'], used: Gauge | null = null) => {
  const result = parseReading(typed, name, catalogue, used);
  return result.ok ? null : result.failure;
};

describe('parsing one number', () => {
  it.each([
    ['63.5', 63.5],
    ['63,5', 63.5],
    [' 63 ', 63],
    ['63.', 63],
    ['+63', 63],
    ['063', 63],
    ['63;', 63],
  ])('reads %j as %d', (typed, value) => {
    expect(read(typed, 'pdFar')).toMatchObject({ name: 'pdFar', value });
  });

  it.each(['', '   ', '\t'])('takes %j as not in yet', (typed) => {
    expect(failureOf(typed, 'pdFar')).toEqual({ kind: 'empty' });
  });

  it.each(['abc', '6e1', '1,063.5', '63.5.1', '63,5,', '--63', '.', '0x3f', 'Infinity', 'NaN', '９', ';', '63mm', '−'])(
    'refuses %j as no number',
    (typed) => {
      expect(failureOf(typed, 'pdFar')).toEqual({ kind: 'not-a-number', typed, place: null });
    },
  );

  it.each([
    ['0', 0],
    ['-63', -63],
    ['−63', -63],
  ])('refuses %j as not positive', (typed, value) => {
    expect(failureOf(typed, 'pdFar')).toEqual({ kind: 'not-positive', value, scale: value, place: null });
  });

  it.each([
    ['6.35', 6.35],
    ['635', 635],
    ['2.48', 2.48],
  ])('never converts %j', (typed, value) => {
    const range = measurementOfReading(catalogue, 'pdFar').plausible.hard;
    expect(failureOf(typed, 'pdFar')).toEqual({ kind: 'impossible', value, scale: value, range, place: null });
  });

  it('lets slips through that a face could show, so that they are questioned', () => {
    expect(read('36.5', 'pdFar').value).toBe(36.5);
    expect(read('31.5', 'pdFar').value).toBe(31.5);
  });

  it.each([
    ['-3', -3],
    ['−3,5', -3.5],
    ['0', 0],
    ['-0', 0],
    ['+2', 2],
  ])('reads %j where a value may lie below zero', (typed, value) => {
    expect(read(typed, 'crestHeightR').value).toBe(value);
  });

  it('keeps what was typed beside the value', () => {
    expect(read('63.5', 'pdFar').origin).toMatchObject({
      gauge: null,
      repeats: { values: [{ scale: 63.5, value: 63.5 }], mean: 63.5, standardDeviation: null },
      trials: null,
    });
  });

  it('gives back every decimal number that is written to half a millimetre', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.constantFrom('.', ','), (halves, point) => {
        const value = halves / 2;
        expect(parseDecimal(value.toFixed(1).replace('.', point))).toEqual({ ok: true, value });
      }),
    );
  });
});

describe('parsing with a gauge', () => {
  it('does the sum and keeps both numbers', () => {
    const { value, origin } = read('27', 'lengthOfDropR', gauge);
    expect(value).toBe(37);
    expect(origin?.gauge).toBe(gauge);
    expect(origin?.repeats?.values).toEqual([{ scale: 27, value: 37 }]);
  });

  it('judges limits after the sum', () => {
    const range = measurementOfReading(catalogue, 'pdFar').plausible.hard;
    // a scale that begins below zero is no reason to refuse
    expect(read('-3', 'pdFar', { ...gauge, zeroOffset: 66 }).value).toBe(63);
    expect(failureOf('85', 'pdFar', { ...gauge, zeroOffset: 20 })).toEqual({
      kind: 'impossible',
      value: 105,
      scale: 85,
      range,
      place: null,
    });
    expect(failureOf('5', 'pdFar', { ...gauge, zeroOffset: 0, bias: 6 })).toMatchObject({
      kind: 'not-positive',
      value: -1,
      scale: 5,
    });
  });

  it('takes the step of the gauge for the step of the scale', () => {
    // s_w 0.404 mm from McMahon et al. 2012, with a 1 mm step 0.4965
    const u = read('63', 'pdFar', { ...gauge, zeroOffset: 0, resolution: 1 }).standardUncertainty;
    expect(Math.abs(u - 0.4965)).toBeLessThan(0.0005);
  });
});

describe('parsing repeats', () => {
  it.each(['63 63.5 62.5', '63; 63,5; 62,5', ' 63;63.5 ;\t62.5 ', '63, 63,5 62.5'])('takes the mean of %j', (typed) => {
    const { value, origin } = read(typed, 'pdFar');
    expect(value).toBe(63);
    expect(origin?.repeats?.values.map((one) => one.scale)).toEqual([63, 63.5, 62.5]);
  });

  it.each([
    ['63 mm', { kind: 'not-a-number', typed: 'mm', place: 2 }],
    ['63 6e1 63', { kind: 'not-a-number', typed: '6e1', place: 2 }],
    // a comma is a decimal comma: it never parts two numbers
    ['63.5, 63', { kind: 'not-a-number', typed: '63.5,', place: 1 }],
    ['63,63.5', { kind: 'not-a-number', typed: '63,63.5', place: null }],
    ['63 63.5 -62', { kind: 'not-positive', value: -62, scale: -62, place: 3 }],
    ['630 63', { kind: 'impossible', value: 630, place: 1 }],
    ['63 loose', { kind: 'not-a-number', typed: 'loose', place: 2 }],
  ])('refuses %j for the one that is wrong', (typed, failure) => {
    expect(failureOf(typed, 'pdFar')).toMatchObject(failure);
  });

  it('takes as many as anybody reads, and no more', () => {
    const times = (count: number) => Array.from({ length: count }, () => '63').join(' ');
    expect(read(times(MOST_REPEATS), 'pdFar').origin?.repeats?.values).toHaveLength(20);
    expect(failureOf(times(21), 'pdFar')).toEqual({ kind: 'too-many-repeats', count: 21, limit: 20 });
  });

  it('doubts the mean less than one reading, but never below the step of the scale', () => {
    // u² = s_w²/n + q²/12 with s_w 0.404 and q 0.5
    expect(read('63', 'pdFar').standardUncertainty).toBeCloseTo(Math.sqrt(0.404 ** 2 + 0.5 ** 2 / 12), 12);
    expect(read('63 63.5 62.5 63', 'pdFar').standardUncertainty).toBeCloseTo(
      Math.sqrt(0.404 ** 2 / 4 + 0.5 ** 2 / 12),
      12,
    );
  });

  it('doubts repeats that scatter more than a trained reader does by their own scatter', () => {
    // 60, 63, 66: standard deviation 3, so u² = 9/3 + 0.25/12
    expect(read('60 63 66', 'pdFar').standardUncertainty).toBeCloseTo(Math.sqrt(3 + 0.25 / 12), 12);
    // 63 and 65: standard deviation is the root of 2, of the mean 1
    expect(read('63 65', 'pdFar').standardUncertainty).toBeCloseTo(Math.sqrt(1 + 0.25 / 12), 12);
  });

  it('points out what is far off and leaves it in the mean', () => {
    const { value, origin } = read('63 63 36', 'pdFar');
    expect(origin?.repeats).toMatchObject({ farOff: [2], beyondRepeatability: true });
    expect(value).toBe(54);
  });
});

describe('parsing trials', () => {
  it.each([
    '10 loose 9 fits 8 tight',
    '10 l 9 f 8 t',
    '10L; 9F; 8T',
    '10 Loose, 9 fits, 8 tight',
    '10l9f8t',
    '8,0 t 9 f 10 l',
  ])('takes %j', (typed) => {
    const { value, origin } = read(typed, 'apicalRadius');
    expect(value).toBe(9);
    expect(origin?.repeats).toBeNull();
    expect(origin?.trials).toMatchObject({ low: 8.5, high: 9.5 });
    expect(origin?.trials?.trials).toContainEqual({ size: 10, verdict: 'loose' });
  });

  it('takes one bare number', () => {
    expect(read('9', 'apicalRadius')).toMatchObject({ value: 9, origin: { trials: null, repeats: { mean: 9 } } });
  });

  it('joins the interval and the repeatability', () => {
    // half width 0.5 over the root of 3 (JCGM 100:2008, 4.3.7) with a repeatability of 0.4
    const known = catalogueWith('apicalRadius', { repeatability: spread(0.4) });
    expect(read('10 l 9 f 8 t', 'apicalRadius', null, known).standardUncertainty).toBeCloseTo(
      Math.sqrt(0.25 / 3 + 0.16),
      12,
    );
  });

  it('says what has to be tried in the sizes of the gauge', () => {
    const offset = { ...gauge, zeroOffset: 2, resolution: 1 };
    expect(failureOf('8 l 7 l', 'apicalRadius', offset)).toEqual({
      kind: 'trials-one-sided',
      verdict: 'loose',
      tryNext: 6,
    });
    expect(read('8 l 7 f 6 t', 'apicalRadius', offset)).toMatchObject({
      value: 9,
      origin: { trials: { low: 8.5, high: 9.5, trials: [{ size: 10 }, { size: 9 }, { size: 8 }] } },
    });
  });

  it.each([
    ['10 loose 9', { kind: 'not-a-trial', typed: '9', place: 2 }],
    ['10 9 8', { kind: 'not-a-trial', typed: '9', place: 1 }],
    ['10 loose 9 perfect', { kind: 'not-a-trial', typed: 'perfect', place: 2 }],
    ['loose 10', { kind: 'not-a-number', typed: 'loose', place: 1 }],
    ['10 l 0 f', { kind: 'not-positive', value: 0, scale: 0, place: 2 }],
    ['10 l 90 f', { kind: 'impossible', value: 90, place: 2 }],
    ['abc', { kind: 'not-a-number', typed: 'abc', place: null }],
    ['8 l 9 t', { kind: 'trials-contradict', smaller: { size: 8, verdict: 'loose' }, larger: { size: 9 } }],
    ['8 tight', { kind: 'trials-one-sided', verdict: 'tight' }],
  ])('refuses %j', (typed, failure) => {
    expect(failureOf(typed, 'apicalRadius')).toMatchObject(failure);
  });

  it('refuses too many', () => {
    const typed = Array.from({ length: 21 }, () => '9 f').join(' ');
    expect(failureOf(typed, 'apicalRadius')).toEqual({ kind: 'too-many-repeats', count: 21, limit: 20 });
  });
});

describe('any text', () => {
  const pieces = fc.array(
    fc.oneof(
      fc.constantFrom(
        ' ',
        ';',
        ',',
        '.',
        '-',
        '−',
        'l',
        'f',
        't',
        'loose',
        'fits',
        'tight',
        '10',
        '9',
        '63.5',
        '1e9',
        '٣',
      ),
      fc.string({ maxLength: 3 }),
      fc.integer({ min: -100, max: 300 }).map(String),
    ),
    { maxLength: 12 },
  );
  const gauges = fc.option(
    fc.record({
      ...Object.fromEntries(Object.entries(gauge).map(([key, value]) => [key, fc.constant(value)])),
      resolution: fc.double({ min: 0.01, max: 10, noNaN: true }),
      zeroOffset: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      bias: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    }),
  );

  it('never makes it throw, and readings are finite, doubtful and within what a face measures', () => {
    fc.assert(
      fc.property(pieces, fc.constantFrom(...READING_NAMES), gauges, (parts, name, used) => {
        const result = parseReading(parts.join(''), name, catalogue, used as Gauge | null);
        if (!result.ok) return;
        const { value, standardUncertainty } = result.value;
        const { low, high } = measurementOfReading(catalogue, name).plausible.hard;
        expect(value).toBeGreaterThanOrEqual(low - 1e-6);
        expect(value).toBeLessThanOrEqual(high + 1e-6);
        expect(Number.isFinite(standardUncertainty) && standardUncertainty > 0).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  it('keeps repeats as they were typed, whatever stands between them', () => {
    const halves = fc.array(fc.integer({ min: 100, max: 150 }), { minLength: 1, maxLength: MOST_REPEATS });
    fc.assert(
      fc.property(halves, fc.constantFrom(' ', '; ', ';', '\u00a0', '  '), (list, separator) => {
        const typed = list.map((half) => String(half / 2)).join(separator);
        expect(read(typed, 'pdFar').origin?.repeats?.values.map((one) => one.scale)).toEqual(
          list.map((half) => half / 2),
        );
      }),
    );
  });
});

describe('doubt of one trained reading', () => {
  it('joins repeatability and scale step', () => {
    // s_w 0.404 mm from McMahon et al. 2012; with a 1 mm step u is 0.4965 and U (k = 2) 0.9931, with half a millimetre less
    const halfStep = takeReading('pdFar', 63, catalogue).standardUncertainty;
    expect(Math.abs(halfStep - Math.sqrt(0.404 ** 2 + 0.5 ** 2 / 12))).toBeLessThan(1e-12);
    const coarse = catalogueWith('binocularPd', { resolution: 1 });
    expect(Math.abs(takeReading('pdFar', 63, coarse).standardUncertainty - 0.4965)).toBeLessThan(0.0005);
  });

  it('is that of the same number when it was typed', () => {
    expect(takeReading('pdFar', 63, catalogue).standardUncertainty).toBe(read('63', 'pdFar').standardUncertainty);
  });

  it('refuses a value that is not finite', () => {
    expect(() => takeReading('pdFar', Number.NaN, catalogue)).toThrow('finite');
  });
});
