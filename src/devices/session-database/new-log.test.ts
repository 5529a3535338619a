import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { sampleSession } from '../../../tests/support/sample-sessions.js';
import { testedDatabases, valueOf } from '../../../tests/support/session-databases.js';

const databases = testedDatabases();
const CHROMIUM =
  'Mozilla/5.0 (X11; Linux x86_64) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/156.0.0.0 Safari/537.36';
const FIREFOX = 'Mozilla/5.0 (X11; Linux x86_64; rv:150.0) Gecko/20100101 Firefox/150.0';

/** Counts the bytes that are put under numbers, as only fillers are. */
function watchFilling(): { bytes: number } {
  const seen = { bytes: 0 };
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const put = IDBObjectStore.prototype.put;
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...words) {
    if (words[0] instanceof Uint8Array) seen.bytes += words[0].length;
    return put.apply(this, words);
  });
  return seen;
}

afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe('a new log', () => {
  it('is begun by Chromium at each start: more is written than a log takes, and nothing of it stays', async () => {
    vi.stubGlobal('navigator', { userAgent: CHROMIUM });
    const seen = watchFilling();
    const { sessions } = await databases.open();
    await vi.waitFor(() => expect(seen.bytes).toBeGreaterThan(4 * 2 ** 20));
    expect(await sessions.save(sampleSession(1), null)).toEqual({ ok: true, value: 1 });
    const raw = await openDB('glabella');
    await vi.waitFor(async () => expect(await raw.count('filler')).toBe(0));
    raw.close();
  });

  it('is left to the other browsers', async () => {
    vi.stubGlobal('navigator', { userAgent: FIREFOX });
    const seen = watchFilling();
    const { sessions } = await databases.open();
    await sessions.save(sampleSession(1), null);
    expect(seen.bytes).toBe(0);
  });

  it('is done without where there is no room for it', async () => {
    vi.stubGlobal('navigator', { userAgent: CHROMIUM });
    // eslint-disable-next-line @typescript-eslint/unbound-method
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...words) {
      if (words[0] instanceof Uint8Array) throw new DOMException('full', 'QuotaExceededError');
      return put.apply(this, words);
    });
    const { sessions } = await databases.open();
    const record = sampleSession(1);
    expect(await sessions.save(record, null)).toEqual({ ok: true, value: 1 });
    expect(valueOf(await sessions.all()).records).toEqual([record]);
  });
});
