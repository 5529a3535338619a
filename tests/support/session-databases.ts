import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach } from 'vitest';
import type { Result } from '../../src/core/result.js';
import { createSealing } from '../../src/devices/sealing.js';
import type {
  OpenedSessionDatabase,
  SessionDatabaseOptions,
} from '../../src/devices/session-database/session-database.js';
import { createMemoryDatabase, openSessionDatabase } from '../../src/devices/session-database/session-database.js';

export const NOW = '2026-11-25T10:00:00.000Z';

/** What was expected to succeed. */
export function valueOf<Value>(result: Result<Value, unknown>): Value {
  if (!result.ok) throw new Error(`expected a value, got ${JSON.stringify(result.failure)}`);
  return result.value;
}

export interface TestedDatabases {
  /** One more window on the same disk. */
  readonly open: (changes?: Partial<SessionDatabaseOptions>) => Promise<OpenedSessionDatabase>;
  readonly inMemory: (changes?: Partial<SessionDatabaseOptions>) => Promise<OpenedSessionDatabase>;
  readonly tryToOpen: () => ReturnType<typeof openSessionDatabase>;
}

/** Databases on a disk that is empty at the beginning of each test; all are closed at its end. */
export function testedDatabases(): TestedDatabases {
  let count = 0;
  const opened: OpenedSessionDatabase[] = [];
  const options: SessionDatabaseOptions = {
    // scrypt with as little work as it can be done: the format stays the same
    sealing: createSealing({ scryptWorkFactor: 1 }),
    keptSheet: null,
    newId: () => `made-${(count += 1)}`,
    now: () => new Date(NOW),
  };
  const tryToOpen = async (changes: Partial<SessionDatabaseOptions> = {}): ReturnType<typeof openSessionDatabase> => {
    const database = await openSessionDatabase({ ...options, ...changes });
    if (database.ok) opened.push(database.value);
    return database;
  };
  beforeEach(() => {
    count = 0;
    globalThis.indexedDB = new IDBFactory();
  });
  afterEach(() => {
    for (const database of opened.splice(0)) database.close();
  });
  return {
    open: async (changes) => valueOf(await tryToOpen(changes)),
    inMemory: (changes) => createMemoryDatabase({ ...options, ...changes }),
    tryToOpen,
  };
}
