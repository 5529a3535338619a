import type { ShutterStore } from '../session/ports.js';

const KEY = 'glabella.shutter';

/** Keeps in this browser's local storage whether pictures are taken by themselves; they are where nothing else was chosen. */
export function createLocalShutterStore(): ShutterStore {
  return {
    load: () => {
      try {
        return localStorage.getItem(KEY) === 'by-hand' ? 'by-hand' : 'by-itself';
      } catch {
        return 'by-itself';
      }
    },
    save: (way) => {
      try {
        localStorage.setItem(KEY, way);
        return true;
      } catch {
        return false;
      }
    },
  };
}
