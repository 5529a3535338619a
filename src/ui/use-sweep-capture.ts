import { useEffect, useEffectEvent, useState } from 'react';
import type { HeadView } from '../core/camera/head-view.js';
import type { CameraStream, MeasuringFailure } from '../session/ports.js';
import type { SweepCoverage, SweepGap } from '../session/sweep-coverage.js';
import { LEAST_FRAMES, MOST_FRAMES } from '../session/sweep-coverage.js';
import type { CourseMark, CourseStep } from '../session/sweep-course.js';
import { courseAt, courseFor, courseMs, isStepApart } from '../session/sweep-course.js';
import type { SweepFrame } from '../session/sweep-frames.js';
import { coverageOfFrames, frameCounts, usableViews, viewOf } from '../session/sweep-frames.js';
import type { SweepRun } from '../session/sweep-run.js';
import { startCourseClock } from './course-clock.js';
import type { CameraInHand } from './use-camera.js';
import type { CourseUnderWay } from './sweep-guide.js';
import type { SweepInHand } from './use-sweep.js';

/** What is being done; whether a sweep is enough follows from its frames. */
type Phase =
  | { readonly kind: 'ready' }
  /** `round`: how many courses were begun since somebody last said to go on */
  | ({ readonly kind: 'capturing'; readonly round: number } & CourseUnderWay)
  | { readonly kind: 'captured' };

/** How the taking of a sweep stands. */
export type CaptureStage = 'ready' | 'capturing' | 'working' | 'short' | 'done';

const ALL_GAPS: readonly SweepGap[] = ['turned-R', 'turned-L', 'distance', 'frames'];

/** A frame of a large webcam takes 8 MB while it waits. Chosen: as many as one course gives. */
const MOST_WAITING = 24;

/** Where not more than so many wait at the end of a course, what is known of the coverage is fresh enough to go on from. */
const FEW_WAITING = 3;

/** Then the wearer may rest, and somebody says whether to go on. */
const MOST_ROUNDS = 3;

const TICK_MS = 60;

/** So many frames in a row that fail in the same way are told. */
const TROUBLE_FRAMES = 3;

const NO_FRAMES: readonly SweepFrame[] = [];

/** A sweep while it is taken. */
export interface SweepCapture {
  readonly stage: CaptureStage;
  /** what the wearer does at this moment of the course */
  readonly step: CourseStep;
  /** null while nothing is taken */
  readonly underWay: CourseUnderWay | null;
  readonly frames: readonly SweepFrame[];
  readonly counts: ReturnType<typeof frameCounts>;
  readonly coverage: SweepCoverage;
  readonly views: readonly HeadView[];
  /** how the head stood last; null where no frame showed it */
  readonly head: HeadView | null;
  /** before the first frame was looked at, what looks at it may still be loading: the course waits */
  readonly isFirstAwaited: boolean;
  /** what the last frames all failed in; null where they did not */
  readonly trouble: MeasuringFailure | null;
  /** there are enough frames to be measured, though not as many or as different ones as are useful */
  readonly canMeasure: boolean;
  readonly isBegun: boolean;
  /** Begins the sweep, ends the course under way, or goes on where something is missing. */
  readonly goOn: () => void;
  /** Measures what there is. */
  readonly measureNow: () => void;
}

/**
 * Leads the wearer along the course of a sweep and takes its frames, until there are enough.
 *
 * @param from.run the sweep on its way
 * @param from.onComplete called before the frames are handed on to be measured
 * @param from.onOver called once there is nothing more to be taken: there are enough frames, or the sweep cannot go on
 */
export function useSweepCapture(from: {
  readonly run: SweepRun | null;
  readonly sweep: SweepInHand;
  readonly camera: CameraStream | null;
  readonly fail: CameraInHand['fail'];
  readonly onComplete: () => void;
  readonly onOver: () => void;
}): SweepCapture {
  const { sweep, camera, onOver } = from;
  const [phase, setPhase] = useState<Phase>({ kind: 'ready' });
  const [step, setStep] = useState<CourseStep>('hold');
  const run = phase.kind === 'ready' ? null : from.run;
  const frames = run?.frames ?? NO_FRAMES;
  const counts = frameCounts(frames);
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
    onFailure: from.fail,
  });

  const isDone = stage === 'done';
  const isFailed = run?.stage.kind === 'failed';
  const complete = (): void => {
    from.onComplete();
    sweep.complete();
  };
  const onDone = useEffectEvent(complete);
  useEffect(() => {
    if (isDone) onDone();
    // Whoever shows the sweep shows how it goes on.
    if (isDone || isFailed) onOver();
  }, [isDone, isFailed, onOver]);

  return {
    stage,
    step,
    underWay: isCapturing && phase.kind === 'capturing' ? phase : null,
    frames,
    counts,
    coverage,
    views: usableViews(frames),
    head: latestView(frames),
    isFirstAwaited: frames.every(({ outcome }) => outcome.kind === 'waiting'),
    trouble: commonTrouble(frames),
    canMeasure: counts.found >= LEAST_FRAMES,
    isBegun: phase.kind !== 'ready',
    goOn: () => {
      if (stage === 'ready') {
        sweep.begin();
        setPhase(capturing(ALL_GAPS, 1));
      } else if (stage === 'capturing') {
        setPhase({ kind: 'captured' });
      } else if (stage === 'short') {
        setPhase(capturing(coverage.missing, 1));
      }
    },
    measureNow: () => {
      complete();
      onOver();
    },
  };
}

/** Begins a course now. */
function capturing(missing: readonly SweepGap[], round: number): Phase {
  return { kind: 'capturing', round, course: courseFor(missing), clock: startCourseClock() };
}

function stageOf(phase: Phase, coverage: SweepCoverage, waiting: number): CaptureStage {
  if (phase.kind === 'ready') return 'ready';
  const isEnough = coverage.missing.length === 0;
  if (phase.kind === 'capturing' && !isEnough) return 'capturing';
  if (waiting > 0) return 'working';
  return isEnough ? 'done' : 'short';
}

/** What the last frames all failed in; null where they did not. */
function commonTrouble(frames: readonly SweepFrame[]): MeasuringFailure | null {
  const settled = frames.filter(({ outcome }) => outcome.kind !== 'waiting').slice(-TROUBLE_FRAMES);
  const failures = settled.flatMap(({ outcome }) => (outcome.kind === 'missed' ? [outcome.failure] : []));
  const [first] = failures;
  if (first === undefined || failures.length < TROUBLE_FRAMES) return null;
  return failures.every(({ kind }) => kind === first.kind) ? first : null;
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
