import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import { likeliestBreak, SHORTEST_STRETCH, type EyesBesideCard } from './card-slip.js';

/** Frames of a head that does not turn, by their x. */
const still = (xs: readonly number[], ys: readonly number[] = xs.map(() => 0)): EyesBesideCard[] =>
  xs.map((xMm, i) => ({ xMm, yMm: ys[i]!, yawRad: 0, pitchRad: 0 }));

describe('likeliestBreak', () => {
  it('tells nothing from fewer than two of the shortest stretches', () => {
    expect(likeliestBreak([])).toBeNull();
    expect(likeliestBreak(still([0, 0, 0, 0, 5, 5, 5]))).toBeNull();
    expect(likeliestBreak(still([0, 0, 0, 0, 5, 5, 5, 5]))).toMatchObject({ at: 4 });
  });

  it('compares the scatter with and without a step: F in closed form', () => {
    // A step of 1 in the middle of eight with 0.1 up and down: squares 2 + 8 e^2 without it, 8 e^2 with it. Two more
    // coefficients, 2 (8 - 4) degrees of freedom left: F = (2 / 2) / (8 e^2 / 8) = 1 / e^2.
    const e = 0.1;
    const found = likeliestBreak(still([e, -e, e, -e, 1 + e, 1 - e, 1 + e, 1 - e]))!;
    expect(found.at).toBe(4);
    expect(found.stepMm).toBeCloseTo(1, 5);
    expect(found.fRatio).toBeCloseTo(100, 2);
  });

  it('measures the step across both directions', () => {
    const noise = [0.02, -0.01, 0.01, -0.02, 0.02, 0, -0.02, 0.01, -0.01, 0];
    const xs = noise.map((each, i) => each + (i < 6 ? 0 : 3));
    const ys = noise.map((each, i) => -each + (i < 6 ? 1 : -3));
    const found = likeliestBreak(still(xs, ys))!;
    expect(found.at).toBe(6);
    // 3 across and 4 down
    expect(found.stepMm).toBeCloseTo(5, 1);
  });

  it.each([4, 7, 11, 16])('finds a step from frame %i on, under turning and noise', (from) => {
    const random = seededRandom(31 + from);
    // A wrong depth of the eyes lets them wander with the turn of the head by ten times the noise.
    const series = Array.from({ length: 20 }, (_, i): EyesBesideCard => {
      const yawRad = 0.22 * Math.sin(i);
      const pitchRad = 0.1 * Math.cos(2.3 * i);
      return {
        xMm: 2 + 10 * Math.tan(yawRad) + random.normal(0, 0.15) + (i < from ? 0 : 1.2),
        yMm: -60 - 10 * Math.tan(pitchRad) + random.normal(0, 0.15) - (i < from ? 0 : 0.7),
        yawRad,
        pitchRad,
      };
    });
    const found = likeliestBreak(series)!;
    expect(found.at).toBe(from);
    expect(found.fRatio).toBeGreaterThan(15);
    // Three standard errors of a difference of means of 4 and 16.
    expect(Math.abs(found.stepMm - Math.hypot(1.2, 0.7))).toBeLessThan(3 * 0.15 * Math.sqrt(1 / 4 + 1 / 16));
  });

  it('takes what follows the turn of the head for no break', () => {
    // The head turns once, at frame 6, and stays: all of the step goes with the turn.
    const series = Array.from({ length: 14 }, (_, i): EyesBesideCard => {
      const yawRad = i < 6 ? -0.2 : 0.2;
      return { xMm: 10 * Math.tan(yawRad) + 0.01 * (i % 2), yMm: 0.01 * ((i + 1) % 3), yawRad, pitchRad: 0 };
    });
    expect(likeliestBreak(series)!.stepMm).toBeLessThan(0.2);
  });

  it('leaves stretches of the shortest length at both ends', () => {
    expect(SHORTEST_STRETCH).toBe(4);
    const early = likeliestBreak(still([0, 0.1, 9, 9.1, 9, 9.1, 9, 9.1, 9, 9.1, 9, 9.1]))!;
    const late = likeliestBreak(still([0, 0.1, 0, 0.1, 0, 0.1, 0, 0.1, 0, 0.1, 9, 9.1]))!;
    expect(early.at).toBe(4);
    expect(late.at).toBe(8);
  });

  it('finds the same break in the series run backwards', () => {
    const xs = [0, 0.1, -0.1, 0.05, 0, 0.1, 2, 2.1, 1.9, 2, 2.05, 2.1, 1.95];
    const [ahead, back] = [likeliestBreak(still(xs))!, likeliestBreak(still([...xs].reverse()))!];
    expect(ahead.at).toBe(6);
    expect(back.at).toBe(xs.length - 6);
    expect(back.fRatio).toBeCloseTo(ahead.fRatio, 6);
    expect(back.stepMm).toBeCloseTo(ahead.stepMm, 6);
  });

  it('seldom takes noise for a break of an F above 15', () => {
    const random = seededRandom(4);
    let alarms = 0;
    for (let run = 0; run < 200; run++) {
      const noise = () => random.normal(0, 0.2);
      const found = likeliestBreak(
        Array.from({ length: 20 }, (_, i) => ({
          xMm: noise(),
          yMm: noise(),
          yawRad: 0.2 * Math.sin(i / 3),
          pitchRad: 0.1 * Math.cos(i / 2),
        })),
      )!;
      if (found.fRatio > 15) alarms++;
    }
    // F of 2 and 32 is above 15 in 25 of a million series, (1 + 2 F / 32)^-16; 13 places to break at are tried in each.
    expect(alarms).toBeLessThanOrEqual(1);
  });
});
