import { afterEach, describe, expect, it, vi } from 'vitest';
import { FakeWorker } from '../../tests/support/fake-worker.js';
import type { AuditListener, AuditProgress, FlaggedRecord } from '../session/audit.js';
import { createAudit } from './audit.js';

const FLAGGED: FlaggedRecord = {
  place: 1,
  origin: { kind: 'table', record: 'B', line: 3 },
  readingCount: 2,
  misfits: [{ kind: 'unusual', names: ['pdFar'], value: 80, usual: { low: 50, high: 75 } }],
  written: { readings: {}, gauges: [], joined: new Set() },
};
const TOTALS = {
  recordCount: 2,
  readingCount: 4,
  withFindings: 1,
  byKind: {
    refused: 0,
    suspected: 0,
    'does-not-add-up': 0,
    disagrees: 0,
    'readers-differ': 0,
    'far-off-repeat': 0,
    unusual: 1,
  },
  probableSlips: [],
};
const OPENED = { kind: 'audit-opened', recordCount: 2 };
const FIRST_PART = { kind: 'audit-part', looked: 2, flagged: [FLAGGED], totals: null };
const LAST_PART = { kind: 'audit-part', looked: 0, flagged: [], totals: TOTALS };
const TABLE = { kind: 'table', file: new Blob(['pd_far_mm\n63\n80\n']) } as const;

/** An audit whose worker gives these answers, one after the other. */
function audited(answers: readonly object[], signal = new AbortController().signal) {
  vi.spyOn(console, 'warn').mockImplementation(() => undefined);
  const workers: FakeWorker[] = [];
  let next = 0;
  const port = createAudit({
    startAuditWorker: () => {
      const worker = new FakeWorker((message, self) => {
        const answer = answers[next];
        next += 1;
        if (answer === undefined) return;
        if (message.kind === 'open-table') self.answer(message, { kind: 'progress', share: 0.5 });
        self.answer(message, answer);
      });
      workers.push(worker);
      return worker;
    },
    workerCount: 2,
    idleLimitMs: 10_000_000,
  });
  const flagged: FlaggedRecord[] = [];
  const progress: AuditProgress[] = [];
  const listener: AuditListener = {
    onFlagged: (records) => flagged.push(...records),
    onProgress: (one) => progress.push(one),
  };
  return { outcome: port.audit(TABLE, listener, signal), flagged, progress, workers };
}

afterEach(() => {
  vi.restoreAllMocks();
});

describe('the audit', () => {
  it('opens the table, goes on until all is looked through, and tells how far it is', async () => {
    const { outcome, flagged, progress, workers } = audited([OPENED, FIRST_PART, LAST_PART]);
    expect(await outcome).toEqual({ ok: true, value: TOTALS });
    expect(flagged).toEqual([FLAGGED]);
    expect(workers[0]?.sent.map(({ kind }) => kind)).toEqual(['open-table', 'go-on', 'go-on']);
    expect(progress.map(({ stage }) => stage)).toEqual(['reading', 'checking', 'checking']);
    const shares = progress.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(progress.at(-1)).toEqual({ stage: 'checking', share: 1, recordCount: 2, flaggedCount: 1 });
  });

  it('shares a long table among two workers, and takes their turns in the order of the table', async () => {
    const flaggedAt = (place: number): FlaggedRecord => ({ ...FLAGGED, place });
    const replies = [
      [
        { looked: 250, flagged: [flaggedAt(3)] },
        { looked: 20, flagged: [flaggedAt(501)] },
      ],
      [{ looked: 250, flagged: [flaggedAt(300)] }],
    ];
    let count = 0;
    const opened: unknown[] = [];
    const port = createAudit({
      workerCount: 2,
      idleLimitMs: 10_000_000,
      startAuditWorker: () => {
        const own = replies[count] ?? [];
        // the first of them is the slower one
        const delayMs = count === 0 ? 10 : 0;
        count += 1;
        return new FakeWorker((message, self) => {
          if (message.kind === 'open-table') {
            opened.push((message as unknown as { turns: unknown }).turns);
            self.answer(message, { kind: 'audit-opened', recordCount: 520 });
            return;
          }
          const part = own.shift();
          const answer = part ?? { looked: 0, flagged: [] };
          setTimeout(
            () => self.answer(message, { kind: 'audit-part', ...answer, totals: part === undefined ? TOTALS : null }),
            delayMs,
          );
        });
      },
    });
    const places: number[] = [];
    const progress: AuditProgress[] = [];
    const outcome = await port.audit(
      { kind: 'table', file: new Blob(['x'.repeat(2 ** 20)]) },
      {
        onFlagged: (records) => places.push(...records.map(({ place }) => place)),
        onProgress: (one) => progress.push(one),
      },
      new AbortController().signal,
    );
    expect(opened).toEqual([
      { mine: 0, among: 2 },
      { mine: 1, among: 2 },
    ]);
    expect(places).toEqual([3, 300, 501]);
    expect(progress.at(-1)).toEqual({ stage: 'checking', share: 1, recordCount: 520, flaggedCount: 3 });
    expect(outcome.ok && outcome.value.recordCount).toBe(2 * TOTALS.recordCount);
  });

  it('hands on why a table is refused, or a file cannot be read', async () => {
    const failure = { problems: [{ kind: 'empty' }], problemCount: 1 };
    expect(await audited([{ kind: 'table-refused', failure }]).outcome).toEqual({
      ok: false,
      failure: { kind: 'table-refused', ...failure },
    });
    expect(await audited([{ kind: 'file-unreadable' }]).outcome).toEqual({
      ok: false,
      failure: { kind: 'file-unreadable' },
    });
  });

  it.each([
    ['a fault', [OPENED, { kind: 'fault', code: 'failed', detail: 'odd' }]],
    ['what is no flagged record', [OPENED, { ...FIRST_PART, flagged: [{ place: 0 }] }]],
    ['what are no totals', [OPENED, { ...LAST_PART, totals: {} }]],
    ['problems that nobody knows', [{ kind: 'table-refused', failure: { problems: [{ kind: 'odd' }] } }]],
    ['a part before anything was opened', [LAST_PART]],
  ])('stops at %s, and ends the worker', async (_, answers) => {
    const { outcome, workers } = audited(answers);
    expect(await outcome).toEqual({ ok: false, failure: { kind: 'audit-stopped' } });
    expect(workers.every(({ isTerminated }) => isTerminated)).toBe(true);
  });

  it('rejects when it is given up, and ends the worker that goes on', async () => {
    const abort = new AbortController();
    const { outcome, workers } = audited([OPENED], abort.signal);
    await vi.waitFor(() => expect(workers[0]?.sent.at(-1)?.kind).toBe('go-on'));
    abort.abort(new Error('enough'));
    await expect(outcome).rejects.toThrow('enough');
    await vi.waitFor(() => expect(workers[0]?.isTerminated).toBe(true));
  });
});
