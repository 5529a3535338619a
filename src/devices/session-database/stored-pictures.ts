import * as z from 'zod/mini';
import { moment, shortId } from '../../core/record/session-parts.js';
import { sessionIdSchema } from '../../core/record/session-schema.js';
import { fail, invariant, succeed } from '../../core/result.js';
import type { KeptPicture, PictureStore, StoreFailure } from '../../session/session-store.js';
import type { DataKey } from './contents.js';
import type { ContentRow } from './sealed-rows.js';
import { idOf, readRow, sealedRow, valueOfJson } from './sealed-rows.js';
import type { Vault } from './vault.js';

const VERSION = 1;

/** Chosen: a cropped face at full resolution takes a tenth of it. */
const LARGEST_PICTURE_BYTES = 20_000_000;

/** Chosen: longer than any wording that someone reads before agreeing. */
const MAX_WORDING_LENGTH = 4000;

const side = z.int().check(z.positive(), z.lte(100_000));

const metadataSchema: z.ZodMiniType<Omit<KeptPicture, 'bytes'>> = z.object({
  id: shortId,
  sessionId: sessionIdSchema,
  takenAt: moment,
  consent: z.object({
    at: moment,
    wording: z.string().check(z.minLength(1), z.maxLength(MAX_WORDING_LENGTH)),
    language: z.string().check(z.minLength(2), z.maxLength(35)),
  }),
  keptUntil: z.iso.date(),
  widthPx: side,
  heightPx: side,
});

/** By session and last day a picture is found while the lock is closed: it has to go then as well. */
export interface PictureRow extends ContentRow {
  readonly sessionId: string;
  readonly keptUntil: string;
}

export function createPictureStore(vault: Vault): PictureStore {
  return {
    ofSession: async (sessionId) => {
      const found = await vault.read(async (rows) => {
        const ids = await rows.pictureIds('sessionId', sessionId);
        return Promise.all(ids.map((id) => rows.one('pictures', id)));
      });
      if (!found.ok) return found;
      const { read, key } = found.value;
      const pictures = (await Promise.all(read.map((raw) => pictureIn(raw, key)))).filter((one) => one !== null);
      return succeed(pictures.sort((a, b) => Date.parse(a.takenAt) - Date.parse(b.takenAt)));
    },
    keep: (picture) => {
      const { bytes, ...metadata } = picture;
      const parsed = metadataSchema.safeParse(metadata);
      const isChecked = parsed.success && bytes.length > 0 && bytes.length <= LARGEST_PICTURE_BYTES;
      invariant(isChecked, 'a picture that is kept passes its schema');
      const { id, sessionId, keptUntil } = picture;
      return vault.write<PictureRow, null, StoreFailure>(
        async (key) => ({
          ...(await sealedRow(
            'pictures',
            { id, revision: 1, version: VERSION },
            { json: JSON.stringify(parsed.data), bytes },
            key,
          )),
          sessionId,
          keptUntil,
        }),
        async (rows, row) => {
          // it would be found by nobody, and deleted with nobody
          if ((await rows.one('sessions', sessionId)) === undefined) {
            return fail({ kind: 'session-missing', id: sessionId });
          }
          rows.put('pictures', row);
          return succeed(null);
        },
      );
    },
    remove: (id) =>
      vault.write<null, null, never>(
        () => Promise.resolve(null),
        (rows) => {
          rows.remove('pictures', id);
          return Promise.resolve(succeed(null));
        },
      ),
    removeExpired: (today) =>
      vault.writeLocked<number, never>(async (rows) => {
        const ids = await rows.pictureIdsBelow('keptUntil', today);
        for (const id of ids) rows.remove('pictures', id);
        return succeed(ids.length);
      }),
  };
}

async function pictureIn(raw: unknown, key: DataKey | null): Promise<KeptPicture | null> {
  const row = await readRow('pictures', raw, key);
  if (row.kind === 'unreadable') return null;
  const { json, bytes } = row.opened;
  const parsed = metadataSchema.safeParse(valueOfJson(json));
  return parsed.success && bytes !== null && parsed.data.id === idOf(raw) ? { ...parsed.data, bytes } : null;
}
