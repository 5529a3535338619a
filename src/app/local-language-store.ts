import type { LanguageStore } from '../session/ports.js';

const KEY = 'glabella.language';

/** Keeps the chosen language in this browser's local storage. */
export function createLocalLanguageStore(): LanguageStore {
  return {
    load: () => {
      try {
        return localStorage.getItem(KEY);
      } catch {
        return null;
      }
    },
    save: (tag) => {
      try {
        localStorage.setItem(KEY, tag);
        return true;
      } catch {
        return false;
      }
    },
  };
}
