import { OUTSIDE_TABLES } from '../../../calibration/tables.js';
import { assembleCatalogue } from '../../core/catalogue/catalogue.js';
import type { SessionRecord } from '../../core/record/session-record.js';
import type { AuditReply, AuditRequest } from '../../protocol/audit-messages.js';
import { parseToAuditWorker } from '../../protocol/audit-messages.js';
import type { AuditCourse } from '../../session/audit-course.js';
import { openSessionsAudit, openTableAudit } from '../../session/audit-course.js';
import { openRecordFile } from '../../session/record-file.js';
import { answerMessages, Fault } from '../message-loop.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

/** The records that were opened last; null where all of them were looked through. */
let course: AuditCourse | null = null;

answerMessages<AuditRequest, AuditReply>(parseToAuditWorker, async (request, work) => {
  await work.checkCancelled();
  switch (request.kind) {
    case 'open-table': {
      course = null;
      const table = await openRecordFile(request.file, catalogue, work.progress);
      if (table === null) return { kind: 'file-unreadable' };
      if (!table.ok) return { kind: 'table-refused', failure: table.failure };
      course = openTableAudit(table.value, catalogue, request.turns);
      return { kind: 'audit-opened', recordCount: course.recordCount };
    }
    case 'open-sessions': {
      course = openSessionsAudit(request.records as readonly SessionRecord[], catalogue);
      return { kind: 'audit-opened', recordCount: course.recordCount };
    }
    case 'go-on': {
      if (course === null) throw new Fault('not-loaded', 'no records are open');
      const part = course.next();
      if (part.totals !== null) course = null;
      return { kind: 'audit-part', ...part };
    }
  }
});
