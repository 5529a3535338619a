import { useId } from 'react';
import { SIDES } from '../core/units/side.js';
import type { SweepCoverage } from '../session/sweep-coverage.js';
import { ENOUGH, LEAST_FRAMES } from '../session/sweep-coverage.js';
import type { SweepRun } from '../session/sweep-run.js';
import type { LiveCamera } from '../session/profile-choice.js';
import { CameraFailure, DeviceChoice, Preview } from './camera-parts.js';
import { liveCameraOf } from './live-camera.js';
import { Holding } from './holding.js';
import { Modal } from './modal.js';
import { formatNumber, formatPercent } from './numbers.js';
import { frameFailureText, gapWords, HARDLY_TURNED_DEG } from './sweep-sentences.js';
import { SweepGuide } from './sweep-guide.js';
import { useCamera } from './use-camera.js';
import type { SweepInHand } from './use-sweep.js';
import type { CaptureStage, SweepCapture } from './use-sweep-capture.js';
import { useSweepCapture } from './use-sweep-capture.js';
import { FramesProgress } from './work-progress.js';
import { words } from './language.js';

/** Leads the wearer through a sweep and takes its frames; it closes by itself once there are enough. */
export function SweepDialog(props: {
  readonly run: SweepRun | null;
  readonly sweep: SweepInHand;
  readonly gaze: 'camera' | 'far';
  readonly cameraId: string | null;
  readonly onCameraChosen: (id: string) => void;
  /** The frames of this camera are to be measured. */
  readonly onTaken: (camera: LiveCamera | null) => void;
  readonly onClose: () => void;
}) {
  const { onClose, sweep } = props;
  const { state, devices, wantedId, openAgain, fail } = useCamera(props.cameraId);
  const camera = state.kind === 'live' ? state.camera : null;
  const lessSureId = useId();
  const capture = useSweepCapture({
    run: props.run,
    sweep,
    camera,
    fail,
    onComplete: () => {
      props.onTaken(camera === null ? null : liveCameraOf(camera));
    },
    onOver: onClose,
  });
  const { counts, coverage, frames, stage } = capture;
  const isCapturing = stage === 'capturing';
  const isLessSure = capture.canMeasure && coverage.missing.length > 0;

  return (
    <Modal
      heading={words.sweep.heading}
      closeLabel={words.sweep.close}
      onClose={() => {
        if (capture.isBegun) sweep.drop();
        onClose();
      }}
      wide
    >
      <div className="camera sweep-dialog">
        <div className="camera-view">
          <SweepGuide underWay={capture.underWay} head={capture.head} views={capture.views} />
          <p className="sweep-step" role="status">
            {state.kind === 'opening' && words.camera.opening}
            {state.kind === 'live' && stageWords(capture, props.gaze)}
          </p>
          <Preview stream={camera?.stream ?? null} />
          {state.kind === 'failed' && <CameraFailure failure={state.failure} />}
          {(stage === 'working' || isCapturing) && frames.length > 0 && (
            <FramesProgress done={counts.found + counts.missed} all={frames.length} loading={sweep.loading} />
          )}
        </div>
        <div className="camera-side">
          {!capture.isBegun && devices.length > 0 && (
            <DeviceChoice
              devices={devices}
              chosen={camera?.deviceId ?? wantedId}
              onChoose={(id) => {
                props.onCameraChosen(id);
                openAgain(id);
              }}
            />
          )}
          <div className="actions">
            {state.kind === 'failed' ? (
              <button
                type="button"
                className="main-action"
                onClick={() => {
                  openAgain(wantedId);
                }}
              >
                {words.camera.again}
              </button>
            ) : (
              // One button for the whole way, so that the focus stays where it is.
              <button
                type="button"
                className="main-action"
                disabled={camera === null}
                aria-disabled={stage === 'working' || stage === 'done'}
                onClick={capture.goOn}
              >
                {mainWords(stage)}
              </button>
            )}
            {capture.canMeasure && (
              <button type="button" aria-describedby={isLessSure ? lessSureId : undefined} onClick={capture.measureNow}>
                {words.sweep.measureNow(counts.found)}
              </button>
            )}
            {isLessSure && (
              <span id={lessSureId} className="note">
                {words.sweep.lessSure}
              </span>
            )}
          </div>
          <Needs coverage={coverage} />
          {!capture.isBegun ? (
            <>
              <p>{words.sweep.what}</p>
              <ul className="sweep-rules">
                {[words.sweep.rules.still, words.sweep.rules[props.gaze], words.sweep.rules.slow].map((rule) => (
                  <li key={rule}>{rule}</li>
                ))}
              </ul>
              <Holding />
            </>
          ) : (
            <p>
              <strong>{words.sweep.rules[props.gaze]}</strong>
            </p>
          )}
          <p className="note">
            {words.sweep.key} {words.camera.mirrored}
          </p>
        </div>
      </div>
    </Modal>
  );
}

function stageWords({ stage, step, coverage, isFirstAwaited, trouble }: SweepCapture, gaze: 'camera' | 'far'): string {
  switch (stage) {
    case 'ready':
      return words.sweep.ready[gaze];
    case 'capturing':
      if (isFirstAwaited) return words.sweep.firstFrame;
      return trouble === null ? words.sweep.steps[step] : words.sweep.trouble(frameFailureText(trouble));
    case 'working':
    case 'done':
      return coverage.missing.length === 0 ? words.sweep.enough : words.sweep.working;
    case 'short':
      return (isHardlyTurned(coverage) ? words.sweep.hardlyTurned : words.sweep.short)(
        coverage.missing.map(gapWords).join(', '),
      );
  }
}

function isHardlyTurned({ turnedDeg, usable }: SweepCoverage): boolean {
  return usable >= LEAST_FRAMES && Math.max(turnedDeg.R, turnedDeg.L) < HARDLY_TURNED_DEG;
}

/** What the sweep needs, and what of it is there. */
function Needs({ coverage }: { readonly coverage: SweepCoverage }) {
  const { turnedDeg, distanceRatio, usable, missing } = coverage;
  const degrees = (is: number): string => words.sweep.degreesOf(formatNumber(Math.floor(is), 0), ENOUGH.turnDeg);
  const beyond = distanceRatio - 1;
  const needed = ENOUGH.distanceRatio - 1;
  const lines = [
    ...SIDES.map((side) => ({
      gap: `turned-${side}` as const,
      name: words.sweep.turned[side],
      is: degrees(turnedDeg[side]),
      share: turnedDeg[side] / ENOUGH.turnDeg,
    })),
    {
      gap: 'distance',
      name: words.sweep.distance,
      is: words.sweep.percentOf(formatPercent(Math.floor(100 * beyond), 0), formatPercent(100 * needed, 0)),
      share: beyond / needed,
    },
    {
      gap: 'frames',
      name: words.sweep.frames,
      is: words.sweep.framesOf(usable, ENOUGH.frames),
      share: usable / ENOUGH.frames,
    },
  ] as const;
  return (
    <ul className="needs" aria-label={words.sweep.needed}>
      {lines.map(({ gap, name, is, share }) => {
        const isMissing = missing.includes(gap);
        return (
          <li key={gap} className={isMissing ? 'need' : 'need is-met'}>
            <span className="need-name">{name}</span>
            <span className="need-bar" aria-hidden="true">
              <span style={{ width: `${100 * Math.min(1, share)}%` }} />
            </span>
            <span className="need-is">
              {isMissing && `${is}, `}
              <span className="need-word">{isMissing ? words.sweep.lacks : words.sweep.has}</span>
            </span>
          </li>
        );
      })}
    </ul>
  );
}

/** What the main button does at this moment. */
function mainWords(stage: CaptureStage): string {
  switch (stage) {
    case 'ready':
      return words.sweep.start;
    case 'capturing':
      return words.sweep.stop;
    case 'short':
      return words.sweep.goOn;
    case 'working':
    case 'done':
      return words.sweep.looking;
  }
}
