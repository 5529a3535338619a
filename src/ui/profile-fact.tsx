import { chosenProfile, countsFor, measuredSize } from '../session/profile-choice.js';
import type { SheetState } from '../session/sheet.js';
import { useProfiles } from './use-profiles.js';
import { profileWords as words } from './profile-words.js';

/** The chosen profile, and whether it counts for what is measured; null where none was chosen, or nothing is measured. */
function useProfileInUse({ settings, picture }: SheetState) {
  const { shelf } = useProfiles();
  const chosen = chosenProfile(shelf.profiles, settings.profileId);
  const size = measuredSize(picture);
  return chosen === null || size === null ? null : { chosen, isCounting: countsFor(chosen, size) };
}

/** An entry of the facts about a picture: its camera profile, and whether it counts. Nothing where none was chosen. */
export function ProfileFact({ state }: { readonly state: SheetState }) {
  const inUse = useProfileInUse(state);
  if (inUse === null) return null;
  const { chosen, isCounting } = inUse;
  const { widthPx, heightPx } = chosen.profile;
  return (
    <div>
      <dt>{words.fact}</dt>
      <dd>
        {chosen.name}
        {!isCounting && <small>{words.notCounting(`${widthPx} × ${heightPx}`)}</small>}
      </dd>
    </div>
  );
}

/** A sentence for the printed sheet; empty where no profile counts. */
export function usePaperProfile(state: SheetState): string {
  const inUse = useProfileInUse(state);
  return inUse?.isCounting === true ? words.paper(inUse.chosen.name) : '';
}
