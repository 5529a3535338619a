import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Tolerance } from '../catalogue/measurement.js';
import { compareReaders } from './compare-readers.js';
import type { Reading } from './reading.js';

const tolerance: Tolerance = { value: 1, source: 'test', status: 'chosen' };

const reading = (value: number, standardUncertainty: number): Reading => ({
  name: 'pdFar',
  value,
  standardUncertainty,
  origin: null,
});

describe('two readers at one place', () => {
  // 95 % doubts are 1.96 u: for 0.25 each E_n reaches 1 at 1.96 x 0.3536 = 0.693, for 0.5 at 1.386, for 0.1 at 0.277
  it.each([
    { second: 63.5, u: 0.5, agree: true, why: 'within tolerance and doubts' },
    { second: 64, u: 0.1, agree: true, why: 'just within the tolerance, however sure' },
    { second: 64.3, u: 0.5, agree: true, why: 'beyond the tolerance, explained by the doubts' },
    { second: 64.5, u: 0.5, agree: false, why: 'beyond the tolerance and the doubts' },
    { second: 64.1, u: 0.25, agree: false, why: 'beyond both, if by little' },
  ])('63 and $second, each ± $u: $why', ({ second, u, agree }) => {
    expect(compareReaders(reading(63, u), reading(second, u), tolerance).agree).toBe(agree);
    expect(compareReaders(reading(second, u), reading(63, u), tolerance).agree).toBe(agree);
  });

  it('is not misled by binary dust at the tolerance', () => {
    // 64.1 - 63.1 is 0.9999999999999929 and 63.3 - 62.3 is 1.0000000000000071 in binary
    for (const base of [62.1, 62.3, 63.1, 64.7]) {
      expect(compareReaders(reading(base, 0.1), reading(base + 1, 0.1), tolerance).agree).toBe(true);
    }
  });

  it('joins both with the inverse of their variances', () => {
    // standard result, plain arithmetic: 62.8 ± 0.4472, Birge ratio 0.8944, so the inner doubt is the larger
    const { together } = compareReaders(reading(63, 0.5), reading(62, 1), tolerance);
    expect(together.name).toBe('pdFar');
    expect(Math.abs(together.value - 62.8)).toBeLessThan(1e-9);
    expect(Math.abs(together.standardUncertainty - 0.4472)).toBeLessThan(0.0001);
  });

  it('doubts the mean by what the readers show, where that is more', () => {
    // two equal doubts: the outer uncertainty of a mean of two is half of their distance, here 0.5 against an inner 0.424
    const { together } = compareReaders(reading(63, 0.6), reading(64, 0.6), tolerance);
    expect(together.value).toBe(63.5);
    expect(Math.abs(together.standardUncertainty - 0.5)).toBeLessThan(1e-12);
  });

  it('never doubts the mean more than the worse of the two alone', () => {
    // half of their distance would be 0.5
    expect(compareReaders(reading(63, 0.1), reading(64, 0.1), tolerance).together.standardUncertainty).toBe(0.1);
    expect(compareReaders(reading(66, 0.7), reading(68, 0.6), tolerance).together.standardUncertainty).toBe(0.7);
  });

  it('does not depend on the order', () => {
    const some = fc.record({
      value: fc.double({ min: 50, max: 75, noNaN: true }),
      u: fc.double({ min: 0.05, max: 3, noNaN: true }),
    });
    fc.assert(
      fc.property(some, some, (a, b) => {
        const there = compareReaders(reading(a.value, a.u), reading(b.value, b.u), tolerance);
        const back = compareReaders(reading(b.value, b.u), reading(a.value, a.u), tolerance);
        expect(back.agree).toBe(there.agree);
        expect(back.together.value).toBeCloseTo(there.together.value, 6);
        expect(back.together.standardUncertainty).toBeCloseTo(there.together.standardUncertainty, 9);
      }),
    );
  });

  it('refuses readings of different places', () => {
    expect(() => compareReaders(reading(63, 1), { ...reading(63, 1), name: 'headWidth' }, tolerance)).toThrow(
      'one place',
    );
  });
});
