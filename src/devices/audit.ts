import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { AuditReply, AuditRequest } from '../protocol/audit-messages.js';
import { parseFromAuditWorker } from '../protocol/audit-messages.js';
import type { AuditFailure, AuditListener, AuditPort, AuditSource, AuditTotals } from '../session/audit.js';
import { parseAuditTotals, parseFlagged, parseTableFailure } from '../session/parse-audit.js';
import { createIdleEnd } from './idle-end.js';
import { startAuditWorker } from './start-workers.js';
import type { WorkerClient, WorkerFailure, WorkerLike } from './worker-client.js';
import { createWorkerClient } from './worker-client.js';

export interface AuditSettings {
  readonly startAuditWorker: () => WorkerLike;
  /** how long the worker may take to read the whole of a table, and how long for one part of its records */
  readonly openLimitMs: number;
  readonly partLimitMs: number;
  /** after this time without an audit the worker is ended, to give its memory back */
  readonly idleLimitMs: number;
}

/** What reading takes of all the work of a table, as measured on some hundred thousand records. */
const READING_SHARE = 0.2;

/** Looks records through in a worker, which it starts as needed, and ends with an audit that is given up. */
export function createAudit(overrides: Partial<AuditSettings> = {}): AuditPort {
  const settings: AuditSettings = {
    startAuditWorker,
    // chosen: twenty times what the largest table takes on two cores
    openLimitMs: 120_000,
    partLimitMs: 30_000,
    // chosen: kept sessions come in several audits, one at once after the other
    idleLimitMs: 5_000,
    ...overrides,
  };
  const worker: WorkerClient<AuditRequest, AuditReply> = createWorkerClient({
    start: settings.startAuditWorker,
    parse: parseFromAuditWorker,
    // it hears nothing while it reads, and what it holds is wanted no more
    cancelGraceMs: 0,
  });
  const busy = createIdleEnd(() => worker.end(), settings.idleLimitMs);

  const stopped = (failure: WorkerFailure | 'not-understood'): Result<never, AuditFailure> => {
    // for developers: the sentence on the screen does not say what went wrong
    const detail = failure === 'not-understood' || failure.kind !== 'fault' ? failure : failure.fault.detail;
    console.warn('The audit worker stopped:', detail);
    worker.end();
    return fail({ kind: 'audit-stopped' });
  };

  const open = (source: AuditSource, listener: AuditListener, signal: AbortSignal) =>
    worker.ask(
      source.kind === 'table'
        ? { kind: 'open-table', file: source.file }
        : { kind: 'open-sessions', records: source.records },
      {
        transfer: [],
        limitMs: settings.openLimitMs,
        signal,
        onProgress: (share) =>
          listener.onProgress({ stage: 'reading', share: READING_SHARE * share, recordCount: 0, flaggedCount: 0 }),
      },
    );

  const goOn = (signal: AbortSignal) =>
    worker.ask({ kind: 'go-on' }, { transfer: [], limitMs: settings.partLimitMs, signal, onProgress: () => undefined });

  const lookThrough = async (
    total: number,
    shareBefore: number,
    listener: AuditListener,
    signal: AbortSignal,
  ): Promise<Result<AuditTotals, AuditFailure>> => {
    for (;;) {
      const reply = await goOn(signal);
      if (!reply.ok) return stopped(reply.failure);
      if (reply.value.kind !== 'audit-part') return stopped('not-understood');
      const { recordCount, flaggedCount } = reply.value;
      const flagged = parseFlagged(reply.value.flagged);
      const totals = reply.value.totals === null ? null : parseAuditTotals(reply.value.totals);
      if (flagged === null || (totals === null && reply.value.totals !== null)) return stopped('not-understood');
      if (flagged.length > 0) listener.onFlagged(flagged);
      const share = total === 0 ? 1 : recordCount / total;
      listener.onProgress({
        stage: 'checking',
        share: shareBefore + (1 - shareBefore) * share,
        recordCount,
        flaggedCount,
      });
      if (totals !== null) return succeed(totals);
    }
  };

  return {
    audit: (source, listener, signal) =>
      busy(async () => {
        const opened = await open(source, listener, signal);
        if (!opened.ok) return stopped(opened.failure);
        switch (opened.value.kind) {
          case 'file-unreadable':
            return fail({ kind: 'file-unreadable' });
          case 'table-refused': {
            const failure = parseTableFailure(opened.value.failure);
            return failure === null ? stopped('not-understood') : fail({ kind: 'table-refused', ...failure });
          }
          case 'audit-opened':
            return lookThrough(opened.value.recordCount, source.kind === 'table' ? READING_SHARE : 0, listener, signal);
          case 'audit-part':
            return stopped('not-understood');
        }
      }),
  };
}
