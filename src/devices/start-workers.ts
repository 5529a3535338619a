/** Starts the worker that finds faces. It answers the messages of protocol/landmarks-messages. */
export function startLandmarksWorker(): Worker {
  return new Worker(new URL('../workers/landmarks/landmarks.worker.ts', import.meta.url), {
    type: 'module',
    name: 'landmarks',
  });
}

/** Starts the worker that finds the card and all else that is measured. It answers the messages of protocol/card-messages. */
export function startCardWorker(): Worker {
  return new Worker(new URL('../workers/card/card.worker.ts', import.meta.url), { type: 'module', name: 'card' });
}

/** Starts the worker that looks at a running camera. It answers the messages of protocol/live-messages. */
export function startLiveWorker(): Worker {
  return new Worker(new URL('../workers/live/live.worker.ts', import.meta.url), { type: 'module', name: 'live' });
}

/** Starts the worker that measures sweeps. It answers the messages of protocol/sweep-messages. */
export function startSweepWorker(): Worker {
  return new Worker(new URL('../workers/sweep/sweep.worker.ts', import.meta.url), { type: 'module', name: 'sweep' });
}

/** Starts the worker that looks records through. It answers the messages of protocol/audit-messages. */
export function startAuditWorker(): Worker {
  return new Worker(new URL('../workers/audit/audit.worker.ts', import.meta.url), { type: 'module', name: 'audit' });
}
