import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import type { AuditTotals, FlaggedRecord } from '../../src/session/audit.js';
import type { AuditCourse, AuditPart } from '../../src/session/audit-course.js';
import { joinTotals } from '../../src/session/audit-findings.js';
import { openSessionsAudit, openTableAudit, TURN_RECORDS } from '../../src/session/audit-course.js';
import { parseAuditTotals, parseFlagged, parseTableFailure } from '../../src/session/parse-audit.js';
import { openRecordFile } from '../../src/session/record-file.js';
import { LARGEST_TABLE_BYTES } from '../../src/session/record-table.js';
import { PART_RECORDS, SLIP_SHARE, simulateTablePart } from '../speed/audit-table.js';
import { sampleSessions } from '../support/sample-sessions.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const { text, slipped } = simulateTablePart(3, 0, catalogue);

async function opened(content: BlobPart, onProgress: (share: number) => void = () => undefined) {
  const table = await openRecordFile(new Blob([content]), catalogue, onProgress);
  if (table?.ok !== true) throw new Error(JSON.stringify(table));
  return table.value;
}

describe('the audit of a thousand simulated records', () => {
  it('goes on part by part, flags in the order of the table, and counts what it flagged', async () => {
    const course = openTableAudit(await opened(text), catalogue);
    expect(course.recordCount).toBe(PART_RECORDS);
    const parts: AuditPart[] = [];
    do parts.push(course.next());
    while (parts.at(-1)?.totals === null);
    expect(parts.map(({ looked }) => looked)).toEqual([
      ...new Array<number>(PART_RECORDS / TURN_RECORDS).fill(TURN_RECORDS),
      0,
    ]);

    const flagged = parts.flatMap((part) => part.flagged);
    const places = flagged.map(({ place }) => place);
    expect(places).toEqual([...new Set(places)].sort((a, b) => a - b));
    const totals = parts.at(-1)?.totals;
    expect(totals).toMatchObject({ recordCount: PART_RECORDS, withFindings: flagged.length });
    const ofKind = (kind: string) => flagged.filter(({ misfits }) => misfits.some((one) => one.kind === kind)).length;
    expect(totals?.byKind).toMatchObject({ suspected: ofKind('suspected'), unusual: ofKind('unusual') });
    // a place counts the records above it, the line the header as well; the name is the one that the table gives
    for (const { place, origin } of flagged) {
      expect(origin).toEqual({ kind: 'table', record: `R${place + 1}`, line: place + 2 });
    }
  });

  it('is the same where two share it', async () => {
    const table = await opened(text);
    const alone = openTableAudit(table, catalogue);
    const shared = [0, 1].map((mine) => openTableAudit(table, catalogue, { mine, among: 2 }));
    const [first, second] = shared.map(allOf);
    const together = [...first!, ...second!].sort((a, b) => a.place - b.place);
    expect(together).toEqual(allOf(alone));
    expect(new Set(first!.map(({ place }) => Math.floor(place / TURN_RECORDS) % 2))).toEqual(new Set([0]));
    expect(joinTotals(shared.map(totalsOf)).withFindings).toBe(together.length);
  });

  it('suspects many of the slips, and hardly any record without one', async () => {
    const course = openTableAudit(await opened(text), catalogue);
    const found = new Set(allOf(course).flatMap(({ place, misfits }) => (isSuspected(misfits) ? [place] : [])));
    const right = slipped.flatMap((isSlipped, place) => (isSlipped ? [] : [place]));
    const wrong = slipped.flatMap((isSlipped, place) => (isSlipped ? [place] : []));
    expect(wrong.length / slipped.length).toBeCloseTo(SLIP_SHARE, 1);
    expect(wrong.filter((place) => found.has(place)).length / wrong.length).toBeGreaterThan(0.45);
    expect(right.filter((place) => found.has(place)).length / right.length).toBeLessThan(0.02);
  });

  it('survives the way to the page', async () => {
    const course = openTableAudit(await opened(text), catalogue);
    const flagged = allOf(course);
    expect(parseFlagged(structuredClone(flagged))).toEqual(flagged);
    expect(parseFlagged([{ ...flagged[0], place: -1 }])).toBeNull();
    expect(parseFlagged([{ ...flagged[0], misfits: [{ kind: 'odd' }] }])).toBeNull();
    const totals = totalsOf(openTableAudit(await opened('pd_far_mm\n63\n'), catalogue));
    expect(parseAuditTotals(structuredClone(totals))).toEqual(totals);
    expect(parseAuditTotals({ ...totals, recordCount: 'many' })).toBeNull();
  });

  it('tells how far the reading has come', async () => {
    const shares: number[] = [];
    await opened(text, (share) => shares.push(share));
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});

describe('the file of a table', () => {
  it('is refused before it is read where it is too large', async () => {
    const file = { size: LARGEST_TABLE_BYTES + 1 } as Blob;
    const table = await openRecordFile(file, catalogue, () => undefined);
    expect(table).toMatchObject({ ok: false, failure: { problems: [{ kind: 'too-large' }] } });
  });

  it('may be gone', async () => {
    const file = { size: 1, arrayBuffer: () => Promise.reject(new Error('gone')) } as unknown as Blob;
    expect(await openRecordFile(file, catalogue, () => undefined)).toBeNull();
  });

  it('tells its problems, which survive the way to the page', async () => {
    const table = await openRecordFile(new Blob(['pd_far_mm\n63\nnone\n']), catalogue, () => undefined);
    if (table?.ok !== false) throw new Error('The table was read.');
    expect(parseTableFailure(structuredClone(table.failure))).toEqual(table.failure);
    expect(table.failure.problems).toMatchObject([{ kind: 'bad-number', place: { line: 3 } }]);
    expect(parseTableFailure({ problems: [{ kind: 'odd' }], problemCount: 1 })).toBeNull();
  });
});

describe('the audit of kept sessions', () => {
  it('names each by its id', () => {
    const sessions = sampleSessions(20);
    const course = openSessionsAudit(sessions, catalogue);
    const { looked, flagged } = course.next();
    expect(looked).toBe(20);
    expect(totalsOf(course).recordCount).toBe(20);
    for (const { place, origin } of flagged) {
      expect(origin).toEqual({ kind: 'session', sessionId: sessions[place]?.id });
    }
    expect(parseFlagged(structuredClone(flagged))).toEqual(flagged);
  });
});

function allOf(course: AuditCourse): readonly FlaggedRecord[] {
  const flagged: FlaggedRecord[] = [];
  for (;;) {
    const part = course.next();
    flagged.push(...part.flagged);
    if (part.totals !== null) return flagged;
  }
}

function totalsOf(course: AuditCourse): AuditTotals {
  for (;;) {
    const { totals } = course.next();
    if (totals !== null) return totals;
  }
}

function isSuspected(misfits: FlaggedRecord['misfits']): boolean {
  return misfits.some(({ kind }) => kind === 'suspected' || kind === 'refused');
}
