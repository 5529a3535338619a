import { describe, expect, it } from 'vitest';
import { seededRandom } from '../support/seeded-random.js';
import { addTallies, calibrationBins, NO_TALLIES, tallyJudgements } from './calibration.js';

describe('calibration', () => {
  it('sorts judgements into tenths, both ends of the range included', () => {
    const bins = calibrationBins(
      tallyJudgements([
        { probability: 0, isTrue: false },
        { probability: 0.04, isTrue: true },
        { probability: 0.1, isTrue: false },
        { probability: 0.99, isTrue: true },
        { probability: 1, isTrue: true },
      ]),
    );
    expect(bins.map(({ observed: { hits, trials } }) => [hits, trials])).toEqual([
      [1, 2],
      [0, 1],
      ...Array.from({ length: 7 }, () => [0, 0]),
      [2, 2],
    ]);
    expect(bins[0]?.predicted).toBeCloseTo(0.02, 12);
    expect(bins[5]).toMatchObject({ from: 0.5, to: 0.6, predicted: null, observed: { share: null } });
  });

  it('finds what is said honestly within the interval about as often as 95 times in 100', () => {
    // by definition: events that happen with the probability that is said of them
    const { uniform } = seededRandom(3);
    let inside = 0;
    for (let round = 0; round < 40; round += 1) {
      const bins = calibrationBins(
        tallyJudgements(
          Array.from({ length: 2000 }, () => {
            const probability = uniform();
            return { probability, isTrue: uniform() < probability };
          }),
        ),
      );
      inside += bins.filter(
        ({ predicted, observed: { low, high } }) =>
          predicted !== null && low !== null && high !== null && low <= predicted && predicted <= high,
      ).length;
    }
    // 400 bins: 95 % of chance would be 371 to 388
    expect(inside).toBeGreaterThan(365);
    expect(inside).toBeLessThan(396);
  });

  it('adds what several workers counted', () => {
    const one = tallyJudgements([{ probability: 0.3, isTrue: true }]);
    const other = tallyJudgements([{ probability: 0.38, isTrue: false }]);
    expect(addTallies(addTallies(NO_TALLIES, one), other)[3]).toEqual({
      count: 2,
      probabilitySum: 0.3 + 0.38,
      trueCount: 1,
    });
  });
});
