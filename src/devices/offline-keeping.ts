import { PROTOCOL_VERSION } from '../protocol/message.js';
import type { OfflineFile, ToServiceWorker } from '../protocol/offline-files.js';
import { answerToKeep, cacheName, keptUnder, parseOfflineFiles } from '../protocol/offline-files.js';
import { readBytes, rest } from '../protocol/read-bytes.js';
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
  const register = async (): Promise<ServiceWorkerRegistration> => {
    // null where something forbids it without saying so
    const registered = (await workers.register(new URL('service-worker.js', appAddress), { scope: appAddress })) as
      ServiceWorkerRegistration | undefined;
    if (registered === undefined) throw new Error('nothing was registered');
    return registered;
  };
  let registration = await register();

  const watchInstalling = (): void => {
    const worker = registration.installing;
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && workers.controller !== null) tellNewer('waiting');
      if (worker.state === 'activated') keep();
      if (worker.state === 'redundant' && registration.active === null) goOnLater();
    });
  };
  const watchRegistration = (): void => {
    registration.addEventListener('updatefound', watchInstalling);
    watchInstalling();
  };

  let lookedMs = Date.now();
  const look = (): void => {
    lookedMs = Date.now();
    registration.update().catch(() => undefined);
  };

  let isUnderWay = false;
  let again: ReturnType<typeof setTimeout> | undefined;
  const goOnLater = (): void => {
    clearTimeout(again);
    again = setTimeout(goOn, AGAIN_AFTER_MS);
  };
  const goOn = (): void => {
    if (registration.active !== null) keep();
    else if (registration.installing === null && registration.waiting === null) registerAgain();
  };
  /** Where the first service worker could not be installed, as when the line broke off, the browser has forgotten it. */
  const registerAgain = (): void => {
    register()
      .then((registered) => {
        registration = registered;
        watchRegistration();
      })
      .catch(goOnLater);
  };
  const keep = (): void => {
    const { active } = registration;
    if (isUnderWay || active === null) return;
    isUnderWay = true;
    clearTimeout(again);
    filesOf(active)
      .then((files) => (files === null ? null : keepAll(files, appAddress, watched)))
      .then((failure) => {
        if (failure === 'network') goOnLater();
        if (failure === 'other-build') look();
      })
      .catch((error: unknown) => console.warn('The files for use without a network:', String(error)))
      .finally(() => (isUnderWay = false));
  };

  watchRegistration();
  if (registration.waiting !== null && workers.controller !== null) tellNewer('waiting');
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible' && Date.now() - lookedMs > LOOK_FOR_NEWER_MS) look();
  });
  addEventListener('online', goOn);
  keep();

  return {
    goOn,
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
    let toldBytes = 0;
    bytes = await readBytes(
      answer.body,
      (loaded) => {
        // each hundredth is enough to draw
        if (loaded - toldBytes < file.bytes / 100) return;
        toldBytes = loaded;
        onBytes(loaded);
      },
      file.bytes,
    );
  } catch {
    return 'network';
  }
  // A large file is copied by each of these: one after the other, so that the page is never held up for long.
  await rest();
  const kept = await answerToKeep(file, headers, bytes);
  if (kept === null) return 'other-build';
  await rest();
  try {
    await cache.put(keptUnder(file, appAddress), kept);
    return null;
  } catch (error) {
    console.warn(`${file.address} could not be kept:`, String(error));
    return 'storage';
  }
}

function sum(files: readonly OfflineFile[]): number {
  return files.reduce((bytes, file) => bytes + file.bytes, 0);
}
