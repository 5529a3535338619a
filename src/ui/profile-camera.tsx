import { useMemo, useState } from 'react';
import type { BoardView } from '../core/camera/board.js';
import type { BoardPosition } from '../core/camera/profile-quality.js';
import { judgeViews, LEAST_VIEWS, MOST_VIEWS } from '../core/camera/profile-quality.js';
import { outlineOfPosition } from '../session/profile-outline.js';
import { askedPosition, judgeFrame } from '../session/profile-views.js';
import { CameraFailure, DeviceChoice, Preview } from './camera-parts.js';
import { liveCameraOf } from './live-camera.js';
import { ProfileCoverage } from './profile-coverage.js';
import { verdictSentence } from './profile-sentences.js';
import { ProfileWeaknesses } from './profile-weaknesses.js';
import { words } from './language.js';
import type { BoardLook } from './use-board-watch.js';
import { useBoardWatch } from './use-board-watch.js';
import { useCamera } from './use-camera.js';
import { useFocusOnCome } from './use-focus-on-come.js';

/** Takes views of the sheet with the camera, by itself, and leads the reader through the positions. */
export function ProfileCamera(props: {
  readonly cameraId: string | null;
  readonly onCameraChosen: (id: string) => void;
  readonly views: readonly BoardView[];
  readonly onViews: (views: readonly BoardView[]) => void;
  /** There are enough views, or the reader says so. */
  readonly onDone: (views: readonly BoardView[], cameraLabel: string | null) => void;
  readonly onBack: () => void;
}) {
  const { views, onViews, onDone } = props;
  const part = useFocusOnCome<HTMLDivElement>();
  const { state, devices, wantedId, openAgain, fail } = useCamera(props.cameraId);
  const camera = state.kind === 'live' ? state.camera : null;
  const label = camera === null ? null : (liveCameraOf(camera)?.label ?? null);
  const [skipped, setSkipped] = useState<ReadonlySet<BoardPosition>>(new Set());
  // Whoever comes back for more views, with nothing left that would be asked for, says when it is enough.
  const [isOpenEnded] = useState(() => askedPosition(views) === null);
  const asked = useMemo(() => askedPosition(views, skipped), [views, skipped]);
  const quality = useMemo(() => judgeViews(views), [views]);
  const look = useBoardWatch(
    camera,
    (frame, before) => judgeFrame(frame, before, views, skipped),
    (view) => {
      // Views of a camera that was changed in between, or of another resolution, do not go together.
      const alike = views.filter((one) => one.widthPx === view.widthPx && one.heightPx === view.heightPx);
      const next = [...alike, view];
      onViews(next);
      if (next.length >= MOST_VIEWS || (!isOpenEnded && askedPosition(next, skipped) === null)) onDone(next, label);
    },
    fail,
  );

  return (
    <div className="camera" role="group" aria-label={words.profile.useCamera} tabIndex={-1} ref={part}>
      <div className="camera-view">
        <div className="profile-stage">
          <Preview stream={camera?.stream ?? null} />
          {camera !== null && look !== null && <Overlay look={look} asked={asked} />}
        </div>
        {state.kind === 'opening' && (
          <p className="camera-status" role="status">
            {words.camera.opening}
          </p>
        )}
        {state.kind === 'failed' && <CameraFailure failure={state.failure} />}
        {camera !== null && (
          <p className="profile-verdict">
            {look === null ? words.profile.gettingReady : verdictSentence(look.verdict)}
          </p>
        )}
      </div>
      <div className="camera-side">
        {camera !== null && (
          <p className="profile-asked" role="status">
            <strong>{asked === null ? words.profile.enough : words.position[asked]}</strong>{' '}
            <span>{words.profile.viewCount(views.length)}</span>
          </p>
        )}
        <div className="actions">
          {views.length >= LEAST_VIEWS && (
            <button
              type="button"
              className="main-action"
              onClick={() => {
                onDone(views, label);
              }}
            >
              {words.profile.makeNow(views.length)}
            </button>
          )}
          {state.kind === 'failed' && (
            <button
              type="button"
              className={views.length >= LEAST_VIEWS ? '' : 'main-action'}
              onClick={() => {
                openAgain(wantedId);
              }}
            >
              {words.camera.again}
            </button>
          )}
          {camera !== null && asked !== null && (
            <button
              type="button"
              onClick={() => {
                setSkipped(new Set([...skipped, asked]));
              }}
            >
              {words.profile.skip}
            </button>
          )}
          {views.length > 0 && (
            <button
              type="button"
              onClick={() => {
                onViews(views.slice(0, -1));
              }}
            >
              {words.profile.takeBack}
            </button>
          )}
          <button type="button" onClick={props.onBack}>
            {words.profile.back}
          </button>
        </div>
        {views.length < LEAST_VIEWS && <p className="note">{words.profile.needed(LEAST_VIEWS - views.length)}</p>}
        {views[0] !== undefined && (
          <ProfileCoverage quality={quality} ratio={views[0].widthPx / views[0].heightPx} isMirrored />
        )}
        {views.length >= LEAST_VIEWS && <ProfileWeaknesses weaknesses={quality.weaknesses} isMirrored />}
        {devices.length > 0 && (
          <DeviceChoice
            devices={devices}
            chosen={camera?.deviceId ?? wantedId}
            onChoose={(id) => {
              props.onCameraChosen(id);
              // What another camera saw says nothing of this one.
              onViews([]);
              openAgain(id);
            }}
          />
        )}
        <p className="note">{words.profile.mirrored}</p>
      </div>
    </div>
  );
}

/** Where the sheet is asked for, and which of its corners are seen; mirrored like the preview below it. */
function Overlay({ look, asked }: { readonly look: BoardLook; readonly asked: BoardPosition | null }) {
  const { widthPx, heightPx, view, verdict } = look;
  const size = widthPx / 160;
  return (
    <svg className="profile-overlay" viewBox={`0 0 ${widthPx} ${heightPx}`} aria-hidden="true">
      {asked !== null && (
        <path
          className={verdict === 'taken' ? 'profile-outline profile-outline-taken' : 'profile-outline'}
          d={`M${outlineOfPosition(asked, widthPx, heightPx)
            .map(({ xPx, yPx }) => `${xPx.toFixed(1)} ${yPx.toFixed(1)}`)
            .join('L')}Z`}
        />
      )}
      {view?.corners.map(({ index, xPx, yPx }) => (
        <circle key={index} className="profile-corner" cx={xPx} cy={yPx} r={size / 2} />
      ))}
    </svg>
  );
}
