import { fail, invariant, succeed } from '../core/result.js';
import type { SweepReply, SweepRequest } from '../protocol/sweep-messages.js';
import { parseFromSweepWorker, SWEEP_FRAME_LIMIT } from '../protocol/sweep-messages.js';
import type { SweepPort } from '../session/ports.js';
import { createIdleEnd } from './idle-end.js';
import { startSweepWorker } from './start-workers.js';
import type { WorkerClient, WorkerLike } from './worker-client.js';
import { createWorkerClient } from './worker-client.js';

export interface SweepSettings {
  readonly startSweepWorker: () => WorkerLike;
  /** how long the worker may take for one sweep */
  readonly answerLimitMs: number;
  /** how long a cancelled worker may go on before it is ended and, when next needed, started again */
  readonly cancelGraceMs: number;
  /** after this time without a sweep the worker is ended, to give its memory back */
  readonly idleLimitMs: number;
}

/**
 * Measures sweeps in a worker, which it starts, watches, cancels and starts again as needed. What goes wrong with the worker is
 * `vision-stopped`. At most `SWEEP_FRAME_LIMIT` frames.
 */
export function createSweep(overrides: Partial<SweepSettings> = {}): SweepPort {
  const settings: SweepSettings = {
    startSweepWorker,
    // chosen: 40 frames take a second or two, three times as many on a slow computer half a minute
    answerLimitMs: 60_000,
    // chosen: an adjustment that has begun hears nothing, and another worker starts at once
    cancelGraceMs: 300,
    idleLimitMs: 15 * 60_000,
    ...overrides,
  };
  const worker: WorkerClient<SweepRequest, SweepReply> = createWorkerClient({
    start: settings.startSweepWorker,
    parse: parseFromSweepWorker,
    cancelGraceMs: settings.cancelGraceMs,
  });

  const busy = createIdleEnd(() => worker.end(), settings.idleLimitMs);

  return {
    measure: (frames, measuringSettings, onProgress, signal) => {
      invariant(frames.length <= SWEEP_FRAME_LIMIT, `a sweep has at most ${SWEEP_FRAME_LIMIT} frames`);
      return busy(async () => {
        const ask = () =>
          worker.ask(
            { kind: 'measure-sweep', frames, settings: measuringSettings },
            { transfer: [], limitMs: settings.answerLimitMs, onProgress, signal },
          );
        let reply = await ask();
        // it waited behind a cancelled sweep, with which the worker was ended
        if (!reply.ok && reply.failure.kind === 'ended') reply = await ask();
        if (!reply.ok) {
          // for developers: the sentence on the screen does not say what went wrong
          const { failure } = reply;
          console.warn('The sweep worker stopped:', failure.kind === 'fault' ? failure.fault.detail : failure.kind);
          return fail({ kind: 'vision-stopped', part: 'sweep' });
        }
        return reply.value.kind === 'sweep-measured' ? succeed(reply.value.measurement) : fail(reply.value.failure);
      });
    },
  };
}
