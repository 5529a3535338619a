import * as z from 'zod/mini';
import { toBase64 } from '../../session/sealing-base64.js';
import type { Content, DataKey, Opened } from './contents.js';
import { contentOf, contentSchema, openContent } from './contents.js';
import type { Row, Table } from './rows.js';

/** A row of a table whose contents may be sealed. */
export interface ContentRow extends Row {
  /** how often it has been written */
  readonly revision: number;
  /** of the form that the content is in */
  readonly version: number;
  readonly content: Content;
}

const rowSchema: z.ZodMiniType<ContentRow> = z.object({
  id: z.string(),
  revision: z.int().check(z.nonnegative()),
  version: z.int().check(z.nonnegative()),
  content: contentSchema,
});

/** What a row was read as. */
export type ReadRow =
  | { readonly kind: 'read'; readonly revision: number; readonly version: number; readonly opened: Opened }
  /** damaged: `raw` is all that can be saved of it, as text */
  | { readonly kind: 'unreadable'; readonly raw: string };

/** A new row; see `contentOf`. */
export async function sealedRow(
  table: Table,
  { id, revision, version }: Omit<ContentRow, 'content'>,
  opened: Opened,
  key: DataKey | null,
): Promise<ContentRow> {
  return { id, revision, version, content: await contentOf(placeOf(table, id, revision), opened, key) };
}

export async function readRow(table: Table, raw: unknown, key: DataKey | null): Promise<ReadRow> {
  const parsed = rowSchema.safeParse(raw);
  if (!parsed.success) return { kind: 'unreadable', raw: rawText(raw) };
  const { id, revision, version, content } = parsed.data;
  const opened = await openContent(placeOf(table, id, revision), content, key);
  if (opened === null) return { kind: 'unreadable', raw: rawText(raw) };
  return { kind: 'read', revision, version, opened };
}

function placeOf(table: Table, id: string, revision: number): string {
  return `${table}/${id}/${revision}`;
}

/** The value of a JSON text; undefined where it is none. */
export function valueOfJson(json: string): unknown {
  try {
    return JSON.parse(json) as unknown;
  } catch {
    return undefined;
  }
}

/** The revision of a row as it stands, however damaged the rest of it is; 0 for none. */
export function revisionOf(raw: unknown): number {
  const parsed = z.object({ revision: z.int().check(z.nonnegative()) }).safeParse(raw);
  return parsed.success ? parsed.data.revision : 0;
}

/** The id of a row as it stands: every row has one, or the browser would not have taken it. */
export function idOf(raw: unknown): string {
  const parsed = z.object({ id: z.string() }).safeParse(raw);
  return parsed.success ? parsed.data.id : '';
}

/** Anything that stands in a database, as JSON, with bytes in base 64. */
export function rawText(raw: unknown): string {
  const plain = (_name: string, value: unknown): unknown => (value instanceof Uint8Array ? toBase64(value) : value);
  try {
    const text = JSON.stringify(raw, plain) as string | undefined;
    return text ?? JSON.stringify(String(raw));
  } catch {
    // what refers to itself, or a whole number of another kind than JSON's
    return JSON.stringify(String(raw));
  }
}
