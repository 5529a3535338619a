import type { IDBPDatabase } from 'idb';

/** The table that holds nothing for longer than it takes. */
export const FILLER_TABLE = 'filler';

/** Chosen: Chromium begins a new log at 4 MiB; values of 64 KiB and more it would put beside it into files of their own. */
const FILLERS = 84;
const FILLER_BYTES = 60_000;

/**
 * Makes Chromium begin a new log for its database, in the background.
 *
 * Chromium keeps databases as LevelDB. Where it is killed while it writes a record in two pieces, the log ends in half a record; the
 * next start passes over that, but goes on writing behind it, and the start after that takes the whole log for damaged and deletes
 * the database with all that was ever kept in it. Seen with Chromium 156 about once in a hundred kills, while something was
 * written all the time; the console then says “IndexedDB (database was corrupt): checksum mismatch”. Once a new log was begun, the
 * one with half a record is no longer needed. Whatever goes wrong here leaves things as they were.
 */
export async function beginNewLog(database: IDBPDatabase): Promise<void> {
  if (!isChromium()) return;
  try {
    const filling = database.transaction(FILLER_TABLE, 'readwrite');
    // it is awaited below, but may fail before that
    filling.done.catch(() => null);
    const fillers = Array.from({ length: FILLERS }, (_, place) =>
      filling.store.put(new Uint8Array(FILLER_BYTES), place),
    );
    await Promise.all([...fillers, filling.done]);
    // in one transaction with the filling, the browser would write neither
    await database.clear(FILLER_TABLE);
  } catch (reason) {
    // full, or closed meanwhile: nothing depends on it
    if (!(reason instanceof DOMException)) throw reason;
  }
}

/** All browsers that are made from Chromium say so. Where tests run there may be no browser at all. */
function isChromium(): boolean {
  const { userAgent = '' } = (globalThis.navigator as Navigator | undefined) ?? {};
  return /\bChrom(e|ium)\//.test(userAgent);
}
