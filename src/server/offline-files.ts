import { createHash } from 'node:crypto';
import { firstFiles } from './first-files.js';

/** A file of the build for the service worker; as src/protocol/offline-files.ts describes it. */
export interface ListedFile {
  readonly address: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly when: 'first' | 'later';
}

/**
 * Chosen: a part of the screen that opens later (a dialog, a language) is kept together with the first screen; what is
 * larger, as all that looks at pictures is, comes while the screen is in use already.
 */
const FIRST_UP_TO_BYTES = { script: 450_000, other: 100_000 };

/**
 * The files of a build as its service worker knows them, in the order in which they are kept: small ones first, so that
 * most of the app is there early.
 *
 * @param files the bytes of every file by its address
 */
export function offlineFiles(files: ReadonlyMap<string, Uint8Array>): readonly ListedFile[] {
  const first = new Set(
    firstFiles((address) => {
      const bytes = files.get(address);
      return bytes === undefined ? null : new TextDecoder().decode(bytes);
    }),
  );
  return [...files]
    .filter(([address]) => !address.endsWith('.map'))
    .map(([address, bytes]): ListedFile => {
      const limit = /\.(js|css)$/.test(address) ? FIRST_UP_TO_BYTES.script : FIRST_UP_TO_BYTES.other;
      const when = first.has(address) || bytes.length <= limit ? 'first' : 'later';
      return { address, sha256: createHash('sha256').update(bytes).digest('hex'), bytes: bytes.length, when };
    })
    .toSorted((a, b) => a.bytes - b.bytes);
}
