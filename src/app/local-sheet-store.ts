import type { TypedSheetStore } from '../session/ports.js';
import { parseTypedSheet, writeTypedSheet } from '../core/record/kept-sheet.js';

const KEY = 'glabella.sheet';

/** Keeps what was typed in this browser's local storage; a browser that forbids storage keeps nothing, and that is all. */
export function createLocalSheetStore(): TypedSheetStore {
  return {
    load: () => {
      try {
        const kept = localStorage.getItem(KEY);
        return kept === null ? null : parseTypedSheet(kept);
      } catch {
        return null;
      }
    },
    save: (sheet) => {
      try {
        localStorage.setItem(KEY, writeTypedSheet(sheet));
        return true;
      } catch {
        return false;
      }
    },
  };
}
