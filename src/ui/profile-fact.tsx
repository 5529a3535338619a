import { chosenProfile, countsFor } from '../session/profile-choice.js';
import { useProfiles } from './use-profiles.js';
import { profileWords as words } from './profile-words.js';

/** An entry of the facts about a picture: its camera profile, and whether it counts. Nothing where none was chosen. */
export function ProfileFact(props: {
  readonly profileId: string | null;
  readonly picture: { readonly widthPx: number; readonly heightPx: number };
}) {
  const { shelf } = useProfiles();
  const chosen = chosenProfile(shelf.profiles, props.profileId);
  if (chosen === null) return null;
  const { widthPx, heightPx } = chosen.profile;
  return (
    <div>
      <dt>{words.fact}</dt>
      <dd>
        {chosen.name}
        {!countsFor(chosen, props.picture) && <small>{words.notCounting(`${widthPx} × ${heightPx}`)}</small>}
      </dd>
    </div>
  );
}
