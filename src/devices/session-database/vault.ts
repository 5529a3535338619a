import * as z from 'zod/mini';
import type { Result } from '../../core/result.js';
import { fail, succeed } from '../../core/result.js';
import type { StoreFailure } from '../../session/session-store.js';
import type { DataKey } from './contents.js';
import type { Rows, RowsReading, RowsWriting } from './rows.js';

const LOCK_ID = 'lock';
const CHANGES_ID = 'changes';

const lockSchema = z.object({
  id: z.literal(LOCK_ID),
  keyId: z.string(),
  /** the key's bytes, sealed with the passphrase as an age file */
  wrapped: z.custom<Uint8Array<ArrayBuffer>>((value) => value instanceof Uint8Array),
});

/** The lock as it is kept. */
export type LockRow = z.infer<typeof lockSchema>;

const changesSchema = z.object({ id: z.literal(CHANGES_ID), count: z.int().check(z.nonnegative()) });

/** Chosen: whoever loses that many races in a row is not losing them by chance. */
const MOST_ATTEMPTS = 20;

/** Someone wrote in between: read once more. */
interface Overtaken {
  readonly kind: 'overtaken';
}

/**
 * The tables behind their lock. Cryptography cannot be waited for inside of a transaction, so that what is written is made
 * ready before it, and the transaction finds out whether the lock is still the same.
 */
export interface Vault {
  /** the key in this window; null where there is no lock, or it is not open here */
  key(): DataKey | null;
  holdKey(key: DataKey | null): void;
  lockRow(): Promise<Result<LockRow | null, StoreFailure>>;
  /** Reads where the lock allows it; the rows may be sealed with the key that comes with them. */
  read<Value>(
    work: (rows: RowsReading) => Promise<Value>,
  ): Promise<Result<{ readonly read: Value; readonly key: DataKey | null }, StoreFailure>>;
  /** Makes ready what is to be written, then writes it. May do both several times. */
  write<Prepared, Value, Failure = never>(
    prepare: (key: DataKey | null) => Promise<Prepared>,
    work: (rows: RowsWriting, prepared: Prepared) => Promise<Result<Value, Failure>>,
  ): Promise<Result<Value, Failure | StoreFailure>>;
  /** Reads, makes ready what follows from that, and writes it if nobody wrote in between; otherwise it begins again. */
  rewrite<Found, Prepared, Value, Failure = never>(steps: {
    readonly read: (rows: RowsReading) => Promise<Found>;
    readonly prepare: (found: Found, key: DataKey | null) => Promise<Result<Prepared, Failure>>;
    readonly write: (rows: RowsWriting, prepared: Prepared) => Value;
  }): Promise<Result<Value, Failure | StoreFailure>>;
  /** Writes what needs no key, whether the lock is open or not. */
  writeLocked<Value, Failure>(
    work: (rows: RowsWriting) => Promise<Result<Value, Failure>>,
  ): Promise<Result<Value, Failure | StoreFailure>>;
}

export function createVault(rows: Rows): Vault {
  let held: DataKey | null = null;

  /** Whether what was made ready with this key may be read and written now. */
  async function gate(
    reading: RowsReading,
    key: DataKey | null,
  ): Promise<Result<null, Overtaken | { readonly kind: 'storage-locked' }>> {
    const keyId = (await lockOf(reading))?.keyId ?? null;
    if (keyId === (key?.id ?? null)) return succeed(null);
    // Another window changed the lock: this one's key opens nothing any more.
    if (held === key) held = null;
    return fail(keyId === null || held !== null ? { kind: 'overtaken' } : { kind: 'storage-locked' });
  }

  async function attempt<Value, Failure>(
    once: () => Promise<Result<Value, Failure | Overtaken>>,
  ): Promise<Result<Value, Failure | StoreFailure>> {
    for (let count = 0; count < MOST_ATTEMPTS; count += 1) {
      const outcome = await once();
      if (outcome.ok) return outcome;
      const { failure } = outcome;
      if (!isOvertaken(failure)) return fail(failure);
    }
    return fail({ kind: 'storage-broken' });
  }

  async function readThrough<Value>(
    work: (rows: RowsReading) => Promise<Value>,
  ): Promise<Result<{ readonly read: Value; readonly key: DataKey | null }, StoreFailure>> {
    return attempt(async () => {
      const key = held;
      const outcome = await rows.read(async (reading) => {
        const passed = await gate(reading, key);
        return passed.ok ? succeed({ read: await work(reading), key }) : passed;
      });
      return outcome.ok ? outcome.value : outcome;
    });
  }

  function counted<Value, Failure>(
    work: (rows: RowsWriting) => Promise<Result<Value, Failure>>,
  ): Promise<Result<Value, Failure | StoreFailure>> {
    return rows.write(async (writing) => {
      const outcome = await work(writing);
      if (outcome.ok) writing.put('meta', rowOfChanges((await changesOf(writing)) + 1));
      return outcome;
    });
  }

  return {
    key: () => held,
    holdKey: (key) => {
      held = key;
    },
    lockRow: () => rows.read(lockOf),
    read: readThrough,
    write: <Prepared, Value, Failure = never>(
      prepare: (key: DataKey | null) => Promise<Prepared>,
      work: (rows: RowsWriting, prepared: Prepared) => Promise<Result<Value, Failure>>,
    ) =>
      attempt<Value, Failure | StoreFailure>(async () => {
        const key = held;
        const prepared = await prepare(key);
        return counted<Value, Failure | Overtaken | StoreFailure>(async (writing) => {
          const passed = await gate(writing, key);
          return passed.ok ? work(writing, prepared) : passed;
        });
      }),
    rewrite: <Found, Prepared, Value, Failure = never>(steps: {
      readonly read: (rows: RowsReading) => Promise<Found>;
      readonly prepare: (found: Found, key: DataKey | null) => Promise<Result<Prepared, Failure>>;
      readonly write: (rows: RowsWriting, prepared: Prepared) => Value;
    }) =>
      attempt<Value, Failure | StoreFailure>(async () => {
        const found = await readThrough(async (reading) => ({
          read: await steps.read(reading),
          changes: await changesOf(reading),
        }));
        if (!found.ok) return found;
        const { read, changes } = found.value.read;
        const prepared = await steps.prepare(read, found.value.key);
        if (!prepared.ok) return prepared;
        return counted<Value, Overtaken>(async (writing) =>
          // the lock is changed by a write as well
          (await changesOf(writing)) === changes
            ? succeed(steps.write(writing, prepared.value))
            : fail({ kind: 'overtaken' }),
        );
      }),
    writeLocked: counted,
  };
}

function isOvertaken<Failure>(failure: Failure | Overtaken): failure is Overtaken {
  return typeof failure === 'object' && failure !== null && 'kind' in failure && failure.kind === 'overtaken';
}

/** A lock that cannot be read is one that nothing opens. */
async function lockOf(rows: RowsReading): Promise<LockRow | null> {
  const raw = await rows.one('meta', LOCK_ID);
  if (raw === undefined) return null;
  const parsed = lockSchema.safeParse(raw);
  return parsed.success ? parsed.data : { id: LOCK_ID, keyId: '', wrapped: new Uint8Array(0) };
}

export function putLock(rows: RowsWriting, lock: Omit<LockRow, 'id'> | null): void {
  if (lock === null) rows.remove('meta', LOCK_ID);
  else rows.put('meta', { id: LOCK_ID, ...lock } satisfies LockRow);
}

/** How often anything was written. */
async function changesOf(rows: RowsReading): Promise<number> {
  const parsed = changesSchema.safeParse(await rows.one('meta', CHANGES_ID));
  return parsed.success ? parsed.data.count : 0;
}

function rowOfChanges(count: number): z.infer<typeof changesSchema> {
  return { id: CHANGES_ID, count };
}
