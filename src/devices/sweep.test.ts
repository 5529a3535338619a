import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import { FakeWorker } from '../../tests/support/fake-worker.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import { createSweep } from './sweep.js';

const FAILURE = { kind: 'too-few-frames', usable: 2, needed: 6 };
const FAILED = { kind: 'sweep-failed', failure: FAILURE, workMs: 1 };
const STOPPED = { ok: false, failure: { kind: 'vision-stopped', part: 'sweep' } };
const NO_SIGNAL = new AbortController().signal;
const ignore = () => undefined;

/** A sweep whose workers answer each request with what `answer` says at that time; null leaves it without an answer. */
function setUp(answer: () => object | null = () => FAILED) {
  const started: FakeWorker[] = [];
  const sweep = createSweep({
    startSweepWorker: () => {
      const worker = new FakeWorker((message, self) => {
        const body = message.kind === 'cancel' ? null : answer();
        if (body !== null) self.answer(message, body);
      });
      started.push(worker);
      return worker;
    },
    answerLimitMs: 1_000,
    cancelGraceMs: 100,
    idleLimitMs: 60_000,
  });
  const measure = (signal = NO_SIGNAL, onProgress: (share: number) => void = ignore) =>
    sweep.measure([exampleFeatures()], DEFAULT_MEASURING_SETTINGS, onProgress, signal);
  return { sweep, started, measure };
}

beforeEach(() => {
  vi.useFakeTimers();
  vi.spyOn(console, 'warn').mockImplementation(ignore);
});

afterEach(() => {
  vi.useRealTimers();
  vi.restoreAllMocks();
});

describe('createSweep', () => {
  it('starts the worker when it is first needed, and once', async () => {
    const { started, measure } = setUp();
    expect(started).toHaveLength(0);
    expect(await measure()).toEqual({ ok: false, failure: FAILURE });
    await measure();
    expect(started).toHaveLength(1);
    expect(started[0]?.sent[0]).toMatchObject({
      kind: 'measure-sweep',
      frames: [exampleFeatures()],
      settings: DEFAULT_MEASURING_SETTINGS,
    });
  });

  it('passes on how far the work has come', async () => {
    const { started, measure } = setUp(() => null);
    const shares: number[] = [];
    const measured = measure(NO_SIGNAL, (share) => shares.push(share));
    for (const share of [0.25, 0.5]) started[0]?.reply(0, { kind: 'progress', share });
    started[0]?.reply(0, FAILED);
    await measured;
    expect(shares).toEqual([0.25, 0.5]);
  });

  it.each([
    ['dies', (worker: FakeWorker) => worker.crash()],
    ['says that it failed', (worker: FakeWorker) => worker.reply(0, { kind: 'fault', code: 'failed', detail: 'x' })],
    ['says what is no measurement', (worker: FakeWorker) => worker.reply(0, { kind: 'sweep-measured', workMs: 1 })],
    ['does not answer', () => vi.advanceTimersByTime(1_000)],
  ])('tells that the worker stopped when it %s, and goes on with the next sweep', async (_, stop) => {
    let answer: object | null = null;
    const { started, measure } = setUp(() => answer);
    const measured = measure();
    stop(started[0]!);
    expect(await measured).toEqual(STOPPED);
    answer = FAILED;
    expect(await measure()).toEqual({ ok: false, failure: FAILURE });
  });

  it('rejects with the reason of an aborted signal, and measures the next sweep in another worker', async () => {
    let answer: object | null = null;
    const { started, measure } = setUp(() => answer);
    const controller = new AbortController();
    const rejected = expect(measure(controller.signal)).rejects.toThrow('other settings');
    await vi.advanceTimersByTimeAsync(10);
    controller.abort(new Error('other settings'));
    await rejected;
    // it waits behind the cancelled one, which hears nothing
    const next = measure();
    await vi.advanceTimersByTimeAsync(10);
    expect(started).toHaveLength(1);
    answer = FAILED;
    await vi.advanceTimersByTimeAsync(100);
    expect(await next).toEqual({ ok: false, failure: FAILURE });
    expect(started.map(({ isTerminated }) => isTerminated)).toEqual([true, false]);
  });

  it('keeps a worker that gave a cancelled sweep up by itself', async () => {
    const { started, measure } = setUp(() => null);
    const controller = new AbortController();
    const rejected = expect(measure(controller.signal)).rejects.toThrow('closed');
    controller.abort(new Error('closed'));
    await rejected;
    started[0]?.reply(0, { kind: 'cancelled' });
    await vi.advanceTimersByTimeAsync(1_000);
    expect(started[0]?.isTerminated).toBe(false);
  });

  it('starts nothing for a signal that was aborted before', async () => {
    const { started, measure } = setUp();
    await expect(measure(AbortSignal.abort(new Error('too late')))).rejects.toThrow('too late');
    expect(started).toHaveLength(0);
  });

  it('ends the worker after a long idle time, and never before', async () => {
    const { started, measure } = setUp();
    await measure();
    await vi.advanceTimersByTimeAsync(59_999);
    expect(started[0]?.isTerminated).toBe(false);
    await vi.advanceTimersByTimeAsync(1);
    expect(started[0]?.isTerminated).toBe(true);
    await measure();
    expect(started).toHaveLength(2);
  });
});
