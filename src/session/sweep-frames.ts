import type { PictureFeatures } from '../core/camera/features.js';
import type { HeadView } from '../core/camera/head-view.js';
import { headView } from '../core/camera/head-view.js';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import type { FrameFate, SweepFailure, SweepMeasurement } from '../core/estimate/sweep.js';
import type { Result } from '../core/result.js';
import type { DeviceFailure, MeasuringFailure, Picture } from './ports.js';
import type { SweepCoverage } from './sweep-coverage.js';
import { coverageOf, LEAST_FRAMES } from './sweep-coverage.js';

/** Why a sweep could not be measured. */
export type SweepTrouble = SweepFailure | DeviceFailure;

/** What was found in a frame, or why nothing was. */
export type FrameOutcome =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'found'; readonly features: PictureFeatures }
  /** `view` is there where at least the face was found */
  | { readonly kind: 'missed'; readonly failure: MeasuringFailure; readonly view: HeadView | null };

/** One frame of a sweep: a frame of a camera or a video, or one of several pictures. */
export interface SweepFrame {
  /** frames are numbered in the order in which they were taken */
  readonly id: number;
  readonly outcome: FrameOutcome;
  /** a small copy for the strip, in the coordinates of the frame; null until it was looked at, or where it could not be opened */
  readonly thumbnail: Picture | null;
  /** the frame as a file, to be opened where it is looked at: a bitmap would hold megabytes */
  readonly kept: Blob | null;
  /** a person left it out of the sweep */
  readonly isLeftOut: boolean;
}

/** The frames and the settings that an outcome belongs to. */
export interface SweepBasis {
  readonly frames: readonly SweepFrame[];
  readonly settings: MeasuringSettings;
}

/** What a sweep said, and of which frames under which settings. */
export interface SweepOutcome {
  readonly basis: SweepBasis;
  readonly result: Result<SweepMeasurement, SweepTrouble>;
}

/** Features of the frames that count, in order. */
export function featuresInUse(frames: readonly SweepFrame[]): readonly PictureFeatures[] {
  return framesInUse(frames).map(({ features }) => features);
}

function framesInUse(
  frames: readonly SweepFrame[],
): readonly { readonly frame: SweepFrame; readonly features: PictureFeatures }[] {
  return frames.flatMap((frame) =>
    frame.outcome.kind === 'found' && !frame.isLeftOut ? [{ frame, features: frame.outcome.features }] : [],
  );
}

/** How a frame shows the head; null where that is not known. */
export function viewOf({ outcome }: SweepFrame): HeadView | null {
  switch (outcome.kind) {
    case 'waiting':
      return null;
    case 'found':
      return headView(outcome.features.landmarks);
    case 'missed':
      return outcome.view;
  }
}

/** How the head stands in the usable frames. */
export function usableViews(frames: readonly SweepFrame[]): readonly HeadView[] {
  return frames.flatMap((frame) => {
    const view = frame.outcome.kind === 'found' ? viewOf(frame) : null;
    return view === null ? [] : [view];
  });
}

/** What the usable frames cover. */
export function coverageOfFrames(frames: readonly SweepFrame[]): SweepCoverage {
  return coverageOf(usableViews(frames));
}

/** How the work on the frames stands. */
export function frameCounts(frames: readonly SweepFrame[]): {
  readonly waiting: number;
  readonly found: number;
  readonly missed: number;
} {
  const count = (kind: FrameOutcome['kind']): number => frames.filter(({ outcome }) => outcome.kind === kind).length;
  return { waiting: count('waiting'), found: count('found'), missed: count('missed') };
}

/** Why these frames cannot be a sweep, before any adjustment; null where there are enough. */
export function tooFewFrames(frames: readonly SweepFrame[]): SweepTrouble | null {
  const usable = featuresInUse(frames).length;
  if (usable >= LEAST_FRAMES) return null;
  const commonest = commonestFailure(frames);
  return usable === 0 && commonest !== null ? commonest : { kind: 'too-few-frames', usable, needed: LEAST_FRAMES };
}

/** The frames that do not count, for saying why there are too few. */
export interface FramesMissing {
  /** nothing was found in so many */
  readonly missed: number;
  /** the failure that most of them had; null where none was missed */
  readonly commonest: MeasuringFailure | null;
  /** a person left out so many */
  readonly leftOut: number;
}

/** What the frames that do not count lacked. */
export function framesMissing(frames: readonly SweepFrame[]): FramesMissing {
  return {
    missed: frameCounts(frames).missed,
    commonest: commonestFailure(frames),
    leftOut: frames.filter(({ isLeftOut, outcome }) => isLeftOut && outcome.kind === 'found').length,
  };
}

/** The failure that most of the missed frames had; of equals the first. Null where none was missed. */
export function commonestFailure(frames: readonly SweepFrame[]): MeasuringFailure | null {
  const failures = frames.flatMap(({ outcome }) => (outcome.kind === 'missed' ? [outcome.failure] : []));
  let best: MeasuringFailure | null = null;
  let most = 0;
  for (const failure of failures) {
    const times = failures.filter(({ kind }) => kind === failure.kind).length;
    if (times > most) {
      best = failure;
      most = times;
    }
  }
  return best;
}

/** The frame with the straightest face among those in which all was found; null where there is none. */
export function straightestFrame(frames: readonly SweepFrame[]): SweepFrame | null {
  const inUse = framesInUse(frames).map(({ frame }) => frame);
  return straightestOf(inUse, (frame) => viewOf(frame)?.yawDeg ?? null);
}

/** The one that is turned least, of equals the first; one without a known yaw counts as turned away. */
function straightestOf<Shown>(shown: readonly Shown[], yawDegOf: (one: Shown) => number | null): Shown | null {
  const turnDeg = (one: Shown): number => Math.abs(yawDegOf(one) ?? 90);
  return shown.reduce<Shown | null>((best, one) => (best === null || turnDeg(one) < turnDeg(best) ? one : best), null);
}

/** What became of a frame of a measured sweep. */
export type FrameStanding =
  | FrameFate
  | 'left-out'
  /** nothing was found in it */
  | 'missed'
  /** the sweep was not measured with it yet */
  | 'not-measured';

/** How the head stands in a frame, as the measurement of the sweep says it. */
export interface FramePose {
  /** positive: to picture right; null where it is not known */
  readonly yawDeg: number | null;
  /** null where it is not known */
  readonly distanceMm: number | null;
}

/** The poses of the frames that were measured with, by their ids; none where the measuring failed. */
export function posesOf({ basis, result }: SweepOutcome): ReadonlyMap<number, FramePose> {
  if (!result.ok) return new Map();
  const { distancesMm, yawsDeg } = result.value;
  return new Map(
    framesInUse(basis.frames).map(({ frame }, place) => [
      frame.id,
      { yawDeg: yawsDeg[place] ?? null, distanceMm: distancesMm[place] ?? null },
    ]),
  );
}

/** A frame of a measured sweep with all that the sweep says of it. */
export interface JudgedFrame extends FramePose {
  readonly frame: SweepFrame;
  /** place among all frames, from 1 on */
  readonly number: number;
  readonly standing: FrameStanding;
}

const NO_POSES: ReadonlyMap<number, FramePose> = new Map();

/**
 * The frames as they stand, judged by an outcome that may be of an earlier choice of them.
 *
 * @param poses of frames that were measured with before
 */
export function judgeFrames(
  frames: readonly SweepFrame[],
  outcome: SweepOutcome | null,
  poses: ReadonlyMap<number, FramePose> = NO_POSES,
): readonly JudgedFrame[] {
  const measurement = outcome?.result.ok === true ? outcome.result.value : null;
  const places = new Map(framesInUse(outcome?.basis.frames ?? []).map(({ frame }, place) => [frame.id, place]));
  const now = outcome === null ? NO_POSES : posesOf(outcome);
  return frames.map((frame, index) => {
    const place = places.get(frame.id);
    const fate = place === undefined ? undefined : measurement?.fates[place];
    const standing =
      frame.outcome.kind === 'missed' ? 'missed' : frame.isLeftOut ? 'left-out' : (fate ?? 'not-measured');
    const pose = now.get(frame.id) ?? poses.get(frame.id);
    return {
      frame,
      number: index + 1,
      standing,
      yawDeg: pose?.yawDeg ?? viewOf(frame)?.yawDeg ?? null,
      distanceMm: pose?.distanceMm ?? null,
    };
  });
}

/** Number (from 1 on, among all frames) of the frame that a measurement calls by its place among those that it was given. */
export function numberOfPlace({ basis }: SweepOutcome, place: number): number {
  const frame = framesInUse(basis.frames)[place]?.frame;
  return frame === undefined ? place + 1 : basis.frames.indexOf(frame) + 1;
}

/** The frame that stands for the sweep: the straightest of those used; null where none is. */
export function representativeFrame(judged: readonly JudgedFrame[]): JudgedFrame | null {
  const used = judged.filter(({ standing }) => standing === 'used');
  return straightestOf(used, ({ yawDeg }) => yawDeg);
}
