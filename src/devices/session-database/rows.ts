import type { Result } from '../../core/result.js';
import type { StoreFailure } from '../../session/session-store.js';

/**
 * What the store keeps, each kind by itself. `documents` holds what there is only one of; `meta` what the store needs to know of
 * itself.
 */
export const TABLES = ['sessions', 'summaries', 'documents', 'pictures', 'meta'] as const;

export type Table = (typeof TABLES)[number];

/** A row as it is written; what is read may be damaged and has to be looked at first. */
export interface Row {
  readonly id: string;
}

/** By what rows of pictures can be found besides their id, without being opened. */
export type PictureIndex = 'sessionId' | 'keptUntil';

/** All tables at one moment. Nothing but answers of this transaction may be awaited in it. */
export interface RowsReading {
  /** undefined where there is none */
  one(table: Table, id: string): Promise<unknown>;
  all(table: Table): Promise<readonly unknown[]>;
  ids(table: Table): Promise<readonly string[]>;
  /** The ids of the pictures that have this value there. */
  pictureIds(index: PictureIndex, value: string): Promise<readonly string[]>;
  /** The ids of the pictures that have a lower value there, as texts are ordered. */
  pictureIdsBelow(index: PictureIndex, value: string): Promise<readonly string[]>;
}

export interface RowsWriting extends RowsReading {
  put<One extends Row>(table: Table, row: One): void;
  remove(table: Table, id: string): void;
}

/** Tables of rows that are changed together or not at all. */
export interface Rows {
  read<Value>(work: (rows: RowsReading) => Promise<Value>): Promise<Result<Value, StoreFailure>>;
  /** Resolves once all is on the disk. Nothing is written where the work fails. */
  write<Value, Failure>(
    work: (rows: RowsWriting) => Promise<Result<Value, Failure>>,
  ): Promise<Result<Value, Failure | StoreFailure>>;
  /** Lets go of the tables. Calling it twice is no mistake. */
  close(): void;
}
