import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { SessionRecord } from '../core/record/session-record.js';
import { invariant } from '../core/result.js';
import type { AuditTotals, FlaggedRecord } from './audit.js';
import { createAuditTally } from './audit-findings.js';
import type { AuditedRecord } from './audit-records.js';
import { createRecordAudit, createSessionAudit } from './audit-records.js';
import { gaugesOfTable } from './record-evidence.js';
import type { RecordTable } from './record-table.js';

/** What was found in one turn. */
export interface AuditPart {
  /** how many records were looked through in it; none once all are */
  readonly looked: number;
  /** in the order of the source */
  readonly flagged: readonly FlaggedRecord[];
  /** of all turns, once there is no further one; null before */
  readonly totals: AuditTotals | null;
}

/** An audit that is worked on turn by turn. */
export interface AuditCourse {
  /** how many records there are in all */
  readonly recordCount: number;
  readonly next: () => AuditPart;
}

/** The records by turns: who shares the work with others takes only those turns whose number leaves `mine` when divided by `among`. */
export interface Turns {
  readonly mine: number;
  readonly among: number;
}

const ALL_TURNS: Turns = { mine: 0, among: 1 };

/** Chosen: a page takes in what is flagged of so many records without a pause that anybody notices, and hears of it often enough. */
export const TURN_RECORDS = 250;

interface Looked {
  readonly place: number;
  readonly origin: FlaggedRecord['origin'];
  readonly audited: AuditedRecord;
}

export function openTableAudit(table: RecordTable, catalogue: Catalogue, turns: Turns = ALL_TURNS): AuditCourse {
  return courseOf(table.recordCount, turns, lookThroughTable(table, catalogue, turns));
}

function isMine(place: number, { mine, among }: Turns): boolean {
  return Math.floor(place / TURN_RECORDS) % among === mine;
}

function* lookThroughTable(table: RecordTable, catalogue: Catalogue, turns: Turns): Generator<Looked, void, undefined> {
  // what a gauge is called is a matter of the screen
  const audit = createRecordAudit(
    catalogue,
    gaugesOfTable(table, catalogue, () => ''),
  );
  let place = -1;
  const isWanted = (index: number): boolean => {
    if (!isMine(index, turns)) return false;
    place = index;
    return true;
  };
  for (const record of table.records(isWanted)) {
    yield { place, origin: { kind: 'table', record: record.id, line: record.line }, audited: audit(record) };
  }
}

export function openSessionsAudit(records: readonly SessionRecord[], catalogue: Catalogue): AuditCourse {
  return courseOf(records.length, ALL_TURNS, lookThroughSessions(records, catalogue));
}

function* lookThroughSessions(
  records: readonly SessionRecord[],
  catalogue: Catalogue,
): Generator<Looked, void, undefined> {
  const audit = createSessionAudit(catalogue);
  for (const [place, record] of records.entries()) {
    yield { place, origin: { kind: 'session', sessionId: record.id }, audited: audit(record) };
  }
}

function courseOf(recordCount: number, turns: Turns, all: Generator<Looked, void, undefined>): AuditCourse {
  const tally = createAuditTally();
  let turn = turns.mine;
  return {
    recordCount,
    next: () => {
      const flagged: FlaggedRecord[] = [];
      const begin = turn * TURN_RECORDS;
      const looked = Math.max(Math.min(TURN_RECORDS, recordCount - begin), 0);
      for (let i = 0; i < looked; i += 1) {
        const next = all.next();
        invariant(next.done !== true, 'a table has as many records as were counted in it');
        const { place, origin, audited } = next.value;
        const { readingCount, found } = audited;
        tally.add(readingCount, found?.misfits ?? []);
        if (found !== null) flagged.push({ place, origin, readingCount, ...found });
      }
      turn += turns.among;
      return { looked, flagged, totals: looked === 0 ? tally.totals() : null };
    },
  };
}
