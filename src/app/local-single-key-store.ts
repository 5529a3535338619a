import type { SingleKeyStore } from '../session/ports.js';

const KEY = 'glabella.single-keys';
const OFF = 'off';

/** Keeps in this browser's local storage whether single characters are shortcuts. */
export function createLocalSingleKeyStore(): SingleKeyStore {
  let areOn = true;
  try {
    areOn = localStorage.getItem(KEY) !== OFF;
  } catch {
    // nothing is kept here
  }
  return {
    areOn: () => areOn,
    switch: (on) => {
      areOn = on;
      try {
        if (on) localStorage.removeItem(KEY);
        else localStorage.setItem(KEY, OFF);
        return true;
      } catch {
        return false;
      }
    },
  };
}
