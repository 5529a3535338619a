import type { OfflinePort } from '../session/offline.js';
import { createWatched } from './watched-status.js';

/** Keeps all files of the build, and tells of newer ones. Without service workers it does nothing and says nothing. */
export function createOffline(isWanted: boolean): OfflinePort {
  const watched = createWatched();
  let keeping: Pick<OfflinePort, 'goOn' | 'takeNewer'> | null = null;
  if (isWanted && 'serviceWorker' in navigator && 'caches' in globalThis) {
    const workers = navigator.serviceWorker;
    const start = (): void => {
      import('./offline-keeping.js')
        .then(({ startKeeping }) => startKeeping(workers, watched))
        .then(
          (started) => (keeping = started),
          // a private window, or an address that may have none: the page works with a network as before
          (error: unknown) => console.info('There is no use without a network here:', String(error)),
        );
    };
    if (document.readyState === 'complete') start();
    else addEventListener('load', start, { once: true });
  }
  return {
    status: () => watched.status(),
    subscribe: (listener) => watched.subscribe(listener),
    goOn: () => keeping?.goOn(),
    takeNewer: () => keeping?.takeNewer(),
  };
}
