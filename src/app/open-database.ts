import { createMemoryDatabase, openSessionDatabase } from '../devices/session-database/session-database.js';
import type { SealingPort } from '../session/sealing.js';
import type { SessionDatabase } from '../session/session-database.js';
import type { StoreFailure } from '../session/session-store.js';

/** Where the sheet was kept before there was a database. */
const KEY = 'glabella.sheet';

/** The database, and why it keeps nothing beyond the page; null where it does. */
export interface OpenedDatabase {
  readonly database: SessionDatabase;
  readonly outage: StoreFailure | null;
}

/** All that is kept on this device; in a browser that keeps nothing, what is kept until the page is closed. */
export async function openDatabase(sealing: SealingPort): Promise<OpenedDatabase> {
  const options = {
    sealing,
    keptSheet: keptSheet(),
    newId: () => crypto.randomUUID(),
    now: () => new Date(),
  };
  const opened = await openSessionDatabase(options);
  if (!opened.ok) return { database: await createMemoryDatabase(options), outage: opened.failure };
  if (opened.value.keptSheet === 'taken') forgetKeptSheet();
  return { database: opened.value, outage: null };
}

function keptSheet(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

function forgetKeptSheet(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // It is taken no second time: the database knows that it has been.
  }
}
