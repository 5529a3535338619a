import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Evidence } from '../core/crosscheck/reconciliation.js';
import type { SlipKind } from '../core/crosscheck/slip.js';
import type { SessionRecord } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import type { Misfit } from './misfits.js';
import type { RecordTableFailure } from './record-table.js';

// Many records at once, each looked through as the sheet would: what the audit is asked, and what it tells. Plain data all of it,
// as it crosses to a worker and back.

/** The records that are looked through. */
export type AuditSource =
  /** a table of records as CSV; see `record-table.ts` */
  | { readonly kind: 'table'; readonly file: Blob }
  /** what is kept on this device */
  | { readonly kind: 'sessions'; readonly records: readonly SessionRecord[] };

/** Where a record comes from. */
export type AuditedOrigin =
  | {
      readonly kind: 'table';
      /** what the table calls it; null where it gives no name */
      readonly record: string | null;
      /** line of the file on which it begins, from 1 */
      readonly line: number;
    }
  | { readonly kind: 'session'; readonly sessionId: string };

/** A record in which something does not fit. Nothing is changed by it. */
export interface FlaggedRecord {
  /** its place among all records, from 0; ascending as they arrive */
  readonly place: number;
  readonly origin: AuditedOrigin;
  /** how many readings it has */
  readonly readingCount: number;
  /** what does not fit, the gravest first: the same that its sheet would show; at least one */
  readonly misfits: readonly Misfit[];
  /** what stands there, as far as a sentence about `misfits` may name it */
  readonly written: WrittenThere;
}

/** What sentences about a record draw on; with a catalogue it is the `WrittenSheet` of the screens. */
export type WrittenThere = Pick<Evidence, 'readings' | 'gauges'> & {
  /** places where two readers' numbers stand as one, which nobody wrote */
  readonly joined: ReadonlySet<ReadingName>;
};

/** What an audit found in all. */
export interface AuditTotals {
  readonly recordCount: number;
  readonly readingCount: number;
  /** records in which something does not fit */
  readonly withFindings: number;
  /** records that have a finding of the kind */
  readonly byKind: Readonly<Record<Misfit['kind'], number>>;
  /** how often each slip is the most probable explanation of a finding, most frequent first */
  readonly probableSlips: readonly { readonly kind: SlipKind; readonly count: number }[];
}

/** How far an audit has come. */
export interface AuditProgress {
  /** the whole file is read and checked before the first record is looked through */
  readonly stage: 'reading' | 'checking';
  /** of all the work, 0 to 1; never less than before */
  readonly share: number;
  /** records looked through so far */
  readonly recordCount: number;
  /** of these, records in which something does not fit */
  readonly flaggedCount: number;
}

/** Why there is no audit. What was flagged until then counts for nothing. */
export type AuditFailure =
  /** the table is not understood; its problems, as `record-table.ts` tells them */
  | ({ readonly kind: 'table-refused' } & RecordTableFailure)
  /** the file cannot be read: taken away, or changed since it was chosen */
  | { readonly kind: 'file-unreadable' }
  /** what looks records through could not be loaded, or stopped */
  | { readonly kind: 'audit-stopped' };

/** Who is told while an audit goes on. */
export interface AuditListener {
  /** called some ten times a second at most */
  readonly onProgress: (progress: AuditProgress) => void;
  /** called with the records that were flagged since the last call, in the order of the source; a few hundred at most */
  readonly onFlagged: (records: readonly FlaggedRecord[]) => void;
}

/** Looks many records through, off the page's thread. */
export interface AuditPort {
  /**
   * What does not fit in all these records. All that is flagged has been handed to the listener before this resolves. One audit
   * at a time. An aborted signal rejects with the signal's reason.
   */
  audit(source: AuditSource, listener: AuditListener, signal: AbortSignal): Promise<Result<AuditTotals, AuditFailure>>;
}
