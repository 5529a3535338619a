import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { SessionRecord } from '../core/record/session-record.js';
import type { AuditTotals, FlaggedRecord } from './audit.js';
import { createAuditTally } from './audit-findings.js';
import type { AuditedRecord } from './audit-records.js';
import { createRecordAudit, createSessionAudit } from './audit-records.js';
import { gaugesOfTable } from './record-evidence.js';
import type { RecordTable } from './record-table.js';

/** What was found in a part of the records. */
export interface AuditPart {
  /** looked through so far, in all */
  readonly recordCount: number;
  readonly flaggedCount: number;
  /** flagged in this part */
  readonly flagged: readonly FlaggedRecord[];
  /** null as long as there is more */
  readonly totals: AuditTotals | null;
}

/** An audit that is worked on part by part. */
export interface AuditCourse {
  /** how many records there are in all */
  readonly recordCount: number;
  /** Looks through the next records: until the time is up or many are flagged, but at least one. */
  readonly next: (isTimeUp: () => boolean) => AuditPart;
}

/** Chosen: a page takes so many in at once without a pause that anybody notices. */
const MOST_AT_ONCE = 300;

/** Asked for the time after so many records, as asking takes time as well. */
const RECORDS_PER_LOOK = 20;

interface Looked {
  readonly origin: () => FlaggedRecord['origin'];
  readonly audited: AuditedRecord;
}

export function openTableAudit(table: RecordTable, catalogue: Catalogue): AuditCourse {
  return courseOf(table.recordCount, lookThroughTable(table, catalogue));
}

function* lookThroughTable(table: RecordTable, catalogue: Catalogue): Generator<Looked, void, undefined> {
  // what a gauge is called is a matter of the screen
  const audit = createRecordAudit(
    catalogue,
    gaugesOfTable(table, catalogue, () => ''),
  );
  for (const record of table.records()) {
    yield {
      origin: () => ({ kind: 'table', record: record.id, line: record.line }),
      audited: audit(record),
    };
  }
}

export function openSessionsAudit(records: readonly SessionRecord[], catalogue: Catalogue): AuditCourse {
  return courseOf(records.length, lookThroughSessions(records, catalogue));
}

function* lookThroughSessions(
  records: readonly SessionRecord[],
  catalogue: Catalogue,
): Generator<Looked, void, undefined> {
  const audit = createSessionAudit(catalogue);
  for (const record of records) {
    yield { origin: () => ({ kind: 'session', sessionId: record.id }), audited: audit(record) };
  }
}

function courseOf(recordCount: number, all: Generator<Looked, void, undefined>): AuditCourse {
  const tally = createAuditTally();
  let [done, flaggedCount] = [0, 0];
  return {
    recordCount,
    next: (isTimeUp) => {
      const flagged: FlaggedRecord[] = [];
      let isOver = false;
      do {
        const next = all.next();
        isOver = next.done === true;
        if (next.done === true) break;
        const { origin, audited } = next.value;
        const { readingCount, found } = audited;
        tally.add(readingCount, found?.misfits ?? []);
        if (found !== null) flagged.push({ place: done, origin: origin(), readingCount, ...found });
        done += 1;
      } while (flagged.length < MOST_AT_ONCE && (done % RECORDS_PER_LOOK !== 0 || !isTimeUp()));
      flaggedCount += flagged.length;
      return { recordCount: done, flaggedCount, flagged, totals: isOver ? tally.totals() : null };
    },
  };
}
