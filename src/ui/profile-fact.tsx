import type { LiveCamera } from '../session/profile-choice.js';
import { countsFor, profileFor } from '../session/profile-choice.js';
import { measuredSize } from '../session/picture-state.js';
import type { SheetState } from '../session/sheet.js';
import type { StoredProfile } from '../session/stored-profile.js';
import { useProfiles } from './use-profiles.js';
import { words } from './language.js';

/** What there is to say about the profile of what is measured. */
type ProfileInUse =
  | { readonly kind: 'profile'; readonly profile: StoredProfile; readonly isCounting: boolean }
  /** there are profiles, but none of the camera that took it; null where the camera cannot be told */
  | { readonly kind: 'none-of-camera'; readonly camera: LiveCamera | null };

/** Null where nothing is measured, where nothing was chosen for files, and where there are no profiles at all. */
function useProfileInUse({ settings, picture, takenBy }: SheetState): ProfileInUse | null {
  const { profiles } = useProfiles().shelf;
  const profile = profileFor(profiles, settings.profileId, takenBy);
  const size = measuredSize(picture);
  if (size === null || profiles.length === 0) return null;
  if (profile !== null) return { kind: 'profile', profile, isCounting: countsFor(profile, size) };
  return takenBy.kind === 'camera' ? { kind: 'none-of-camera', camera: takenBy.camera } : null;
}

/** An entry of the facts about a picture: its camera profile, and whether it counts. */
export function ProfileFact({ state }: { readonly state: SheetState }) {
  const inUse = useProfileInUse(state);
  if (inUse === null) return null;
  return (
    <div className="profile-fact">
      <dt>{words.profile.fact}</dt>
      <dd>
        {inUse.kind === 'none-of-camera' ? (
          <>
            {words.profile.noneOfCamera}
            {inUse.camera !== null && inUse.camera.label !== '' && <small>{inUse.camera.label}</small>}
          </>
        ) : (
          <>
            {inUse.profile.name}
            {!inUse.isCounting && (
              <small>
                {words.profile.notCounting(`${inUse.profile.profile.widthPx} × ${inUse.profile.profile.heightPx}`)}
              </small>
            )}
          </>
        )}
      </dd>
    </div>
  );
}

/** A sentence for the printed sheet; empty where no profile counts. */
export function usePaperProfile(state: SheetState): string {
  const inUse = useProfileInUse(state);
  return inUse?.kind === 'profile' && inUse.isCounting ? words.profile.paper(inUse.profile.name) : '';
}
