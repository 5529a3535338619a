import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { AuditReply, AuditRequest } from '../protocol/audit-messages.js';
import { parseFromAuditWorker } from '../protocol/audit-messages.js';
import type { AuditFailure, AuditListener, AuditPort, AuditSource, AuditTotals } from '../session/audit.js';
import { joinTotals } from '../session/audit-findings.js';
import { parseAuditTotals, parseFlagged, parseTableFailure } from '../session/parse-audit.js';
import { createIdleEnd } from './idle-end.js';
import { startAuditWorker } from './start-workers.js';
import type { WorkerClient, WorkerFailure, WorkerLike } from './worker-client.js';
import { createWorkerClient } from './worker-client.js';

export interface AuditSettings {
  readonly startAuditWorker: () => WorkerLike;
  /** how many workers share a long table */
  readonly workerCount: number;
  /** how long a worker may take to read the whole of a table, and how long for one turn of its records */
  readonly openLimitMs: number;
  readonly turnLimitMs: number;
  /** after this time without an audit the workers are ended, to give their memory back */
  readonly idleLimitMs: number;
}

/** Chosen: below so many bytes a second worker takes longer to start than it saves. */
const WORTH_SHARING_BYTES = 2 ** 20;

/** Chosen: more workers would each read the whole table as well, for less and less. */
const MOST_WORKERS = 2;

/** What reading takes of all the work of a table, as measured on some hundred thousand records. */
const READING_SHARE = 0.2;

/** Chosen: the listener hears of progress some ten times a second. */
const PROGRESS_MS = 90;

type AuditClient = WorkerClient<AuditRequest, AuditReply>;

/**
 * Looks records through in workers, which it starts as needed, and ends with an audit that is given up. Two share a long table where
 * the computer has two cores: each reads all of it and takes every other turn of its records. The page has little to do meanwhile, and
 * is let in between.
 */
export function createAudit(overrides: Partial<AuditSettings> = {}): AuditPort {
  const settings: AuditSettings = {
    startAuditWorker,
    workerCount: overrides.workerCount ?? Math.min(navigator.hardwareConcurrency, MOST_WORKERS),
    // chosen: twenty times what the largest table takes on two cores
    openLimitMs: 120_000,
    turnLimitMs: 30_000,
    // chosen: kept sessions come in several audits, one at once after the other
    idleLimitMs: 5_000,
    ...overrides,
  };
  const clients = Array.from({ length: settings.workerCount }, (): AuditClient =>
    createWorkerClient({
      start: settings.startAuditWorker,
      parse: parseFromAuditWorker,
      // it hears nothing while it reads, and what it holds is wanted no more
      cancelGraceMs: 0,
    }),
  );
  const endAll = (): void => clients.forEach((client) => client.end());
  const busy = createIdleEnd(endAll, settings.idleLimitMs);

  const stopped = (failure: WorkerFailure | 'not-understood'): Result<never, AuditFailure> => {
    // for developers: the sentence on the screen does not say what went wrong
    const detail = failure === 'not-understood' || failure.kind !== 'fault' ? failure : failure.fault.detail;
    console.warn('The audit worker stopped:', detail);
    endAll();
    return fail({ kind: 'audit-stopped' });
  };

  /** Has each of the workers open the source, and waits for all. */
  const open = (workers: readonly AuditClient[], source: AuditSource, listener: AuditListener, signal: AbortSignal) => {
    const shares = workers.map(() => 0);
    return Promise.all(
      workers.map((worker, mine) =>
        worker.ask(
          source.kind === 'table'
            ? { kind: 'open-table', file: source.file, turns: { mine, among: workers.length } }
            : { kind: 'open-sessions', records: source.records },
          {
            transfer: [],
            limitMs: settings.openLimitMs,
            signal,
            onProgress: (share) => {
              shares[mine] = share;
              const all = READING_SHARE * Math.min(...shares);
              listener.onProgress({ stage: 'reading', share: all, recordCount: 0, flaggedCount: 0 });
            },
          },
        ),
      ),
    );
  };

  const takeTurn = (worker: AuditClient, signal: AbortSignal) => {
    const turn = worker.ask(
      { kind: 'go-on' },
      { transfer: [], limitMs: settings.turnLimitMs, signal, onProgress: () => undefined },
    );
    // who waits for another worker's turn hears of the same signal there
    turn.catch(() => undefined);
    return turn;
  };

  /** Takes in the turns of the workers in their order, and lets each go on with its next one at once. */
  const lookThrough = async (
    workers: readonly AuditClient[],
    total: number,
    shareBefore: number,
    listener: AuditListener,
    signal: AbortSignal,
  ): Promise<Result<AuditTotals, AuditFailure>> => {
    const waiting = workers.map((worker) => ({ worker, turn: takeTurn(worker, signal) }));
    const outcomes: AuditTotals[] = [];
    let [recordCount, flaggedCount, toldMs] = [0, 0, -Infinity];
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const reply = await next.turn;
      if (!reply.ok) return stopped(reply.failure);
      if (reply.value.kind !== 'audit-part') return stopped('not-understood');
      const isOver = reply.value.totals !== null;
      if (!isOver) waiting.push({ worker: next.worker, turn: takeTurn(next.worker, signal) });
      const flagged = parseFlagged(reply.value.flagged);
      const totals = isOver ? parseAuditTotals(reply.value.totals) : null;
      if (flagged === null || (isOver && totals === null)) return stopped('not-understood');
      if (totals !== null) outcomes.push(totals);
      recordCount += reply.value.looked;
      flaggedCount += flagged.length;
      if (flagged.length > 0) listener.onFlagged(flagged);
      const nowMs = performance.now();
      if (nowMs - toldMs < PROGRESS_MS && waiting.length > 0) continue;
      toldMs = nowMs;
      const share = total === 0 ? 1 : recordCount / total;
      listener.onProgress({
        stage: 'checking',
        share: shareBefore + (1 - shareBefore) * share,
        recordCount,
        flaggedCount,
      });
    }
    return succeed(joinTotals(outcomes));
  };

  return {
    audit: (source, listener, signal) =>
      busy(async () => {
        const isLong = source.kind === 'table' && source.file.size >= WORTH_SHARING_BYTES;
        const workers = isLong ? clients : clients.slice(0, 1);
        const opened = await open(workers, source, listener, signal);
        let total = 0;
        for (const one of opened) {
          if (!one.ok) return stopped(one.failure);
          switch (one.value.kind) {
            case 'file-unreadable':
              return fail({ kind: 'file-unreadable' });
            case 'table-refused': {
              const failure = parseTableFailure(one.value.failure);
              return failure === null ? stopped('not-understood') : fail({ kind: 'table-refused', ...failure });
            }
            case 'audit-opened':
              total = one.value.recordCount;
              break;
            case 'audit-part':
              return stopped('not-understood');
          }
        }
        return lookThrough(workers, total, source.kind === 'table' ? READING_SHARE : 0, listener, signal);
      }),
  };
}
