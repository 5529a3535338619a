import { PROTOCOL_VERSION } from '../protocol/message.js';
import type { OfflineFile, ToServiceWorker } from '../protocol/offline-files.js';
import { answerToKeep, cacheName, keptUnder, parseOfflineFiles } from '../protocol/offline-files.js';
import type { KeepingFailure, NewerVersion, OfflinePort } from '../session/offline.js';
import type { Watched } from './watched-status.js';

/** Chosen: what the line refused is asked for again after this time, besides whenever the browser says that it is back. */
const AGAIN_AFTER_MS = 60_000;

/** Chosen: a page that stays open for days asks for a newer version when it is looked at, at most this often. */
const LOOK_FOR_NEWER_MS = 60 * 60_000;

/** Chosen: a service worker that does not answer in this time is of a version that does not know the question. */
const ANSWER_LIMIT_MS = 10_000;

/** Registers the service worker, keeps its files, and watches for newer ones. Rejects where the browser lets none be registered. */
export async function startKeeping(
  workers: ServiceWorkerContainer,
  watched: Watched,
): Promise<Pick<OfflinePort, 'goOn' | 'takeNewer'>> {
  // the first service worker takes a page over that is of its own version
  let isControlled = workers.controller !== null;
  let isTaking = false;
  workers.addEventListener('controllerchange', () => {
    if (isTaking) location.reload();
    else if (isControlled) watched.change({ newer: 'taken' });
    isControlled = true;
  });
  const tellNewer = (newer: NewerVersion): void => {
    if (watched.status().newer !== 'taken') watched.change({ newer });
  };

  const appAddress = new URL('./', document.baseURI).href;
  // null where something forbids it without saying so
  const registration = (await workers.register(new URL('service-worker.js', appAddress), { scope: appAddress })) as
    ServiceWorkerRegistration | undefined;
  if (registration === undefined) throw new Error('nothing was registered');

  const watchInstalling = (): void => {
    const worker = registration.installing;
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && workers.controller !== null) tellNewer('waiting');
      if (worker.state === 'activated') keep();
      // Where the first one could not be installed, nothing is kept; a newer one is looked for again.
      if (worker.state === 'redundant' && registration.active === null) lookAgainLater();
    });
  };
  registration.addEventListener('updatefound', watchInstalling);
  watchInstalling();
  if (registration.waiting !== null && workers.controller !== null) tellNewer('waiting');

  let lookedMs = Date.now();
  const look = (): void => {
    lookedMs = Date.now();
    registration.update().catch(() => undefined);
  };
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible' && Date.now() - lookedMs > LOOK_FOR_NEWER_MS) look();
  });

  let isUnderWay = false;
  let again: ReturnType<typeof setTimeout> | undefined;
  const lookAgainLater = (): void => {
    clearTimeout(again);
    again = setTimeout(() => (registration.active === null ? look() : keep()), AGAIN_AFTER_MS);
  };
  const keep = (): void => {
    const { active } = registration;
    if (isUnderWay || active === null) return;
    isUnderWay = true;
    clearTimeout(again);
    filesOf(active)
      .then((files) => (files === null ? null : keepAll(files, appAddress, watched)))
      .then((failure) => {
        if (failure === 'network') lookAgainLater();
        if (failure === 'other-build') look();
      })
      .catch((error: unknown) => console.warn('The files for use without a network:', String(error)))
      .finally(() => (isUnderWay = false));
  };
  addEventListener('online', keep);
  if (registration.active !== null) keep();

  return {
    goOn: keep,
    takeNewer() {
      const { waiting } = registration;
      isTaking = true;
      if (waiting === null) location.reload();
      else waiting.postMessage({ v: PROTOCOL_VERSION, kind: 'take-over' } satisfies ToServiceWorker);
    },
  };
}

/** The files of the build that a service worker serves; null where it does not say. */
function filesOf(worker: ServiceWorker): Promise<readonly OfflineFile[] | null> {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    const limit = setTimeout(() => done(null), ANSWER_LIMIT_MS);
    port1.onmessage = ({ data }: MessageEvent<unknown>) => {
      clearTimeout(limit);
      port1.close();
      done(parseOfflineFiles(data));
    };
    worker.postMessage({ v: PROTOCOL_VERSION, kind: 'list-files' } satisfies ToServiceWorker, [port2]);
  });
}

/** What the keeping of files needs of the browser. */
export interface KeepingDevices {
  readonly caches: Pick<CacheStorage, 'open'>;
  readonly fetch: (address: string) => Promise<Response>;
  /** Runs the work while no other window of the app does the same. */
  readonly alone: <Value>(name: string, work: () => Promise<Value>) => Promise<Value>;
}

const BROWSER: KeepingDevices = {
  get caches() {
    return caches;
  },
  fetch: (address) => fetch(address),
  alone: async (name, work) => ('locks' in navigator ? await navigator.locks.request(name, work) : await work()),
};

/**
 * Keeps every file that is not kept yet, one after the other, and tells how far it has come; null where all are kept at the
 * end. A file that broke off is fetched again from its beginning, those before it are not.
 */
export async function keepAll(
  files: readonly OfflineFile[],
  appAddress: string,
  watched: Pick<Watched, 'change'>,
  devices: KeepingDevices = BROWSER,
): Promise<KeepingFailure | null> {
  const name = cacheName(appAddress);
  const allBytes = sum(files);
  const keptIn = async (cache: Cache): Promise<ReadonlySet<string>> =>
    new Set((await cache.keys()).map(({ url }) => url));
  const isMissingIn = (kept: ReadonlySet<string>) => (file: OfflineFile) => !kept.has(keptUnder(file, appAddress));

  const cache = await devices.caches.open(name);
  const before = files.filter(isMissingIn(await keptIn(cache)));
  if (before.length > 0) {
    watched.change({ files: { kind: 'fetching', keptBytes: allBytes - sum(before), allBytes } });
  }
  return devices.alone(name, async () => {
    // another window may have fetched them while this one waited for it
    const missing = files.filter(isMissingIn(await keptIn(cache)));
    let keptBytes = allBytes - sum(missing);
    for (const file of missing) {
      const tell = (bytes: number): void =>
        watched.change({ files: { kind: 'fetching', keptBytes: keptBytes + Math.min(bytes, file.bytes), allBytes } });
      const why = await keepOne(file, cache, appAddress, devices, tell);
      if (why !== null) {
        watched.change({ files: { kind: 'incomplete', keptBytes, allBytes, why } });
        return why;
      }
      keptBytes += file.bytes;
    }
    watched.change({ files: { kind: 'complete', allBytes } });
    return null;
  });
}

async function keepOne(
  file: OfflineFile,
  cache: Cache,
  appAddress: string,
  { fetch }: KeepingDevices,
  onBytes: (bytes: number) => void,
): Promise<KeepingFailure | null> {
  let headers: Headers;
  let bytes: Uint8Array<ArrayBuffer>;
  try {
    const answer = await fetch(new URL(file.address, appAddress).href);
    // a build that was replaced on the server has lost its files there
    if (answer.status === 404) return 'other-build';
    if (!answer.ok || answer.body === null) return 'network';
    headers = answer.headers;
    bytes = await readAll(answer.body, file.bytes, onBytes);
  } catch {
    return 'network';
  }
  const kept = await answerToKeep(file, headers, bytes);
  if (kept === null) return 'other-build';
  try {
    await cache.put(keptUnder(file, appAddress), kept);
    return null;
  } catch (error) {
    console.warn(`${file.address} could not be kept:`, String(error));
    return 'storage';
  }
}

/** All bytes of a stream; `onBytes` is told whenever another hundredth of what is expected has come, and at the end. */
async function readAll(
  stream: ReadableStream<Uint8Array>,
  expectedBytes: number,
  onBytes: (bytes: number) => void,
): Promise<Uint8Array<ArrayBuffer>> {
  const pieces: Uint8Array[] = [];
  let loaded = 0;
  let told = 0;
  const reader = stream.getReader();
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    pieces.push(piece.value);
    loaded += piece.value.length;
    if (loaded - told >= expectedBytes / 100) {
      told = loaded;
      onBytes(loaded);
    }
  }
  const bytes = new Uint8Array(loaded);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}

function sum(files: readonly OfflineFile[]): number {
  return files.reduce((bytes, file) => bytes + file.bytes, 0);
}
