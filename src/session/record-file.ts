import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { Result } from '../core/result.js';
import type { RecordTable, RecordTableFailure } from './record-table.js';
import { decodeRecordFile, LARGEST_TABLE_BYTES, readRecordTable, tooLarge } from './record-table.js';

/** Reads a table of records from its file; null where the file itself cannot be read. See `readRecordTable`. */
export async function openRecordFile(
  file: Blob,
  catalogue: Catalogue,
  onProgress: (share: number) => void,
): Promise<Result<RecordTable, RecordTableFailure> | null> {
  if (file.size > LARGEST_TABLE_BYTES) return tooLarge(file.size);
  // A browser refuses what was changed or taken away since it was chosen.
  const bytes = await file.arrayBuffer().catch(() => null);
  if (bytes === null) return null;
  const text = decodeRecordFile(new Uint8Array(bytes));
  return text.ok ? readRecordTable(text.value, catalogue, onProgress) : text;
}
