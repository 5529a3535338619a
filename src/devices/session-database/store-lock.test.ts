import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { describe, expect, it, vi } from 'vitest';
import { sampleSession, sampleSessions } from '../../../tests/support/sample-sessions.js';
import { testedDatabases, valueOf } from '../../../tests/support/session-databases.js';
import { summaryOf } from '../../core/record/session-record.js';
import { NEW_DESK } from '../../session/new-session.js';
import type { KeptPicture } from '../../session/session-store.js';
import { createSealing } from '../sealing.js';
import type { SessionDatabase } from '../../session/session-database.js';

const databases = testedDatabases();
const record = sampleSession(1, { sheet: { ...sampleSession(1).sheet, notes: named('Quetzalcoatl') } });
const picture: KeptPicture = {
  id: 'p1',
  sessionId: record.id,
  takenAt: record.begunAt,
  consent: { at: record.begunAt, wording: 'Quetzalcoatl agrees', language: 'en' },
  keptUntil: '2026-12-24',
  widthPx: 2,
  heightPx: 1,
  bytes: new TextEncoder().encode('Quetzalcoatl in JPEG'),
};
const desk = { ...NEW_DESK, readerNames: { first: 'Quetzalcoatl', second: '' }, openSessionId: record.id };
const LOCKED = { ok: false, failure: { kind: 'storage-locked' } };

function named(wearer: string): ReturnType<typeof sampleSession>['sheet']['notes'] {
  return { wearer, squint: false, light: null, remark: '' };
}

async function fill({ sessions, pictures, desk: desks }: SessionDatabase): Promise<void> {
  valueOf(await sessions.save(record, null));
  valueOf(await pictures.keep(picture));
  valueOf(await desks.save(desk));
}

async function expectAll({ sessions, pictures, desk: desks }: SessionDatabase): Promise<void> {
  expect(valueOf(await sessions.load(record.id)).record).toEqual(record);
  expect(valueOf(await sessions.summaries()).summaries).toEqual([summaryOf(record)]);
  expect(valueOf(await pictures.ofSession(record.id))).toEqual([picture]);
  expect(valueOf(await desks.load())).toEqual(desk);
}

/** All that stands on the disk, as bytes that are read as text. */
async function wholeDisk(): Promise<string> {
  const raw = await openDB('glabella');
  const rows = await Promise.all([...raw.objectStoreNames].map((table) => raw.getAll(table)));
  raw.close();
  return JSON.stringify(rows, (_name, value: unknown) =>
    value instanceof Uint8Array ? new TextDecoder('latin1').decode(value) : value,
  );
}

describe.each([
  ['in the browser', databases.open],
  ['in memory', databases.inMemory],
])('a lock %s', (_where, make) => {
  it('closes, opens with its passphrase only, and loses nothing', async () => {
    const database = await make();
    const { lock, sessions } = database;
    await fill(database);
    expect(valueOf(await lock.state())).toBe('none');
    valueOf(await lock.set('correct horse'));
    expect(valueOf(await lock.state())).toBe('open');
    await expectAll(database);
    lock.lock();
    expect(valueOf(await lock.state())).toBe('locked');
    expect(await lock.unlock('wrong horse')).toEqual({ ok: false, failure: { kind: 'passphrase-wrong' } });
    expect(await sessions.all()).toEqual(LOCKED);
    valueOf(await lock.unlock('correct horse'));
    await expectAll(database);
    expect(valueOf(await sessions.load(record.id)).revision).toBe(1);
    expect(await sessions.save({ ...record, changedAt: '2027-01-01T00:00:00Z' }, 1)).toEqual({ ok: true, value: 2 });
  });

  it('that is closed gives nothing out and takes nothing in', async () => {
    const { lock, sessions, pictures, desk: desks, keys, invitations } = await make();
    valueOf(await lock.set('correct horse'));
    lock.lock();
    const outcomes = await Promise.all([
      sessions.all(),
      sessions.load(record.id),
      sessions.summaries(),
      sessions.save(record, null),
      sessions.bring([record]),
      sessions.remove([record.id]),
      pictures.ofSession(record.id),
      pictures.keep(picture),
      pictures.remove('p1'),
      desks.load(),
      desks.save(desk),
      keys.load(),
      keys.update((known) => known),
      invitations.load(),
      lock.set('another'),
      lock.remove(),
    ]);
    expect(outcomes.filter((outcome) => JSON.stringify(outcome) !== JSON.stringify(LOCKED))).toEqual([]);
  });

  it('takes another passphrase, and the first one opens nothing any more', async () => {
    const database = await make();
    await fill(database);
    valueOf(await database.lock.set('first'));
    valueOf(await database.lock.set('second'));
    database.lock.lock();
    expect(await database.lock.unlock('first')).toMatchObject({ failure: { kind: 'passphrase-wrong' } });
    valueOf(await database.lock.unlock('second'));
    await expectAll(database);
  });

  it('can be taken away', async () => {
    const database = await make();
    await fill(database);
    valueOf(await database.lock.set('first'));
    valueOf(await database.lock.remove());
    expect(valueOf(await database.lock.state())).toBe('none');
    database.lock.lock();
    await expectAll(database);
  });

  it('needs a passphrase', async () => {
    const { lock } = await make();
    expect(await lock.set('')).toEqual({ ok: false, failure: { kind: 'passphrase-empty' } });
    expect(valueOf(await lock.state())).toBe('none');
    expect(await lock.unlock('x')).toEqual({ ok: true, value: null });
  });

  it('keeps a picture no longer than it may, even while it is closed', async () => {
    const database = await make();
    await fill(database);
    valueOf(await database.lock.set('first'));
    database.lock.lock();
    expect(valueOf(await database.pictures.removeExpired('2026-12-24'))).toBe(0);
    expect(valueOf(await database.pictures.removeExpired('2026-12-25'))).toBe(1);
    valueOf(await database.lock.unlock('first'));
    expect(valueOf(await database.pictures.ofSession(record.id))).toEqual([]);
  });
});

describe('a lock on the disk', () => {
  it('leaves no readable word there', async () => {
    const database = await databases.open();
    await fill(database);
    expect(await wholeDisk()).toContain('Quetzalcoatl');
    valueOf(await database.lock.set('correct horse'));
    valueOf(await database.sessions.save({ ...record, changedAt: '2027-01-01T00:00:00Z' }, 1));
    const disk = await wholeDisk();
    expect(disk).not.toContain('Quetzalcoatl');
    expect(disk).not.toContain('2027-01-01');
    expect(disk).not.toContain('correct horse');
    expect(disk).toContain(record.id);
  });

  it('stands after the page was closed', async () => {
    const before = await databases.open();
    await fill(before);
    valueOf(await before.lock.set('correct horse'));
    before.close();
    const after = await databases.open();
    expect(valueOf(await after.lock.state())).toBe('locked');
    expect(await after.sessions.summaries()).toEqual(LOCKED);
    valueOf(await after.lock.unlock('correct horse'));
    await expectAll(after);
  });

  it('is learned of by other windows, whichever way it changes', async () => {
    const [one, other] = [await databases.open(), await databases.open()];
    await fill(one);
    const heard = vi.fn();
    other.sessions.onChangedElsewhere(heard);
    valueOf(await one.lock.set('first'));
    await vi.waitFor(() => expect(heard).toHaveBeenCalledWith(null));
    expect(valueOf(await other.lock.state())).toBe('locked');
    expect(await other.sessions.load(record.id)).toEqual(LOCKED);
    expect(await other.sessions.save(record, 1)).toEqual(LOCKED);
    valueOf(await other.lock.unlock('first'));
    await expectAll(other);
    valueOf(await other.lock.set('second'));
    expect(await one.sessions.save(record, 1)).toEqual(LOCKED);
    valueOf(await other.lock.remove());
    await expectAll(one);
    expect(valueOf(await one.lock.state())).toBe('none');
  });

  it('takes what another window writes meanwhile along', async () => {
    const [one, other] = [await databases.open(), await databases.open()];
    await one.sessions.bring(sampleSessions(30));
    const changed = { ...sampleSession(3), changedAt: '2027-01-01T00:00:00Z' };
    const [set, saved] = await Promise.all([one.lock.set('first'), other.sessions.save(changed, 1)]);
    expect(set.ok).toBe(true);
    const { records } = valueOf(await one.sessions.all());
    expect(records).toHaveLength(30);
    // it was written before the lock, or refused because of it
    expect(records.find(({ id }) => id === changed.id)).toEqual(saved.ok ? changed : sampleSession(3));
    expect(await wholeDisk()).not.toContain('"wearer"');
  });

  it('is all or nothing', async () => {
    const database = await databases.open();
    await fill(database);
    // eslint-disable-next-line @typescript-eslint/unbound-method
    const put = IDBObjectStore.prototype.put;
    let count = 0;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...words) {
      if ((count += 1) === 3) throw new DOMException('refused', 'QuotaExceededError');
      return put.apply(this, words);
    });
    expect(await database.lock.set('first')).toEqual({ ok: false, failure: { kind: 'storage-full' } });
    vi.restoreAllMocks();
    expect(valueOf(await database.lock.state())).toBe('none');
    await expectAll(database);
  });

  it('seals what is damaged as well, and gives it out afterwards', async () => {
    const database = await databases.open();
    const raw = await openDB('glabella');
    await raw.put('sessions', { id: 'bad', colour: 'Quetzalcoatl' });
    valueOf(await database.lock.set('first'));
    expect(await wholeDisk()).not.toContain('Quetzalcoatl');
    expect(valueOf(await database.sessions.all()).unreadable[0]?.raw).toContain('Quetzalcoatl');
    raw.close();
  });

  it('tells a row that was put in the place of another, or changed, from a session', async () => {
    const database = await databases.open();
    await database.sessions.bring([sampleSession(2), sampleSession(3)]);
    valueOf(await database.lock.set('first'));
    const raw = await openDB('glabella');
    const [one, other] = (await raw.getAll('sessions')) as { id: string; content: { sealed: Uint8Array } }[];
    await raw.put('sessions', { ...one, content: other!.content });
    other!.content.sealed[7]! ^= 1;
    await raw.put('sessions', other);
    expect(valueOf(await database.sessions.all())).toMatchObject({ records: [], unreadable: [{}, {}] });
    // what nothing opens stays as it is through another change of the lock
    valueOf(await database.lock.remove());
    expect(await raw.get('sessions', other!.id)).toEqual(other);
    raw.close();
  });

  it('that is damaged itself opens with nothing, and nothing is written past it', async () => {
    const database = await databases.open();
    await fill(database);
    valueOf(await database.lock.set('first'));
    database.lock.lock();
    const raw = await openDB('glabella');
    await raw.put('meta', { id: 'lock', keyId: 5 });
    raw.close();
    expect(valueOf(await database.lock.state())).toBe('locked');
    expect(await database.lock.unlock('first')).toEqual({ ok: false, failure: { kind: 'storage-broken' } });
    expect(await database.sessions.save(record, 1)).toEqual(LOCKED);
  });

  it('says where it cannot be made here', async () => {
    const sealing = createSealing({ load: () => Promise.reject(new Error('offline')) });
    const { lock } = await databases.open({ sealing });
    expect(await lock.set('first')).toEqual({ ok: false, failure: { kind: 'sealing-not-loadable' } });
    vi.stubGlobal('crypto', { getRandomValues: crypto.getRandomValues.bind(crypto) });
    expect(await lock.set('first')).toEqual({ ok: false, failure: { kind: 'sealing-unsupported' } });
    vi.unstubAllGlobals();
    expect(valueOf(await lock.state())).toBe('none');
  });
});
