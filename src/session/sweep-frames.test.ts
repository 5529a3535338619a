import { describe, expect, it } from 'vitest';
import { exampleFrames, exampleMeasurement, FOUND, missed } from '../../tests/support/example-sweep.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import { succeed } from '../core/result.js';
import type { SweepFrame, SweepOutcome } from './sweep-frames.js';
import {
  commonestFailure,
  coverageOfFrames,
  featuresInUse,
  frameCounts,
  framesMissing,
  judgeFrames,
  numberOfPlace,
  posesOf,
  representativeFrame,
  tooFewFrames,
} from './sweep-frames.js';

function leaveOut(frames: readonly SweepFrame[], id: number): readonly SweepFrame[] {
  return frames.map((frame) => (frame.id === id ? { ...frame, isLeftOut: true } : frame));
}

// six frames: the second has no card, the fourth is left out, so that 0, 2, 4 and 5 are measured
const frames = leaveOut(exampleFrames([FOUND, missed('no-card'), FOUND, FOUND, FOUND, FOUND]), 3);
const outcome: SweepOutcome = {
  basis: { frames, settings: DEFAULT_MEASURING_SETTINGS },
  result: succeed(exampleMeasurement(['used', 'misfit', 'used', 'slipped'], [9, 0, -4, 1])),
};

describe('frames of a sweep', () => {
  it('count where all was found and nobody left them out', () => {
    expect(featuresInUse(frames)).toHaveLength(4);
    expect(frameCounts([...frames, ...exampleFrames([{ kind: 'waiting' }])])).toEqual({
      waiting: 1,
      found: 5,
      missed: 1,
    });
    // the example's landmarks are none: such a frame covers nothing
    expect(coverageOfFrames(frames).usable).toBe(0);
  });

  it('take their standing from the measurement by their place among those that were given', () => {
    expect(judgeFrames(frames, outcome).map(({ standing }) => standing)).toEqual([
      'used',
      'missed',
      'misfit',
      'left-out',
      'used',
      'slipped',
    ]);
    expect(judgeFrames(frames, outcome)[4]).toMatchObject({ number: 5, yawDeg: -4, distanceMm: 500 });
    expect(numberOfPlace(outcome, 3)).toBe(6);
  });

  it('keep their standing while they are measured anew, but for those that were left out or taken back', () => {
    const now = leaveOut(
      frames.map((frame) => ({ ...frame, isLeftOut: false })),
      4,
    );
    expect(judgeFrames(now, outcome).map(({ standing }) => standing)).toEqual([
      'used',
      'missed',
      'misfit',
      'not-measured',
      'left-out',
      'slipped',
    ]);
  });

  it('keep the pose that was stated when they are left out and measured without', () => {
    const poses = posesOf(outcome);
    expect([...poses.keys()]).toEqual([0, 2, 4, 5]);
    const now = leaveOut(frames, 0);
    const without: SweepOutcome = {
      basis: { frames: now, settings: DEFAULT_MEASURING_SETTINGS },
      result: succeed(exampleMeasurement(['misfit', 'used', 'slipped'], [1, -5, 2])),
    };
    expect(judgeFrames(now, without, poses)[0]).toMatchObject({ standing: 'left-out', yawDeg: 9, distanceMm: 500 });
    // what is measured anew says more than what was said before
    expect(judgeFrames(now, without, poses)[4]).toMatchObject({ yawDeg: -5 });
  });

  it('are told apart by what they lacked and by who left them out', () => {
    expect(framesMissing(frames)).toEqual({ missed: 1, commonest: { kind: 'no-card' }, leftOut: 1 });
  });

  it('are represented by the straightest of those used', () => {
    expect(representativeFrame(judgeFrames(frames, outcome))?.number).toBe(5);
    expect(representativeFrame(judgeFrames(frames, null))).toBeNull();
  });

  it('are too few below six, and where there is none the commonest reason is told', () => {
    expect(tooFewFrames(exampleFrames([FOUND, FOUND, FOUND, FOUND, FOUND, FOUND]))).toBeNull();
    expect(tooFewFrames(exampleFrames([FOUND, FOUND, missed('no-face')]))).toEqual({
      kind: 'too-few-frames',
      usable: 2,
      needed: 6,
    });
    const none = exampleFrames([missed('no-face'), missed('no-card'), missed('no-card')]);
    expect(tooFewFrames(none)).toEqual({ kind: 'no-card' });
    expect(commonestFailure(exampleFrames([FOUND]))).toBeNull();
    expect(tooFewFrames([])).toEqual({ kind: 'too-few-frames', usable: 0, needed: 6 });
  });
});
