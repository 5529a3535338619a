import * as z from 'zod/mini';
import type { Result } from '../result.js';
import { fail, succeed } from '../result.js';
import type { NewSession } from './kept-sheet.js';
import { parseKeptSheet, sessionOfSheet } from './kept-sheet.js';
import { fieldsFor } from './leaves-device.js';
import type { SessionRecord } from './session-record.js';
import type { DamagePath } from './session-schema.js';
import { moment } from './session-parts.js';
import { parseSessionRecord, pathOf, SESSION_VERSION, sessionShape } from './session-schema.js';

const SESSION_FILE_FORMAT = 'glabella-sessions';

/** Chosen: some ten thousand sessions; a text of that size still goes through the memory of a desk's machine. */
export const LARGEST_SESSION_FILE_CHARACTERS = 200_000_000;

/** Chosen: what fits into the largest file. */
const MAX_SESSIONS = 100_000;

/**
 * How the file looks from outside; its JSON Schema, session-file.schema.json, is made from this. `dicom` repeats some of the
 * numbers for systems that speak DICOM, in its JSON model; it is written and never read.
 */
export const sessionFileSchema = z.object({
  format: z.literal(SESSION_FILE_FORMAT),
  version: z.literal(SESSION_VERSION),
  writtenAt: moment,
  sessions: z
    .array(z.object({ ...sessionShape, dicom: z.optional(z.record(z.string(), z.unknown())) }))
    .check(z.maxLength(MAX_SESSIONS)),
});

/** What is looked at before anything else: a newer version may be different in all the rest. */
const heading = z.object({ format: z.literal(SESSION_FILE_FORMAT), version: z.int().check(z.positive()) });

const body = z.object({ writtenAt: moment, sessions: z.array(z.unknown()).check(z.maxLength(MAX_SESSIONS)) });

/** Why a file of sessions could not be read. Nothing of it is taken then. */
export type SessionFileFailure =
  /** choose another file, or get it once more */
  | { readonly kind: 'not-json' }
  /** JSON of something else: choose another file */
  | { readonly kind: 'not-a-session-file' }
  /** written by a later version of the app: load that one first */
  | { readonly kind: 'file-newer'; readonly version: number }
  /** something in it is not as it was written; get it once more */
  | { readonly kind: 'file-damaged'; readonly path: DamagePath }
  | { readonly kind: 'file-too-large'; readonly characters: number; readonly limit: number };

export interface SessionFileOptions {
  /** ISO 8601 */
  readonly writtenAt: string;
  /** what a session is called in DICOM's attributes, in the JSON model of DICOM PS3.18; null where nothing can be said */
  readonly dicomOf?: (record: SessionRecord) => object | null;
}

/** Sessions as one file: JSON, with one session on each line. */
export function writeSessionFile(
  records: readonly SessionRecord[],
  { writtenAt, dicomOf = () => null }: SessionFileOptions,
): string {
  const head = JSON.stringify({ format: SESSION_FILE_FORMAT, version: SESSION_VERSION, writtenAt });
  const lines = records.map((record) => {
    const dicom = dicomOf(record);
    const fields = fieldsFor('session-file', record) as object;
    return JSON.stringify(dicom === null ? fields : { ...fields, dicom });
  });
  return `${head.slice(0, -1)},"sessions":[\n${lines.join(',\n')}\n]}\n`;
}

/**
 * The sessions of a file, in its order: all, or none where anything in it is wrong. A sheet as versions 1 and 2 kept it is a
 * file with one session.
 *
 * @param fresh what a session is begun with that had no id or time of its own
 */
export function parseSessionFile(
  text: string,
  fresh: NewSession,
): Result<readonly SessionRecord[], SessionFileFailure> {
  const limit = LARGEST_SESSION_FILE_CHARACTERS;
  if (text.length > limit) return fail({ kind: 'file-too-large', characters: text.length, limit });
  let raw: unknown;
  try {
    raw = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return fail({ kind: 'not-json' });
  }
  const head = heading.safeParse(raw);
  if (!head.success) {
    const sheet = parseKeptSheet(raw);
    return sheet === null ? fail({ kind: 'not-a-session-file' }) : succeed([sessionOfSheet(sheet, fresh)]);
  }
  const { version } = head.data;
  if (version > SESSION_VERSION) return fail({ kind: 'file-newer', version });
  if (version !== SESSION_VERSION) return fail({ kind: 'file-damaged', path: ['version'] });
  const parsed = body.safeParse(raw);
  if (!parsed.success) return fail({ kind: 'file-damaged', path: pathOf(parsed.error) });
  const records: SessionRecord[] = [];
  for (const [place, one] of parsed.data.sessions.entries()) {
    const record = parseSessionRecord(version, one);
    if (!record.ok) {
      const path = record.failure.kind === 'record-damaged' ? record.failure.path : [];
      return fail({ kind: 'file-damaged', path: ['sessions', place, ...path] });
    }
    records.push(record.value);
  }
  return succeed(records);
}
