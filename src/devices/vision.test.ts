import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FakeWorker } from '../../tests/support/fake-worker.js';
import type { BoardView } from '../core/camera/board.js';
import type { CameraProfile } from '../core/camera/camera-profile.js';
import type { MeasuringProgress, Picture } from '../session/ports.js';
import { createVision } from './vision.js';

const PICTURE: Picture = { bitmap: { width: 4, height: 3 } as ImageBitmap, widthPx: 4, heightPx: 3, name: 'a.jpg' };
const LANDMARK = { xPx: 1, yPx: 2, depthPx: 0 };

const NO_BOARD = { kind: 'no-board', cornersFound: 2, cornersNeeded: 6 };
const VIEW: BoardView = { widthPx: 640, heightPx: 480, corners: [{ index: 3, xPx: 10, yPx: 20 }] };
const PROFILE: CameraProfile = {
  fx: 500,
  fy: 500,
  cx: 320,
  cy: 240,
  distortion: [0, 0, 0, 0, 0],
  widthPx: 640,
  heightPx: 480,
  uncertainty: { fx: 1, fy: 1, cx: 1, cy: 1, distortion: [0.01, 0, 0, 0, 0] },
  rmsPx: 0.1,
  viewCount: 8,
};

type Answers = Readonly<Record<string, object | null>>;

/** What working workers say; null leaves a message without an answer. */
const LANDMARKS_ANSWERS: Answers = {
  'load-landmarks': { kind: 'landmarks-loaded', loadMs: 1 },
  'find-landmarks': { kind: 'landmarks-found', faceCount: 1, landmarks: [LANDMARK], workMs: 1 },
};
const CARD_ANSWERS: Answers = {
  'load-card': { kind: 'card-loaded', loadMs: 1 },
  'find-features': { kind: 'features-missing', failure: { kind: 'no-card' }, partial: null, workMs: 1 },
  'find-board': { kind: 'board-missing', failure: NO_BOARD, workMs: 1 },
  'make-profile': { kind: 'profile-refused', failure: { kind: 'views-too-alike' }, workMs: 1 },
};

function setUp(landmarksAnswers: Answers = {}, cardAnswers: Answers = {}) {
  const started: { landmarks: FakeWorker[]; card: FakeWorker[] } = { landmarks: [], card: [] };
  const starter = (part: 'landmarks' | 'card', answers: Answers, usual: Answers) => () => {
    const worker = new FakeWorker((message, self) => {
      // looked up only now, so that a test can change its answers meanwhile
      const answer = message.kind in answers ? answers[message.kind] : usual[message.kind];
      if (answer != null) self.answer(message, answer);
    });
    started[part].push(worker);
    return worker;
  };
  const vision = createVision({
    startLandmarksWorker: starter('landmarks', landmarksAnswers, LANDMARKS_ANSWERS),
    startCardWorker: starter('card', cardAnswers, CARD_ANSWERS),
    pageAddress: 'http://localhost/below/index.html',
    startLimitMs: 2_000,
    answerLimitMs: 1_000,
    cancelGraceMs: 100,
    idleLimitMs: 60_000,
  });
  return { vision, started };
}

const NO_SIGNAL = new AbortController().signal;
const ignore = () => undefined;

function failed(failure: object) {
  return { ok: false, failure: { failure, partial: null } };
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal('createImageBitmap', () => Promise.resolve({ width: 4, height: 3, close: ignore }));
  vi.spyOn(console, 'warn').mockImplementation(ignore);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('createVision', () => {
  it('loads each worker once, from addresses below the page', async () => {
    const { vision, started } = setUp();
    const progress: MeasuringProgress[] = [];
    expect(await vision.warmUp((each) => progress.push(each))).toEqual({ ok: true, value: null });
    await vision.warmUp(ignore);
    await vision.findFeatures(PICTURE, ignore, NO_SIGNAL);
    expect(started.landmarks).toHaveLength(1);
    expect(started.landmarks[0]?.sent.map(({ kind }) => kind)).toEqual(['load-landmarks', 'find-landmarks']);
    expect(started.landmarks[0]?.sent[0]).toMatchObject({
      runtimeAddress: 'http://localhost/below/vision/',
      bundle: { kind: 'address', address: 'http://localhost/below/models/face-landmarks.task' },
    });
    expect(started.card[0]?.sent.map(({ kind }) => kind)).toEqual(['load-card', 'find-features']);
    expect(progress.map(({ stage }) => stage).sort()).toEqual(['loading-card', 'loading-landmarks']);
  });

  it('tells whoever joins a loading how far it has come, and speaks of the card only once it is waited for', async () => {
    const { vision, started } = setUp({ 'load-landmarks': null }, { 'load-card': null });
    void vision.warmUp(ignore);
    const [request] = started.landmarks[0]!.sent;
    started.landmarks[0]!.answer(request!, { kind: 'progress', share: 0.4 });
    const heard: MeasuringProgress[] = [];
    void vision.findFeatures(PICTURE, (each) => heard.push(each), NO_SIGNAL);
    await vi.advanceTimersByTimeAsync(1);
    expect(heard).toEqual([{ stage: 'loading-landmarks', share: 0.4 }]);
    started.landmarks[0]!.answer(request!, { kind: 'landmarks-loaded', loadMs: 1 });
    await vi.advanceTimersByTimeAsync(1);
    expect(heard.at(-1)).toEqual({ stage: 'loading-card', share: null });
  });

  it('passes on what the card worker says of the picture', async () => {
    const { vision } = setUp();
    expect(await vision.findFeatures(PICTURE, ignore, NO_SIGNAL)).toEqual(failed({ kind: 'no-card' }));
  });

  it.each([
    [0, { kind: 'no-face' }],
    [2, { kind: 'several-faces', count: 2 }],
  ])('refuses a picture with %i faces without looking for a card', async (faceCount, failure) => {
    const { vision, started } = setUp({
      'find-landmarks': { kind: 'landmarks-found', faceCount, landmarks: [], workMs: 1 },
    });
    expect(await vision.findFeatures(PICTURE, ignore, NO_SIGNAL)).toEqual(failed(failure));
    expect(started.card[0]?.sent.map(({ kind }) => kind)).toEqual(['load-card']);
  });

  it.each([
    ['model-not-loadable', { kind: 'model-not-loadable' }],
    ['runtime-not-loadable', { kind: 'vision-not-loadable', part: 'landmarks' }],
  ])('tells %s of the landmark worker', async (code, failure) => {
    const { vision } = setUp({ 'load-landmarks': { kind: 'fault', code, detail: 'x' } });
    expect(await vision.warmUp(ignore)).toEqual({ ok: false, failure });
    expect(await vision.findFeatures(PICTURE, ignore, NO_SIGNAL)).toEqual(failed(failure));
  });

  it('tells that OpenCV cannot be loaded, and tries again the next time', async () => {
    const { vision, started } = setUp(
      {},
      { 'load-card': { kind: 'fault', code: 'runtime-not-loadable', detail: 'x' } },
    );
    const failure = { kind: 'vision-not-loadable', part: 'card' };
    expect(await vision.findFeatures(PICTURE, ignore, NO_SIGNAL)).toEqual(failed(failure));
    expect(await vision.warmUp(ignore)).toEqual({ ok: false, failure });
    expect(started.card[0]?.sent).toHaveLength(2);
  });

  it('gives up a worker that does not start in time', async () => {
    const { vision, started } = setUp({ 'load-landmarks': null });
    const warm = vision.warmUp(ignore);
    await vi.advanceTimersByTimeAsync(2_000);
    expect(await warm).toEqual({ ok: false, failure: { kind: 'vision-not-loadable', part: 'landmarks' } });
    expect(started.landmarks[0]?.isTerminated).toBe(true);
  });

  it('tells that a worker stopped on a picture, and starts and loads another for the next', async () => {
    const { vision, started } = setUp({}, { 'find-features': null });
    const found = vision.findFeatures(PICTURE, ignore, NO_SIGNAL);
    await vi.advanceTimersByTimeAsync(500);
    started.card[0]?.crash();
    expect(await found).toEqual(failed({ kind: 'vision-stopped', part: 'card' }));
    const next = vision.findFeatures(PICTURE, ignore, NO_SIGNAL);
    await vi.advanceTimersByTimeAsync(1_000);
    expect(await next).toEqual(failed({ kind: 'vision-stopped', part: 'card' }));
    expect(started.card).toHaveLength(2);
    expect(started.card[1]?.sent.map(({ kind }) => kind)).toEqual(['load-card', 'find-features']);
  });

  it('loads the successor of a worker that died between two pictures', async () => {
    const { vision, started } = setUp();
    await vision.warmUp(ignore);
    started.card[0]?.crash();
    expect(await vision.findFeatures(PICTURE, ignore, NO_SIGNAL)).toEqual(failed({ kind: 'no-card' }));
    expect(started.card[1]?.sent.map(({ kind }) => kind)).toEqual(['load-card', 'find-features']);
  });

  it('loads the successor of a card worker that died while the face was looked for', async () => {
    const cardAnswers: Record<string, object> = {
      'find-features': { kind: 'fault', code: 'not-loaded', detail: 'find-features before load-card' },
    };
    const { vision, started } = setUp({ 'find-landmarks': null }, cardAnswers);
    await vision.warmUp(ignore);
    const found = vision.findFeatures(PICTURE, ignore, NO_SIGNAL);
    await vi.advanceTimersByTimeAsync(10);
    started.card[0]?.crash();
    started.landmarks[0]?.reply(1, LANDMARKS_ANSWERS['find-landmarks'] ?? {});
    await vi.advanceTimersByTimeAsync(0);
    expect(await found).toEqual(failed({ kind: 'vision-stopped', part: 'card' }));
    // asked without having been loaded, then loaded, then asked again
    expect(started.card[1]?.sent.map(({ kind }) => kind)).toEqual(['find-features', 'load-card', 'find-features']);
  });

  it('rejects with the reason of an aborted signal, and goes on with the next picture', async () => {
    const { vision, started } = setUp({ 'find-landmarks': null });
    const controller = new AbortController();
    const found = vision.findFeatures(PICTURE, ignore, controller.signal);
    const rejected = expect(found).rejects.toThrow('another picture');
    await vi.advanceTimersByTimeAsync(10);
    controller.abort(new Error('another picture'));
    await rejected;
    await vi.advanceTimersByTimeAsync(100);
    expect(started.landmarks[0]?.isTerminated).toBe(true);
    const next = vision.findFeatures(PICTURE, ignore, NO_SIGNAL);
    await vi.advanceTimersByTimeAsync(1_000);
    expect(await next).toEqual(failed({ kind: 'vision-stopped', part: 'landmarks' }));
    expect(started.landmarks).toHaveLength(2);
  });

  it('hands a picture that waits behind a cancelled one to the next worker', async () => {
    const answers: Record<string, object | null> = { 'find-landmarks': null };
    const { vision, started } = setUp(answers);
    const controller = new AbortController();
    const rejected = expect(vision.findFeatures(PICTURE, ignore, controller.signal)).rejects.toThrow('another');
    await vi.advanceTimersByTimeAsync(10);
    controller.abort(new Error('another'));
    await rejected;
    const next = vision.findFeatures(PICTURE, ignore, NO_SIGNAL);
    await vi.advanceTimersByTimeAsync(10);
    expect(started.landmarks[0]?.sent.map(({ kind }) => kind)).toEqual([
      'load-landmarks',
      'find-landmarks',
      'cancel',
      'find-landmarks',
    ]);
    delete answers['find-landmarks'];
    await vi.advanceTimersByTimeAsync(100);
    expect(await next).toEqual(failed({ kind: 'no-card' }));
    expect(started.landmarks[0]?.isTerminated).toBe(true);
    expect(started.landmarks[1]?.sent.map(({ kind }) => kind)).toEqual(['load-landmarks', 'find-landmarks']);
  });

  it('takes another bundle in a worker of its own, and keeps the old one where that fails', async () => {
    const { vision, started } = setUp();
    await vision.warmUp(ignore);
    expect(await vision.useLandmarkBundle(new Uint8Array([1, 2, 3]))).toEqual({ ok: true, value: null });
    expect(started.landmarks.map(({ isTerminated }) => isTerminated)).toEqual([true, false]);
    expect(started.landmarks[1]?.sent[0]).toMatchObject({ bundle: { kind: 'bytes' } });
    await vision.findFeatures(PICTURE, ignore, NO_SIGNAL);
    expect(started.landmarks[1]?.sent.map(({ kind }) => kind)).toEqual(['load-landmarks', 'find-landmarks']);
  });

  it('keeps the bundle in use where another cannot be loaded', async () => {
    const answers: Record<string, object> = {};
    const { vision, started } = setUp(answers);
    await vision.warmUp(ignore);
    answers['load-landmarks'] = { kind: 'fault', code: 'model-not-loadable', detail: 'no bundle' };
    expect(await vision.useLandmarkBundle(new Uint8Array([1]))).toEqual({
      ok: false,
      failure: { kind: 'model-not-loadable' },
    });
    expect(started.landmarks.map(({ isTerminated }) => isTerminated)).toEqual([false, true]);
  });

  it('ends the workers after a long idle time, and never before', async () => {
    const { vision, started } = setUp();
    await vision.warmUp(ignore);
    await vi.advanceTimersByTimeAsync(59_999);
    expect(started.card[0]?.isTerminated).toBe(false);
    await vi.advanceTimersByTimeAsync(1);
    expect([started.card[0]?.isTerminated, started.landmarks[0]?.isTerminated]).toEqual([true, true]);
    expect(await vision.warmUp(ignore)).toEqual({ ok: true, value: null });
    expect(started.card).toHaveLength(2);
  });

  it('finds the sheet and makes a profile in the card worker alone, loading it once', async () => {
    const { vision, started } = setUp(
      {},
      {
        'find-board': { kind: 'board-found', view: VIEW, workMs: 1 },
        'make-profile': { kind: 'profile-made', profile: PROFILE, workMs: 1 },
      },
    );
    expect(await vision.findBoard(PICTURE, NO_SIGNAL)).toEqual({ ok: true, value: VIEW });
    expect(await vision.makeProfile([VIEW], NO_SIGNAL)).toEqual({ ok: true, value: PROFILE });
    expect(started.landmarks).toHaveLength(0);
    expect(started.card[0]?.sent.map(({ kind }) => kind)).toEqual(['load-card', 'find-board', 'make-profile']);
    expect(started.card[0]?.sent[2]).toMatchObject({ views: [VIEW] });
  });

  it('passes on why there is no sheet or no profile', async () => {
    const { vision } = setUp();
    expect(await vision.findBoard(PICTURE, NO_SIGNAL)).toEqual({ ok: false, failure: NO_BOARD });
    expect(await vision.makeProfile([], NO_SIGNAL)).toEqual({ ok: false, failure: { kind: 'views-too-alike' } });
  });

  it('gives the worker no more views than it takes, spread over all', async () => {
    const { vision, started } = setUp();
    const views = Array.from({ length: 80 }, (_, index) => ({ ...VIEW, widthPx: 640 + index }));
    await vision.makeProfile(views, NO_SIGNAL);
    const { views: sent } = started.card[0]?.sent[1] as unknown as { views: readonly BoardView[] };
    expect(sent.map(({ widthPx }) => widthPx)).toEqual(Array.from({ length: 40 }, (_, place) => 640 + 2 * place));
  });

  it('tells that the card worker cannot be loaded, or stopped, while the sheet is looked for', async () => {
    const answers: Record<string, object | null> = {
      'load-card': { kind: 'fault', code: 'runtime-not-loadable', detail: 'x' },
      'make-profile': null,
    };
    const { vision, started } = setUp({}, answers);
    const failure = { kind: 'vision-not-loadable', part: 'card' };
    expect(await vision.findBoard(PICTURE, NO_SIGNAL)).toEqual({ ok: false, failure });
    delete answers['load-card'];
    const made = vision.makeProfile([VIEW], NO_SIGNAL);
    await vi.advanceTimersByTimeAsync(500);
    started.card[0]?.crash();
    expect(await made).toEqual({ ok: false, failure: { kind: 'vision-stopped', part: 'card' } });
    expect(await vision.findBoard(PICTURE, NO_SIGNAL)).toEqual({ ok: false, failure: NO_BOARD });
    expect(started.card[1]?.sent.map(({ kind }) => kind)).toEqual(['load-card', 'find-board']);
  });

  it('gives up the search for the sheet when its signal is aborted', async () => {
    const { vision, started } = setUp({}, { 'find-board': null });
    const controller = new AbortController();
    const rejected = expect(vision.findBoard(PICTURE, controller.signal)).rejects.toThrow('enough');
    await vi.advanceTimersByTimeAsync(10);
    controller.abort(new Error('enough'));
    await rejected;
    expect(started.card[0]?.sent.map(({ kind }) => kind)).toEqual(['load-card', 'find-board', 'cancel']);
    await vi.advanceTimersByTimeAsync(100);
    expect(started.card[0]?.isTerminated).toBe(true);
    expect(await vision.makeProfile([VIEW], NO_SIGNAL)).toMatchObject({ failure: { kind: 'views-too-alike' } });
  });
});
