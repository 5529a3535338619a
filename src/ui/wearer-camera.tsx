import { useEffect, useEffectEvent, useState } from 'react';
import type { CameraStream } from '../session/ports.js';
import type { AnswerDevice } from '../session/answer.js';
import type { SweepTrouble } from '../session/sweep-frames.js';
import { visitFailure } from '../session/wearer-visit.js';
import { Preview } from './camera-parts.js';
import { FailureNote } from './failure-note.js';
import { words } from './language.js';
import { formatPercent } from './numbers.js';
import { SentenceList } from './sentence-list.js';
import { SweepGuide } from './sweep-guide.js';
import { useCamera } from './use-camera.js';
import { nowText } from './now-text.js';
import type { SweepCapture } from './use-sweep-capture.js';
import { useSweepCapture } from './use-sweep-capture.js';
import { WearerFrame } from './wearer-frame.js';
import type { StepProps } from './wearer-step-props.js';
import { wearerFailureSaying } from './wearer-sentences.js';

/** The camera, until something was taken; then the visit goes on by itself. */
export function WearerCamera(props: StepProps) {
  const { visit } = props;
  const failure = visitFailure(visit);
  if (failure !== null) return <Failed {...props} failure={failure} />;
  const isCollecting = visit.sweep === null || visit.sweep.stage.kind === 'collecting';
  return isCollecting ? <Capturing {...props} /> : <Measuring {...props} />;
}

/** Time to take the hand from the screen. Chosen. */
const COUNTDOWN_SECONDS = 3;

function Capturing({ visit, sweep, dispatch, readAloud, place }: StepProps) {
  const { state, wantedId, openAgain, fail } = useCamera(null);
  const camera = state.kind === 'live' ? state.camera : null;
  const capture = useSweepCapture({
    run: visit.sweep,
    sweep,
    camera,
    fail,
    onComplete: () => {
      dispatch({ kind: 'frames-taken', with: { at: nowText(), facing: facingOf(camera) } });
    },
    onOver: stay,
  });
  const { left, start, cancel } = useCountdown(camera !== null, capture.goOn);
  const said = words.wearer.camera;
  const { stage, canMeasure, coverage, counts, isBegun } = capture;
  const instruction =
    state.kind === 'opening'
      ? said.opening
      : state.kind === 'failed'
        ? ''
        : left !== null
          ? said.startsIn(left)
          : instructionOf(capture);
  const loading =
    sweep.loading === null
      ? null
      : sweep.loading.share === null
        ? said.loadingAll
        : said.loading(formatPercent(100 * sweep.loading.share, 0));
  const toGo = stage === 'short' ? coverage.missing.map((gap) => said.gaps[gap]) : [];

  return (
    <WearerFrame
      heading={said.heading}
      place={place}
      readAloud={readAloud}
      // The seconds are for the eyes: a voice is slower than they are.
      spoken={left === null ? [instruction, ...toGo].join(' ') : ''}
      onBack={
        isBegun || left !== null
          ? null
          : () => {
              dispatch({ kind: 'went-back' });
            }
      }
      actions={
        <>
          {state.kind === 'failed' ? (
            <button
              type="button"
              className="main-action"
              onClick={() => {
                openAgain(wantedId);
              }}
            >
              {said.again}
            </button>
          ) : (
            // One button for the whole way, so that the focus stays where it is.
            <button
              type="button"
              className="main-action"
              disabled={camera === null}
              aria-disabled={stage === 'working' || stage === 'done'}
              onClick={() => {
                if (left !== null) cancel();
                else if (stage === 'capturing') capture.goOn();
                else if (stage === 'ready' || stage === 'short') start();
              }}
            >
              {left !== null || stage === 'capturing' ? said.stop : stage === 'short' ? said.goOn : said.start}
            </button>
          )}
          {canMeasure && stage === 'short' && left === null && (
            <button type="button" onClick={capture.measureNow}>
              {said.useThese}
            </button>
          )}
        </>
      }
    >
      {state.kind === 'failed' ? (
        <FailureNote saying={wearerFailureSaying(state.failure, navigator.onLine)} />
      ) : (
        <div className="wearer-camera">
          <SweepGuide underWay={capture.underWay} head={capture.head} views={capture.views} />
          <p className="wearer-instruction" role="status">
            {loading !== null && isBegun ? loading : instruction}
          </p>
          <SentenceList sentences={toGo} />
          <Preview stream={camera?.stream ?? null} />
          <p className="wearer-small">
            {isBegun && counts.found + counts.missed > 0
              ? said.looked(counts.found + counts.missed, capture.frames.length)
              : said.mirrored}
          </p>
        </div>
      )}
    </WearerFrame>
  );
}

/** The visit shows how it goes on. */
function stay(): void {
  // nothing closes
}

function instructionOf({ stage, step, isFirstAwaited, trouble }: SweepCapture): string {
  const said = words.wearer.camera;
  switch (stage) {
    case 'ready':
      return said.ready;
    case 'capturing':
      if (isFirstAwaited) return said.firstFrame;
      return trouble === null ? said.steps[step] : words.wearer.hints[trouble.kind];
    case 'working':
    case 'done':
      return said.working;
    case 'short':
      return said.short;
  }
}

/** Which side of the phone the camera is on, as far as the browser says. */
function facingOf(camera: CameraStream | null): AnswerDevice['facing'] {
  const facing = camera?.stream.getVideoTracks()[0]?.getSettings().facingMode;
  return facing === 'user' || facing === 'environment' ? facing : null;
}

/** Seconds until something is done; `left` is null while none run. */
function useCountdown(isReady: boolean, onOver: () => void) {
  const [begun, setBegun] = useState<number | null>(null);
  const over = useEffectEvent(onOver);
  // A countdown ends with the camera that it was begun on.
  const left = isReady ? begun : null;
  useEffect(() => {
    if (left === null) return;
    const timer = setTimeout(() => {
      if (left > 1) {
        setBegun(left - 1);
      } else {
        setBegun(null);
        over();
      }
    }, 1000);
    return () => {
      clearTimeout(timer);
    };
  }, [left]);
  return {
    left,
    start: () => {
      setBegun(COUNTDOWN_SECONDS);
    },
    cancel: () => {
      setBegun(null);
    },
  };
}

/** All frames are there; the camera is off. */
function Measuring({ readAloud, place, sweep }: StepProps) {
  const said = words.wearer.camera;
  return (
    <WearerFrame
      heading={said.heading}
      place={place}
      readAloud={readAloud}
      spoken={said.measuring}
      onBack={null}
      actions={null}
    >
      <p className="wearer-instruction" role="status">
        {said.measuring}
      </p>
      <progress
        className="wearer-progress"
        aria-label={said.measuring}
        {...(sweep.measuringShare === null ? {} : { value: sweep.measuringShare, max: 1 })}
      />
    </WearerFrame>
  );
}

function Failed({ dispatch, readAloud, place, failure }: StepProps & { readonly failure: SweepTrouble }) {
  const said = words.wearer.camera;
  const saying = wearerFailureSaying(failure, navigator.onLine);
  return (
    <WearerFrame
      heading={said.heading}
      place={place}
      readAloud={readAloud}
      spoken={`${saying.what} ${saying.next}`}
      onBack={() => {
        dispatch({ kind: 'went-back' });
      }}
      actions={
        <button
          type="button"
          className="main-action"
          onClick={() => {
            dispatch({ kind: 'taking-again' });
          }}
        >
          {said.again}
        </button>
      }
    >
      <FailureNote saying={saying} />
    </WearerFrame>
  );
}
