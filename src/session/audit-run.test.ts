import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { exampleSession, MemorySessionStore } from '../../tests/support/memory-session-store.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { summaryOf } from '../core/record/session-record.js';
import { fail, succeed } from '../core/result.js';
import type { AuditListener, AuditPort, FlaggedRecord } from './audit.js';
import { joinTotals } from './audit-findings.js';
import type { AuditState } from './audit-run.js';
import { createAuditRun } from './audit-run.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const NO_TOTALS = joinTotals([]);
const AT = new Date('2026-11-26T03:00:00Z');

function flagged(place: number, origin: FlaggedRecord['origin']): FlaggedRecord {
  return {
    place,
    origin,
    readingCount: 1,
    misfits: [{ kind: 'unusual', names: ['pdFar'], value: 80, usual: { low: 54, high: 74 } }],
    written: { readings: {}, gauges: [], joined: new Set() },
  };
}

/** A port whose audits end when the test says so. */
function portByHand() {
  const begun: {
    readonly listener: AuditListener;
    readonly end: (result: Awaited<ReturnType<AuditPort['audit']>>) => void;
  }[] = [];
  const port: AuditPort = {
    audit: (_source, listener, signal) =>
      new Promise((resolve, reject) => {
        begun.push({ listener, end: resolve });
        signal.addEventListener('abort', () => {
          reject(signal.reason as Error);
        });
      }),
  };
  return { port, begun };
}

function runOn(port: AuditPort, sessions = new MemorySessionStore()) {
  return createAuditRun({
    port,
    sessions,
    catalogue,
    nameOf: ({ origin }, summary) => (origin.kind === 'table' ? (origin.record ?? '') : (summary?.wearer ?? '')),
    clock: () => AT,
  });
}

const TABLE = { kind: 'table', file: new Blob(['pd_far_mm\n63\n']), name: 'a.csv' } as const;

describe('an audit of a table', () => {
  it('tells how far it has come, and has its rows when it is done', async () => {
    const { port, begun } = portByHand();
    const run = runOn(port);
    const seen: AuditState['stage']['kind'][] = [];
    run.subscribe(() => seen.push(run.now().stage.kind));
    const ended = run.start(TABLE);
    const [audit] = begun;
    audit?.listener.onProgress({ stage: 'checking', share: 0.5, recordCount: 40, flaggedCount: 1 });
    expect(run.now().stage).toEqual({
      kind: 'running',
      share: 0.5,
      isReading: false,
      recordCount: 40,
      flaggedCount: 1,
    });
    audit?.listener.onFlagged([flagged(7, { kind: 'table', record: 'Ann', line: 9 })]);
    expect(run.now().rows).toEqual([]);
    audit?.end(succeed({ ...NO_TOTALS, recordCount: 80, withFindings: 1 }));
    await ended;
    expect(run.now().stage).toMatchObject({ kind: 'done', totals: { recordCount: 80 }, at: AT });
    expect(run.now().rows.map(({ folded }) => folded)).toEqual(['ann']);
    expect(new Set(seen)).toEqual(new Set(['running', 'done']));
  });

  it('keeps what was flagged where it is stopped', async () => {
    const { port, begun } = portByHand();
    const run = runOn(port);
    const ended = run.start(TABLE);
    begun[0]?.listener.onFlagged([flagged(0, { kind: 'table', record: 'Ann', line: 2 })]);
    begun[0]?.listener.onProgress({ stage: 'checking', share: 0.5, recordCount: 40, flaggedCount: 1 });
    run.stop();
    begun[0]?.listener.onFlagged([flagged(1, { kind: 'table', record: 'Bob', line: 3 })]);
    await ended;
    expect(run.now().stage).toEqual({ kind: 'stopped', recordCount: 40, at: AT });
    expect(run.now().rows).toHaveLength(1);
  });

  it('gives way to the next one, with its view', async () => {
    const { port, begun } = portByHand();
    const run = runOn(port);
    const first = run.start(TABLE);
    run.look({ ...run.now().view, page: 3 });
    const second = run.start({ ...TABLE, name: 'b.csv' });
    await first;
    expect(run.now()).toMatchObject({ subject: { name: 'b.csv' }, stage: { kind: 'running' }, view: { page: 0 } });
    begun[1]?.end(fail({ kind: 'table-refused', problems: [{ kind: 'empty' }], problemCount: 1 }));
    await second;
    expect(run.now().stage).toMatchObject({ kind: 'failed', failure: { kind: 'table-refused' } });
  });

  it('hands on what is no abort', async () => {
    const run = runOn({ audit: () => Promise.reject(new Error('a bug')) });
    await expect(run.start(TABLE)).rejects.toThrow('a bug');
  });
});

describe('an audit of kept sessions', () => {
  const all = Array.from({ length: 120 }, (_, index) => exampleSession(`s${index}`));
  const summaries = all.map(summaryOf);

  it('reads some at a time, and counts on through all of them', async () => {
    const sizes: number[] = [];
    const shares: number[] = [];
    const port: AuditPort = {
      audit: (source, listener) => {
        const records = source.kind === 'sessions' ? source.records : [];
        sizes.push(records.length);
        const [first] = records;
        if (first !== undefined) listener.onFlagged([flagged(0, { kind: 'session', sessionId: first.id })]);
        listener.onProgress({ stage: 'checking', share: 1, recordCount: records.length, flaggedCount: 1 });
        return Promise.resolve(succeed({ ...NO_TOTALS, recordCount: records.length, withFindings: 1 }));
      },
    };
    const run = runOn(port, new MemorySessionStore(all.slice(0, 119)));
    run.subscribe(() => {
      const { stage } = run.now();
      if (stage.kind === 'running') shares.push(stage.share);
    });
    await run.start({ kind: 'sessions', summaries, isPart: false });
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBe(119);
    expect(sizes.length).toBeGreaterThan(1);
    expect(run.now().stage).toMatchObject({ totals: { recordCount: 119, withFindings: sizes.length } });
    expect(run.now().unreadable).toBe(1);
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.at(-1)).toBe(1);
    // the first of each lot: their places count on
    expect(run.now().rows.map(({ record }) => record.place)).toEqual(
      sizes.map((_, lot) => sizes.slice(0, lot).reduce((sum, size) => sum + size, 0)),
    );
  });

  it('ends where the store is locked', async () => {
    const store = new MemorySessionStore(all);
    store.failure = { kind: 'storage-locked' };
    const run = runOn(portByHand().port, store);
    await run.start({ kind: 'sessions', summaries, isPart: true });
    expect(run.now().stage).toEqual({ kind: 'failed', failure: { kind: 'storage-locked' } });
  });
});
