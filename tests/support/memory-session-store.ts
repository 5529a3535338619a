import type { SessionRecord } from '../../src/core/record/session-record.js';
import { NO_FINDINGS, summaryOf } from '../../src/core/record/session-record.js';
import { EMPTY_TYPED_SHEET } from '../../src/core/record/typed-sheet.js';
import type { Result } from '../../src/core/result.js';
import { fail, succeed } from '../../src/core/result.js';
import type { SessionStore, StoreFailure, UnreadableSession } from '../../src/session/session-store.js';

/** A session with an empty sheet, changed as a test needs it. */
export function exampleSession(id: string, change: Partial<SessionRecord> = {}): SessionRecord {
  return {
    id,
    begunAt: '2026-11-24T10:00:00.000Z',
    changedAt: '2026-11-24T10:20:00.000Z',
    origin: { kind: 'desk' },
    sheet: EMPTY_TYPED_SHEET,
    camera: null,
    findings: NO_FINDINGS,
    ...change,
  };
}

/** Keeps sessions as long as the test runs; for what is built upon a store. The real one has tests of its own. */
export class MemorySessionStore implements SessionStore {
  /** what every call answers with from now on; null while all goes well */
  failure: StoreFailure | null = null;
  unreadable: readonly UnreadableSession[] = [];
  readonly #records = new Map<string, { readonly record: SessionRecord; readonly revision: number }>();

  constructor(records: readonly SessionRecord[] = []) {
    for (const record of records) this.#records.set(record.id, { record, revision: 1 });
  }

  summaries: SessionStore['summaries'] = () =>
    this.#answer(() => ({
      summaries: [...this.#records.values()]
        .map(({ record }) => summaryOf(record))
        .toSorted((a, b) => Date.parse(b.changedAt) - Date.parse(a.changedAt)),
      unreadable: this.unreadable.length,
    }));

  load: SessionStore['load'] = (id) => {
    const stored = this.#records.get(id);
    if (stored === undefined) return Promise.resolve(fail({ kind: 'session-missing', id }));
    return this.#answer(() => stored);
  };

  all: SessionStore['all'] = () =>
    this.#answer(() => ({
      records: [...this.#records.values()].map(({ record }) => record),
      unreadable: this.unreadable,
    }));

  save: SessionStore['save'] = (record, revision) => {
    const stored = this.#records.get(record.id);
    if ((stored?.revision ?? null) !== revision) {
      return Promise.resolve(fail({ kind: 'changed-elsewhere', id: record.id }));
    }
    return this.#answer(() => {
      const next = (revision ?? 0) + 1;
      this.#records.set(record.id, { record, revision: next });
      return next;
    });
  };

  /** What is here already counts as the same, whatever stands in it. */
  bring: SessionStore['bring'] = (records) =>
    this.#answer(() => {
      const fresh = records.filter(({ id }) => !this.#records.has(id));
      for (const record of fresh) this.#records.set(record.id, { record, revision: 1 });
      return { added: fresh.length, renewed: 0, beside: 0, same: records.length - fresh.length };
    });

  remove: SessionStore['remove'] = (ids) =>
    this.#answer(() => {
      for (const id of ids) this.#records.delete(id);
      this.unreadable = this.unreadable.filter(({ id }) => !ids.includes(id));
      return null;
    });

  onChangedElsewhere: SessionStore['onChangedElsewhere'] = () => () => undefined;

  #answer<Value>(made: () => Value): Promise<Result<Value, StoreFailure>> {
    return Promise.resolve(this.failure === null ? succeed(made()) : fail(this.failure));
  }
}
