import { describe, expect, it } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { exampleMeasurement, examplePicture, FOUND, missed } from '../../tests/support/example-sweep.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { SweepMeasurement } from '../core/estimate/sweep.js';
import type { SheetEvent, SheetState } from './sheet.js';
import { earlierMeasured, isHiddenByFailure, openSheet, picturesOf, sheetReducer } from './sheet.js';
import type { FrameOutcome, SweepFrame, SweepTrouble } from './sweep-frames.js';

function after(events: readonly SheetEvent[], from: SheetState = openSheet(null)): SheetState {
  return events.reduce(sheetReducer, from);
}

function settled(id: number, outcome: FrameOutcome): SheetEvent {
  return { kind: 'frame-settled', id, outcome, thumbnail: examplePicture(`frame ${id}`), kept: null };
}

const IDS = [0, 1, 2, 3, 4, 5, 6];

/** Seven frames, of which the last shows no card. */
const COLLECTED: readonly SheetEvent[] = [
  { kind: 'sweep-begun', origin: 'pictures', expected: 7 },
  ...IDS.map((id): SheetEvent => ({ kind: 'frame-taken', id })),
  ...IDS.map((id) => settled(id, id === 6 ? missed('no-card') : FOUND)),
  { kind: 'frames-complete' },
];

const single = examplePicture('face.jpg');
const MEASURED: readonly SheetEvent[] = [
  { kind: 'picture-awaited' },
  { kind: 'picture-opened', picture: single },
  { kind: 'features-found', features: exampleFeatures() },
];

const MEASUREMENT = exampleMeasurement(['used', 'used', 'used', 'misfit', 'used', 'used']);

function outcomeOf(
  frames: readonly SweepFrame[] | undefined,
  result: Result<SweepMeasurement, SweepTrouble> = succeed(MEASUREMENT),
): SheetEvent {
  return {
    kind: 'sweep-measured',
    outcome: { basis: { frames: frames ?? [], settings: DEFAULT_MEASURING_SETTINGS }, result },
  };
}

function swept(state: SheetState) {
  if (state.picture.kind !== 'swept') throw new Error(`no sweep but ${state.picture.kind}`);
  return state.picture;
}

function measuredSweep(from?: SheetState): SheetState {
  const collected = after(COLLECTED, from);
  return after([outcomeOf(collected.sweep?.frames)], collected);
}

describe('a sweep on its way', () => {
  it('leaves what is there until it is measured, and takes its place then', () => {
    const before = after([...MEASURED, { kind: 'estimates-shown-alone', shown: true }]);
    const collected = after(COLLECTED, before);
    expect(collected.picture).toBe(before.picture);
    expect(collected.sweep?.stage).toEqual({ kind: 'measuring' });
    expect(earlierMeasured(before)).toBeNull();
    expect(earlierMeasured(collected)).toBe('picture');
    expect(picturesOf(collected).size).toBe(8);
    const done = measuredSweep(before);
    expect(done.sweep).toBeNull();
    expect(swept(done).frames).toHaveLength(7);
    expect(done.alone).toBe(false);
    expect(picturesOf(done).has(single)).toBe(false);
  });

  it('drops frames that still wait when it is complete', () => {
    const early = after([...COLLECTED.slice(0, 14), { kind: 'frames-complete' }]);
    expect(early.sweep?.frames).toHaveLength(6);
  });

  it('fails with what most frames lacked, or with their number, and stays on the screen with its frames', () => {
    const begun = after(COLLECTED.slice(0, 8));
    const none = after([...IDS.map((id) => settled(id, missed('no-card'))), { kind: 'frames-complete' }], begun);
    expect(none.sweep?.stage).toEqual({ kind: 'failed', failure: { kind: 'no-card' } });
    const few = after([...IDS.slice(0, 5).map((id) => settled(id, FOUND)), { kind: 'frames-complete' }], begun);
    expect(few.sweep?.stage).toMatchObject({ failure: { kind: 'too-few-frames', usable: 5, needed: 6 } });
    expect(few.sweep?.frames).toHaveLength(5);
    expect(after([{ kind: 'sweep-dropped' }], few).sweep).toBeNull();
  });

  it('fails where the adjustment does, and hides the earlier picture until the reader goes back to it', () => {
    const before = after(MEASURED);
    const collected = after(COLLECTED, before);
    const failure = { kind: 'card-not-still', longestRun: 3, needed: 6 } as const;
    const failed = after([outcomeOf(collected.sweep?.frames, fail(failure))], collected);
    expect(failed.sweep?.stage).toEqual({ kind: 'failed', failure });
    expect(isHiddenByFailure(failed)).toBe(true);
    expect(earlierMeasured(failed)).toBeNull();
    const back = after([{ kind: 'sweep-dropped' }], failed);
    expect(isHiddenByFailure(back)).toBe(false);
    expect(back.picture).toBe(before.picture);
    expect(back.notice).toBeNull();
  });

  it('hears nothing any more once it was given up, or another picture came', () => {
    const collecting = after(COLLECTED.slice(0, 8));
    const dropped = after([{ kind: 'sweep-dropped' }], collecting);
    expect(after([settled(0, FOUND), { kind: 'frames-complete' }], dropped)).toBe(dropped);
    const collected = after(COLLECTED);
    const frames = collected.sweep?.frames;
    const other = after(MEASURED, collected);
    expect(other.sweep).toBeNull();
    expect(after([outcomeOf(frames)], other)).toBe(other);
  });

  it('says how many frames went when it is given up midway, until something new comes', () => {
    const begun = after(COLLECTED.slice(0, 8), after(MEASURED));
    expect(after([{ kind: 'sweep-dropped' }], begun).notice).toBeNull();
    const dropped = after([settled(0, FOUND), { kind: 'sweep-dropped' }], begun);
    expect(dropped.notice).toEqual({ kind: 'frames-dropped', frames: 7 });
    expect(dropped.picture.kind).toBe('measured');
    expect(after([{ kind: 'picture-awaited' }], dropped).notice).toBeNull();
    expect(after(COLLECTED.slice(0, 1), dropped).notice).toBeNull();
  });

  it('makes a picture give way that is still being looked at', () => {
    expect(after([...MEASURED.slice(0, 2), ...COLLECTED.slice(0, 1)]).picture.kind).toBe('none');
  });
});

describe('a measured sweep', () => {
  it('keeps its numbers while a frame is left out, and takes only the outcome of the frames as they are', () => {
    const done = measuredSweep();
    const before = swept(done);
    const less = after([{ kind: 'frame-left-out', id: 2, isLeftOut: true }], done);
    expect(swept(less).outcome).toBe(before.outcome);
    expect(swept(less).frames[2]?.isLeftOut).toBe(true);
    // the frame under the reader's hand stays in view
    expect(swept(less).shownId).toBe(2);
    // what comes late belongs to the frames as they were
    expect(after([outcomeOf(before.frames)], less)).toBe(less);
    const fewer = succeed(exampleMeasurement(['used', 'used', 'used', 'used', 'used']));
    const renewed = after([outcomeOf(swept(less).frames, fewer)], less);
    expect(swept(renewed).poses.get(2)).toEqual(swept(done).poses.get(2));
    expect(swept(renewed).outcome.basis.frames).toBe(swept(less).frames);
  });

  it('says so where the frames that are left carry no number', () => {
    const less = after([{ kind: 'frame-left-out', id: 2, isLeftOut: true }], measuredSweep());
    const failure = { kind: 'too-few-frames', usable: 5, needed: 6 } as const;
    const failed = after([outcomeOf(swept(less).frames, fail(failure))], less);
    expect(swept(failed).outcome.result).toEqual({ ok: false, failure });
  });

  it('remembers the frame that is looked at, without another measuring', () => {
    const done = measuredSweep();
    const shown = after([{ kind: 'frame-shown', id: 4 }], done);
    expect(swept(shown).shownId).toBe(4);
    expect(swept(shown).frames).toBe(swept(done).frames);
  });
});
