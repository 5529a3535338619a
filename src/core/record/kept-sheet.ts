import { parseVersion1 } from './kept-sheet-version-1.js';
import { parseVersion2 } from './kept-sheet-version-2.js';
import { NO_FINDINGS } from './session-record.js';
import type { SessionRecord } from './session-record.js';
import type { TypedSheet } from './typed-sheet.js';

/** What a session begins with. */
export interface NewSession {
  readonly id: string;
  /** ISO 8601 */
  readonly at: string;
}

/** The sheet from kept text, as versions 1 and 2 wrote it; null where the text is not what was ever written. */
export function parseTypedSheet(kept: string): TypedSheet | null {
  try {
    return parseKeptSheet(JSON.parse(kept));
  } catch {
    return null;
  }
}

/** The sheet from what versions 1 and 2 kept; null where it is none of theirs. */
export function parseKeptSheet(raw: unknown): TypedSheet | null {
  return parseVersion2(raw) ?? parseVersion1(raw);
}

/** A session with the sheet of a version that knew no sessions, and no time. */
export function sessionOfSheet(sheet: TypedSheet, { id, at }: NewSession): SessionRecord {
  return { id, begunAt: at, changedAt: at, origin: { kind: 'desk' }, sheet, camera: null, findings: NO_FINDINGS };
}
