import { useId, useMemo, useRef, useState } from 'react';
import type { BoardView } from '../core/camera/board.js';
import type { CameraProfile } from '../core/camera/camera-profile.js';
import { judgeViews } from '../core/camera/profile-quality.js';
import { NORMAL_95 } from '../core/statistics/normal.js';
import { horizontalFieldOfView, weaknessesOf } from '../session/profile-facts.js';
import { formatNumber } from './numbers.js';
import { Fact } from './picture-facts.js';
import { ProfileCoverage } from './profile-coverage.js';
import { ProfileNameField } from './profile-name-field.js';
import { ProfileWeaknesses } from './profile-weaknesses.js';
import { words } from './language.js';
import { useFocusOnCome } from './use-focus-on-come.js';

/** A profile that was just made: its numbers with their doubts, what is weak about it, and its name. */
export function ProfileResult(props: {
  readonly profile: CameraProfile;
  readonly views: readonly BoardView[];
  readonly suggestedName: string;
  readonly isMirrored: boolean;
  readonly onKeep: (name: string, coverage: number) => void;
  readonly children: React.ReactNode;
}) {
  const { profile, views } = props;
  const [name, setName] = useState(props.suggestedName);
  const quality = useMemo(() => judgeViews(views, profile), [views, profile]);
  const heading = useFocusOnCome<HTMLHeadingElement>();
  const nameField = useRef<HTMLInputElement>(null);
  const headingId = useId();
  const { uncertainty, distortion } = profile;
  const view = horizontalFieldOfView(profile);
  const [k1, k2, p1, p2, k3] = distortion.map((value, index) => coefficient(value, uncertainty.distortion[index] ?? 0));
  return (
    <section className="profile-result" aria-labelledby={headingId}>
      <h3 id={headingId} tabIndex={-1} ref={heading}>
        {words.profile.result}
      </h3>
      <div className="profile-result-parts">
        <dl className="facts">
          <Fact name={words.profile.fieldOfView}>{withDoubt(view.valueDeg, view.uncertaintyDeg, '°', 1)}</Fact>
          <Fact name={words.profile.focalLength}>
            {withDoubt(profile.fx, uncertainty.fx, ' px', 1)}
            <small>{withDoubt(profile.fy, uncertainty.fy, ' px', 1)}</small>
          </Fact>
          <Fact name={words.profile.axis}>
            {withDoubt(profile.cx, uncertainty.cx, ' px', 1)}
            <small>{withDoubt(profile.cy, uncertainty.cy, ' px', 1)}</small>
          </Fact>
          <Fact name={words.profile.fit}>{words.profile.fitIn(formatNumber(profile.rmsPx, 2), profile.viewCount)}</Fact>
          <Fact name={words.profile.resolution}>
            {profile.widthPx} × {profile.heightPx}
          </Fact>
          <Fact name={`${words.profile.distortion}, ${words.profile.radial}`}>
            {k1}, {k2}, {k3}
          </Fact>
          <Fact name={`${words.profile.distortion}, ${words.profile.tangential}`}>
            {p1}, {p2}
          </Fact>
        </dl>
        <ProfileCoverage quality={quality} ratio={profile.widthPx / profile.heightPx} isMirrored={props.isMirrored} />
      </div>
      <p className="note">{words.profile.doubt}</p>
      <ProfileWeaknesses weaknesses={weaknessesOf(profile, views)} isMirrored={props.isMirrored} />
      <form
        className="profile-name"
        onSubmit={(event) => {
          event.preventDefault();
          if (name.trim() === '') nameField.current?.focus();
          else props.onKeep(name, quality.coverage);
        }}
      >
        <ProfileNameField
          label={words.profile.name}
          name={name}
          emptyProblem={words.profile.emptyName}
          field={nameField}
          onType={setName}
        />
        <div className="actions">
          <button type="submit" className="main-action">
            {words.profile.keep}
          </button>
          {props.children}
        </div>
      </form>
    </section>
  );
}

/** The number with half of its 95 % interval, both to the digit in which the doubt begins to show. */
function withDoubt(value: number, uncertainty: number, unit: string, leastDecimals: number): string {
  const half = NORMAL_95 * uncertainty;
  const decimals = half > 0 ? Math.min(4, Math.max(leastDecimals, 1 - Math.floor(Math.log10(half)))) : leastDecimals;
  return `${formatNumber(value, decimals)} ± ${formatNumber(half, decimals)}${unit}`;
}

/** A coefficient of distortion; one that was held at zero has no doubt to show. */
function coefficient(value: number, uncertainty: number): string {
  return uncertainty === 0 ? formatNumber(value, 0) : withDoubt(value, uncertainty, '', 3);
}
