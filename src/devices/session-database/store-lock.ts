import * as z from 'zod/mini';
import type { Result } from '../../core/result.js';
import { fail, succeed } from '../../core/result.js';
import type { SealingPort } from '../../session/sealing.js';
import type { LockFailure, StoreLock } from '../../session/session-store.js';
import type { ChangesChannel } from './changes-channel.js';
import type { DataKey } from './contents.js';
import { dataKeyOf, newDataKey } from './contents.js';
import type { Row, Table } from './rows.js';
import { TABLES } from './rows.js';
import { idOf, rawText, readRow, revisionOf, sealedRow } from './sealed-rows.js';
import type { LockRow, Vault } from './vault.js';
import { putLock } from './vault.js';

const SEALED_TABLES = TABLES.filter((table) => table !== 'meta');

/** Chosen: a wrapped key takes about 200 bytes. */
const WRAPPED_LIMIT_BYTES = 4096;

/**
 * The contents are sealed with a random key, and that one with the passphrase, as an age file: its scrypt makes each guess at a
 * passphrase cost memory as well as time, which PBKDF2, all that browsers have of their own, does not.
 */
export function createStoreLock(vault: Vault, channel: ChangesChannel, sealing: SealingPort): StoreLock {
  channel.listen((news) => {
    // what this window holds opens nothing any more; the next one who reads finds out whether there still is a lock
    if (news.kind === 'lock') vault.holdKey(null);
  });

  /** Writes all contents anew, sealed with this key or with none. */
  async function resealAll(key: DataKey | null, lock: Omit<LockRow, 'id'> | null): Promise<Result<null, LockFailure>> {
    const resealed = await vault.rewrite<
      readonly (readonly [Table, readonly unknown[]])[],
      readonly (readonly [Table, Row])[],
      null,
      never
    >({
      read: (rows) => Promise.all(SEALED_TABLES.map(async (table) => [table, await rows.all(table)] as const)),
      prepare: async (tables, before) => {
        const rows = tables.flatMap(([table, raws]) =>
          raws.map(async (raw) => [table, await resealedRow(table, raw, before, key)] as const),
        );
        return succeed(await Promise.all(rows));
      },
      write: (rows, prepared) => {
        for (const [table, row] of prepared) rows.put(table, row);
        putLock(rows, lock);
        return null;
      },
    });
    if (!resealed.ok) return resealed;
    vault.holdKey(key);
    channel.tell({ kind: 'lock' });
    return resealed;
  }

  return {
    state: async () => {
      const row = await vault.lockRow();
      if (!row.ok) return row;
      if (row.value === null) return succeed('none');
      return succeed(row.value.keyId === vault.key()?.id ? 'open' : 'locked');
    },
    set: async (passphrase) => {
      if (!hasCryptography()) return fail({ kind: 'sealing-unsupported' });
      const { dataKey, bytes } = await newDataKey();
      const wrapped = await sealing.sealWithPassphrase(bytes, passphrase);
      bytes.fill(0);
      if (wrapped.ok) return resealAll(dataKey, { keyId: dataKey.id, wrapped: wrapped.value });
      const { failure } = wrapped;
      return fail(failure.kind === 'no-recipient' ? { kind: 'sealing-unsupported' } : failure);
    },
    unlock: async (passphrase) => {
      const row = await vault.lockRow();
      if (!row.ok) return row;
      if (row.value === null) return succeed(null);
      if (!hasCryptography()) return fail({ kind: 'sealing-unsupported' });
      const { keyId, wrapped } = row.value;
      const opened = await sealing.openWithPassphrase(wrapped, passphrase, {
        limitBytes: WRAPPED_LIMIT_BYTES,
        isPadded: false,
      });
      if (!opened.ok) {
        switch (opened.failure.kind) {
          case 'wrong-passphrase':
            return fail({ kind: 'passphrase-wrong' });
          case 'sealing-not-loadable':
          case 'sealing-unsupported':
            return fail({ kind: opened.failure.kind });
          // what is kept there is no key that was ever wrapped
          case 'altered':
          case 'not-sealed':
          case 'passphrase-too-costly':
          case 'sealed-to-key':
          case 'too-large':
          case 'truncated':
            return fail({ kind: 'storage-broken' });
        }
      }
      vault.holdKey(await dataKeyOf(keyId, opened.value));
      opened.value.fill(0);
      return succeed(null);
    },
    lock: () => vault.holdKey(null),
    remove: () => resealAll(null, null),
  };
}

/**
 * A row as it is kept from now on. Of one that is damaged, all that can be saved of it as text is sealed; what is sealed with a
 * key that is lost stays as it is.
 */
async function resealedRow(table: Table, raw: unknown, before: DataKey | null, key: DataKey | null): Promise<Row> {
  const id = idOf(raw);
  const row = await readRow(table, raw, before);
  const found = pictureNames.safeParse(raw);
  const names = found.success ? found.data : {};
  if (row.kind === 'unreadable') {
    const isSealed = sealedContent.safeParse(raw).success;
    const damaged = { json: rawText(raw), bytes: null };
    return isSealed
      ? (raw as Row)
      : { ...names, ...(await sealedRow(table, { id, revision: revisionOf(raw), version: DAMAGED }, damaged, key)) };
  }
  const { revision, version, opened } = row;
  return { ...names, ...(await sealedRow(table, { id, revision, version }, opened, key)) };
}

/** The version of a row in which no form of anything was ever kept. */
const DAMAGED = 0;

const sealedContent = z.object({ content: z.object({ kind: z.literal('sealed') }) });

/** By these a picture is found without being opened. */
const pictureNames = z.object({ sessionId: z.string(), keptUntil: z.string() });

/** Pages that did not come over https have none; the types do not know of such pages. */
function hasCryptography(): boolean {
  return (crypto.subtle as SubtleCrypto | undefined) !== undefined;
}
