import 'fake-indexeddb/auto';
import { openDB } from 'idb';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sampleSession } from '../../../tests/support/sample-sessions.js';
import { NOW, testedDatabases, valueOf } from '../../../tests/support/session-databases.js';
import { parseTypedSheet } from '../../core/record/kept-sheet.js';
import type { Invitation } from '../../session/invitation.js';
import { NEW_DESK } from '../../session/new-session.js';
import { withNewKey } from '../../session/practice-key.js';
import type { KeptPicture } from '../../session/session-store.js';
import { createSealing } from '../sealing.js';

const databases = testedDatabases();
const record = sampleSession(1);
const desk = { ...NEW_DESK, readerNames: { first: 'A', second: 'B' }, openSessionId: record.id };
const FIXTURES = new URL('../../../tests/fixtures/sessions/', import.meta.url);
const OLD_SHEET = readFileSync(new URL('version-2.sheet.json', FIXTURES), 'utf8');
const BLANK_SHEET = readFileSync(new URL('version-1.sheet.json', FIXTURES), 'utf8').replace(
  /"(63,5|32|10|about 150)"/g,
  '""',
);

const picture: KeptPicture = {
  id: 'p1',
  sessionId: record.id,
  takenAt: record.begunAt,
  consent: { at: record.begunAt, wording: 'Keep it', language: 'en' },
  keptUntil: '2026-12-24',
  widthPx: 2,
  heightPx: 1,
  bytes: new Uint8Array([255, 216, 1]),
};

describe.each([
  ['in the browser', databases.open],
  ['in memory', databases.inMemory],
])('%s', (_where, make) => {
  it('a desk is kept, and each takes the place of the one before', async () => {
    const { desk: desks } = await make();
    expect(valueOf(await desks.load())).toBeNull();
    valueOf(await desks.save(NEW_DESK));
    valueOf(await desks.save(desk));
    expect(valueOf(await desks.load())).toEqual(desk);
    await expect(desks.save({ ...desk, openSessionId: '?' })).rejects.toThrow('desk');
  });

  it('pictures are kept with what was agreed to, until their last day', async () => {
    const { pictures, sessions } = await make();
    expect(await pictures.keep(picture)).toEqual({ ok: false, failure: { kind: 'session-missing', id: record.id } });
    valueOf(await sessions.save(record, null));
    valueOf(await pictures.keep(picture));
    valueOf(await pictures.keep({ ...picture, id: 'p2', keptUntil: '2026-12-31' }));
    expect(valueOf(await pictures.ofSession(record.id))[0]).toEqual(picture);
    expect(valueOf(await pictures.removeExpired('2026-12-24'))).toBe(0);
    expect(valueOf(await pictures.removeExpired('2026-12-25'))).toBe(1);
    expect(valueOf(await pictures.ofSession(record.id)).map(({ id }) => id)).toEqual(['p2']);
    valueOf(await pictures.remove('p2'));
    expect(valueOf(await pictures.ofSession(record.id))).toEqual([]);
  });

  it.each([
    ['without a wording', { consent: { ...picture.consent, wording: '' } }],
    ['without a last day', { keptUntil: 'never' }],
    ['without a picture', { bytes: new Uint8Array(0) }],
    ['larger than any', { bytes: new Uint8Array(20_000_001) }],
  ])('a picture %s is not kept', async (_what, change) => {
    const { pictures, sessions } = await make();
    valueOf(await sessions.save(record, null));
    expect(() => pictures.keep({ ...picture, ...change })).toThrow('picture');
  });

  it('keys and invitations are kept', async () => {
    const { keys, invitations } = await make();
    expect(valueOf(await keys.load())).toEqual([]);
    const pair = valueOf(await createSealing().makeKeyPair());
    const kept = valueOf(await keys.update((known) => withNewKey(known, pair, new Date(NOW))));
    expect(kept).toHaveLength(1);
    expect(valueOf(await keys.load())).toEqual(kept);
    const invitation: Invitation = {
      id: 'AAAAAAAAAAAAAAAAAAAAAA',
      recipient: pair.recipient,
      practice: 'Corner',
      language: 'en',
      madeAt: '2026-11-25T10:00:00Z',
      expiresOn: '2026-12-01',
      cards: ['bought'],
      asksForPictures: false,
    };
    expect(valueOf(await invitations.load())).toEqual([]);
    const list = valueOf(await invitations.update({ kind: 'invited', invitation, wearer: '17' }));
    expect(list).toHaveLength(1);
    expect(valueOf(await invitations.load())).toEqual(list);
  });

  it('of two windows that make the first key one finds the other’s', async () => {
    const { keys } = await make();
    const pairs = [valueOf(await createSealing().makeKeyPair()), valueOf(await createSealing().makeKeyPair())];
    const outcomes = await Promise.all(
      pairs.map((pair) =>
        keys.update((known) => (known.length === 0 ? withNewKey(known, pair, new Date(NOW)) : known)),
      ),
    );
    expect(valueOf(outcomes[0]!)).toEqual(valueOf(outcomes[1]!));
    expect(valueOf(await keys.load())).toHaveLength(1);
  });
});

describe('a document that cannot be read', () => {
  const damaged = { revision: 4, version: 1, content: { kind: 'plain', json: '{"colour":"red"}', bytes: null } };

  it('is none where it is the desk or the list of invitations, and is moved aside by the next one', async () => {
    const database = await databases.open();
    const raw = await openDB('glabella');
    await raw.put('documents', { id: 'desk', ...damaged });
    await raw.put('documents', { id: 'invitations', colour: 'blue' });
    expect(valueOf(await database.desk.load())).toBeNull();
    expect(valueOf(await database.invitations.load())).toEqual([]);
    valueOf(await database.desk.save(desk));
    valueOf(await database.invitations.update({ kind: 'removed', invitationId: 'x' }));
    expect(valueOf(await database.desk.load())).toEqual(desk);
    const rows = JSON.stringify(await raw.getAll('documents'));
    expect(rows).toContain('red');
    expect(rows).toContain('blue');
    raw.close();
  });

  it('is never written over where it holds the keys', async () => {
    const database = await databases.open();
    const raw = await openDB('glabella');
    await raw.put('documents', { id: 'keys', ...damaged });
    const failure = { ok: false, failure: { kind: 'keys-damaged' } };
    expect(await database.keys.load()).toEqual(failure);
    expect(await database.keys.update(() => [])).toEqual(failure);
    expect(await raw.get('documents', 'keys')).toEqual({ id: 'keys', ...damaged });
    raw.close();
  });

  it('makes room for a backup where it holds the keys, and stays beside it', async () => {
    const database = await databases.open();
    const raw = await openDB('glabella');
    await raw.put('documents', { id: 'keys', ...damaged });
    const backup = withNewKey([], valueOf(await createSealing().makeKeyPair()), new Date(NOW));
    expect(valueOf(await database.keys.bringBack(backup, new Date(NOW)))).toEqual(backup);
    expect(valueOf(await database.keys.load())).toEqual(backup);
    expect(JSON.stringify(await raw.getAll('documents'))).toContain('red');
    raw.close();
  });

  it('is left out where it is a picture, and goes on its day all the same', async () => {
    const { pictures, sessions } = await databases.open();
    valueOf(await sessions.save(record, null));
    valueOf(await pictures.keep(picture));
    const raw = await openDB('glabella');
    await raw.put('pictures', { id: 'p2', sessionId: record.id, keptUntil: '2026-12-01', colour: 'red' });
    raw.close();
    expect(valueOf(await pictures.ofSession(record.id))).toEqual([picture]);
    expect(valueOf(await pictures.removeExpired('2026-12-02'))).toBe(1);
  });
});

describe('the sheet of versions before the database', () => {
  it('becomes the first session, with its desk', async () => {
    const database = await databases.open({ keptSheet: OLD_SHEET });
    expect(database.keptSheet).toBe('taken');
    const { records } = valueOf(await database.sessions.all());
    expect(records.map(({ sheet }) => sheet)).toEqual([parseTypedSheet(OLD_SHEET)]);
    expect(records[0]?.begunAt).toBe(NOW);
    expect(valueOf(await database.desk.load())).toEqual({
      settings: records[0]?.sheet.settings,
      readerNames: { first: 'A', second: 'B' },
      openSessionId: records[0]?.id,
    });
  });

  it('is taken once, even where it was not removed; another one is taken as well, and the desk stays', async () => {
    const first = await databases.open({ keptSheet: OLD_SHEET });
    valueOf(await first.desk.save(desk));
    const second = await databases.open({ keptSheet: OLD_SHEET });
    expect(second.keptSheet).toBe('taken');
    expect(valueOf(await second.sessions.all()).records).toHaveLength(1);
    const third = await databases.open({ keptSheet: OLD_SHEET.replace('"17"', '"18"') });
    expect(third.keptSheet).toBe('taken');
    expect(valueOf(await third.sessions.all()).records).toHaveLength(2);
    expect(valueOf(await third.desk.load())).toEqual(desk);
  });

  it('that is blank gives its desk only', async () => {
    const database = await databases.open({ keptSheet: BLANK_SHEET });
    expect(database.keptSheet).toBe('taken');
    expect(valueOf(await database.sessions.all()).records).toEqual([]);
    expect(valueOf(await database.desk.load())).toMatchObject({
      settings: { workingDistanceText: '350' },
      openSessionId: null,
    });
  });

  it('stays where it is when nothing can be written, when it cannot be read, and when nothing lasts', async () => {
    expect((await databases.open({ keptSheet: '{"version":2}' })).keptSheet).toBe('unreadable');
    expect((await databases.open()).keptSheet).toBe('none');
    const inMemory = await databases.inMemory({ keptSheet: OLD_SHEET });
    expect(inMemory.keptSheet).toBe('waiting');
    expect(valueOf(await inMemory.sessions.all()).records).toHaveLength(1);
    const database = await databases.open();
    valueOf(await database.lock.set('first'));
    expect((await databases.open({ keptSheet: OLD_SHEET })).keptSheet).toBe('waiting');
  });
});
