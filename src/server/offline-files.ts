import { createHash } from 'node:crypto';
import type { OfflineFile } from '../protocol/offline-files.js';
import { firstFiles } from './first-files.js';

/**
 * Chosen: all parts of the screen that open later (dialogs, languages) are kept together with the first screen; what is
 * larger, as nearly all that looks at pictures is, comes while the screen is in use already.
 */
const FIRST_UP_TO_BYTES = { script: 1_000_000, other: 100_000 };

/**
 * The files of a build as its service worker knows them, in the order in which they are kept: small ones first, so that
 * most of the app is there early.
 *
 * @param files the bytes of every file by its address
 */
export function offlineFiles(files: ReadonlyMap<string, Uint8Array>): readonly OfflineFile[] {
  const first = new Set(
    firstFiles((address) => {
      const bytes = files.get(address);
      return bytes === undefined ? null : new TextDecoder().decode(bytes);
    }),
  );
  return [...files]
    .filter(([address]) => !address.endsWith('.map'))
    .map(([address, bytes]): OfflineFile => {
      const limit = /\.(js|css)$/.test(address) ? FIRST_UP_TO_BYTES.script : FIRST_UP_TO_BYTES.other;
      const when = first.has(address) || bytes.length <= limit ? 'first' : 'later';
      return { address, sha256: createHash('sha256').update(bytes).digest('hex'), bytes: bytes.length, when };
    })
    .toSorted((a, b) => a.bytes - b.bytes);
}
