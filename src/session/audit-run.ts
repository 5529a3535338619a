import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { SessionRecord, SessionSummary } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { AuditFailure, AuditListener, AuditPort, AuditTotals, FlaggedRecord } from './audit.js';
import type { AuditCounts, AuditedRow, AuditQuery } from './audit-list.js';
import { joinTotals } from './audit-findings.js';
import { createAuditIndex, NO_COUNTS, WHOLE_AUDIT } from './audit-list.js';
import type { SessionStore, StoreFailure } from './session-store.js';

// An audit with what it found, held outside of the screen: who opens a session from the list finds the list as it was.

/** What is looked through. */
export type AuditSubject =
  | { readonly kind: 'table'; readonly file: Blob; readonly name: string }
  /** sessions that are kept here; `isPart` where others are kept that are left out */
  | { readonly kind: 'sessions'; readonly summaries: readonly SessionSummary[]; readonly isPart: boolean };

export type AuditStage =
  | { readonly kind: 'idle' }
  | {
      readonly kind: 'running';
      /** of all the work, 0 to 1 */
      readonly share: number;
      readonly isReading: boolean;
      readonly recordCount: number;
      readonly flaggedCount: number;
    }
  | { readonly kind: 'done'; readonly totals: AuditTotals; readonly at: Date }
  /** ended before its time: what was flagged until then is there */
  | { readonly kind: 'stopped'; readonly recordCount: number; readonly at: Date }
  | { readonly kind: 'failed'; readonly failure: AuditFailure | StoreFailure };

/** How the list of what was flagged is looked at. */
export interface AuditView {
  readonly query: AuditQuery;
  /** which page of the list, from 0 */
  readonly page: number;
  /** places of the records whose findings are all shown */
  readonly opened: ReadonlySet<number>;
}

export interface AuditState {
  /** null before the first audit */
  readonly subject: AuditSubject | null;
  readonly stage: AuditStage;
  /** what was flagged, in the order of the source; empty until the audit has ended */
  readonly rows: readonly AuditedRow[];
  /** of `rows` */
  readonly counts: AuditCounts;
  /** kept sessions that cannot be read any more, or went while they were read */
  readonly unreadable: number;
  readonly view: AuditView;
}

export interface AuditRun {
  readonly now: () => AuditState;
  /** Calls the listener whenever something changed, until the function that it returns is called. */
  readonly subscribe: (listener: () => void) => () => void;
  /** Looks through these records; what was found before goes, and what still runs is stopped. Rejects only with bugs. */
  readonly start: (subject: AuditSubject) => Promise<void>;
  /** Ends the audit that runs; what was flagged until then stays. */
  readonly stop: () => void;
  readonly look: (view: AuditView) => void;
}

/** An audit as the desk holds it. */
export interface AuditAtDesk {
  readonly run: AuditRun;
  /** whether it stands in place of the list of sessions */
  readonly isShown: boolean;
}

const FIRST_VIEW: AuditView = { query: WHOLE_AUDIT, page: 0, opened: new Set() };

const IDLE: AuditState = {
  subject: null,
  stage: { kind: 'idle' },
  rows: [],
  counts: NO_COUNTS,
  unreadable: 0,
  view: FIRST_VIEW,
};

/** Chosen: so many sessions go to be looked through at once; a thousand would hold up the page while they are copied. */
const SESSIONS_AT_ONCE = 50;

/** What an audit works with. */
export interface AuditTools {
  readonly port: AuditPort;
  readonly sessions: Pick<SessionStore, 'load'>;
  readonly catalogue: Catalogue;
  /** what a record is called on the screen, as far as it can be searched by it; `summary` where it is a kept session */
  readonly nameOf: (record: FlaggedRecord, summary: SessionSummary | null) => string;
  readonly clock: () => Date;
}

export function createAuditRun(tools: AuditTools): AuditRun {
  let state = IDLE;
  let abort: AbortController | null = null;
  const listeners = new Set<() => void>();
  const change = (changed: Partial<AuditState>): void => {
    state = { ...state, ...changed };
    for (const listener of listeners) listener();
  };
  const stop = (): void => {
    abort?.abort();
  };

  const start = async (subject: AuditSubject): Promise<void> => {
    stop();
    const own = new AbortController();
    abort = own;
    const { signal } = own;
    const rows: AuditedRow[] = [];
    const index = createAuditIndex(tools.catalogue);
    let recordCount = 0;
    change({
      ...IDLE,
      subject,
      stage: { kind: 'running', share: 0, isReading: true, recordCount: 0, flaggedCount: 0 },
    });
    const summaries = new Map(subject.kind === 'sessions' ? subject.summaries.map((one) => [one.id, one]) : []);
    const told: AuditTold = {
      onProgress: (stage) => {
        if (signal.aborted) return;
        ({ recordCount } = stage);
        change({ stage: { kind: 'running', ...stage } });
      },
      onFlagged: (records) => {
        if (signal.aborted) return;
        for (const record of records) {
          const summary = record.origin.kind === 'session' ? (summaries.get(record.origin.sessionId) ?? null) : null;
          rows.push(index.add(record, tools.nameOf(record, summary)));
        }
      },
      onUnreadable: (unreadable) => {
        if (!signal.aborted) change({ unreadable });
      },
    };
    let ended: Result<AuditTotals, AuditFailure | StoreFailure> | null;
    try {
      ended =
        subject.kind === 'table'
          ? await auditTable(subject.file, tools.port, told, signal)
          : await auditSessions(subject.summaries, tools, told, signal);
    } catch (error) {
      if (!signal.aborted) throw error;
      ended = null;
    }
    // another audit has begun in its place
    if (abort !== own) return;
    abort = null;
    const counts = index.counts();
    if (ended === null || signal.aborted) {
      change({ rows, counts, stage: { kind: 'stopped', recordCount, at: tools.clock() } });
    } else if (ended.ok) {
      change({ rows, counts, stage: { kind: 'done', totals: ended.value, at: tools.clock() } });
    } else {
      change({ stage: { kind: 'failed', failure: ended.failure } });
    }
  };

  return {
    now: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    start,
    stop,
    look: (view) => {
      change({ view });
    },
  };
}

interface AuditTold {
  readonly onProgress: (running: Omit<Extract<AuditStage, { kind: 'running' }>, 'kind'>) => void;
  readonly onFlagged: AuditListener['onFlagged'];
  readonly onUnreadable: (count: number) => void;
}

function auditTable(
  file: Blob,
  port: AuditPort,
  { onProgress, onFlagged }: AuditTold,
  signal: AbortSignal,
): Promise<Result<AuditTotals, AuditFailure>> {
  return port.audit(
    { kind: 'table', file },
    {
      onFlagged,
      onProgress: ({ stage, share, recordCount, flaggedCount }) => {
        onProgress({ share, isReading: stage === 'reading', recordCount, flaggedCount });
      },
    },
    signal,
  );
}

/** A few sessions at a time are read, looked through, and let go. */
async function auditSessions(
  summaries: readonly SessionSummary[],
  { port, sessions }: AuditTools,
  { onProgress, onFlagged, onUnreadable }: AuditTold,
  signal: AbortSignal,
): Promise<Result<AuditTotals, AuditFailure | StoreFailure>> {
  let totals = joinTotals([]);
  let unreadable = 0;
  const { length } = summaries;
  for (let from = 0; from < length; from += SESSIONS_AT_ONCE) {
    const before = totals;
    const some = summaries.slice(from, from + SESSIONS_AT_ONCE);
    const tell = (done: number, isReading: boolean, recordCount: number, flaggedCount: number): void => {
      onProgress({
        share: (from + done * some.length) / length,
        isReading,
        recordCount: before.recordCount + recordCount,
        flaggedCount: before.withFindings + flaggedCount,
      });
    };
    const records: SessionRecord[] = [];
    for (const [index, { id }] of some.entries()) {
      const loaded = await sessions.load(id);
      signal.throwIfAborted();
      if (loaded.ok) records.push(loaded.value.record);
      else if (loaded.failure.kind === 'session-missing' || loaded.failure.kind === 'session-unreadable') {
        unreadable += 1;
        onUnreadable(unreadable);
      } else return fail(loaded.failure);
      tell((READING_SHARE * (index + 1)) / some.length, true, 0, 0);
    }
    const found = await port.audit(
      { kind: 'sessions', records },
      {
        onFlagged: (flagged) => {
          onFlagged(flagged.map((one) => ({ ...one, place: one.place + before.recordCount })));
        },
        onProgress: ({ share, recordCount, flaggedCount }) => {
          tell(READING_SHARE + (1 - READING_SHARE) * share, false, recordCount, flaggedCount);
        },
      },
      signal,
    );
    if (!found.ok) return found;
    totals = joinTotals([totals, found.value]);
  }
  return succeed(totals);
}

/** Chosen: reading a session from the disk takes about as long as looking it through. */
const READING_SHARE = 0.5;
