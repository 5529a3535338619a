import { fail, succeed, type Result } from '../src/core/result.js';

/**
 * The face mesh package keeps its weights in one file of bytes; the loader script beside it says which bytes are which.
 * This module reads that table and cuts the parts out. It knows nothing of the file system.
 */

/** One line of the table: the bytes from `start` up to, not including, `end`. */
export interface PackedAsset {
  readonly filename: string;
  readonly start: number;
  readonly end: number;
}

export type PackedAssetFailure =
  /** The loader script has no table of files where we look for it: it is another release of the package. */
  | { readonly kind: 'table-not-found' }
  /** The table has no file of this name, or more than one. */
  | { readonly kind: 'asset-not-found'; readonly name: string; readonly found: number }
  /** The table points beyond the data: the two files do not belong together, or the data is cut short. */
  | { readonly kind: 'asset-out-of-range'; readonly name: string; readonly end: number; readonly sizeBytes: number };

/** Matches the argument of the loader script's call: `"files": [{...}, ...]`. The entries hold no nested brackets. */
const tablePattern = /"files":\s*(\[[^\]]*\])/;

/** The table of files in the text of the loader script. Fails with `table-not-found` when the text has none. */
export function parsePackedAssetTable(loaderScript: string): Result<readonly PackedAsset[], PackedAssetFailure> {
  const table = tablePattern.exec(loaderScript)?.[1];
  if (table === undefined) return fail({ kind: 'table-not-found' });
  let entries: unknown;
  try {
    entries = JSON.parse(table);
  } catch {
    return fail({ kind: 'table-not-found' });
  }
  if (!Array.isArray(entries) || !entries.every(isPackedAsset)) return fail({ kind: 'table-not-found' });
  return succeed(entries);
}

function isPackedAsset(entry: unknown): entry is PackedAsset {
  if (typeof entry !== 'object' || entry === null) return false;
  const { filename, start, end } = entry as Record<string, unknown>;
  return (
    typeof filename === 'string' &&
    Number.isSafeInteger(start) &&
    Number.isSafeInteger(end) &&
    (start as number) >= 0 &&
    (start as number) <= (end as number)
  );
}

/** A copy of the bytes of the one asset whose path ends in `/name`. */
export function extractPackedAsset(
  table: readonly PackedAsset[],
  data: Uint8Array,
  name: string,
): Result<Uint8Array, PackedAssetFailure> {
  const matches = table.filter((asset) => asset.filename.endsWith(`/${name}`));
  const asset = matches[0];
  if (asset === undefined || matches.length > 1) return fail({ kind: 'asset-not-found', name, found: matches.length });
  if (asset.end > data.length) {
    return fail({ kind: 'asset-out-of-range', name, end: asset.end, sizeBytes: data.length });
  }
  return succeed(data.slice(asset.start, asset.end));
}
