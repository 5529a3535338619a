import { isCount, isPositive, shape } from './checks.js';
import type { CancelledReply, CancelMessage, FaultReply, Message, ProgressMessage } from './message.js';
import { isMessage, isRecord, parseCommonReply } from './message.js';

// What is flagged in a record, and what is wrong with a table, belongs to src/session, of which the protocol knows nothing: these
// parts arrive unknown, and who asked parses them (session/parse-audit.ts).

/** Reads and checks a table of records whole; answered with `audit-opened`, `table-refused` or `file-unreadable`, after some progress. */
export interface OpenTableRequest extends Message {
  readonly kind: 'open-table';
  readonly file: Blob;
  /** which turns this worker takes; `mine` counts from 0 */
  readonly turns: { readonly mine: number; readonly among: number };
}

/** Takes kept sessions, as the store's schema has checked them; answered with `audit-opened`. */
export interface OpenSessionsRequest extends Message {
  readonly kind: 'open-sessions';
  readonly records: readonly unknown[];
}

/** Looks through the next turn of the records that were opened last; answered with `audit-part`, or the fault `not-loaded`. */
export interface GoOnRequest extends Message {
  readonly kind: 'go-on';
}

export type AuditRequest = OpenTableRequest | OpenSessionsRequest | GoOnRequest;
export type ToAuditWorker = AuditRequest | CancelMessage;

export interface AuditOpenedReply extends Message {
  readonly kind: 'audit-opened';
  readonly recordCount: number;
}

export interface TableRefusedReply extends Message {
  readonly kind: 'table-refused';
  readonly failure: unknown;
}

/** The file was taken away, or changed since it was chosen. */
export interface FileUnreadableReply extends Message {
  readonly kind: 'file-unreadable';
}

export interface AuditPartReply extends Message {
  readonly kind: 'audit-part';
  /** looked through in this turn; none once all are */
  readonly looked: number;
  readonly flagged: readonly unknown[];
  /** null as long as there may be more; then what was found in all turns, and nothing is open any more */
  readonly totals: unknown;
}

export type AuditReply =
  AuditOpenedReply | TableRefusedReply | FileUnreadableReply | AuditPartReply | CancelledReply | FaultReply;
export type FromAuditWorker = AuditReply | ProgressMessage;

const areTurns = shape<OpenTableRequest['turns']>({ mine: isCount, among: isPositive });

/** What the worker was sent; null where it is no message of this protocol. */
export function parseToAuditWorker(value: unknown): ToAuditWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  const { file, turns, records } = value as { file?: unknown; turns?: unknown; records?: unknown };
  switch (value['kind']) {
    case 'cancel':
      return { v, id, kind: 'cancel' };
    case 'open-table':
      return file instanceof Blob && areTurns(turns) ? { v, id, kind: 'open-table', file, turns } : null;
    case 'open-sessions':
      return Array.isArray(records) && records.every(isRecord) ? { v, id, kind: 'open-sessions', records } : null;
    case 'go-on':
      return { v, id, kind: 'go-on' };
    default:
      return null;
  }
}

/** What the worker sent; null where it is no message of this protocol. */
export function parseFromAuditWorker(value: unknown): FromAuditWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  const { recordCount, looked, flagged, failure, totals } = value as Readonly<Record<string, unknown>>;
  switch (value['kind']) {
    case 'audit-opened':
      return isCount(recordCount) ? { v, id, kind: 'audit-opened', recordCount } : null;
    case 'table-refused':
      return { v, id, kind: 'table-refused', failure };
    case 'file-unreadable':
      return { v, id, kind: 'file-unreadable' };
    case 'audit-part':
      return isCount(looked) && Array.isArray(flagged) && totals !== undefined
        ? { v, id, kind: 'audit-part', looked, flagged, totals }
        : null;
    default:
      return parseCommonReply(value);
  }
}
