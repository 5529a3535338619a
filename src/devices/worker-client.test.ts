import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { LandmarksReply, LandmarksRequest } from '../protocol/landmarks-messages.js';
import { parseFromLandmarksWorker } from '../protocol/landmarks-messages.js';
import { FakeWorker } from '../../tests/support/fake-worker.js';
import type { AskOptions } from './worker-client.js';
import { createWorkerClient } from './worker-client.js';

const REQUEST = { kind: 'load-landmarks', runtimeAddress: '/', bundle: { kind: 'address', address: '/' } } as const;
const LOADED = { kind: 'landmarks-loaded', loadMs: 5 };

function options(overrides: Partial<AskOptions> = {}): AskOptions {
  return { transfer: [], limitMs: 1000, onProgress: () => undefined, signal: null, ...overrides };
}

function setUp() {
  const workers: FakeWorker[] = [];
  const asker = createWorkerClient<LandmarksRequest, LandmarksReply>({
    start: () => {
      const worker = new FakeWorker();
      workers.push(worker);
      return worker;
    },
    parse: parseFromLandmarksWorker,
    cancelGraceMs: 100,
  });
  const worker = (index: number): FakeWorker => {
    const found = workers[index];
    if (found === undefined) throw new Error(`Worker ${index} was not started`);
    return found;
  };
  return { asker, workers, worker };
}

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

describe('createWorkerClient', () => {
  it('starts the worker with the first request only, and gives each request its own reply', async () => {
    const { asker, workers, worker } = setUp();
    expect(workers).toHaveLength(0);
    const [first, second] = [asker.ask(REQUEST, options()), asker.ask(REQUEST, options())];
    expect(workers).toHaveLength(1);
    worker(0).reply(1, { ...LOADED, loadMs: 2 });
    worker(0).reply(0, { ...LOADED, loadMs: 1 });
    expect(await first).toMatchObject({ ok: true, value: { loadMs: 1 } });
    expect(await second).toMatchObject({ ok: true, value: { loadMs: 2 } });
  });

  it('tells of progress, and passes a fault on while the worker lives on', async () => {
    const { asker, workers, worker } = setUp();
    const onProgress = vi.fn();
    const asked = asker.ask(REQUEST, options({ onProgress }));
    worker(0).reply(0, { kind: 'progress', share: 0.5 });
    worker(0).reply(0, { kind: 'fault', code: 'failed', detail: 'x' });
    expect(await asked).toMatchObject({ ok: false, failure: { kind: 'fault', fault: { code: 'failed' } } });
    expect(onProgress.mock.calls).toEqual([[0.5]]);
    void asker.ask(REQUEST, options());
    expect(workers).toHaveLength(1);
  });

  it('ends a worker that does not answer in time, and starts another for the next request', async () => {
    const { asker, workers, worker } = setUp();
    const asked = asker.ask(REQUEST, options({ limitMs: 300 }));
    await vi.advanceTimersByTimeAsync(299);
    expect(worker(0).isTerminated).toBe(false);
    await vi.advanceTimersByTimeAsync(1);
    expect(await asked).toEqual({ ok: false, failure: { kind: 'timed-out', limitMs: 300 } });
    expect(worker(0).isTerminated).toBe(true);
    const next = asker.ask(REQUEST, options());
    expect(workers).toHaveLength(2);
    expect(asker.runningWorker()).toBe(2);
    worker(1).reply(0, LOADED);
    expect(await next).toMatchObject({ ok: true });
  });

  it('fails everything that a crashed worker was asked, and ignores what comes of it later', async () => {
    const { asker, worker } = setUp();
    const [first, second] = [asker.ask(REQUEST, options()), asker.ask(REQUEST, options())];
    worker(0).crash();
    expect(await first).toEqual({ ok: false, failure: { kind: 'crashed' } });
    expect(await second).toEqual({ ok: false, failure: { kind: 'crashed' } });
    const next = asker.ask(REQUEST, options());
    worker(0).crash();
    worker(1).reply(0, LOADED);
    expect(await next).toMatchObject({ ok: true });
  });

  it('ends a worker that says what nobody understands', async () => {
    const { asker, worker } = setUp();
    const asked = asker.ask(REQUEST, options());
    worker(0).reply(0, { kind: 'dance' });
    expect(await asked).toEqual({ ok: false, failure: { kind: 'not-understood' } });
    expect(worker(0).isTerminated).toBe(true);
  });

  it('rejects at once when aborted, tells the worker, and lets it live if it stops in time', async () => {
    const { asker, worker } = setUp();
    const controller = new AbortController();
    const asked = asker.ask(REQUEST, options({ signal: controller.signal }));
    controller.abort(new Error('another picture'));
    await expect(asked).rejects.toThrow('another picture');
    expect(worker(0).sent[1]).toEqual({ v: 1, id: 1, kind: 'cancel' });
    await vi.advanceTimersByTimeAsync(99);
    worker(0).reply(0, { kind: 'cancelled' });
    await vi.advanceTimersByTimeAsync(10_000);
    expect(worker(0).isTerminated).toBe(false);
  });

  it('ends an aborted worker that does not stop in time', async () => {
    const { asker, worker } = setUp();
    const controller = new AbortController();
    const asked = asker.ask(REQUEST, options({ signal: controller.signal }));
    controller.abort(new Error('another picture'));
    await expect(asked).rejects.toThrow('another picture');
    await vi.advanceTimersByTimeAsync(100);
    expect(worker(0).isTerminated).toBe(true);
    expect(asker.runningWorker()).toBeNull();
  });

  it('sends nothing for a signal that is aborted already', async () => {
    const { asker, workers } = setUp();
    await expect(asker.ask(REQUEST, options({ signal: AbortSignal.abort(new Error('late')) }))).rejects.toThrow('late');
    expect(workers).toHaveLength(0);
  });

  it('fails what is under way when it is ended', async () => {
    const { asker, worker } = setUp();
    const asked = asker.ask(REQUEST, options());
    asker.end();
    expect(await asked).toEqual({ ok: false, failure: { kind: 'ended' } });
    expect(worker(0).isTerminated).toBe(true);
  });
});
