import { matchingProfile } from '../core/estimate/assumed-camera.js';
import type { StoredProfile } from './stored-profile.js';

/** A running camera, as far as it can be told from others. */
export interface LiveCamera {
  readonly label: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The profile with this id; null for none, or where it is on the shelf no more. */
export function chosenProfile(profiles: readonly StoredProfile[], id: string | null): StoredProfile | null {
  return profiles.find((one) => one.id === id) ?? null;
}

/** What took a picture or the frames of a sweep. */
export type TakenBy =
  | { readonly kind: 'files' }
  /** `camera` is null where the camera cannot be told any more */
  | { readonly kind: 'camera'; readonly camera: LiveCamera | null };

export const FROM_FILES: TakenBy = { kind: 'files' };

/**
 * The profile for what was taken that way. For files it is the one that was chosen for them. For a camera it is its own, whatever
 * was chosen, as that of another camera would be worse than none: of several the one of its resolution, then one of its
 * proportions, then any (which does not count, and can be named), and of equals the newest.
 *
 * @param idForFiles the profile that was chosen for files; null for none
 */
export function profileFor(
  profiles: readonly StoredProfile[],
  idForFiles: string | null,
  takenBy: TakenBy,
): StoredProfile | null {
  if (takenBy.kind === 'files') return chosenProfile(profiles, idForFiles);
  const { camera } = takenBy;
  if (camera === null || camera.label === '') return null;
  const likeness = (one: StoredProfile): number =>
    one.profile.widthPx === camera.widthPx && one.profile.heightPx === camera.heightPx
      ? 2
      : Number(countsFor(one, camera));
  return profiles
    .filter(({ cameraLabel }) => cameraLabel === camera.label)
    .reduce<StoredProfile | null>((best, one) => {
      if (best === null) return one;
      const lead = likeness(one) - likeness(best);
      return lead > 0 || (lead === 0 && one.madeOn >= best.madeOn) ? one : best;
    }, null);
}

/** Whether the profile counts for a picture of this size: only for pictures of its own proportions. */
export function countsFor({ profile }: StoredProfile, picture: PictureSize): boolean {
  return matchingProfile(profile, picture) !== null;
}

export interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}
