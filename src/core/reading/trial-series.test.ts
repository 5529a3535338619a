import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { resultOfTrials, type Trial, type Verdict } from './trial-series.js';

/** `10l 9f 8t` */
const series = (text: string): readonly Trial[] =>
  text.split(' ').map((part) => ({
    size: Number(part.slice(0, -1)),
    verdict: ({ l: 'loose', f: 'fits', t: 'tight' } as Record<string, Verdict>)[part.slice(-1)]!,
  }));

describe('what trials end at', () => {
  it.each([
    // as the issue has it
    ['10l 9f 8t', 9, 8.5, 9.5],
    // in any order
    ['8t 10l 9f', 9, 8.5, 9.5],
    // the nearest neighbours count
    ['12l 10l 9f 8t 6t', 9, 8.5, 9.5],
    // several fit: their middle
    ['11l 10f 9f 8t', 9.5, 8.5, 10.5],
    // one neighbour further away: the interval is wider there
    ['10l 9f 7t', 9, 8, 9.5],
    // a neighbour that nobody tried might have fitted as well
    ['9f', 9, 8, 10],
    ['9f 8t', 9, 8.5, 10],
    ['10l 9f', 9, 8, 9.5],
    // nothing fits: midway
    ['10l 9t', 9.5, 9, 10],
    ['12l 8t', 10, 8, 12],
    // tried twice, found the same
    ['10l 9f 9f 8t', 9, 8.5, 9.5],
  ])('%s', (text, value, low, high) => {
    expect(resultOfTrials(series(text), 1)).toMatchObject({ ok: true, value: { value, low, high } });
  });

  it.each([
    // half width over the root of 3 (JCGM 100:2008, 4.3.7)
    ['10l 9f 8t', 0.5 / Math.sqrt(3)],
    ['12l 8t', 2 / Math.sqrt(3)],
    // even chance on 8 to 9.5, seen from 9: mean square ((0.5)³ + 1³) / (3 x 1.5) = 0.25
    ['10l 9f 7t', 0.5],
  ])('%s leaves the doubt of an even chance', (text, standardUncertainty) => {
    const result = resultOfTrials(series(text), 1);
    expect(result.ok && Math.abs(result.value.standardUncertainty - standardUncertainty) < 1e-12).toBe(true);
  });

  it.each([
    ['8l 9t', '8l', '9t'],
    ['10l 9f 8l', '8l', '9f'],
    ['8t 9f 10t', '9f', '10t'],
    ['9l 9f', '9l', '9f'],
    ['10l 9f 8t 11f', '10l', '11f'],
  ])('%s contradicts itself', (text, smaller, larger) => {
    expect(resultOfTrials(series(text), 1)).toEqual({
      ok: false,
      failure: { kind: 'trials-contradict', smaller: series(smaller)[0], larger: series(larger)[0] },
    });
  });

  it.each([
    ['10l', 1, 'loose', 9],
    ['10l 11l', 1, 'loose', 9],
    ['8t 7t', 0.5, 'tight', 8.5],
    // a size is never nothing
    ['1l', 1, 'loose', 0.5],
  ])('%s in steps of %d is one-sided', (text, step, verdict, tryNext) => {
    expect(resultOfTrials(series(text), step)).toEqual({
      ok: false,
      failure: { kind: 'trials-one-sided', verdict, tryNext },
    });
  });

  it('refuses what is no series', () => {
    expect(() => resultOfTrials([], 1)).toThrow('at least one trial');
    expect(() => resultOfTrials(series('9f'), 0)).toThrow('above zero');
  });

  it('holds the true size of a wearer whose trials are told truly', () => {
    const cases = fc.record({
      truth: fc.double({ min: 4, max: 16, noNaN: true }),
      sizes: fc.uniqueArray(fc.integer({ min: 2, max: 18 }), { minLength: 1, maxLength: 8 }),
    });
    fc.assert(
      fc.property(cases, ({ truth, sizes }) => {
        const trials = sizes.map((size): Trial => {
          const verdict = Math.abs(size - truth) <= 0.5 ? 'fits' : size > truth ? 'loose' : 'tight';
          return { size, verdict };
        });
        const result = resultOfTrials(trials, 1);
        if (result.ok) {
          const { low, high, value } = result.value;
          expect(low).toBeLessThanOrEqual(truth + 1e-5);
          expect(high).toBeGreaterThanOrEqual(truth - 1e-5);
          expect(value >= low && value <= high).toBe(true);
        } else {
          expect(result.failure.kind).toBe('trials-one-sided');
        }
      }),
    );
  });
});
