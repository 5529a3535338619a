import { unreachable } from '../core/result.js';
import { PROFILE_NAME_LIMIT } from './stored-profile.js';
import type { StoredProfile } from './stored-profile.js';

/** The reader's camera profiles, in the order in which they were made or imported. */
export interface ProfileShelf {
  readonly profiles: readonly StoredProfile[];
  /** false where the device did not keep the last change: then it lasts until the page is closed */
  readonly isKept: boolean;
  /** what was deleted last and can be brought back, with the place where it stood */
  readonly removed: { readonly profile: StoredProfile; readonly at: number } | null;
}

export type ShelfEvent =
  | { readonly kind: 'profile-added'; readonly profile: StoredProfile }
  | { readonly kind: 'profile-renamed'; readonly id: string; readonly name: string }
  | { readonly kind: 'profile-removed'; readonly id: string }
  | { readonly kind: 'removal-undone' };

/** The shelf after an event; keeping it on the device is the caller's. A name of blanks only is no name and changes nothing. */
export function changeShelf(shelf: ProfileShelf, event: ShelfEvent): ProfileShelf {
  const { profiles } = shelf;
  switch (event.kind) {
    case 'profile-added': {
      const others = profiles.filter(({ id }) => id !== event.profile.id);
      const name = freeName(event.profile.name, others);
      return { ...shelf, profiles: [...others, { ...event.profile, name }] };
    }
    case 'profile-renamed': {
      if (event.name.trim() === '') return shelf;
      const others = profiles.filter(({ id }) => id !== event.id);
      const name = freeName(event.name, others);
      return { ...shelf, profiles: profiles.map((one) => (one.id === event.id ? { ...one, name } : one)) };
    }
    case 'profile-removed': {
      const at = profiles.findIndex(({ id }) => id === event.id);
      const profile = profiles[at];
      if (profile === undefined) return shelf;
      return { ...shelf, profiles: profiles.filter((one) => one !== profile), removed: { profile, at } };
    }
    case 'removal-undone': {
      const { removed } = shelf;
      if (removed === null) return shelf;
      return { ...shelf, profiles: profiles.toSpliced(removed.at, 0, removed.profile), removed: null };
    }
    default:
      return unreachable(event);
  }
}

/** The name as it can be told from the others: with a number behind it where one of them has it already. */
function freeName(wanted: string, others: readonly StoredProfile[]): string {
  const name = wanted.trim().slice(0, PROFILE_NAME_LIMIT);
  const taken = new Set(others.map((one) => one.name));
  for (let number = 2; ; number++) {
    const ending = number === 2 ? '' : ` (${number - 1})`;
    const candidate = name.slice(0, PROFILE_NAME_LIMIT - ending.length) + ending;
    if (!taken.has(candidate)) return candidate;
  }
}
