import { parseVersion1 } from './kept-sheet-version-1.js';
import { parseVersion2 } from './kept-sheet-version-2.js';
import type { TypedSheet } from './typed-sheet.js';

/** The sheet as the text that is kept. */
export function writeTypedSheet(sheet: TypedSheet): string {
  return JSON.stringify({ version: 2, ...sheet });
}

/** The sheet from kept text, of this version or an earlier one; null where the text is not what was ever written. */
export function parseTypedSheet(kept: string): TypedSheet | null {
  let raw: unknown;
  try {
    raw = JSON.parse(kept);
  } catch {
    return null;
  }
  return parseVersion2(raw) ?? parseVersion1(raw);
}
