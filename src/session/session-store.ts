import type { SheetSettings } from '../core/record/typed-sheet.js';
import type { SessionRecord, SessionSummary } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import type { SealingOutage } from './sealing.js';

/** Why something was not kept, or could not be read back. */
export type StoreFailure =
  /** the browser allows this page to keep nothing, as in some private windows */
  | { readonly kind: 'storage-refused' }
  | { readonly kind: 'storage-full' }
  /** the database cannot be opened, or stopped answering; what is typed is only on the screen */
  | { readonly kind: 'storage-broken' }
  /** a later version of Glabella has been here and keeps its records in another form */
  | { readonly kind: 'storage-newer' }
  /** the store is locked; nothing can be read or written before the passphrase was given */
  | { readonly kind: 'storage-locked' }
  | { readonly kind: 'session-missing'; readonly id: string }
  /** what stands there is no session; `raw` is all that can be saved of it, as text */
  | { readonly kind: 'session-unreadable'; readonly id: string; readonly raw: string }
  /** someone else, mostly another window, wrote this session since it was read; nothing was written */
  | { readonly kind: 'changed-elsewhere'; readonly id: string };

/** A session and how often it has been written: who writes tells what was read, so that nobody overwrites what he never saw. */
export interface StoredSession {
  readonly record: SessionRecord;
  readonly revision: number;
}

/** What stands in the store and is no session any more. */
export interface UnreadableSession {
  readonly id: string;
  /** as it stands there, as text */
  readonly raw: string;
}

export interface AllSessions {
  readonly records: readonly SessionRecord[];
  readonly unreadable: readonly UnreadableSession[];
}

/** What became of the sessions that were brought in from a file. */
export interface BroughtIn {
  readonly added: number;
  /** continued what was here: same session, later, with all its history */
  readonly renewed: number;
  /** same session, but changed in both places: kept beside the one that was here, under a new id */
  readonly beside: number;
  /** nothing new */
  readonly same: number;
}

/** Keeps sessions on this device. Every record is checked by its schema when it is written and when it is read. */
export interface SessionStore {
  /** Of all sessions that can be read, newest change first; `unreadable` counts the others. */
  summaries(): Promise<
    Result<{ readonly summaries: readonly SessionSummary[]; readonly unreadable: number }, StoreFailure>
  >;
  load(id: string): Promise<Result<StoredSession, StoreFailure>>;
  all(): Promise<Result<AllSessions, StoreFailure>>;
  /**
   * Writes a session and resolves once it stands on the disk.
   *
   * @param revision the one that was read or written last; null for a session that is new
   * @returns the revision to give next time
   */
  save(record: SessionRecord, revision: number | null): Promise<Result<number, StoreFailure>>;
  /** Brings in sessions from a file: all or none. */
  bring(records: readonly SessionRecord[]): Promise<Result<BroughtIn, StoreFailure>>;
  /** Deletes sessions for good, with their pictures and histories. Ids that are not there are passed over. */
  remove(ids: readonly string[]): Promise<Result<null, StoreFailure>>;
  /**
   * Calls the listener when another window wrote or removed sessions; null where it may have been any.
   *
   * @returns stops listening
   */
  onChangedElsewhere(listener: (ids: readonly string[] | null) => void): () => void;
}

/** What belongs to the desk and not to a visit. */
export interface Desk {
  /** what the next session begins with */
  readonly settings: SheetSettings;
  /** the names that the readers had last */
  readonly readerNames: { readonly first: string; readonly second: string };
  /** the session that was open last; null for none */
  readonly openSessionId: string | null;
}

export interface DeskStore {
  /** What was kept last; null where nothing was, or it cannot be read. */
  load(): Promise<Result<Desk | null, StoreFailure>>;
  save(desk: Desk): Promise<Result<null, StoreFailure>>;
}

/** A picture that is kept because the wearer agreed to it: cropped, the card's face blurred, and only for a while. */
export interface KeptPicture {
  readonly id: string;
  readonly sessionId: string;
  /** ISO 8601 */
  readonly takenAt: string;
  /** when the wearer agreed, and to what, word for word, in which language (BCP 47) */
  readonly consent: { readonly at: string; readonly wording: string; readonly language: string };
  /** the last day on which it is kept, ISO 8601 date */
  readonly keptUntil: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** JPEG */
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export interface PictureStore {
  ofSession(sessionId: string): Promise<Result<readonly KeptPicture[], StoreFailure>>;
  keep(picture: KeptPicture): Promise<Result<null, StoreFailure>>;
  remove(id: string): Promise<Result<null, StoreFailure>>;
  /** Deletes all pictures whose last day is before this one (ISO 8601 date); resolves with their number. */
  removeExpired(today: string): Promise<Result<number, StoreFailure>>;
}

/** Why a lock was not set, opened or removed. */
export type LockFailure =
  | StoreFailure
  /** what locks and unlocks could not be loaded, or this browser cannot do it here */
  | SealingOutage
  | { readonly kind: 'passphrase-empty' }
  | { readonly kind: 'passphrase-wrong' };

/** A passphrase without which nothing in the store can be read. */
export interface StoreLock {
  state(): Promise<Result<'none' | 'locked' | 'open', StoreFailure>>;
  /** Sets the first passphrase, or another one in place of the one that is open; all that is kept is sealed under it. */
  set(passphrase: string): Promise<Result<null, LockFailure>>;
  unlock(passphrase: string): Promise<Result<null, LockFailure>>;
  /** Forgets the key in this window: the next one who comes has to know the passphrase. */
  lock(): void;
  /** Keeps everything unsealed again; the lock has to be open. */
  remove(): Promise<Result<null, LockFailure>>;
}
