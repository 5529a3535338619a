import type { OfflineFile } from '../protocol/offline-files.js';
import { parseToServiceWorker } from '../protocol/offline-files.js';
import { PROTOCOL_VERSION } from '../protocol/message.js';
import { createFileKeeper } from './file-keeper.js';

declare const self: ServiceWorkerGlobalScope;

/** Written here by src/server/service-worker-file.ts: the files of the build that this script came with. */
declare const OFFLINE_FILES: readonly OfflineFile[];

// The list is long: it is written into the script at this one place.
const files = OFFLINE_FILES;

const keeper = createFileKeeper({
  appAddress: self.registration.scope,
  files,
  caches: self.caches,
  fetch: (request) => self.fetch(request),
});

// It waits until the user takes the new version or all pages of the old one are closed: no `skipWaiting` here.
self.addEventListener('install', (event) => event.waitUntil(keeper.keepFirst()));

self.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      await removeOthersWhereUnused();
      // the page that brought the first one may go on without a network as well
      await self.clients.claim();
    })(),
  );
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (keeper.knows(request)) event.respondWith(keeper.answer(request).then((kept) => kept ?? self.fetch(request)));
});

self.addEventListener('message', (event) => {
  const message = parseToServiceWorker(event.data);
  switch (message?.kind) {
    case 'take-over':
      event.waitUntil(self.skipWaiting());
      break;
    case 'list-files':
      event.ports[0]?.postMessage({ v: PROTOCOL_VERSION, files });
      event.waitUntil(removeOthersWhereUnused());
      break;
    case undefined:
      break;
  }
});

/** Another open page may still be of the build before, and ask for a part of it. */
async function removeOthersWhereUnused(): Promise<void> {
  const pages = await self.clients.matchAll({ type: 'window', includeUncontrolled: true });
  if (pages.length <= 1 && self.registration.waiting === null && self.registration.installing === null) {
    await keeper.removeOthers();
  }
}
