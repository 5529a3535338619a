import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { openDB } from 'idb';
import { describe, expect, it, vi } from 'vitest';
import { sampleSession, sampleSessions } from '../../../tests/support/sample-sessions.js';
import { sessionArbitrary } from '../../../tests/support/session-arbitrary.js';
import { testedDatabases, valueOf } from '../../../tests/support/session-databases.js';
import type { SessionRecord } from '../../core/record/session-record.js';
import { summaryOf } from '../../core/record/session-record.js';

const databases = testedDatabases();
const record = sampleSession(1);

/** The session with one more entry of the first reader, so many minutes later. */
function continued(session: SessionRecord, text: string, minutes = 1): SessionRecord {
  const changedAt = new Date(Date.parse(session.changedAt) + minutes * 60_000).toISOString();
  const { sheet } = session;
  const { first } = sheet.readers;
  const history = [...first.history, { name: 'pdFar' as const, text, by: 'A', at: changedAt }];
  const changed = { ...first, readings: { ...first.readings, pdFar: text }, history };
  return { ...session, changedAt, sheet: { ...sheet, readers: { ...sheet.readers, first: changed } } };
}

/** Puts a row into the database as no version of the app would. */
async function putRaw(table: string, row: object): Promise<void> {
  const raw = await openDB('glabella');
  await raw.put(table, row);
  raw.close();
}

describe.each([
  ['in the browser', databases.open],
  ['in memory', databases.inMemory],
])('a store of sessions %s', (_where, make) => {
  it('gives back what it was given', async () => {
    const { sessions } = await make();
    expect(await sessions.save(record, null)).toEqual({ ok: true, value: 1 });
    expect(await sessions.load(record.id)).toEqual({ ok: true, value: { record, revision: 1 } });
    expect(await sessions.all()).toEqual({ ok: true, value: { records: [record], unreadable: [] } });
    expect(valueOf(await sessions.summaries())).toEqual({ summaries: [summaryOf(record)], unreadable: 0 });
  });

  it('gives back any text that a field may hold', async () => {
    const { sessions } = await make();
    await fc.assert(
      fc.asyncProperty(sessionArbitrary, async (any) => {
        valueOf(await sessions.save(any, null));
        expect(valueOf(await sessions.load(any.id)).record).toEqual(any);
      }),
      { numRuns: 100 },
    );
  });

  it('lists what was changed last first, whatever the time zone', async () => {
    const { sessions } = await make();
    const times = ['2026-11-25T10:00:00.000Z', '2026-11-25T12:30:00+03:00', '2026-11-25T11:30:00+01:00'];
    for (const [seed, changedAt] of times.entries()) await sessions.save(sampleSession(seed, { changedAt }), null);
    const { summaries } = valueOf(await sessions.summaries());
    expect(summaries.map(({ changedAt }) => changedAt)).toEqual([times[2], times[0], times[1]]);
  });

  it('knows nothing of a session that was never saved', async () => {
    const { sessions } = await make();
    const failure = { kind: 'session-missing', id: 'x' };
    expect(await sessions.load('x')).toEqual({ ok: false, failure });
    expect(await sessions.save({ ...record, id: 'x' }, 3)).toEqual({ ok: false, failure });
    expect(valueOf(await sessions.remove(['x']))).toBeNull();
  });

  it('writes only over what the writer has read', async () => {
    const { sessions } = await make();
    await sessions.save(record, null);
    const failure = { kind: 'changed-elsewhere', id: record.id };
    expect(await sessions.save(continued(record, '1'), null)).toEqual({ ok: false, failure });
    expect(await sessions.save(continued(record, '2'), 2)).toEqual({ ok: false, failure });
    expect(valueOf(await sessions.load(record.id)).record).toEqual(record);
    expect(await sessions.save(continued(record, '3'), 1)).toEqual({ ok: true, value: 2 });
    expect(valueOf(await sessions.load(record.id))).toEqual({ record: continued(record, '3'), revision: 2 });
  });

  it('throws where it is given what is no session', async () => {
    const { sessions } = await make();
    const none = { ...record, begunAt: 'yesterday' };
    await expect(sessions.save(none, null)).rejects.toThrow('begunAt');
    await expect(sessions.bring([record, none])).rejects.toThrow('begunAt');
    expect(valueOf(await sessions.all()).records).toEqual([]);
  });

  it('removes sessions for good, with their pictures', async () => {
    const { sessions, pictures } = await make();
    const other = sampleSession(2);
    await sessions.save(record, null);
    await sessions.save(other, null);
    const picture = {
      takenAt: record.begunAt,
      consent: { at: record.begunAt, wording: 'Keep it', language: 'en' },
      keptUntil: '2026-12-24',
      widthPx: 2,
      heightPx: 1,
      bytes: new Uint8Array([255, 216, 1]),
    };
    valueOf(await pictures.keep({ ...picture, id: 'p1', sessionId: record.id }));
    valueOf(await pictures.keep({ ...picture, id: 'p2', sessionId: other.id }));
    valueOf(await sessions.remove([record.id]));
    expect(await sessions.load(record.id)).toMatchObject({ failure: { kind: 'session-missing' } });
    expect(valueOf(await sessions.summaries()).summaries).toEqual([summaryOf(other)]);
    expect(valueOf(await pictures.ofSession(record.id))).toEqual([]);
    expect(valueOf(await pictures.ofSession(other.id))).toHaveLength(1);
  });

  describe('brings in', () => {
    it('what is new, and what goes on with what is here', async () => {
      const { sessions } = await make();
      await sessions.save(record, null);
      const later = continued(record, '64');
      const other = sampleSession(2);
      expect(valueOf(await sessions.bring([later, other]))).toEqual({ added: 1, renewed: 1, beside: 0, same: 0 });
      expect(valueOf(await sessions.load(record.id))).toEqual({ record: later, revision: 2 });
      expect(valueOf(await sessions.load(other.id))).toEqual({ record: other, revision: 1 });
      expect(valueOf(await sessions.summaries()).summaries).toHaveLength(2);
    });

    it('nothing where the same or more is here already', async () => {
      const { sessions } = await make();
      const later = continued(record, '64');
      await sessions.save(later, null);
      expect(valueOf(await sessions.bring([later, record]))).toEqual({ added: 0, renewed: 0, beside: 0, same: 2 });
      expect(valueOf(await sessions.all()).records).toEqual([later]);
    });

    it('beside the one here what was changed in both places, once', async () => {
      const { sessions } = await make();
      const here = continued(record, '64', 1);
      const there = continued(record, '46', 2);
      await sessions.save(here, null);
      expect(valueOf(await sessions.bring([there]))).toEqual({ added: 0, renewed: 0, beside: 1, same: 0 });
      const { records } = valueOf(await sessions.all());
      expect(records).toHaveLength(2);
      expect(records).toContainEqual(here);
      const [beside] = records.filter(({ id }) => id !== record.id);
      expect({ ...beside, id: record.id }).toEqual(there);
      expect(valueOf(await sessions.bring([there]))).toEqual({ added: 0, renewed: 0, beside: 0, same: 1 });
      expect(valueOf(await sessions.all()).records).toHaveLength(2);
    });

    it('notes that were changed at the same moment beside each other', async () => {
      const { sessions } = await make();
      await sessions.save(record, null);
      const { sheet } = record;
      const there = { ...record, sheet: { ...sheet, notes: { ...sheet.notes, remark: 'another' } } };
      expect(valueOf(await sessions.bring([there]))).toEqual({ added: 0, renewed: 0, beside: 1, same: 0 });
    });

    it('the states of one session in one file one after the other', async () => {
      const { sessions } = await make();
      const states = [record, continued(record, '64'), record];
      expect(valueOf(await sessions.bring(states))).toEqual({ added: 1, renewed: 1, beside: 0, same: 1 });
      expect(valueOf(await sessions.load(record.id)).record).toEqual(states[1]);
    });

    it('a thousand sessions, and gives the same ones back', async () => {
      const { sessions } = await make();
      const many = sampleSessions(1000);
      expect(valueOf(await sessions.bring(many)).added).toBe(1000);
      const { records } = valueOf(await sessions.all());
      const byId = new Map(records.map((one) => [one.id, JSON.stringify(one)]));
      expect(many.filter((one) => byId.get(one.id) !== JSON.stringify(one))).toEqual([]);
      expect(valueOf(await sessions.summaries()).summaries).toHaveLength(1000);
    });
  });
});

describe('two windows on one store', () => {
  it('do not overwrite each other, and the later one may go on once it has read', async () => {
    const [one, other] = [await databases.open(), await databases.open()];
    await one.sessions.save(record, null);
    const { revision } = valueOf(await other.sessions.load(record.id));
    valueOf(await one.sessions.save(continued(record, '64'), revision));
    expect(await other.sessions.save(continued(record, '46'), revision)).toEqual({
      ok: false,
      failure: { kind: 'changed-elsewhere', id: record.id },
    });
    const again = valueOf(await other.sessions.load(record.id));
    expect(again.record).toEqual(continued(record, '64'));
    expect(await other.sessions.save(continued(again.record, '46'), again.revision)).toEqual({ ok: true, value: 3 });
  });

  it('that write at once: exactly one is told that the other was first', async () => {
    const [one, other] = [await databases.open(), await databases.open()];
    await one.sessions.save(record, null);
    const both = await Promise.all([
      one.sessions.save(continued(record, '64'), 1),
      other.sessions.save(continued(record, '46'), 1),
    ]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(both.find(({ ok }) => !ok)).toMatchObject({ failure: { kind: 'changed-elsewhere' } });
    expect(valueOf(await one.sessions.load(record.id)).revision).toBe(2);
  });

  it('that bring in at once lose nothing', async () => {
    const [one, other] = [await databases.open(), await databases.open()];
    await Promise.all([
      one.sessions.bring(sampleSessions(5)),
      other.sessions.bring([sampleSession(7), sampleSession(8)]),
    ]);
    expect(valueOf(await one.sessions.all()).records).toHaveLength(7);
  });

  it('learn of what the other one did, and not of what they did themselves', async () => {
    const [one, other] = [await databases.open(), await databases.open()];
    const [own, heard] = [vi.fn(), vi.fn()];
    one.sessions.onChangedElsewhere(own);
    const stop = other.sessions.onChangedElsewhere(heard);
    await one.sessions.save(record, null);
    await vi.waitFor(() => expect(heard).toHaveBeenCalledWith([record.id]));
    await one.sessions.bring([sampleSession(2)]);
    await vi.waitFor(() => expect(heard).toHaveBeenCalledWith([sampleSession(2).id]));
    await one.sessions.remove([record.id]);
    await vi.waitFor(() => expect(heard).toHaveBeenCalledTimes(3));
    stop();
    await one.sessions.save(record, null);
    // what comes after it would have come before this
    const later = vi.fn();
    other.sessions.onChangedElsewhere(later);
    await one.sessions.save(record, 1);
    await vi.waitFor(() => expect(later).toHaveBeenCalled());
    expect(heard).toHaveBeenCalledTimes(3);
    expect(own).not.toHaveBeenCalled();
  });
});

describe('what cannot be read', () => {
  it.each([
    ['a row of another form', { id: record.id, colour: 'red' }],
    [
      'a record that is damaged',
      {
        id: record.id,
        revision: 1,
        version: 3,
        content: { kind: 'plain', json: JSON.stringify({ ...record, camera: 5, colour: 'red' }), bytes: null },
      },
    ],
    [
      'a record of another session',
      {
        id: record.id,
        revision: 1,
        version: 3,
        content: { kind: 'plain', json: JSON.stringify({ ...sampleSession(2), colour: 'red' }), bytes: null },
      },
    ],
  ])('stays, is counted and is given out as text: %s', async (_what, row) => {
    const { sessions } = await databases.open();
    await sessions.save(record, null);
    const other = sampleSession(2);
    await sessions.save(other, null);
    await putRaw('sessions', row);
    const loaded = await sessions.load(record.id);
    expect(loaded).toMatchObject({ ok: false, failure: { kind: 'session-unreadable', id: record.id } });
    expect(valueOf(await sessions.summaries())).toEqual({ summaries: [summaryOf(other)], unreadable: 1 });
    const { records, unreadable } = valueOf(await sessions.all());
    expect(records).toEqual([other]);
    expect(unreadable).toHaveLength(1);
    expect(unreadable[0]?.id).toBe(record.id);
    expect(JSON.parse(unreadable[0]?.raw ?? '')).toMatchObject({ colour: 'red' });
    // nobody writes over it
    expect(await sessions.save(record, null)).toMatchObject({ failure: { kind: 'changed-elsewhere' } });
    expect(valueOf(await sessions.bring([record]))).toEqual({ added: 0, renewed: 0, beside: 1, same: 0 });
    expect(valueOf(await sessions.all()).unreadable).toEqual(unreadable);
  });

  it('because a later version wrote it is neither read nor written over', async () => {
    const { sessions } = await databases.open();
    const content = { kind: 'plain', json: JSON.stringify({ ...record, soul: 21 }), bytes: null };
    await putRaw('sessions', { id: record.id, revision: 4, version: 4, content });
    expect(await sessions.load(record.id)).toEqual({ ok: false, failure: { kind: 'storage-newer' } });
    expect(await sessions.save(record, 3)).toMatchObject({ failure: { kind: 'changed-elsewhere' } });
    expect(JSON.parse(valueOf(await sessions.all()).unreadable[0]?.raw ?? '')).toEqual({ ...record, soul: 21 });
  });

  it.each([
    ['is missing', null],
    ['is damaged', { id: record.id, revision: 1, version: 1, content: { kind: 'plain', json: '{}', bytes: null } }],
    [
      'is of another form',
      { id: record.id, revision: 1, version: 99, content: { kind: 'plain', json: '1', bytes: null } },
    ],
  ])('of a summary is made anew from the session: one that %s', async (_what, row) => {
    const { sessions } = await databases.open();
    await sessions.save(record, null);
    const raw = await openDB('glabella');
    if (row === null) await raw.delete('summaries', record.id);
    else await raw.put('summaries', row);
    expect(valueOf(await sessions.summaries())).toEqual({ summaries: [summaryOf(record)], unreadable: 0 });
    expect(await raw.get('summaries', record.id)).toMatchObject({
      content: { json: JSON.stringify(summaryOf(record)) },
    });
    raw.close();
  });
});
