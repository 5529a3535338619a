import { describe, expect, it } from 'vitest';
import { gaugedValue } from './gauge.js';
import { readerAgreement, type ReadersPair } from './reader-agreement.js';
import type { Reading } from './reading.js';
import { summariseRepeats } from './repeats.js';

/** A reading of these repeats; the doubt plays no part here. */
const reading = (repeats: readonly number[]): Reading => {
  const summary = summariseRepeats(
    repeats.map((value) => gaugedValue(value, null)),
    { repeatability: 1, step: 1 },
  );
  return {
    name: 'headWidth',
    value: summary.mean,
    standardUncertainty: 1,
    origin: { gauge: null, repeats: summary, trials: null },
  };
};

// Bland and Altman 1986, as in statistics/agreement.test.ts: the large and the mini meter stand for two readers
const FIRST = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const FIRST_AGAIN = [490, 397, 512, 401, 470, 611, 415, 431, 638, 429, 420, 633, 275, 492, 165, 372, 421];
const SECOND = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];

const pairsOf = (first: readonly number[], second: readonly number[]): readonly ReadersPair[] =>
  first.map((value, i) => ({ first: reading([value]), second: reading([second[i]!]) }));

describe('two readers over one sheet', () => {
  it('differ as the data of 1986 do', () => {
    const result = readerAgreement(pairsOf(FIRST, SECOND));
    if (!result.ok) throw new Error('too few pairs');
    const { differences, repeatability } = result.value;
    expect(Math.abs(differences.bias.value - -2.1176)).toBeLessThan(0.0001);
    expect(Math.abs(differences.standardDeviation - 38.7651)).toBeLessThan(0.0001);
    // limits at 1.959964 standard deviations; the published ones are at 1.96
    expect(Math.abs(differences.lowerLimit.value - -78.097)).toBeLessThan(0.0025);
    expect(repeatability).toEqual({ first: null, second: null });
  });

  it('repeat themselves as well as their first two repeats show', () => {
    const pairs = FIRST.map((value, i) => ({
      first: reading([value, FIRST_AGAIN[i]!, 0]),
      second: reading([SECOND[i]!]),
    }));
    const result = readerAgreement(pairs);
    if (!result.ok) throw new Error('too few pairs');
    const { first, second } = result.value.repeatability;
    expect(Math.abs(first!.withinStandardDeviation - 15.307)).toBeLessThan(0.001);
    expect(second).toBeNull();
  });

  it('cannot be judged from one place, nor across places', () => {
    expect(readerAgreement(pairsOf([150], [151]))).toEqual({
      ok: false,
      failure: { kind: 'too-few-pairs', got: 1, needed: 2 },
    });
    const mixed = { first: reading([150]), second: { ...reading([63]), name: 'pdFar' as const } };
    expect(() => readerAgreement([mixed])).toThrow('one place');
  });
});
