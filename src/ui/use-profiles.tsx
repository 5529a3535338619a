import type { ReactNode } from 'react';
import { createContext, useCallback, useContext, useMemo, useRef, useState } from 'react';
import { invariant } from '../core/result.js';
import type { ProfileShelf, ShelfEvent } from '../session/profile-shelf.js';
import { changeShelf } from '../session/profile-shelf.js';
import { useEquipment } from './equipment.js';

export interface ProfilesInHand {
  readonly shelf: ProfileShelf;
  readonly changeProfiles: (event: ShelfEvent) => void;
}

const ProfilesContext = createContext<ProfilesInHand | null>(null);

/** The reader's camera profiles, for all that stands inside; each change is kept on the device at once. */
export function Profiles({ children }: { readonly children: ReactNode }) {
  const { profiles: store } = useEquipment();
  const [shelf, setShelf] = useState<ProfileShelf>(() => ({ profiles: store.load(), isKept: true, removed: null }));
  const current = useRef(shelf);
  const changeProfiles = useCallback(
    (event: ShelfEvent) => {
      const before = current.current;
      // Another tab may have changed what is kept. What could not be kept is in this one only.
      const profiles = before.isKept ? store.load() : before.profiles;
      const next = changeShelf({ ...before, profiles }, event);
      current.current = { ...next, isKept: store.save(next.profiles) };
      setShelf(current.current);
    },
    [store],
  );
  const inHand = useMemo(() => ({ shelf, changeProfiles }), [shelf, changeProfiles]);
  return <ProfilesContext value={inHand}>{children}</ProfilesContext>;
}

export function useProfiles(): ProfilesInHand {
  const profiles = useContext(ProfilesContext);
  invariant(profiles !== null, 'the screen stands inside Profiles');
  return profiles;
}

/** An id for a profile that was just made or imported: random, so that no two tabs give the same. */
export function newProfileId(): string {
  // Not crypto.randomUUID: it is missing on pages that are served over plain http in a local network.
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
