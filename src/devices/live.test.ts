import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FakeWorker } from '../../tests/support/fake-worker.js';
import type { EyesSeed } from '../core/camera/face-landmarks.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import type { LiveFrame } from '../session/live.js';
import type { CameraStream, MeasuringFailure } from '../session/ports.js';
import { createLive } from './live.js';

const ignore = () => undefined;
const POINT = { xPx: 10, yPx: 10 };
const EYES: EyesSeed = {
  irisCentre: { R: POINT, L: POINT },
  irisRadiusPx: { R: 9, L: 9 },
  middle: POINT,
  spanPx: 100,
  rollRad: 0,
};
const CORNERS = [POINT, POINT, POINT, POINT] as const;
const CARD = { corners: CORNERS, edgeSupport: [1, 1, 1, 1] };
const TIMES = { landmarksMs: 1, readingMs: 1, followingMs: 1 };

interface FakeBitmap {
  width: number;
  height: number;
  closed: number;
  close: () => void;
}

let bitmaps: FakeBitmap[] = [];

function makeBitmap(): FakeBitmap {
  const bitmap: FakeBitmap = { width: 4, height: 3, closed: 0, close: () => (bitmap.closed += 1) };
  bitmaps.push(bitmap);
  return bitmap;
}

/** A video element that shows a frame whenever a test says so. */
class FakeVideo {
  muted = false;
  playsInline = false;
  srcObject: unknown = null;
  readonly waiting = new Map<number, () => void>();
  #last = 0;
  play = () => Promise.resolve();
  requestVideoFrameCallback(callback: () => void): number {
    this.#last += 1;
    this.waiting.set(this.#last, callback);
    return this.#last;
  }
  cancelVideoFrameCallback(handle: number): void {
    this.waiting.delete(handle);
  }
  async showFrame(): Promise<void> {
    const callbacks = [...this.waiting.values()];
    this.waiting.clear();
    for (const callback of callbacks) callback();
    await vi.advanceTimersByTimeAsync(20);
  }
}

interface SeeMessage {
  readonly kind: string;
  readonly frameId: number;
  readonly isSearched: boolean;
  readonly found: object | null;
  readonly bitmap: object;
}

function setUp(answer: (message: SeeMessage) => object | null, corners: readonly object[] | null = CORNERS) {
  const workers: FakeWorker[] = [];
  const searches: object[] = [];
  const video = new FakeVideo();
  vi.stubGlobal('document', { createElement: () => video, baseURI: 'http://localhost/' });
  const live = createLive(
    { landmarkBundle: () => ({ kind: 'address', address: 'http://localhost/models/face-landmarks.task' }) },
    {
      startSearchWorker: () =>
        new FakeWorker((message, self) => {
          searches.push(message);
          self.answer(message, { kind: 'card-searched', corners, workMs: 1 });
        }),
      startLiveWorker: () => {
        const worker = new FakeWorker((message, self) => {
          const body = answer(message as unknown as SeeMessage);
          if (body !== null) self.answer(message, body);
        });
        workers.push(worker);
        return worker;
      },
      pageAddress: 'http://localhost/',
      idleLimitMs: 5_000,
      searchAgainMs: 1_000,
      searchPauseMs: 100,
    },
  );
  const frames: LiveFrame[] = [];
  const failures: MeasuringFailure[] = [];
  const abort = new AbortController();
  const camera = { stream: {} } as CameraStream;
  const done = live.watch(
    camera,
    DEFAULT_MEASURING_SETTINGS,
    { onFrame: (frame) => frames.push(frame), onLoading: ignore, onFailure: (failure) => failures.push(failure) },
    abort.signal,
  );
  const seen = () =>
    workers.flatMap(({ sent }) => sent as unknown as SeeMessage[]).filter(({ kind }) => kind === 'see-frame');
  return { live, video, workers, searches, frames, failures, abort, done, seen };
}

function sightOf(message: SeeMessage, card: object | null = null) {
  const { bitmap } = message;
  return {
    kind: 'frame-seen',
    bitmap,
    sight: { widthPx: 4, heightPx: 3, face: null, card, estimate: null },
    eyes: EYES,
    times: TIMES,
  };
}

const working =
  (card: object | null = null) =>
  (message: SeeMessage): object =>
    message.kind === 'load-live' ? { kind: 'live-loaded', loadMs: 1 } : sightOf(message, card);

beforeEach(() => {
  bitmaps = [];
  vi.useFakeTimers();
  vi.stubGlobal('createImageBitmap', () => Promise.resolve(makeBitmap()));
  vi.spyOn(console, 'warn').mockImplementation(ignore);
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('createLive', () => {
  it('loads once, hands on each frame with what was seen, and ends with the signal', async () => {
    const { video, workers, frames, abort, done } = setUp(working(CARD));
    await vi.advanceTimersByTimeAsync(1);
    for (let i = 0; i < 3; i++) await video.showFrame();
    expect(workers).toHaveLength(1);
    expect(workers[0]?.sent[0]).toMatchObject({ kind: 'load-live', runtimeAddress: 'http://localhost/vision/' });
    expect(frames).toHaveLength(3);
    expect(frames[0]?.sight.card).toEqual(CARD);
    abort.abort();
    await done;
    expect(video.srcObject).toBeNull();
    expect(video.waiting.size).toBe(0);
  });

  it('leaves frames out while two are under way', async () => {
    const { video, seen } = setUp((message) =>
      message.kind === 'load-live' ? { kind: 'live-loaded', loadMs: 1 } : null,
    );
    await vi.advanceTimersByTimeAsync(1);
    for (let i = 0; i < 6; i++) await video.showFrame();
    expect(seen()).toHaveLength(2);
  });

  it('searches the card while none is followed, one at a time, and tells the worker what was found', async () => {
    const { video, seen, searches } = setUp(working(null));
    await vi.advanceTimersByTimeAsync(1);
    for (let i = 0; i < 3; i++) await video.showFrame();
    const [first, second] = seen();
    expect(first).toMatchObject({ isSearched: true, found: null });
    expect(second).toMatchObject({ isSearched: false, found: { frameId: first?.frameId, corners: CORNERS } });
    expect(searches).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(200);
    await video.showFrame();
    expect(searches).toHaveLength(2);
  });

  it('warms up the search once, beside the loading, with a card of nobody', async () => {
    vi.stubGlobal(
      'OffscreenCanvas',
      class {
        getContext = () => null;
        transferToImageBitmap = makeBitmap;
      },
    );
    const { live, searches, workers } = setUp(working(null));
    await live.prepare();
    await live.prepare();
    expect(searches).toHaveLength(1);
    expect(workers[0]?.sent.map(({ kind }) => kind)).toEqual(['load-live']);
  });

  it('searches a card that is followed seldom, but does', async () => {
    const { video, searches } = setUp(working(CARD));
    await vi.advanceTimersByTimeAsync(1);
    for (let i = 0; i < 10; i++) await video.showFrame();
    expect(searches).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1_000);
    await video.showFrame();
    expect(searches).toHaveLength(2);
  });

  it('starts the worker again where it died, and gives up where that does not help', async () => {
    const { video, workers, failures, done } = setUp((message) =>
      message.kind === 'load-live'
        ? { kind: 'live-loaded', loadMs: 1 }
        : { kind: 'fault', code: 'failed', detail: 'x' },
    );
    await vi.advanceTimersByTimeAsync(1);
    for (let i = 0; i < 4; i++) await video.showFrame();
    await done;
    expect(failures).toEqual([{ kind: 'vision-stopped', part: 'landmarks' }]);
    expect(workers.length).toBeGreaterThan(0);
  });

  it('says where the model cannot be loaded', async () => {
    const { failures, done } = setUp(() => ({ kind: 'fault', code: 'model-not-loadable', detail: 'x' }));
    await vi.advanceTimersByTimeAsync(1);
    await done;
    expect(failures).toEqual([{ kind: 'model-not-loadable' }]);
  });

  it('closes frames that come back too late, and those that nobody sends any more', async () => {
    let late: (() => void) | null = null;
    const { video, workers, frames, abort } = setUp((message) => {
      if (message.kind === 'load-live') return { kind: 'live-loaded', loadMs: 1 };
      late = () => workers[0]?.answer(message as never, sightOf(message));
      return null;
    });
    await vi.advanceTimersByTimeAsync(1);
    await video.showFrame();
    abort.abort();
    (late as (() => void) | null)?.();
    await vi.advanceTimersByTimeAsync(1);
    expect(frames).toHaveLength(0);
    expect(bitmaps.at(0)?.closed).toBe(1);
  });

  it('ends the worker once nothing was watched for a while', async () => {
    const { video, workers, abort, done } = setUp(working(CARD));
    await vi.advanceTimersByTimeAsync(1);
    await video.showFrame();
    abort.abort();
    await done;
    expect(workers[0]?.isTerminated).toBe(false);
    await vi.advanceTimersByTimeAsync(6_000);
    expect(workers[0]?.isTerminated).toBe(true);
  });
});
