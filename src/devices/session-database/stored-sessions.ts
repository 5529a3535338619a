import { READER_IDS } from '../../core/record/reader-sheet.js';
import { isContinuedBy } from '../../core/record/reading-history.js';
import type { SessionRecord, SessionSummary } from '../../core/record/session-record.js';
import { summaryOf } from '../../core/record/session-record.js';
import { checkedRecord, parseSessionRecord, SESSION_VERSION } from '../../core/record/session-schema.js';
import type { Result } from '../../core/result.js';
import { fail, succeed } from '../../core/result.js';
import type { BroughtIn, SessionStore, StoreFailure, UnreadableSession } from '../../session/session-store.js';
import { takingTurns } from '../../session/taking-turns.js';
import type { ChangesChannel } from './changes-channel.js';
import type { DataKey } from './contents.js';
import type { RowsWriting } from './rows.js';
import type { ContentRow } from './sealed-rows.js';
import { idOf, readRow, revisionOf, sealedRow, valueOfJson } from './sealed-rows.js';
import { SUMMARY_VERSION, summarySchema } from './summary-schema.js';
import type { Vault } from './vault.js';

/** Both rows of a session; they are always written together. */
interface SessionRows {
  readonly session: ContentRow;
  readonly summary: ContentRow;
}

/** A session as it stands in the store. */
type Standing =
  | { readonly kind: 'session'; readonly id: string; readonly record: SessionRecord; readonly revision: number }
  | { readonly kind: 'newer'; readonly id: string; readonly raw: string }
  | { readonly kind: 'unreadable'; readonly id: string; readonly raw: string };

/**
 * @param newId makes the id of a session that is kept beside another one
 */
export function createSessionStore(vault: Vault, channel: ChangesChannel, newId: () => string): SessionStore {
  async function load(id: string): ReturnType<SessionStore['load']> {
    const found = await vault.read((rows) => rows.one('sessions', id));
    if (!found.ok) return found;
    const { read: raw, key } = found.value;
    if (raw === undefined) return fail({ kind: 'session-missing', id });
    const standing = await standingOf(raw, key);
    switch (standing.kind) {
      case 'session':
        return succeed({ record: standing.record, revision: standing.revision });
      case 'newer':
        return fail({ kind: 'storage-newer' });
      case 'unreadable':
        await forgetSummary(id);
        return fail({ kind: 'session-unreadable', id, raw: standing.raw });
    }
  }

  /** Without its summary a session that cannot be read is counted among those in every list. */
  async function forgetSummary(id: string): Promise<void> {
    await vault.write<null, null, never>(
      () => Promise.resolve(null),
      (rows) => {
        rows.remove('summaries', id);
        return Promise.resolve(succeed(null));
      },
    );
  }

  async function all(): ReturnType<SessionStore['all']> {
    const found = await vault.read((rows) => rows.all('sessions'));
    if (!found.ok) return found;
    const { read: raws, key } = found.value;
    // a thousand sessions take a second to check, in which the page has other things to do
    const turn = takingTurns();
    const standing: Standing[] = [];
    for (const raw of raws) {
      standing.push(await standingOf(raw, key));
      await turn();
    }
    return succeed({
      records: standing.flatMap((one) => (one.kind === 'session' ? [one.record] : [])),
      unreadable: standing.flatMap((one): readonly UnreadableSession[] =>
        one.kind === 'session' ? [] : [{ id: one.id, raw: one.raw }],
      ),
    });
  }

  async function summaries(): ReturnType<SessionStore['summaries']> {
    const found = await vault.read(async (rows) => {
      const [raws, ids] = await Promise.all([rows.all('summaries'), rows.ids('sessions')]);
      return { raws, ids };
    });
    if (!found.ok) return found;
    const { read, key } = found.value;
    const ids = new Set(read.ids);
    const known = new Map<string, SessionSummary>();
    for (const summary of await Promise.all(read.raws.map((raw) => summaryIn(raw, key)))) {
      if (summary !== null && ids.has(summary.id)) known.set(summary.id, summary);
    }
    const without = read.ids.filter((id) => !known.has(id));
    const rebuilt = without.length === 0 ? succeed([]) : await rebuild(without);
    if (!rebuilt.ok) return rebuilt;
    const newestFirst = [...known.values(), ...rebuilt.value]
      .map((summary) => ({ summary, at: Date.parse(summary.changedAt) }))
      .sort((a, b) => b.at - a.at)
      .map(({ summary }) => summary);
    return succeed({ summaries: newestFirst, unreadable: without.length - rebuilt.value.length });
  }

  /** The summaries of these sessions, made anew and kept, of those that can be read. */
  function rebuild(ids: readonly string[]): Promise<Result<readonly SessionSummary[], StoreFailure>> {
    return vault.rewrite({
      read: (rows) => Promise.all(ids.map((id) => rows.one('sessions', id))),
      prepare: async (raws, key) => {
        const standing = await Promise.all(raws.map((raw) => standingOf(raw, key)));
        const sessions = standing.flatMap((one) => (one.kind === 'session' ? [one] : []));
        return succeed({
          made: sessions.map(({ record }) => summaryOf(record)),
          rows: await Promise.all(sessions.map(({ record, revision }) => summaryRow(record, revision, key))),
        });
      },
      write: (rows, prepared) => {
        for (const row of prepared.rows) rows.put('summaries', row);
        return prepared.made;
      },
    });
  }

  async function save(record: SessionRecord, revision: number | null): ReturnType<SessionStore['save']> {
    const { id } = record;
    const checked = checkedRecord(record);
    const next = (revision ?? 0) + 1;
    const saved = await vault.write<SessionRows, number, StoreFailure>(
      (key) => sessionRows(checked, next, key),
      async (rows, prepared) => {
        const standing = await rows.one('sessions', id);
        if (standing === undefined && revision !== null) return fail({ kind: 'session-missing', id });
        if (standing !== undefined && revisionOf(standing) !== revision) return fail({ kind: 'changed-elsewhere', id });
        putSession(rows, prepared);
        return succeed(next);
      },
    );
    if (saved.ok) channel.tell({ kind: 'sessions', ids: [id] });
    return saved;
  }

  async function bring(records: readonly SessionRecord[]): ReturnType<SessionStore['bring']> {
    const checked = records.map(checkedRecord);
    const brought = await vault.rewrite({
      // those that were kept beside others in earlier times are found among all
      read: (rows) => rows.all('sessions'),
      prepare: async (raws, key) => {
        const standing = new Map<string, Standing>();
        for (const one of await Promise.all(raws.map((raw) => standingOf(raw, key)))) standing.set(one.id, one);
        const { changed, counts } = broughtIn(standing, checked, newId);
        const rows = await Promise.all(changed.map(({ record, revision }) => sessionRows(record, revision, key)));
        return succeed({ rows, counts });
      },
      write: (rows, prepared) => {
        for (const one of prepared.rows) putSession(rows, one);
        return { counts: prepared.counts, ids: prepared.rows.map(({ session }) => session.id) };
      },
    });
    if (!brought.ok) return brought;
    const { counts, ids } = brought.value;
    if (ids.length > 0) channel.tell({ kind: 'sessions', ids });
    return succeed(counts);
  }

  async function remove(ids: readonly string[]): ReturnType<SessionStore['remove']> {
    const removed = await vault.write<null, null, never>(
      () => Promise.resolve(null),
      async (rows) => {
        const pictures = await Promise.all(ids.map((id) => rows.pictureIds('sessionId', id)));
        for (const id of ids) {
          rows.remove('sessions', id);
          rows.remove('summaries', id);
        }
        for (const id of pictures.flat()) rows.remove('pictures', id);
        return succeed(null);
      },
    );
    if (removed.ok) channel.tell({ kind: 'sessions', ids });
    return removed;
  }

  return {
    summaries,
    load,
    all,
    save,
    bring,
    remove,
    onChangedElsewhere: (listener) => channel.listen((news) => listener(news.kind === 'sessions' ? news.ids : null)),
  };
}

export async function sessionRows(record: SessionRecord, revision: number, key: DataKey | null): Promise<SessionRows> {
  const { id } = record;
  const row = { id, revision, version: SESSION_VERSION };
  const [session, summary] = await Promise.all([
    sealedRow('sessions', row, { json: JSON.stringify(record), bytes: null }, key),
    summaryRow(record, revision, key),
  ]);
  return { session, summary };
}

function summaryRow(record: SessionRecord, revision: number, key: DataKey | null): Promise<ContentRow> {
  const row = { id: record.id, revision, version: SUMMARY_VERSION };
  return sealedRow('summaries', row, { json: JSON.stringify(summaryOf(record)), bytes: null }, key);
}

export function putSession(rows: RowsWriting, { session, summary }: SessionRows): void {
  rows.put('sessions', session);
  rows.put('summaries', summary);
}

async function standingOf(raw: unknown, key: DataKey | null): Promise<Standing> {
  const id = idOf(raw);
  const row = await readRow('sessions', raw, key);
  if (row.kind === 'unreadable') return { ...row, id };
  const parsed = parseSessionRecord(row.version, valueOfJson(row.opened.json));
  // one that says of itself that it is another one was put there by nobody of us
  if (parsed.ok && parsed.value.id === id) return { kind: 'session', id, record: parsed.value, revision: row.revision };
  const isNewer = !parsed.ok && parsed.failure.kind === 'record-newer';
  return { kind: isNewer ? 'newer' : 'unreadable', id, raw: row.opened.json };
}

async function summaryIn(raw: unknown, key: DataKey | null): Promise<SessionSummary | null> {
  const row = await readRow('summaries', raw, key);
  if (row.kind === 'unreadable' || row.version !== SUMMARY_VERSION) return null;
  const parsed = summarySchema.safeParse(valueOfJson(row.opened.json));
  return parsed.success && parsed.data.id === idOf(raw) ? parsed.data : null;
}

interface Bringing {
  readonly changed: readonly { readonly record: SessionRecord; readonly revision: number }[];
  readonly counts: BroughtIn;
}

/** What has to be written so that these records are here as well, and nothing that is here is lost. */
function broughtIn(
  standing: ReadonlyMap<string, Standing>,
  records: readonly SessionRecord[],
  newId: () => string,
): Bringing {
  const counts = { added: 0, renewed: 0, beside: 0, same: 0 };
  const here = new Map(standing);
  const changed = new Map<string, { readonly record: SessionRecord; readonly revision: number }>();
  const put = (record: SessionRecord, revision: number): void => {
    here.set(record.id, { kind: 'session', id: record.id, record, revision });
    changed.set(record.id, { record, revision });
  };
  for (const record of records) {
    const one = here.get(record.id);
    if (one === undefined) {
      put(record, 1);
      counts.added += 1;
    } else if (one.kind === 'session' && hasNothingNew(one.record, record)) {
      counts.same += 1;
    } else if (one.kind === 'session' && continues(one.record, record)) {
      put(record, (standing.get(record.id)?.kind === 'session' ? one.revision : 0) + 1);
      counts.renewed += 1;
    } else if (isBesideAlready(here, record)) {
      counts.same += 1;
    } else {
      put({ ...record, id: newId() }, 1);
      counts.beside += 1;
    }
  }
  return { changed: [...changed.values()], counts };
}

/** Whether all that was entered in `earlier` was also entered in `later`, and that one was changed last. */
function continues(earlier: SessionRecord, later: SessionRecord): boolean {
  return (
    Date.parse(later.changedAt) > Date.parse(earlier.changedAt) &&
    READER_IDS.every((reader) =>
      isContinuedBy(earlier.sheet.readers[reader].history, later.sheet.readers[reader].history),
    )
  );
}

function hasNothingNew(here: SessionRecord, brought: SessionRecord): boolean {
  return isSame(here, brought) || continues(brought, here);
}

/** Whether the same was kept beside another one before, when the file was brought in for the first time. */
function isBesideAlready(here: ReadonlyMap<string, Standing>, record: SessionRecord): boolean {
  return [...here.values()].some(
    (one) =>
      one.kind === 'session' &&
      one.record.begunAt === record.begunAt &&
      isSame({ ...one.record, id: record.id }, record),
  );
}

/** Both have passed the same schema, which puts the properties in one order. */
function isSame(one: SessionRecord, other: SessionRecord): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
