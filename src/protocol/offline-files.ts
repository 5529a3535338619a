import type { Check } from './checks.js';
import { isOneOfShapes, isPositive, listOf, oneOf, shape } from './checks.js';
import { isRecord, PROTOCOL_VERSION } from './message.js';

/** A file of the build, as it must be to be kept for use without a network. */
export interface OfflineFile {
  /** relative to the page's folder, without query; the page itself is `index.html` */
  readonly address: string;
  /** of the bytes as they are before any compression on the line, in hexadecimal */
  readonly sha256: string;
  readonly bytes: number;
  /** `first`: kept before the service worker is installed; `later`: kept while the page is in use */
  readonly when: 'first' | 'later';
}

/** What the page and its service worker say to one another, through the port that comes with the question. */
export type ToServiceWorker =
  /** which files make up the build that this service worker serves; answered with them */
  | { readonly v: typeof PROTOCOL_VERSION; readonly kind: 'list-files' }
  /** the waiting service worker is to take over, with its build; not answered */
  | { readonly v: typeof PROTOCOL_VERSION; readonly kind: 'take-over' };

const isToServiceWorker: Check<ToServiceWorker> = isOneOfShapes<ToServiceWorker>({
  'list-files': { v: oneOf(PROTOCOL_VERSION) },
  'take-over': { v: oneOf(PROTOCOL_VERSION) },
});

const isFile: Check<OfflineFile> = shape<OfflineFile>({
  address: (value): value is string => typeof value === 'string' && value !== '',
  sha256: (value): value is string => typeof value === 'string' && /^[0-9a-f]{64}$/.test(value),
  bytes: isPositive,
  when: oneOf('first', 'later'),
});

/** What the service worker was sent; null where it is no message of this protocol, as from a page of another version. */
export function parseToServiceWorker(value: unknown): ToServiceWorker | null {
  return isToServiceWorker(value) ? value : null;
}

/** The files that the service worker named; null where it is no such answer. */
export function parseOfflineFiles(value: unknown): readonly OfflineFile[] | null {
  if (!isRecord(value) || value['v'] !== PROTOCOL_VERSION) return null;
  const files = value['files'];
  return listOf(isFile)(files) ? files : null;
}

/** The name of the browser's cache for the app below this address; two apps of one host keep apart. */
export function cacheName(appAddress: string): string {
  return `glabella-files ${new URL(appAddress).pathname}`;
}

/**
 * Under which address a file is kept: its own with the hash of its contents, so that the files of an old and a new build
 * lie beside one another, and what both have in common is fetched once.
 */
export function keptUnder(file: OfflineFile, appAddress: string): string {
  return `${new URL(file.address, appAddress).href}?sha256=${file.sha256}`;
}

/** Headers that speak of the line and not of the file. */
const OF_THE_LINE = ['content-encoding', 'content-length', 'transfer-encoding'];

/**
 * The answer of the server as it is kept: with all its headers (its policies come with it), but as plain bytes. Null where
 * the bytes are not those of the file, as when another build came onto the server meanwhile.
 */
export async function answerToKeep(
  file: OfflineFile,
  headers: Headers,
  bytes: Uint8Array<ArrayBuffer>,
): Promise<Response | null> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const sha256 = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  if (sha256 !== file.sha256) return null;
  const kept = new Headers(headers);
  for (const name of OF_THE_LINE) kept.delete(name);
  kept.set('Content-Length', String(bytes.length));
  return new Response(bytes, { status: 200, headers: kept });
}
