import { describe, expect, it } from 'vitest';
import { exampleId, exampleInvitation } from '../../tests/support/example-answer.js';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { exampleFrames, exampleMeasurement, FOUND, missed } from '../../tests/support/example-sweep.js';
import { sampleCamera } from '../../tests/support/sample-sessions.js';
import { seededRandom } from '../../tests/support/seeded-random.js';
import type { PictureFeatures } from '../core/camera/features.js';
import { LANDMARK } from '../core/camera/face-landmarks.js';
import type { MeasureFace } from '../core/estimate/face-estimates.js';
import type { SweepMeasurement } from '../core/estimate/sweep.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import { answerSchema, writeAnswer } from './answer.js';
import type { FrameOutcome, SweepTrouble } from './sweep-frames.js';
import type { VisitEvent, WearerVisit } from './wearer-visit.js';
import {
  answerOfVisit,
  bestFrame,
  cardAskedFor,
  framesToSend,
  NEW_VISIT,
  VISIT_STEPS,
  visitFailure,
  visitReducer,
  WEARER_SETTINGS,
} from './wearer-visit.js';

const TAKEN_WITH = { at: '2026-03-02T18:30:00.000Z', facing: 'user' } as const;
const ON: VisitEvent = { kind: 'went-on', isSo: true };

function after(events: readonly VisitEvent[], from: WearerVisit = NEW_VISIT): WearerVisit {
  return events.reduce(visitReducer, from);
}

/** At the camera, with all that was asked for as it should be. */
const AT_CAMERA = after(Array.from({ length: 7 }, () => ON));

/** A sweep whose frames are all there, with these outcomes. */
function collected(outcomes: readonly FrameOutcome[], from = AT_CAMERA): WearerVisit {
  return after(
    [
      { kind: 'sweep-begun', origin: 'camera', expected: null },
      ...outcomes.map((_, id): VisitEvent => ({ kind: 'frame-taken', id })),
      ...outcomes.map((outcome, id): VisitEvent => ({
        kind: 'frame-settled',
        id,
        outcome,
        thumbnail: null,
        kept: null,
      })),
      { kind: 'frames-taken', with: TAKEN_WITH },
      { kind: 'frames-complete' },
    ],
    from,
  );
}

function measured(visit: WearerVisit, result: Result<SweepMeasurement, SweepTrouble>): WearerVisit {
  const frames = visit.sweep?.frames ?? [];
  return visitReducer(visit, {
    kind: 'sweep-measured',
    outcome: { basis: { frames, settings: WEARER_SETTINGS }, result },
  });
}

const SEVEN = Array.from({ length: 7 }, () => FOUND);
const USED = exampleMeasurement(SEVEN.map(() => 'used'));

/** The example with a face whose outer eye corners lie apart by 200 px, the left one deeper by this part of it. */
function turned(tangent: number): FrameOutcome {
  const { R, L } = LANDMARK.outerEyeCorner;
  const landmarks = Array.from({ length: Math.max(R, L) + 1 }, (_, index) => ({
    xPx: index === L ? 600 : 400,
    yPx: 300,
    depthPx: index === L ? 200 * tangent : 0,
  }));
  return { kind: 'found', features: { ...exampleFeatures(), landmarks } };
}

describe('the way of a distant wearer', () => {
  it('goes through all steps, and back', () => {
    const steps = [NEW_VISIT.step];
    let visit = NEW_VISIT;
    while (visit.step !== 'camera') {
      visit = visitReducer(visit, ON);
      steps.push(visit.step);
    }
    expect(steps).toEqual(VISIT_STEPS.slice(0, 8));
    while (visit.step !== 'welcome') visit = visitReducer(visit, { kind: 'went-back' });
    expect(visitReducer(visit, { kind: 'went-back' })).toBe(visit);
  });

  it('keeps what the wearer said of each condition, and what is said later counts', () => {
    expect(AT_CAMERA.conditions).toEqual({ evenLight: true, glassesOff: true, cardFlat: true });
    const doubtful = after([ON, ON, { kind: 'went-on', isSo: false }]);
    expect(doubtful.step).toBe('light');
    expect(doubtful.conditions.glassesOff).toBe(false);
    const corrected = after([{ kind: 'went-back' }, ON], doubtful);
    expect(corrected.conditions.glassesOff).toBe(true);
  });

  it('leads on from the camera only with something taken', () => {
    expect(visitReducer(AT_CAMERA, ON)).toBe(AT_CAMERA);
    const taken = measured(collected(SEVEN), succeed(USED));
    expect(taken).toMatchObject({ step: 'result', sweep: null, taken: { kind: 'sweep', measurement: USED } });
    expect(visitReducer(taken, ON).step).toBe('file');
  });

  it('begins no sweep but at the camera, and leaves late answers alone', () => {
    expect(visitReducer(NEW_VISIT, { kind: 'sweep-begun', origin: 'camera', expected: null })).toBe(NEW_VISIT);
    const visit = collected(SEVEN);
    const late = { basis: { frames: [], settings: WEARER_SETTINGS }, result: succeed(USED) };
    expect(visitReducer(visit, { kind: 'sweep-measured', outcome: late })).toBe(visit);
  });

  it('forgets what was taken, and the consent to it, when it is taken again', () => {
    const consent = { at: TAKEN_WITH.at, wording: 'Yes.', language: 'en-GB' };
    const taken = after([{ kind: 'consent-given', consent }], measured(collected(SEVEN), succeed(USED)));
    expect(taken.consent).toEqual(consent);
    const again = visitReducer(taken, { kind: 'taking-again' });
    expect(again).toEqual(AT_CAMERA);
    expect(visitReducer(taken, { kind: 'went-back' })).toEqual(AT_CAMERA);
    // from the file one comes back to what was taken
    expect(after([ON, { kind: 'went-back' }], taken)).toEqual(taken);
  });
});

describe('a sweep that fails', () => {
  it.each([
    ['for want of frames', [FOUND, missed('no-card'), FOUND]],
    ['when it is measured', SEVEN],
  ])('%s has its frames tried one by one', (_, outcomes) => {
    const ended = collected(outcomes);
    const visit =
      ended.sweep?.stage.kind === 'measuring'
        ? measured(ended, fail({ kind: 'card-not-still', longestRun: 2, needed: 6 }))
        : ended;
    expect(visit.isTryingFrames).toBe(true);
    expect(visitFailure(visit)).toBe(null);
    const [frame] = exampleFrames([FOUND]);
    if (frame === undefined) throw new Error('one frame was made');
    const measurement = { estimates: USED.estimates, pixelsPerMm: 2, advice: [] };
    const rescued = visitReducer(visit, { kind: 'frame-measured', best: { frame, measurement } });
    expect(rescued).toMatchObject({ step: 'result', taken: { kind: 'picture', frame }, takenWith: TAKEN_WITH });
    const lost = visitReducer(visit, { kind: 'frame-measured', best: null });
    expect(lost.step).toBe('camera');
    expect(visitFailure(lost)?.kind).toMatch(/^(too-few-frames|card-not-still)$/);
  });

  it('tells why at once where no frame can be tried', () => {
    const none = collected([missed('no-card'), missed('no-card'), missed('no-face')]);
    expect(none.isTryingFrames).toBe(false);
    expect(visitFailure(none)).toEqual({ kind: 'no-card' });
    const unloaded = after(
      [
        { kind: 'sweep-begun', origin: 'camera', expected: null },
        { kind: 'sweep-failed', failure: { kind: 'model-not-loadable' } },
      ],
      AT_CAMERA,
    );
    expect(visitFailure(unloaded)).toEqual({ kind: 'model-not-loadable' });
    expect(visitReducer(unloaded, { kind: 'taking-again' })).toEqual(AT_CAMERA);
  });
});

describe('single frames', () => {
  const frames = exampleFrames([turned(0.3), turned(-0.05), missed('no-card'), turned(0.1)]);

  it('are tried from the straightest on, until one can be measured', () => {
    const tried: PictureFeatures[] = [];
    const measureFace: MeasureFace = (features) => {
      tried.push(features);
      return tried.length < 2
        ? fail({ kind: 'too-dark', meanLevel: 1, limitLevel: 2 })
        : succeed({ estimates: USED.estimates, pixelsPerMm: 2, advice: [] });
    };
    expect(bestFrame(frames, measureFace)?.frame.id).toBe(3);
    expect(tried).toHaveLength(2);
    expect(bestFrame(frames, () => fail({ kind: 'no-card' }))).toBe(null);
  });

  it('go along as the straightest and the one that is turned furthest, of those that were used', () => {
    const all = exampleFrames([turned(0.3), turned(-0.05), turned(0.1), turned(0.5)]);
    const basis = { frames: all, settings: WEARER_SETTINGS };
    const measurement = exampleMeasurement(['used', 'used', 'used', 'misfit']);
    const ids = framesToSend({ kind: 'sweep', measurement, outcome: { basis, result: succeed(measurement) } });
    expect(ids.map(({ id }) => id)).toEqual([1, 0]);
    const [only] = all;
    if (only === undefined) throw new Error('frames were made');
    const alone = { estimates: measurement.estimates, pixelsPerMm: 2, advice: [] };
    expect(framesToSend({ kind: 'picture', measurement: alone, frame: only })).toEqual([only]);
  });
});

describe('the answer', () => {
  const invitation = exampleInvitation();
  const about = { id: exampleId(9), invitation, appVersion: '0.1.0', language: 'de', pictures: null };

  it('is none before something was taken', () => {
    expect(answerOfVisit(AT_CAMERA, about)).toBe(null);
  });

  it('says what was measured, with what, under which conditions, and that nobody saw to it', () => {
    const { estimates } = sampleCamera(seededRandom(1), TAKEN_WITH.at);
    const visit = measured(collected(SEVEN), succeed({ ...USED, estimates }));
    const answer = answerOfVisit(visit, about);
    if (answer === null) throw new Error('something was taken');
    const { widthPx, heightPx } = exampleFeatures();
    expect(answer).toMatchObject({
      invitationId: invitation.id,
      camera: { kind: 'sweep', supervision: 'none', takenAt: TAKEN_WITH.at, framesUsed: 7, framesTaken: 7 },
      conditions: { card: 'bought', printScale: 1, gaze: 'camera', evenLight: true, glassesOff: true, cardFlat: true },
      device: { widthPx, heightPx, facing: 'user' },
    });
    // as the practice will read it
    expect(answerSchema.safeParse(JSON.parse(writeAnswer(answer))).success).toBe(true);
  });

  it('is of the card that was asked for, a bought one where both are', () => {
    expect(cardAskedFor({ cards: ['printed'] })).toBe('printed');
    expect(cardAskedFor({ cards: ['printed', 'bought'] })).toBe('bought');
  });
});
