import type * as z from 'zod/mini';
import type { Result } from '../../core/result.js';
import { fail, invariant, succeed } from '../../core/result.js';
import type { StoreFailure } from '../../session/session-store.js';
import type { DataKey } from './contents.js';
import type { ContentRow } from './sealed-rows.js';
import { readRow, revisionOf, sealedRow, valueOfJson } from './sealed-rows.js';
import type { Vault } from './vault.js';

/** Something of which there is only one. */
export interface StoredDocument<Value> {
  load(): Promise<Result<DocumentState<Value>, StoreFailure>>;
  /**
   * Keeps what the change makes of what is kept at that moment; it may be asked several times. What cannot be read is moved aside
   * and stays in the store, unless the change refuses.
   */
  update<Failure = never>(
    change: (state: DocumentState<Value>) => Result<Value, Failure>,
  ): Promise<Result<Value, Failure | StoreFailure>>;
}

export type DocumentState<Value> =
  | { readonly kind: 'none' }
  | { readonly kind: 'kept'; readonly value: Value }
  | { readonly kind: 'unreadable'; readonly raw: string };

export interface DocumentForm<Value> {
  readonly id: string;
  readonly version: number;
  readonly schema: z.ZodMiniType<Value>;
}

export function createStoredDocument<Value>(
  vault: Vault,
  { id, version, schema }: DocumentForm<Value>,
): StoredDocument<Value> {
  async function stateOf(raw: unknown, key: DataKey | null): Promise<DocumentState<Value>> {
    if (raw === undefined) return { kind: 'none' };
    const row = await readRow('documents', raw, key);
    if (row.kind === 'unreadable') return row;
    const parsed = schema.safeParse(valueOfJson(row.opened.json));
    if (row.version !== version || !parsed.success) {
      return { kind: 'unreadable', raw: row.opened.json };
    }
    return { kind: 'kept', value: parsed.data };
  }

  return {
    load: async () => {
      const found = await vault.read((rows) => rows.one('documents', id));
      return found.ok ? succeed(await stateOf(found.value.read, found.value.key)) : found;
    },
    update: <Failure = never>(change: (state: DocumentState<Value>) => Result<Value, Failure>) =>
      vault.rewrite<unknown, { row: ContentRow; aside: ContentRow | null; value: Value }, Value, Failure>({
        read: (rows) => rows.one('documents', id),
        prepare: async (raw, key) => {
          const state = await stateOf(raw, key);
          const changed = change(state);
          if (!changed.ok) return fail(changed.failure);
          const value = schema.safeParse(changed.value);
          invariant(value.success, `the document ${id} passes its schema when it is written`);
          const revision = revisionOf(raw) + 1;
          const row = await sealedRow(
            'documents',
            { id, revision, version },
            { json: JSON.stringify(value.data), bytes: null },
            key,
          );
          const aside =
            state.kind === 'unreadable'
              ? await sealedRow(
                  'documents',
                  { id: `${id}-unreadable-${revision}`, revision, version },
                  { json: state.raw, bytes: null },
                  key,
                )
              : null;
          return succeed({ row, aside, value: value.data });
        },
        write: (rows, { row, aside, value }) => {
          rows.put('documents', row);
          if (aside !== null) rows.put('documents', aside);
          return value;
        },
      }),
  };
}
