import type { SessionDatabase } from '../devices/session-database/session-database.js';
import { createMemoryDatabase, openSessionDatabase } from '../devices/session-database/session-database.js';
import type { SealingPort } from '../session/sealing.js';

/** Where the sheet was kept before there was a database. */
const KEY = 'glabella.sheet';

/** All that is kept on this device; in a browser that keeps nothing, what is kept until the page is closed. */
export async function openDatabase(sealing: SealingPort): Promise<SessionDatabase> {
  const options = {
    sealing,
    keptSheet: keptSheet(),
    newId: () => crypto.randomUUID(),
    now: () => new Date(),
  };
  const opened = await openSessionDatabase(options);
  if (!opened.ok) return createMemoryDatabase(options);
  if (opened.value.keptSheet === 'taken') forgetKeptSheet();
  return opened.value;
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
