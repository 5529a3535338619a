import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limitsOfAgreement, pairedRepeatability, type Agreement } from './agreement.js';
import { mean, standardDeviation } from './moments.js';

// Bland and Altman 1986, Lancet 327(8476):307-310: peak expiratory flow of 17 people, litres per minute, two meters, read twice.
// Data as seen in a public repository that cites them.
const LARGE_METER = {
  first: [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427],
  second: [490, 397, 512, 401, 470, 611, 415, 431, 638, 429, 420, 633, 275, 492, 165, 372, 421],
};
const MINI_METER = {
  first: [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451],
  second: [525, 415, 508, 444, 500, 625, 460, 390, 642, 432, 420, 605, 227, 467, 268, 370, 443],
};
const DIFFERENCES = LARGE_METER.first.map((value, i) => value - MINI_METER.first[i]!);

function agreementOf(differences: readonly number[], k?: number): Agreement {
  const result = limitsOfAgreement(differences, k);
  if (!result.ok) throw new Error('too few pairs');
  return result.value;
}

describe('limits of agreement on the data of 1986', () => {
  it('have the bias and limits of the paper', () => {
    const { count, bias, standardDeviation: sd, lowerLimit, upperLimit } = agreementOf(DIFFERENCES, 2);
    expect(count).toBe(17);
    expect(Math.abs(bias.value - -2.1176)).toBeLessThan(0.0001);
    expect(Math.abs(sd - 38.7651)).toBeLessThan(0.0001);
    // the paper rounds mean and standard deviation first and prints -79.7 and 75.5 (from memory)
    expect(Math.abs(lowerLimit.value - -79.648)).toBeLessThan(0.001);
    expect(Math.abs(upperLimit.value - 75.413)).toBeLessThan(0.001);
  });

  it('lie at 1.96 standard deviations where nothing else is asked for', () => {
    // 1.959964 instead of 1.96 moves a limit by 0.0014
    const { lowerLimit, upperLimit } = agreementOf(DIFFERENCES);
    expect(Math.abs(lowerLimit.value - -78.097)).toBeLessThan(0.0025);
    expect(Math.abs(upperLimit.value - 73.862)).toBeLessThan(0.0025);
  });

  it('carry the standard errors and intervals of the paper', () => {
    const { bias, lowerLimit, upperLimit } = agreementOf(DIFFERENCES, 2);
    expect(Math.abs(bias.standardError - 9.402)).toBeLessThan(0.001);
    expect(Math.abs(lowerLimit.standardError - 16.285)).toBeLessThan(0.001);
    expect(upperLimit.standardError).toBe(lowerLimit.standardError);
    expect(Math.abs(bias.interval.low - -22.05)).toBeLessThan(0.01);
    expect(Math.abs(bias.interval.high - 17.81)).toBeLessThan(0.01);
    // t with 16 degrees of freedom is 2.120 (JCGM 100:2008, table G.2): -79.648 ± 2.120 x 16.285
    expect(Math.abs(lowerLimit.interval.low - -114.172)).toBeLessThan(0.01);
    expect(Math.abs(lowerLimit.interval.high - -45.124)).toBeLessThan(0.01);
    expect(Math.abs(upperLimit.interval.high - 109.937)).toBeLessThan(0.01);
  });

  it('leave the repeatability of each meter as the paper has it', () => {
    const pairs = ({ first, second }: typeof LARGE_METER) => first.map((value, i) => [value, second[i]!] as const);
    const large = pairedRepeatability(pairs(LARGE_METER), 2);
    const mini = pairedRepeatability(pairs(MINI_METER), 2);
    expect(Math.abs(large.coefficient - 43.294)).toBeLessThan(0.001);
    expect(Math.abs(large.withinStandardDeviation - 15.307)).toBeLessThan(0.001);
    expect(Math.abs(mini.coefficient - 56.316)).toBeLessThan(0.001);
    expect(Math.abs(mini.withinStandardDeviation - 19.911)).toBeLessThan(0.001);
    expect(large.count).toBe(17);
  });
});

it('has the limits that Carkeet states for ten pairs', () => {
  // Carkeet 2020, Optom Vis Sci 97(1):3-8: mean -0.08, standard deviation 0.73, limits -1.511 and 1.351
  const shape = [-1, -1, 1, 1, -2, 2, 0.5, -0.5, 3, -3];
  const scale = 0.73 / standardDeviation(shape);
  const differences = shape.map((value) => -0.08 + scale * (value - mean(shape)));
  const { lowerLimit, upperLimit } = agreementOf(differences, 1.96);
  expect(Math.abs(lowerLimit.value - -1.511)).toBeLessThan(0.001);
  expect(Math.abs(upperLimit.value - 1.351)).toBeLessThan(0.001);
});

it('turns round with the order of the two', () => {
  const lists = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 2, maxLength: 12 });
  fc.assert(
    fc.property(lists, (differences) => {
      const there = agreementOf(differences);
      const back = agreementOf(differences.map((one) => -one));
      expect(back.bias.value).toBeCloseTo(-there.bias.value, 9);
      expect(back.lowerLimit.interval.low).toBeCloseTo(-there.upperLimit.interval.high, 6);
    }),
  );
});

it('wants two pairs at least', () => {
  expect(limitsOfAgreement([1.5])).toEqual({ ok: false, failure: { kind: 'too-few-pairs', got: 1, needed: 2 } });
  expect(() => pairedRepeatability([])).toThrow('one pair');
});
