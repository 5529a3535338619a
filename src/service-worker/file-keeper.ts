import type { OfflineFile } from '../protocol/offline-files.js';
import { answerToKeep, cacheName, keptUnder } from '../protocol/offline-files.js';

/** What a build's files are kept with. */
export interface Keeping {
  /** address of the app's folder, with a slash at its end */
  readonly appAddress: string;
  readonly files: readonly OfflineFile[];
  readonly caches: CacheStorage;
  readonly fetch: (request: Request) => Promise<Response>;
}

/** Keeps the files of one build, and answers from them. */
export interface FileKeeper {
  /**
   * Keeps what the page needs to open. Rejects where a file cannot be fetched or is of another build: the browser then
   * forgets this service worker and tries again another time.
   */
  keepFirst(): Promise<void>;
  /** The kept answer to a request; null where the request is not for a file of this build, or it is not kept. */
  answer(request: Request): Promise<Response | null>;
  /** Whether the request is for a file of this build. */
  knows(request: Request): boolean;
  /** Removes what belongs to other builds. */
  removeOthers(): Promise<void>;
}

export function createFileKeeper({ appAddress, files, caches, fetch }: Keeping): FileKeeper {
  const name = cacheName(appAddress);
  const byAddress = new Map(files.map((file) => [new URL(file.address, appAddress).href, file]));
  const page = byAddress.get(new URL('index.html', appAddress).href);
  if (page !== undefined) byAddress.set(new URL('./', appAddress).href, page);

  const fileOf = ({ url, method }: Request): OfflineFile | null => {
    if (method !== 'GET') return null;
    const address = new URL(url);
    // an invitation stands in the fragment, and a query changes nothing in a file
    return byAddress.get(address.origin + address.pathname) ?? null;
  };

  const keep = async (cache: Cache, file: OfflineFile): Promise<void> => {
    const key = keptUnder(file, appAddress);
    if ((await cache.match(key)) !== undefined) return;
    // asks the server whether what the browser has is still so, which files with their hash in the name answer themselves
    const answer = await fetch(new Request(new URL(file.address, appAddress).href, { cache: 'no-cache' }));
    if (!answer.ok) throw new Error(`${file.address}: status ${answer.status}`);
    const kept = await answerToKeep(file, answer.headers, new Uint8Array(await answer.arrayBuffer()));
    if (kept === null) throw new Error(`${file.address} is of another build`);
    await cache.put(key, kept);
  };

  return {
    async keepFirst() {
      const cache = await caches.open(name);
      await Promise.all(files.filter(({ when }) => when === 'first').map((file) => keep(cache, file)));
    },
    async answer(request) {
      const file = fileOf(request);
      if (file === null) return null;
      return (await (await caches.open(name)).match(keptUnder(file, appAddress))) ?? null;
    },
    knows: (request) => fileOf(request) !== null,
    async removeOthers() {
      const cache = await caches.open(name);
      const ours = new Set(files.map((file) => keptUnder(file, appAddress)));
      for (const { url } of await cache.keys()) if (!ours.has(url)) await cache.delete(url);
    },
  };
}
