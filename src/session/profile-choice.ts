import { matchingProfile } from '../core/estimate/assumed-camera.js';
import type { PictureState } from './sheet.js';
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

/**
 * The profile to be used with a camera that was just opened: one that was made with it at this resolution, the newest of
 * several, unless the one chosen already is such a one. Where there is none, the chosen one stays, but not if it is known to be
 * another camera's: that would be worse than no profile.
 */
export function profileForCamera(
  profiles: readonly StoredProfile[],
  chosenId: string | null,
  camera: LiveCamera,
): string | null {
  const made = profiles.filter(
    ({ cameraLabel, profile }) =>
      cameraLabel === camera.label && profile.widthPx === camera.widthPx && profile.heightPx === camera.heightPx,
  );
  const chosen = chosenProfile(profiles, chosenId);
  if (chosen !== null && made.includes(chosen)) return chosen.id;
  const newest = made.reduce<StoredProfile | null>(
    (best, one) => (best === null || one.madeOn >= best.madeOn ? one : best),
    null,
  );
  if (newest !== null) return newest.id;
  return chosen !== null && (chosen.cameraLabel === null || chosen.cameraLabel === camera.label) ? chosen.id : null;
}

/** Whether the profile counts for a picture of this size: only for pictures of its own proportions. */
export function countsFor({ profile }: StoredProfile, picture: PictureSize): boolean {
  return matchingProfile(profile, picture) !== null;
}

interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The size of the picture, or of the frames of the sweep, that is measured; null where nothing is. */
export function measuredSize(picture: PictureState): PictureSize | null {
  if (picture.kind === 'measured') return picture.marking.features;
  if (picture.kind !== 'swept') return null;
  for (const { outcome } of picture.frames) if (outcome.kind === 'found') return outcome.features;
  return null;
}
