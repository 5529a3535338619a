import { useId } from 'react';
import type { ProfileWeakness } from '../core/camera/profile-quality.js';
import { weaknessSentence } from './profile-sentences.js';
import { words } from './language.js';

/** What is weak, in words; says so where nothing is. */
export function ProfileWeaknesses(props: {
  readonly weaknesses: readonly ProfileWeakness[];
  readonly isMirrored: boolean;
}) {
  const headingId = useId();
  if (props.weaknesses.length === 0) return <p className="note">{words.profile.notWeak}</p>;
  return (
    <section className="profile-weak" aria-labelledby={headingId}>
      <h3 id={headingId}>{words.profile.weakHeading}</h3>
      <ul>
        {props.weaknesses.map((weakness) => (
          <li key={JSON.stringify(weakness)}>{weaknessSentence(weakness, props.isMirrored)}</li>
        ))}
      </ul>
    </section>
  );
}
