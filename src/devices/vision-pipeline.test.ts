import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FakeWorker } from '../../tests/support/fake-worker.js';
import type { Picture } from '../session/ports.js';
import { createVision } from './vision.js';

// A sweep asks for its next frame before the last one is done: the face of one is looked for while the card of the other is.

const LANDMARK_MS = 100;
const CARD_MS = 150;
const ignore = () => undefined;

/** Answers one message after the other, each after its time, as a worker does, and keeps when it began. */
function busyWorker(answers: Readonly<Record<string, readonly [workMs: number, answer: object]>>, log: string[]) {
  let last: Promise<void> = Promise.resolve();
  return new FakeWorker((message, self) => {
    const [workMs, answer] = answers[message.kind] ?? [0, {}];
    last = last.then(async () => {
      log.push(`${message.kind} at ${Date.now()}`);
      await new Promise((resolve) => setTimeout(resolve, workMs));
      self.answer(message, answer);
    });
  });
}

function frame(name: string): Picture {
  return { bitmap: { width: 4, height: 3 } as ImageBitmap, widthPx: 4, heightPx: 3, name };
}

beforeEach(() => {
  vi.useFakeTimers({ now: 0 });
  vi.stubGlobal('createImageBitmap', () => Promise.resolve({ width: 4, height: 3, close: ignore }));
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('findFeatures', () => {
  it('looks for the next face while the card before it is looked for', async () => {
    const log: string[] = [];
    const missing = { kind: 'features-missing', failure: { kind: 'no-card' }, partial: null, workMs: 1 };
    const vision = createVision({
      startLandmarksWorker: () =>
        busyWorker(
          {
            'load-landmarks': [0, { kind: 'landmarks-loaded', loadMs: 1 }],
            'find-landmarks': [LANDMARK_MS, { kind: 'landmarks-found', faceCount: 1, landmarks: [], workMs: 1 }],
          },
          log,
        ),
      startCardWorker: () =>
        busyWorker({ 'load-card': [0, { kind: 'card-loaded', loadMs: 1 }], 'find-features': [CARD_MS, missing] }, log),
      pageAddress: 'http://localhost/',
    });
    const warm = vision.warmUp(ignore);
    await vi.advanceTimersByTimeAsync(0);
    await warm;
    log.length = 0;
    const { signal } = new AbortController();
    const done: [string, number][] = [];
    const all = Promise.all(
      ['first', 'second', 'third'].map(async (name) => {
        await vision.findFeatures(frame(name), ignore, signal);
        done.push([name, Date.now()]);
      }),
    );
    await vi.advanceTimersByTimeAsync(2_000);
    await all;
    // one after the other, three frames would take 750 ms
    expect(done).toEqual([
      ['first', LANDMARK_MS + CARD_MS],
      ['second', LANDMARK_MS + 2 * CARD_MS],
      ['third', LANDMARK_MS + 3 * CARD_MS],
    ]);
    expect(log).toEqual([
      'find-landmarks at 0',
      'find-landmarks at 100',
      'find-features at 100',
      'find-landmarks at 200',
      'find-features at 250',
      'find-features at 400',
    ]);
  });
});
