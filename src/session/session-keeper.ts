import type { SessionRecord } from '../core/record/session-record.js';
import { fail } from '../core/result.js';
import { isBlank } from './new-session.js';
import type { SessionStore, StoredSession, StoreFailure } from './session-store.js';

/** Whether what stands on the screen stands on the disk as well. */
export type Keeping =
  /** all of it; `revision` is null while the session is still blank and not kept at all */
  | { readonly kind: 'kept'; readonly revision: number | null }
  | { readonly kind: 'keeping' }
  /** the newest state is only on the screen */
  | { readonly kind: 'not-kept'; readonly failure: StoreFailure };

/** Keeps one session at a time: every change is written at once, or as soon as the write before it is done. */
export interface SessionKeeper {
  /** From now on this is the session that is kept; what was still to be written of the one before is written all the same. */
  readonly open: (session: { readonly record: SessionRecord; readonly revision: number | null }) => void;
  /** The session as it stands on the screen, kept or not; null before the first was opened. */
  readonly record: () => SessionRecord | null;
  readonly keeping: () => Keeping;
  /** Takes the session as it is now. A record of another session than the open one is not taken. */
  readonly take: (record: SessionRecord) => void;
  /** Tries once more to write what could not be kept. */
  readonly tryAgain: () => void;
  /** Resolves when nothing is being written any more. */
  readonly settled: () => Promise<void>;
  /** Calls the listener when `keeping` changed. Returns stops listening. */
  readonly subscribe: (listener: () => void) => () => void;
}

/** What a keeper tells besides whether the open session is kept. */
export interface KeeperNews {
  /** after each write, with what stands on the disk now */
  readonly onWritten: (written: StoredSession) => void;
  /** the store did what it never should; the session counts as not kept */
  readonly onFault: (reason: unknown) => void;
}

export function createSessionKeeper(store: SessionStore, { onWritten, onFault }: KeeperNews): SessionKeeper {
  const listeners = new Set<() => void>();
  let open: Slot | null = null;
  /** slots with something to write, the oldest first; one of them is being written */
  const waiting: Slot[] = [];
  let writing: Promise<void> | null = null;

  const change = (slot: Slot, keeping: Keeping): void => {
    slot.keeping = keeping;
    if (slot === open) for (const listener of listeners) listener();
  };

  const write = async (): Promise<void> => {
    for (let slot = waiting[0]; slot !== undefined; slot = waiting[0]) {
      const { record } = slot;
      const saved = await store.save(record, slot.revision).catch((reason: unknown) => {
        onFault(reason);
        return fail<StoreFailure>({ kind: 'storage-broken' });
      });
      if (saved.ok) {
        slot.revision = saved.value;
        onWritten({ record, revision: saved.value });
      }
      // what was typed meanwhile comes next, unless it would meet the same refusal
      if (saved.ok && slot.record !== record) continue;
      waiting.shift();
      change(slot, saved.ok ? { kind: 'kept', revision: saved.value } : { kind: 'not-kept', failure: saved.failure });
    }
    writing = null;
  };

  const queue = (slot: Slot): void => {
    if (!waiting.includes(slot)) waiting.push(slot);
    if (slot.keeping.kind !== 'keeping') change(slot, { kind: 'keeping' });
    writing ??= write();
  };

  return {
    open: ({ record, revision }) => {
      open = { record, revision, keeping: { kind: 'kept', revision } };
      for (const listener of listeners) listener();
    },
    record: () => open?.record ?? null,
    keeping: () => open?.keeping ?? NOTHING_KEPT,
    take: (record) => {
      if (open === null || open.record.id !== record.id || open.record === record) return;
      open.record = record;
      // a blank sheet is no session yet, and what someone else wrote is not to be overwritten by trying again
      if (open.revision === null && isBlank(record)) return;
      if (isContested(open.keeping)) return;
      queue(open);
    },
    tryAgain: () => {
      if (open?.keeping.kind === 'not-kept' && !isContested(open.keeping)) queue(open);
    },
    settled: async () => {
      while (writing !== null) await writing;
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

interface Slot {
  record: SessionRecord;
  revision: number | null;
  keeping: Keeping;
}

const NOTHING_KEPT: Keeping = { kind: 'kept', revision: null };

function isContested(keeping: Keeping): boolean {
  return keeping.kind === 'not-kept' && keeping.failure.kind === 'changed-elsewhere';
}
