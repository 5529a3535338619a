import * as oracle from 'simple-statistics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { median, medianAbsoluteDeviation, MODIFIED_Z_LIMIT, modifiedZScores } from './robust.js';

// Iglewicz and Hoaglin 1993, section 3.3: constant and limit seen in manuals that quote them; the numbers are plain arithmetic
describe('modified z-scores of readings', () => {
  it.each([
    { values: [63, 63.5, 62.5, 63, 64, 36], centre: 63, mad: 0.5, last: -36.423 },
    { values: [62, 63, 63, 64, 63, 66], centre: 63, mad: 0.5, last: 4.047 },
    // the MAD is 0: fallback on the mean absolute deviation (constant from memory)
    { values: [63, 63, 63, 63, 60], centre: 63, mad: 0, last: -3.989 },
  ])('flags the last of $values', ({ values, centre, mad, last }) => {
    expect(median(values)).toBe(centre);
    expect(medianAbsoluteDeviation(values)).toBe(mad);
    const scores = modifiedZScores(values);
    expect(Math.abs(scores.at(-1)! - last)).toBeLessThan(0.001);
    expect(scores.filter((score) => Math.abs(score) > MODIFIED_Z_LIMIT)).toHaveLength(1);
  });

  it('finds nothing where all readings are equal', () => {
    expect(modifiedZScores([63, 63, 63])).toEqual([0, 0, 0]);
  });

  it('agrees with simple-statistics on any list', () => {
    const lists = fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(lists, (values) => {
        expect(median(values)).toBeCloseTo(oracle.median(values), 9);
        expect(medianAbsoluteDeviation(values)).toBeCloseTo(oracle.medianAbsoluteDeviation(values), 9);
      }),
    );
  });
});
