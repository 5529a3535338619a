import { useEffect, useId, useRef, useState } from 'react';
import { SIDES } from '../core/units/side.js';
import type { Picture } from '../session/ports.js';
import type { PictureState } from '../session/picture-state.js';
import type { FrameStanding, JudgedFrame, SweepFrame } from '../session/sweep-frames.js';
import { judgeFrames, representativeFrame, straightestFrame } from '../session/sweep-frames.js';
import { useEquipment } from './equipment.js';
import { formatNumber } from './numbers.js';
import { PictureCanvas } from './picture-canvas.js';
import { eyeRegion, faceRegion, wholeRegion } from './picture-region.js';
import { PictureStage } from './picture-stage.js';
import { frameFailureText } from './sweep-sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { USE_FRAME_ID } from './place-ids.js';
import { words } from './language.js';

/** A measured sweep: one frame with what was found in it, and the strip of all of them. */
export function SweptPicture(props: {
  readonly sheet: SheetInHand;
  readonly state: Extract<PictureState, { kind: 'swept' }>;
}) {
  const { state } = props;
  const { dispatch } = props.sheet;
  const { frames, outcome } = state;
  const judged = judgeFrames(frames, outcome, state.poses);
  // Where the frames as they are carry no number, none of them is waited for.
  const hasNoNumbers = !outcome.result.ok && outcome.basis.frames === frames;
  const straightest = straightestFrame(frames);
  const shown =
    judged.find(({ frame }) => frame.id === state.shownId) ??
    representativeFrame(judged) ??
    judged.find(({ frame }) => frame === straightest) ??
    judged[0];
  if (shown === undefined) return null;
  return (
    <div className="swept">
      <ShownFrame shown={shown} />
      <FrameLine shown={shown} hasNoNumbers={hasNoNumbers} />
      {shown.frame.outcome.kind === 'found' && (
        <label className="check">
          <input
            id={USE_FRAME_ID}
            type="checkbox"
            checked={!shown.frame.isLeftOut}
            onChange={(event) => {
              dispatch({ kind: 'frame-left-out', id: shown.frame.id, isLeftOut: !event.currentTarget.checked });
            }}
          />
          {words.sweep.useFrame(shown.number)}
        </label>
      )}
      <FrameStrip
        judged={judged}
        standings={hasNoNumbers ? words.sweep.standingsOfFailed : words.sweep.standings}
        shownId={shown.frame.id}
        onShow={(id) => {
          // From here on this frame is looked at, whichever stands for the sweep.
          dispatch({ kind: 'frame-shown', id });
        }}
      />
      <details className="key">
        <summary>{words.picture.keyHeading}</summary>
        <p className="note">{words.picture.key}</p>
      </details>
    </div>
  );
}

function ShownFrame({ shown }: { readonly shown: JudgedFrame }) {
  const { frame, number } = shown;
  const opened = useOpened(frame);
  const picture = opened ?? frame.thumbnail;
  if (picture === null) return <p className="note">{words.sweep.noPicture}</p>;
  const features = frame.outcome.kind === 'found' ? frame.outcome.features : null;
  const still = { picture, features, handles: [], hintId: '', onMove: () => undefined, onHold: () => undefined };
  return (
    <>
      <PictureStage
        {...still}
        label={words.sweep.frame(number)}
        region={features === null ? wholeRegion(picture) : faceRegion(features)}
      />
      {features !== null && (
        <div className="eyes">
          {SIDES.map((side) => (
            <figure key={side} className="eye">
              <PictureStage {...still} label={words.picture.eye[side]} region={eyeRegion(features, side)} />
              <figcaption>{words.picture.eye[side]}</figcaption>
            </figure>
          ))}
        </div>
      )}
    </>
  );
}

/** The frame at its full size; null until it is open, and where it cannot be opened. It is closed when another is looked at. */
function useOpened({ kept }: SweepFrame): Picture | null {
  const { pictures } = useEquipment();
  const [opened, setOpened] = useState<{ readonly kept: Blob; readonly picture: Picture } | null>(null);
  useEffect(() => {
    if (kept === null) return;
    const life = { isOver: false };
    let own: Picture | null = null;
    const open = async (): Promise<void> => {
      const result = await pictures.open(kept, '');
      if (!result.ok) return;
      own = result.value;
      if (life.isOver) own.bitmap.close();
      else setOpened({ kept, picture: own });
    };
    void open();
    return () => {
      life.isOver = true;
      own?.bitmap.close();
    };
  }, [kept, pictures]);
  return opened !== null && opened.kept === kept ? opened.picture : null;
}

function FrameLine({ shown, hasNoNumbers }: { readonly shown: JudgedFrame; readonly hasNoNumbers: boolean }) {
  const { frame, number, standing, yawDeg, distanceMm } = shown;
  const what =
    standing === 'missed'
      ? frame.outcome.kind === 'missed'
        ? sentence(frameFailureText(frame.outcome.failure))
        : ''
      : standing === 'not-measured' && hasNoNumbers
        ? words.sweep.foundOnly
        : words.sweep.standingsLong[standing];
  const where = [
    ...(yawDeg === null ? [] : [facingWords(yawDeg)]),
    ...(distanceMm === null ? [] : [`${formatNumber(distanceMm / 10, 0)} cm`]),
  ].join(', ');
  return (
    <p className="note frame-line">
      <strong>
        {words.sweep.frame(number)}
        {where === '' ? '' : ` (${where})`}.
      </strong>{' '}
      {what}
    </p>
  );
}

function facingWords(yawDeg: number): string {
  const degrees = formatNumber(Math.abs(yawDeg), 0);
  if (degrees === '0') return words.sweep.facing.straight;
  return words.sweep.facing[yawDeg > 0 ? 'L' : 'R'](degrees);
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** The frames in their order, one of which is looked at: a group of radio buttons, so that arrow keys go through them. */
function FrameStrip(props: {
  readonly judged: readonly JudgedFrame[];
  readonly standings: StandingWords;
  readonly shownId: number;
  readonly onShow: (id: number) => void;
}) {
  const name = useId();
  const hintId = useId();
  const strip = useRef<HTMLDivElement>(null);
  const { shownId } = props;
  useEffect(() => {
    if (strip.current !== null) scrollToChosen(strip.current);
  }, [shownId]);
  return (
    <fieldset className="strip" aria-describedby={hintId}>
      <legend>{words.sweep.strip}</legend>
      <div className="strip-frames" ref={strip}>
        {props.judged.map((one) => (
          <label key={one.frame.id} className={`strip-frame is-${one.standing}`}>
            <input
              type="radio"
              name={name}
              className="strip-radio"
              checked={one.frame.id === props.shownId}
              onChange={() => {
                props.onShow(one.frame.id);
              }}
            />
            <FrameThumbnail judged={one} standings={props.standings} />
          </label>
        ))}
      </div>
      <p id={hintId} className="note">
        {words.sweep.stripHint}
      </p>
    </fieldset>
  );
}

/** Brings the chosen frame fully into view within the strip; the page stays where it is. */
function scrollToChosen(strip: HTMLElement): void {
  const chosen = strip.querySelector('label:has(:checked)');
  if (chosen === null) return;
  const tile = chosen.getBoundingClientRect();
  const view = strip.getBoundingClientRect();
  const above = view.top + STRIP_EDGE_PX - tile.top;
  const below = tile.bottom + STRIP_EDGE_PX - view.bottom;
  if (above > 0) strip.scrollTop -= above;
  else if (below > 0) strip.scrollTop += below;
}

/** Room for the outline of the chosen frame. */
const STRIP_EDGE_PX = 4;

/** The frames of a sweep that failed, with what became of each. */
export function FramesList({ frames }: { readonly frames: readonly SweepFrame[] }) {
  return (
    <details>
      <summary>{words.sweep.framesOfFailed}</summary>
      <ul className="strip-frames" aria-label={words.sweep.framesOfFailed}>
        {judgeFrames(frames, null).map((one) => (
          <li key={one.frame.id} className={`strip-frame is-${one.standing}`}>
            <FrameThumbnail judged={one} standings={words.sweep.standingsOfFailed} />
          </li>
        ))}
      </ul>
    </details>
  );
}

type StandingWords = Readonly<Record<Exclude<FrameStanding, 'missed'>, string>>;

function FrameThumbnail(props: { readonly judged: JudgedFrame; readonly standings: StandingWords }) {
  const { frame, number, standing } = props.judged;
  const { outcome, thumbnail } = frame;
  return (
    <>
      <span className="strip-picture">
        {thumbnail !== null && (
          <PictureCanvas
            picture={thumbnail}
            region={outcome.kind === 'found' ? faceRegion(outcome.features) : wholeRegion(thumbnail)}
          />
        )}
      </span>
      <span className="strip-words">
        <span className="strip-number">
          <span className="visually-hidden">{words.sweep.frame(number)}: </span>
          <span aria-hidden="true">{number} </span>
        </span>
        {standing === 'missed'
          ? outcome.kind === 'missed' && frameFailureText(outcome.failure)
          : props.standings[standing]}
      </span>
    </>
  );
}
