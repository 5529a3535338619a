import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { sampleSession } from '../../../tests/support/sample-sessions.js';
import { testedDatabases, valueOf } from '../../../tests/support/session-databases.js';
import { openIndexedRows } from './indexed-rows.js';
import { storeFailureOf } from './store-failure.js';

const databases = testedDatabases();
const record = sampleSession(1);

afterEach(() => {
  vi.restoreAllMocks();
});

/** The browser refuses what is put for the second time within a transaction, and later. */
function refuseSecondPut(name: string): void {
  // called on the store below
  // eslint-disable-next-line @typescript-eslint/unbound-method
  const put = IDBObjectStore.prototype.put;
  const counts = new WeakMap<IDBTransaction, number>();
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...words) {
    const count = (counts.get(this.transaction) ?? 0) + 1;
    counts.set(this.transaction, count);
    if (count > 1) throw new DOMException('refused', name);
    return put.apply(this, words);
  });
}

describe('a write that the browser refuses half-way', () => {
  it.each([
    ['QuotaExceededError', 'storage-full'],
    ['UnknownError', 'storage-broken'],
    ['NotAllowedError', 'storage-refused'],
  ])('with %s leaves nothing half written, and says %s', async (name, kind) => {
    const { sessions } = await databases.open();
    refuseSecondPut(name);
    expect(await sessions.save(record, null)).toEqual({ ok: false, failure: { kind } });
    expect(await sessions.bring([record, sampleSession(2)])).toEqual({ ok: false, failure: { kind } });
    vi.restoreAllMocks();
    expect(valueOf(await sessions.all())).toEqual({ records: [], unreadable: [] });
    expect(valueOf(await sessions.summaries())).toEqual({ summaries: [], unreadable: 0 });
    expect(await sessions.save(record, null)).toEqual({ ok: true, value: 1 });
  });

  it('leaves the state before where it aborts the transaction', async () => {
    const { sessions } = await databases.open();
    await sessions.save(record, null);
    // eslint-disable-next-line @typescript-eslint/unbound-method
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...words) {
      const request = put.apply(this, words);
      request.addEventListener('success', () => this.transaction.abort());
      return request;
    });
    const changed = { ...record, changedAt: '2027-01-01T00:00:00Z' };
    expect(await sessions.save(changed, 1)).toEqual({ ok: false, failure: { kind: 'storage-broken' } });
    vi.restoreAllMocks();
    expect(valueOf(await sessions.load(record.id))).toEqual({ record, revision: 1 });
  });

  it('throws on where the browser was given what it cannot keep: that is a mistake of ours', async () => {
    const { sessions } = await databases.open();
    refuseSecondPut('DataCloneError');
    await expect(sessions.save(record, null)).rejects.toThrow('refused');
    vi.restoreAllMocks();
    expect(valueOf(await sessions.all()).records).toEqual([]);
  });
});

describe('a database that cannot be opened', () => {
  it('is refused where the browser has none', async () => {
    vi.stubGlobal('indexedDB', undefined);
    expect(await databases.tryToOpen()).toEqual({ ok: false, failure: { kind: 'storage-refused' } });
    vi.unstubAllGlobals();
  });

  it.each([
    ['SecurityError', 'storage-refused'],
    ['InvalidStateError', 'storage-refused'],
    ['QuotaExceededError', 'storage-full'],
    ['UnknownError', 'storage-broken'],
  ])('is told by %s as %s', async (name, kind) => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('refused', name);
    });
    expect(await databases.tryToOpen()).toEqual({ ok: false, failure: { kind } });
  });

  it('is refused where even asking for it is', async () => {
    const property = Object.getOwnPropertyDescriptor(globalThis, 'indexedDB');
    Object.defineProperty(globalThis, 'indexedDB', {
      configurable: true,
      get: () => {
        throw new DOMException('a sandboxed frame', 'SecurityError');
      },
    });
    expect(await databases.tryToOpen()).toEqual({ ok: false, failure: { kind: 'storage-refused' } });
    Object.defineProperty(globalThis, 'indexedDB', property ?? {});
  });

  it('because a later version was here is left as it is', async () => {
    const newer = await openDB('glabella', 99, {
      upgrade: (database) => void database.createObjectStore('souls', { keyPath: 'id' }),
    });
    await newer.put('souls', { id: 'a', weight: 21 });
    newer.close();
    expect(await databases.tryToOpen()).toEqual({ ok: false, failure: { kind: 'storage-newer' } });
    const again = await openDB('glabella', 99);
    expect(await again.get('souls', 'a')).toEqual({ id: 'a', weight: 21 });
    again.close();
  });

  it('because something holds it is given up after a while', async () => {
    // A page of something else that does not let go, and someone who waits for that before us.
    const holding = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open('glabella', 1);
      request.addEventListener('success', () => resolve(request.result));
    });
    indexedDB.deleteDatabase('glabella');
    expect(await openIndexedRows(50)).toEqual({ ok: false, failure: { kind: 'storage-broken' } });
    holding.close();
    expect((await databases.tryToOpen()).ok).toBe(true);
  });
});

describe('an open database', () => {
  it('lets a later version of the app go on, and asks to be loaded anew', async () => {
    const { sessions } = await databases.open();
    await sessions.save(record, null);
    const newer = await openDB('glabella', 99);
    expect(await sessions.load(record.id)).toEqual({ ok: false, failure: { kind: 'storage-newer' } });
    expect(await sessions.save(record, 1)).toEqual({ ok: false, failure: { kind: 'storage-newer' } });
    expect(await newer.get('sessions', record.id)).toMatchObject({ revision: 1 });
    newer.close();
  });

  it('is opened again where it was deleted under the page', async () => {
    const { sessions } = await databases.open();
    await sessions.save(record, null);
    await new Promise((resolve) => {
      indexedDB.deleteDatabase('glabella').addEventListener('success', resolve);
    });
    expect(await sessions.load(record.id)).toMatchObject({ failure: { kind: 'session-missing' } });
    expect(await sessions.save(record, null)).toEqual({ ok: true, value: 1 });
  });

  it('is opened again where the browser had closed it', async () => {
    const { sessions } = await databases.open();
    // eslint-disable-next-line @typescript-eslint/unbound-method
    const transaction = IDBDatabase.prototype.transaction;
    let isClosed = false;
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...words) {
      if (!isClosed) {
        isClosed = true;
        throw new DOMException('The database connection is closing.', 'InvalidStateError');
      }
      return transaction.apply(this, words);
    });
    expect(await sessions.save(record, null)).toEqual({ ok: true, value: 1 });
    expect(isClosed).toBe(true);
  });

  it('that stops answering is given up, and what it was to write is taken back', async () => {
    const rows = valueOf(await openIndexedRows(50));
    const never = new Promise<never>(() => undefined);
    // keeps its transaction alive, as a disk that hangs does
    const stuck = rows.write(async (writing) => {
      writing.put('meta', { id: 'x' });
      for (let at = Date.now(); Date.now() - at < 10_000;) await writing.one('meta', 'x');
      return never;
    });
    expect(await stuck).toEqual({ ok: false, failure: { kind: 'storage-broken' } });
    expect(await rows.read((reading) => reading.one('meta', 'x'))).toEqual({ ok: true, value: undefined });
    rows.close();
  });

  it('writes to the disk before it says so', async () => {
    const { sessions } = await databases.open();
    const asked = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await sessions.save(record, null);
    expect(asked.mock.calls.filter(([, mode]) => mode === 'readwrite').map(([, , options]) => options)).toEqual([
      { durability: 'strict' },
    ]);
  });

  it('says that it is broken once it was closed', async () => {
    const database = await databases.open();
    database.close();
    database.close();
    expect(await database.sessions.all()).toEqual({ ok: false, failure: { kind: 'storage-broken' } });
  });
});

describe('a reason that is no refusal of the browser', () => {
  it('is a bug and is thrown on', () => {
    expect(() => storeFailureOf(new TypeError('x'))).toThrow('x');
    expect(storeFailureOf(new DOMException('', 'VersionError'))).toEqual({ kind: 'storage-newer' });
  });
});
