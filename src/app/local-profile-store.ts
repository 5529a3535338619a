import type { ProfileStore } from '../session/ports.js';
import { parseKeptProfiles, writeKeptProfiles } from '../session/profile-file.js';

const KEY = 'glabella.profiles';

/** Where text goes that could not be read as a whole before it would be written over. */
const UNREAD_KEY = 'glabella.profiles.unread';

/** Keeps camera profiles in this browser's local storage. Entries that cannot be read are kept as they are. */
export function createLocalProfileStore(): ProfileStore {
  return {
    load: () => {
      try {
        const kept = localStorage.getItem(KEY);
        return kept === null ? [] : (parseKeptProfiles(kept)?.profiles ?? []);
      } catch {
        return [];
      }
    },
    save: (profiles) => {
      try {
        const before = localStorage.getItem(KEY);
        const kept = before === null ? { unread: [] } : parseKeptProfiles(before);
        if (kept === null && before !== null) localStorage.setItem(UNREAD_KEY, before);
        localStorage.setItem(KEY, writeKeptProfiles({ profiles, unread: kept?.unread ?? [] }));
        return true;
      } catch {
        return false;
      }
    },
  };
}
