import type { OfflineStatus } from '../session/offline.js';
import { OFFLINE_UNKNOWN } from '../session/offline.js';

/** The status and those who are told of its changes. */
export interface Watched {
  status(): OfflineStatus;
  subscribe(listener: () => void): () => void;
  change(change: Partial<OfflineStatus>): void;
}

/** Begins with nothing known. */
export function createWatched(): Watched {
  let status = OFFLINE_UNKNOWN;
  const listeners = new Set<() => void>();
  return {
    status: () => status,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    change(change) {
      status = { ...status, ...change };
      for (const listener of listeners) listener();
    },
  };
}
