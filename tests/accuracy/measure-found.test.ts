import { describe, expect, it } from 'vitest';
import type { PictureFeatures } from '../../src/core/camera/features.js';
import type { Estimate, FaceEstimates } from '../../src/core/estimate/estimate.js';
import type { MeasureFace, MeasuringSettings } from '../../src/core/estimate/face-estimates.js';
import type { MeasureSweep } from '../../src/core/estimate/sweep.js';
import { fail, succeed } from '../../src/core/result.js';
import { exampleFeatures } from '../support/example-features.js';
import type { FoundPicture } from './measure-found.js';
import { measurePicture, measureSweepOf } from './measure-found.js';
import { WRITTEN_ESTIMATES } from './truth.js';

function estimate(value: number): Estimate {
  return { value, standardUncertainty: 0.5, low: value - 1, high: value + 1, unit: 'mm', budget: [] };
}

const ALWAYS = [...WRITTEN_ESTIMATES, 'pdNear', 'headYaw', 'headPitch', 'headRoll'] as const;
const ESTIMATES = Object.fromEntries(ALWAYS.map((name, index) => [name, estimate(index)])) as FaceEstimates;
const GIVEN = { gaze: 'camera', profile: null } as const;

/** A clock that goes on by 10 ms whenever it is read. */
function steppingClock(): () => number {
  let ms = 0;
  return () => (ms += 10);
}

describe('measurePicture', () => {
  const measureFace: MeasureFace = () => succeed({ estimates: ESTIMATES, pixelsPerMm: 2, advice: [] });

  it('writes the estimates, and where irises and card lie', () => {
    const features = exampleFeatures();
    const outcome = measurePicture({ ok: true, features, ms: 100 }, GIVEN, measureFace, steppingClock());
    expect(outcome).toMatchObject({ ok: true, reason: null, ms: 110, irisPx: { R: [575, 350], L: [705, 350] } });
    expect(Object.keys(outcome.estimates)).toEqual([...WRITTEN_ESTIMATES]);
    expect(outcome.estimates.pdShown).toEqual({ valueMm: 1, uMm: 0.5, lowMm: 0, highMm: 2 });
    expect(outcome.cardPx?.[1]).toEqual([726, 160]);
  });

  it('adds what only some pictures tell', () => {
    const outcome = measurePicture(
      { ok: true, features: exampleFeatures(), ms: 0 },
      GIVEN,
      () => succeed({ estimates: { ...ESTIMATES, pupilDiameterL: estimate(4) }, pixelsPerMm: 2, advice: [] }),
      steppingClock(),
    );
    expect(outcome.estimates.pupilDiameterL?.valueMm).toBe(4);
    expect(outcome.estimates.pupilDiameterR).toBeUndefined();
  });

  it('hands on the reason of a failure, and measures nothing without features', () => {
    const asked: MeasuringSettings[] = [];
    const refusing: MeasureFace = (_, settings) => {
      asked.push(settings);
      return fail({ kind: 'head-turned', turnDeg: 20, limitDeg: 15 });
    };
    const turned = measurePicture(
      { ok: true, features: exampleFeatures(), ms: 1 },
      { gaze: 'far', profile: null },
      refusing,
      steppingClock(),
    );
    expect(turned).toMatchObject({ ok: false, reason: 'head-turned', estimates: {}, irisPx: null });
    expect(asked.map(({ gaze, profile }) => [gaze, profile])).toEqual([['far', null]]);
    const missing = measurePicture({ ok: false, reason: 'no-card', ms: 7 }, GIVEN, refusing, steppingClock());
    expect(missing).toMatchObject({ ok: false, reason: 'no-card', ms: 7 });
    expect(asked).toHaveLength(1);
  });
});

describe('measureSweepOf', () => {
  const frame = (number: number, isFound: boolean): { readonly frame: number; readonly found: FoundPicture } => ({
    frame: number,
    found: isFound
      ? { ok: true, features: { ...exampleFeatures(), widthPx: 1000 + number }, ms: 100 }
      : { ok: false, reason: 'eyes-closed', ms: 50 },
  });
  // the second and fourth frame show nothing
  const FRAMES = [frame(0, true), frame(1, false), frame(2, true), frame(3, false), frame(4, true), frame(5, true)];

  function fakeSweep(slippedFromFrame: number | null, seen: PictureFeatures[]): MeasureSweep {
    return (frames, _, onProgress) => {
      seen.push(...frames);
      onProgress(1);
      return succeed({
        estimates: ESTIMATES,
        pixelsPerMm: 2,
        advice: [],
        fates: frames.map(() => 'used'),
        framesUsed: 3,
        slippedFromFrame,
        yawsDeg: frames.map(() => null),
        distancesMm: frames.map(() => null),
      });
    };
  }

  it('leaves out frames without features, and counts the time of all', () => {
    const seen: PictureFeatures[] = [];
    const outcome = measureSweepOf(FRAMES, GIVEN, fakeSweep(null, seen), steppingClock());
    expect(seen.map(({ widthPx }) => widthPx)).toEqual([1000, 1002, 1004, 1005]);
    // by hand: four times 100 and twice 50 ms to find them, then one step of the clock
    expect(outcome).toMatchObject({ ok: true, ms: 510, adjustmentMs: 10, framesGiven: 4, framesUsed: 3 });
    expect(outcome.slippedFromFrame).toBeNull();
    expect(outcome.estimates.pdShown?.valueMm).toBe(1);
  });

  it('counts the frame of a slip as the truth does, not among the frames given', () => {
    const outcome = measureSweepOf(FRAMES, GIVEN, fakeSweep(2, []), steppingClock());
    expect(outcome.slippedFromFrame).toBe(4);
  });

  it('hands on the reason of a failure', () => {
    const outcome = measureSweepOf(
      FRAMES,
      GIVEN,
      () => fail({ kind: 'card-not-still', longestRun: 3, needed: 8 }),
      steppingClock(),
    );
    expect(outcome).toMatchObject({
      ok: false,
      reason: 'card-not-still',
      framesUsed: 0,
      estimates: {},
      framesGiven: 4,
    });
  });
});
