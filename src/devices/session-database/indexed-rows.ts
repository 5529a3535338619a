import type { DBSchema, IDBPDatabase, IDBPTransaction } from 'idb';
import { openDB } from 'idb';
import type { Result } from '../../core/result.js';
import { fail, succeed } from '../../core/result.js';
import type { StoreFailure } from '../../session/session-store.js';
import { beginNewLog, FILLER_TABLE } from './new-log.js';
import type { Row, Rows, RowsReading, RowsWriting, Table } from './rows.js';
import { TABLES } from './rows.js';
import { storeFailureOf } from './store-failure.js';

const DATABASE_NAME = 'glabella';

interface Schema extends DBSchema {
  sessions: { key: string; value: Row };
  summaries: { key: string; value: Row };
  documents: { key: string; value: Row };
  pictures: { key: string; value: Row; indexes: { sessionId: string; keptUntil: string } };
  meta: { key: string; value: Row };
  [FILLER_TABLE]: { key: number; value: Uint8Array };
}

type Database = IDBPDatabase<Schema>;

/** What leads from each version of the database to the next one; the first leads from none to 1. They are never changed. */
const UPGRADES: readonly ((database: Database) => void)[] = [
  (database) => {
    for (const table of ['sessions', 'summaries', 'documents', 'meta'] as const) {
      database.createObjectStore(table, { keyPath: 'id' });
    }
    const pictures = database.createObjectStore('pictures', { keyPath: 'id' });
    pictures.createIndex('sessionId', 'sessionId');
    pictures.createIndex('keptUntil', 'keptUntil');
  },
  (database) => {
    database.createObjectStore(FILLER_TABLE);
  },
];

const DATABASE_VERSION = UPGRADES.length;

/** Chosen: a browser that has not opened or answered by then is taken to be stuck; a slow disk with much on it takes seconds. */
const LIMIT_MS = 20_000;

/** Tables in the browser's database. */
export async function openIndexedRows(limitMs = LIMIT_MS): Promise<Result<Rows, StoreFailure>> {
  let database: Database | null = null;
  /** why it will not be opened any more */
  let ended: StoreFailure | null = null;

  async function connected(): Promise<Result<Database, StoreFailure>> {
    if (ended !== null) return fail(ended);
    if (database !== null) return succeed(database);
    const opened = await openDatabase(limitMs, {
      // Another window brings a newer version of this app: that one goes on, and this one has to be loaded anew.
      newer: () => {
        ended = { kind: 'storage-newer' };
        database = null;
      },
      // The browser closed it, or it was deleted: the next one who asks opens it again.
      lost: () => {
        database = null;
      },
    });
    if (opened.ok) {
      database = opened.value;
      void beginNewLog(database as unknown as IDBPDatabase);
    }
    return opened;
  }

  async function run<Value, Failure>(
    mode: 'readonly' | 'readwrite',
    work: (rows: RowsWriting) => Promise<Result<Value, Failure>>,
  ): Promise<Result<Value, Failure | StoreFailure>> {
    for (let isAgain = false; ; isAgain = true) {
      const connection = await connected();
      if (!connection.ok) return connection;
      let transaction: IDBPTransaction<Schema, Table[], 'readwrite'>;
      try {
        // Typed as one that writes; the browser refuses that in the other.
        transaction = connection.value.transaction([...TABLES], mode as 'readwrite', { durability: 'strict' });
      } catch (reason) {
        // Closed without a word, as some browsers do with pages in the background.
        const isClosed = reason instanceof DOMException && reason.name === 'InvalidStateError';
        if (!isClosed || isAgain) return fail(storeFailureOf(reason));
        if (database === connection.value) database = null;
        continue;
      }
      return runIn(transaction, work, limitMs);
    }
  }

  const first = await connected();
  if (!first.ok) return first;
  return succeed({
    read: <Value>(work: (rows: RowsReading) => Promise<Value>) =>
      run<Value, never>('readonly', async (rows) => succeed(await work(rows))),
    write: (work) => run('readwrite', work),
    close: () => {
      ended ??= { kind: 'storage-broken' };
      database?.close();
      database = null;
    },
  });
}

async function runIn<Value, Failure>(
  transaction: IDBPTransaction<Schema, Table[], 'readwrite'>,
  work: (rows: RowsWriting) => Promise<Result<Value, Failure>>,
  limitMs: number,
): Promise<Result<Value, Failure | StoreFailure>> {
  // It is awaited below, but may fail before that.
  transaction.done.catch(() => null);
  let isLate = false;
  const timer = setTimeout(() => {
    isLate = true;
    abort(transaction);
  }, limitMs);
  try {
    const outcome = await work(writingOf(transaction));
    if (outcome.ok) await transaction.done;
    else abort(transaction);
    return outcome;
  } catch (reason) {
    abort(transaction);
    if (isLate) return fail({ kind: 'storage-broken' });
    return fail(storeFailureOf(transaction.error ?? reason));
  } finally {
    clearTimeout(timer);
  }
}

/** Takes back all that the transaction would write; nothing where it has ended already. */
function abort(transaction: IDBPTransaction<Schema, Table[], 'readwrite'>): void {
  try {
    transaction.abort();
  } catch (reason) {
    if (!(reason instanceof DOMException)) throw reason;
  }
}

function writingOf(transaction: IDBPTransaction<Schema, Table[], 'readwrite'>): RowsWriting {
  const pictures = transaction.objectStore('pictures');
  return {
    one: (table, id) => transaction.objectStore(table).get(id),
    all: (table) => transaction.objectStore(table).getAll(),
    ids: (table) => transaction.objectStore(table).getAllKeys(),
    pictureIds: (index, value) => pictures.index(index).getAllKeys(IDBKeyRange.only(value)),
    pictureIdsBelow: (index, value) => pictures.index(index).getAllKeys(IDBKeyRange.upperBound(value, true)),
    // What fails here aborts the transaction, whose end is waited for.
    put: (table, row) => {
      transaction
        .objectStore(table)
        .put(row)
        .catch(() => null);
    },
    remove: (table, id) => {
      transaction
        .objectStore(table)
        .delete(id)
        .catch(() => null);
    },
  };
}

interface Losses {
  readonly newer: () => void;
  readonly lost: () => void;
}

async function openDatabase(limitMs: number, { newer, lost }: Losses): Promise<Result<Database, StoreFailure>> {
  // Types say that it is always there; some private windows have none, and to ask for it may already be refused.
  try {
    if ((globalThis.indexedDB as IDBFactory | undefined) === undefined) return fail({ kind: 'storage-refused' });
  } catch (reason) {
    return fail(storeFailureOf(reason));
  }
  let isLate = false;
  // Some browsers throw where others refuse: a promise says both in one way.
  const opening = (async () =>
    openDB<Schema>(DATABASE_NAME, DATABASE_VERSION, {
      upgrade: (database, oldVersion) => {
        for (const step of UPGRADES.slice(oldVersion)) step(database);
      },
      blocking: (_currentVersion, blockedVersion, event) => {
        (event.target as IDBDatabase).close();
        if (blockedVersion === null) lost();
        else newer();
      },
      terminated: lost,
    }))();
  // Windows with an earlier version close when they are asked to; one that does not makes this wait in vain.
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<'late'>((resolve) => {
    timer = setTimeout(() => {
      isLate = true;
      resolve('late');
    }, limitMs);
  });
  opening.then(
    (database) => {
      if (isLate) database.close();
    },
    () => null,
  );
  try {
    const database = await Promise.race([opening, late]);
    return database === 'late' ? fail({ kind: 'storage-broken' }) : succeed(database);
  } catch (reason) {
    return fail(openingFailureOf(reason));
  } finally {
    clearTimeout(timer);
  }
}

/** Firefox says in private windows, on opening, that the state of the database is invalid. */
function openingFailureOf(reason: unknown): StoreFailure {
  if (reason instanceof DOMException && reason.name === 'InvalidStateError') return { kind: 'storage-refused' };
  return storeFailureOf(reason);
}
