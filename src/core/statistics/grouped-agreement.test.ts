import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import type { GroupedAgreement } from './grouped-agreement.js';
import { groupedLimitsOfAgreement } from './grouped-agreement.js';

function agreementOf(groups: readonly (readonly number[])[], k?: number): GroupedAgreement {
  const result = groupedLimitsOfAgreement(groups, k);
  if (!result.ok) throw new Error('too few groups');
  return result.value;
}

// Bland and Altman 1986, Lancet 327(8476):307-310: first readings of 17 people, large meter less mini meter.
const DIFFERENCES_OF_1986 = [-18, -35, -4, 6, -24, -43, 49, 62, -8, -12, -15, 30, 7, 1, -81, 73, -24];

describe('one difference in each group', () => {
  const alone = DIFFERENCES_OF_1986.map((difference) => [difference]);

  it('leaves the mean and limits of the paper of 1986', () => {
    const { count, groups, bias, standardDeviation, lowerLimit, upperLimit } = agreementOf(alone, 2);
    expect([count, groups]).toEqual([17, 17]);
    expect(bias.value).toBeCloseTo(-2.1176, 4);
    expect(standardDeviation).toBeCloseTo(38.7651, 4);
    expect(lowerLimit.value).toBeCloseTo(-79.648, 3);
    expect(upperLimit.value).toBeCloseTo(75.413, 3);
    // the paper: standard error 9.4, interval -22.0 to 17.8
    expect(bias.standardError).toBeCloseTo(9.402, 3);
    expect(bias.interval.low).toBeCloseTo(-22.05, 2);
    expect(bias.interval.high).toBeCloseTo(17.81, 2);
  });

  it('has the standard error of a limit of the paper of 1999', () => {
    // √(1/n + 1.96²/(2(n - 1))) s, and about 1.71 s/√n: Bland and Altman 1999, section 2.2
    const { upperLimit } = agreementOf(alone, 1.96);
    expect(upperLimit.standardError).toBeCloseTo(Math.sqrt(1 / 17 + 1.96 ** 2 / 32) * 38.7651, 3);
    expect(upperLimit.standardError / (38.7651 / Math.sqrt(17))).toBeCloseTo(1.74, 2);
  });
});

describe('several differences in a group', () => {
  it('share their scatter between and inside groups as an analysis of variance does', () => {
    // means 1, 3, 8 of pairs ±1: mean squares 26 between (2 degrees of freedom) and 2 inside (3), so 12 between and 14 in all
    const { count, groups, bias, standardDeviation } = agreementOf([
      [0, 2],
      [2, 4],
      [7, 9],
    ]);
    expect([count, groups]).toEqual([6, 3]);
    expect(bias.value).toBe(4);
    expect(standardDeviation).toBeCloseTo(Math.sqrt(14), 10);
    // that of the mean of the three groups' means: √(13 / 3)
    expect(bias.standardError).toBeCloseTo(Math.sqrt(13 / 3), 10);
    // t with 2 degrees of freedom is 4.303 (JCGM 100:2008, table G.2)
    expect(bias.interval.high).toBeCloseTo(4 + 4.3027 * Math.sqrt(13 / 3), 3);
  });

  it('are no surer of the mean than one of them where all of a group are equal', () => {
    const once = agreementOf([[1], [3], [8]]);
    const often = agreementOf([
      [1, 1, 1],
      [3, 3, 3],
      [8, 8, 8],
    ]);
    expect(often.bias.standardError).toBeCloseTo(once.bias.standardError, 10);
    expect(often.standardDeviation).toBeCloseTo(once.standardDeviation, 10);
    expect(often.lowerLimit.standardError).toBeCloseTo(once.lowerLimit.standardError, 10);
  });

  it('are as good as ungrouped where groups tell nothing apart', () => {
    const { standardDeviation, bias } = agreementOf([
      [-1, 1],
      [-2, 2],
    ]);
    expect(standardDeviation).toBeCloseTo(Math.sqrt(10 / 3), 10);
    expect(bias.standardError).toBeCloseTo(Math.sqrt(10 / 3 / 4), 10);
  });

  it('hold the true mean and the true limit in 95 of 100 cases', () => {
    const random = seededRandom(7);
    const trials = 600;
    let means = 0;
    let limits = 0;
    // between groups 0.8, inside 0.6: one in all
    const limit = 0.3 + 1.959964;
    for (let trial = 0; trial < trials; trial += 1) {
      const groups = Array.from({ length: 18 }, (_, place) => {
        const common = random.normal(0.3, 0.8);
        return Array.from({ length: place % 3 === 0 ? 1 : 2 }, () => common + random.normal(0, 0.6));
      });
      const { bias, upperLimit } = agreementOf(groups);
      if (bias.interval.low <= 0.3 && bias.interval.high >= 0.3) means += 1;
      if (upperLimit.interval.low <= limit && upperLimit.interval.high >= limit) limits += 1;
    }
    // three standard errors of a share of 0.95 among 600 are 0.027; the intervals of limits are known to be approximate
    expect(means / trials).toBeGreaterThan(0.92);
    expect(limits / trials).toBeGreaterThan(0.9);
    expect(Math.max(means, limits) / trials).toBeLessThan(0.985);
  });
});

it('wants two groups at least', () => {
  expect(groupedLimitsOfAgreement([[1, 2, 3]])).toEqual({
    ok: false,
    failure: { kind: 'too-few-pairs', got: 1, needed: 2 },
  });
  expect(() => groupedLimitsOfAgreement([[1], []])).toThrow('at least one difference');
});
