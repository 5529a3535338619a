import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gaugedValue } from './gauge.js';
import { summariseRepeats } from './repeats.js';

/** A PD rule: McMahon et al. 2012. */
const PD_RULE = { repeatability: 0.404, step: 0.5 };

const summary = (values: readonly number[], scatter = PD_RULE) =>
  summariseRepeats(
    values.map((value) => gaugedValue(value, null)),
    scatter,
  );

describe('repeats', () => {
  it('have mean, range and standard deviation', () => {
    // plain arithmetic
    const { mean, range, standardDeviation, values } = summary([63, 63.5, 62.5]);
    expect(mean).toBe(63);
    expect(range).toBe(1);
    expect(standardDeviation).toBeCloseTo(0.5, 12);
    expect(values.map((one) => one.scale)).toEqual([63, 63.5, 62.5]);
  });

  it('of one value know no scatter', () => {
    expect(summary([63])).toEqual({
      values: [{ scale: 63, value: 63 }],
      mean: 63,
      range: 0,
      standardDeviation: null,
      farOff: [],
      criticalRange: null,
      beyondRepeatability: false,
    });
  });

  it('refuses an empty list', () => {
    expect(() => summary([])).toThrow('at least one');
  });

  // Iglewicz and Hoaglin 1993, section 3.3: scores -36.4, 4.05; the third has a MAD of 0
  it.each([
    [[63, 63.5, 62.5, 63, 64, 36], [5]],
    [[62, 63, 63, 64, 63, 66], [5]],
    [[63, 63, 63, 63, 60], [4]],
  ])('point out what is far off in %j', (values, farOff) => {
    expect(summary(values).farOff).toEqual(farOff);
  });

  it.each([
    [[63, 36, 63], [1]],
    [[63, 63.5, 36], [2]],
    [[36, 63, 63, 63], [0]],
    [[63, 63, 65], [2]],
  ])('point out the odd one of few in %j, where equal values leave no MAD', (values, farOff) => {
    expect(summary(values).farOff).toEqual(farOff);
  });

  it.each([
    // one step of the scale
    [[63, 63, 63, 63.5]],
    [[63, 63, 63, 63, 63, 63.5]],
    // within what one reader's readings lie apart by chance
    [[63, 63, 63, 64]],
    // no two of them hold together
    [[60, 63, 66]],
    // two cannot tell which is wrong
    [[63, 36]],
    [[63, 63, 63]],
  ])('point out nothing in %j', (values) => {
    expect(summary(values).farOff).toEqual([]);
  });

  it('do not take a lucky pair on a fine scale for a measure of scatter', () => {
    // the score of 63.7 is 4.7, but two readings of this reader lie 0.7 mm apart on most days
    expect(summary([63, 63.1, 63.7], { repeatability: 0.404, step: 0.1 }).farOff).toEqual([]);
  });

  it('never point out more than the smaller part, nor anything within one step', () => {
    const lists = fc.array(fc.integer({ min: 100, max: 140 }), { minLength: 3, maxLength: 20 });
    fc.assert(
      fc.property(lists, (halves) => {
        const values = halves.map((half) => half / 2);
        const { farOff, mean } = summary(values);
        expect(farOff.length).toBeLessThan(values.length / 2);
        expect(mean).toBeGreaterThanOrEqual(Math.min(...values) - 1e-6);
        expect(mean).toBeLessThanOrEqual(Math.max(...values) + 1e-6);
      }),
    );
  });
});

describe('the repeatability limit', () => {
  it('asks for more where two readings lie further apart', () => {
    // ISO 5725, s_r 0.404 mm: r is 1.12 mm without a scale step, and 63 and 64.5 are too far apart
    const continuous = { repeatability: 0.404, step: 0 };
    expect(Math.abs(summary([63, 64.5], continuous).criticalRange! - 1.12)).toBeLessThan(0.001);
    expect(summary([63, 64.5]).beyondRepeatability).toBe(true);
    expect(summary([63, 64]).beyondRepeatability).toBe(false);
  });

  it('grows with the step of the scale', () => {
    // sqrt(0.404² + 1/12) is 0.4965 (s_r and step as in the facts of the PD rule), times 2.772
    expect(Math.abs(summary([63, 64], { repeatability: 0.404, step: 1 }).criticalRange! - 1.3763)).toBeLessThan(0.001);
  });

  it('grows with the number of readings', () => {
    // ISO 5725-6: 3.3 for three; 62.9 to 64.1 is too far for two but not for three
    const continuous = { repeatability: 0.404, step: 0 };
    expect(summary([62.9, 64.1], continuous).beyondRepeatability).toBe(true);
    expect(summary([62.9, 63.5, 64.1], continuous).beyondRepeatability).toBe(false);
  });
});
