import { useEffect, useEffectEvent, useId, useState } from 'react';
import { SIDES } from '../core/units/side.js';
import type { CameraStream, MeasuringFailure } from '../session/ports.js';
import type { HeadView, SweepCoverage, SweepGap } from '../session/sweep-coverage.js';
import { ENOUGH, LEAST_FRAMES, MOST_FRAMES } from '../session/sweep-coverage.js';
import type { CourseMark, CourseStep } from '../session/sweep-course.js';
import { courseAt, courseFor, courseMs, isStepApart } from '../session/sweep-course.js';
import type { SweepFrame } from '../session/sweep-frames.js';
import { coverageOfFrames, frameCounts, usableViews, viewOf } from '../session/sweep-frames.js';
import type { SweepRun } from '../session/sweep-run.js';
import type { LiveCamera } from '../session/profile-choice.js';
import { startCourseClock } from './course-clock.js';
import { CameraFailure, DeviceChoice, Preview } from './camera-parts.js';
import { liveCameraOf } from './live-camera.js';
import { Holding } from './holding.js';
import { Modal } from './modal.js';
import { formatNumber, formatPercent } from './numbers.js';
import { frameFailureText, gapWords, HARDLY_TURNED_DEG } from './sweep-sentences.js';
import type { CourseUnderWay } from './sweep-guide.js';
import { SweepGuide } from './sweep-guide.js';
import { useCamera } from './use-camera.js';
import type { SweepInHand } from './use-sweep.js';
import { FramesProgress } from './work-progress.js';
import { words } from './language.js';

/** What the dialog does; whether a sweep is enough follows from its frames. */
type Phase =
  | { readonly kind: 'ready' }
  /** `round`: how many courses were begun since the reader last said to go on */
  | ({ readonly kind: 'capturing'; readonly round: number } & CourseUnderWay)
  | { readonly kind: 'captured' };

type Stage = 'ready' | 'capturing' | 'working' | 'short' | 'done';

const ALL_GAPS: readonly SweepGap[] = ['turned-R', 'turned-L', 'distance', 'frames'];

/** A frame of a large webcam takes 8 MB while it waits. Chosen: as many as one course gives. */
const MOST_WAITING = 24;

/** Where not more than so many wait at the end of a course, what is known of the coverage is fresh enough to go on from. */
const FEW_WAITING = 3;

/** Then the wearer may rest, and the reader says whether to go on. */
const MOST_ROUNDS = 3;

const TICK_MS = 60;

/** So many frames in a row that fail in the same way are told to the reader. */
const TROUBLE_FRAMES = 3;

const NO_FRAMES: readonly SweepFrame[] = [];

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
  const [phase, setPhase] = useState<Phase>({ kind: 'ready' });
  const [step, setStep] = useState<CourseStep>('hold');
  const run = phase.kind === 'ready' ? null : props.run;
  const frames = run?.frames ?? NO_FRAMES;
  const counts = frameCounts(frames);
  const views = usableViews(frames);
  const coverage = coverageOfFrames(frames);
  const stage = stageOf(phase, coverage, counts.waiting);
  const isCapturing = stage === 'capturing';

  const onCourseOver = (round: number): void => {
    const goesOn = counts.waiting <= FEW_WAITING && round < MOST_ROUNDS;
    setPhase(goesOn ? capturing(coverage.missing, round + 1) : { kind: 'captured' });
  };
  const hasRoom = counts.waiting < MOST_WAITING && counts.found + counts.waiting < MOST_FRAMES;
  useCapture({
    camera: isCapturing ? camera : null,
    underWay: phase.kind === 'capturing' ? phase : null,
    isHeld: frames.length > 0 && counts.found + counts.missed === 0,
    hasRoom,
    onStep: setStep,
    onOver: () => {
      if (phase.kind === 'capturing') onCourseOver(phase.round);
    },
    onFrame: sweep.addFrame,
    onFailure: fail,
  });

  const lessSureId = useId();
  const isLessSure = counts.found >= LEAST_FRAMES && coverage.missing.length > 0;
  const isDone = stage === 'done';
  const isFailed = run?.stage.kind === 'failed';
  const complete = (): void => {
    props.onTaken(camera === null ? null : liveCameraOf(camera));
    sweep.complete();
  };
  const onDone = useEffectEvent(complete);
  useEffect(() => {
    if (isDone) onDone();
    // The sheet shows how it goes on.
    if (isDone || isFailed) onClose();
  }, [isDone, isFailed, onClose]);

  const goOn = (missing: readonly SweepGap[]): void => {
    setPhase(capturing(missing, 1));
  };
  const measureNow = (): void => {
    complete();
    onClose();
  };

  return (
    <Modal
      heading={words.sweep.heading}
      closeLabel={words.sweep.close}
      onClose={() => {
        if (phase.kind !== 'ready') sweep.drop();
        onClose();
      }}
      wide
    >
      <div className="camera sweep-dialog">
        <div className="camera-view">
          <SweepGuide
            underWay={isCapturing && phase.kind === 'capturing' ? phase : null}
            head={latestView(frames)}
            views={views}
          />
          <p className="sweep-step" role="status">
            {state.kind === 'opening' && words.camera.opening}
            {state.kind === 'live' && stageWords(stage, step, coverage, frames, props.gaze)}
          </p>
          <Preview stream={camera?.stream ?? null} />
          {state.kind === 'failed' && <CameraFailure failure={state.failure} />}
          {(stage === 'working' || isCapturing) && frames.length > 0 && (
            <FramesProgress done={counts.found + counts.missed} all={frames.length} loading={sweep.loading} />
          )}
        </div>
        <div className="camera-side">
          {phase.kind === 'ready' && devices.length > 0 && (
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
                aria-disabled={stage === 'working' || isDone}
                onClick={() => {
                  if (stage === 'ready') {
                    sweep.begin();
                    goOn(ALL_GAPS);
                  } else if (stage === 'capturing') {
                    setPhase({ kind: 'captured' });
                  } else if (stage === 'short') {
                    goOn(coverage.missing);
                  }
                }}
              >
                {mainWords(stage)}
              </button>
            )}
            {counts.found >= LEAST_FRAMES && (
              <button type="button" aria-describedby={isLessSure ? lessSureId : undefined} onClick={measureNow}>
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
          {phase.kind === 'ready' ? (
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

/** Begins a course now. */
function capturing(missing: readonly SweepGap[], round: number): Phase {
  return { kind: 'capturing', round, course: courseFor(missing), clock: startCourseClock() };
}

function stageOf(phase: Phase, coverage: SweepCoverage, waiting: number): Stage {
  if (phase.kind === 'ready') return 'ready';
  const isEnough = coverage.missing.length === 0;
  if (phase.kind === 'capturing' && !isEnough) return 'capturing';
  if (waiting > 0) return 'working';
  return isEnough ? 'done' : 'short';
}

function stageWords(
  stage: Stage,
  step: CourseStep,
  coverage: SweepCoverage,
  frames: readonly SweepFrame[],
  gaze: 'camera' | 'far',
): string {
  switch (stage) {
    case 'ready':
      return words.sweep.ready[gaze];
    case 'capturing':
      return isFirstAwaited(frames) ? words.sweep.firstFrame : (troubleWords(frames) ?? words.sweep.steps[step]);
    case 'working':
    case 'done':
      return coverage.missing.length === 0 ? words.sweep.enough : words.sweep.working;
    case 'short':
      return (isHardlyTurned(coverage) ? words.sweep.hardlyTurned : words.sweep.short)(
        coverage.missing.map(gapWords).join(', '),
      );
  }
}

/** Before the first frame was looked at, the workers may still be loading: the course waits for them. */
function isFirstAwaited(frames: readonly SweepFrame[]): boolean {
  return frames.every(({ outcome }) => outcome.kind === 'waiting');
}

function isHardlyTurned({ turnedDeg, usable }: SweepCoverage): boolean {
  return usable >= LEAST_FRAMES && Math.max(turnedDeg.R, turnedDeg.L) < HARDLY_TURNED_DEG;
}

/** What is wrong where the last frames all failed in the same way; null where they did not. */
function troubleWords(frames: readonly SweepFrame[]): string | null {
  const settled = frames.filter(({ outcome }) => outcome.kind !== 'waiting').slice(-TROUBLE_FRAMES);
  const failures = settled.flatMap(({ outcome }) => (outcome.kind === 'missed' ? [outcome.failure] : []));
  const [first] = failures;
  if (first === undefined || failures.length < TROUBLE_FRAMES) return null;
  return failures.every(({ kind }) => kind === first.kind) ? words.sweep.trouble(frameFailureText(first)) : null;
}

/** The view of the last frame whose face was found. */
function latestView(frames: readonly SweepFrame[]): HeadView | null {
  for (const frame of [...frames].reverse()) {
    const view = viewOf(frame);
    if (view !== null) return view;
  }
  return null;
}

/** Takes frames along a course: a frame wherever the course has moved on enough for it to add something. */
function useCapture(props: {
  /** null while nothing is to be taken */
  readonly camera: CameraStream | null;
  readonly underWay: CourseUnderWay | null;
  /** the course waits, and no frame is taken */
  readonly isHeld: boolean;
  readonly hasRoom: boolean;
  readonly onStep: (step: CourseStep) => void;
  readonly onOver: () => void;
  readonly onFrame: SweepInHand['addFrame'];
  readonly onFailure: (failure: MeasuringFailure) => void;
}): void {
  const { camera, underWay } = props;
  const hasRoom = useEffectEvent(() => props.hasRoom);
  const isHeld = useEffectEvent(() => props.isHeld);
  const onStep = useEffectEvent(props.onStep);
  const onOver = useEffectEvent(props.onOver);
  const onFrame = useEffectEvent(props.onFrame);
  const onFailure = useEffectEvent(props.onFailure);
  useEffect(() => {
    if (camera === null || underWay === null) return;
    const { clock, course } = underWay;
    const endMs = courseMs(course);
    const life = { isOver: false };
    let isTaking = false;
    let isTold = false;
    let last: CourseMark | null = null;
    const take = async (): Promise<void> => {
      isTaking = true;
      const taken = await camera.takeFrame();
      isTaking = false;
      if (life.isOver) {
        if (taken.ok) taken.value.bitmap.close();
      } else if (taken.ok) {
        onFrame(taken.value);
      } else {
        onFailure(taken.failure);
      }
    };
    const timer = setInterval(() => {
      const elapsedMs = clock.elapsedMs();
      const mark = courseAt(course, elapsedMs);
      onStep(mark.step);
      if (elapsedMs >= endMs) {
        if (!isTold) onOver();
        isTold = true;
        return;
      }
      const isDue = !isHeld() && hasRoom() && (last === null || isStepApart(mark, last));
      clock.hold(isHeld() || (isDue && isTaking));
      if (isDue && !isTaking) {
        last = mark;
        void take();
      }
    }, TICK_MS);
    return () => {
      life.isOver = true;
      clearInterval(timer);
    };
  }, [camera, underWay]);
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
function mainWords(stage: Stage): string {
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
