import * as z from 'zod/mini';
import type { NewSession } from '../../core/record/kept-sheet.js';
import { parseTypedSheet, sessionOfSheet } from '../../core/record/kept-sheet.js';
import type { Result } from '../../core/result.js';
import { succeed } from '../../core/result.js';
import { deskAfter, isBlank } from '../../session/new-session.js';
import type { StoreFailure } from '../../session/session-store.js';
import { DESK_FORM } from './stored-documents.js';
import { sealedRow } from './sealed-rows.js';
import { putSession, sessionRows } from './stored-sessions.js';
import type { Vault } from './vault.js';

/** What became of the sheet that versions before the database kept elsewhere. */
export type KeptSheetFate =
  /** there was none */
  | 'none'
  /** it stands in the database, on the disk: remove it where it was */
  | 'taken'
  /** it is not what was ever written: leave it where it is */
  | 'unreadable'
  /** it could not be taken now: leave it where it is, for the next time */
  | 'waiting';

const MARK_ID = 'kept-sheet';
const markSchema = z.object({ id: z.literal(MARK_ID), print: z.string() });

/**
 * Takes the sheet that versions 1 and 2 kept: the first session, and what its desk had chosen. A mark in the same transaction
 * keeps it from being taken twice where the page ends before the old one was removed.
 */
export async function takeKeptSheet(vault: Vault, text: string | null, fresh: NewSession): Promise<KeptSheetFate> {
  if (text === null) return 'none';
  const sheet = parseTypedSheet(text);
  if (sheet === null) return 'unreadable';
  const record = sessionOfSheet(sheet, fresh);
  const print = fingerprint(text);
  const desk = deskAfter(sheet, isBlank(record) ? null : record.id);
  const taken: Result<null, StoreFailure> = await vault.rewrite({
    read: async (rows) => ({
      mark: await rows.one('meta', MARK_ID),
      desk: await rows.one('documents', DESK_FORM.id),
    }),
    prepare: async (found, key) => {
      const { id, version } = DESK_FORM;
      return succeed({
        isTaken: markSchema.safeParse(found.mark).data?.print === print,
        session: isBlank(record) ? null : await sessionRows(record, 1, key),
        desk:
          found.desk === undefined
            ? await sealedRow(
                'documents',
                { id, revision: 1, version },
                { json: JSON.stringify(desk), bytes: null },
                key,
              )
            : null,
      });
    },
    write: (rows, prepared) => {
      if (prepared.isTaken) return null;
      if (prepared.session !== null) putSession(rows, prepared.session);
      if (prepared.desk !== null) rows.put('documents', prepared.desk);
      rows.put('meta', { id: MARK_ID, print } satisfies z.infer<typeof markSchema>);
      return null;
    },
  });
  return taken.ok ? 'taken' : 'waiting';
}

/** Tells one text from another, without holding it: FNV-1a of 32 bits (Fowler, Noll, Vo; from memory), and the length. */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return `${text.length}-${hash.toString(16)}`;
}
