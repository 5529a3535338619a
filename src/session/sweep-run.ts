import { unreachable } from '../core/result.js';
import type { Picture } from './ports.js';
import type { TakenBy } from './profile-choice.js';
import { FROM_FILES } from './profile-choice.js';
import type { FrameOutcome, SweepFrame, SweepOutcome, SweepTrouble } from './sweep-frames.js';
import { tooFewFrames } from './sweep-frames.js';

/** A sweep on its way: frames come in and are looked at, then all of them are measured together. */
export interface SweepRun {
  readonly origin: 'camera' | 'pictures' | 'video';
  /** a camera is told once its frames are complete */
  readonly takenBy: TakenBy;
  readonly frames: readonly SweepFrame[];
  /** ISO 8601; null where nobody said it */
  readonly begunAt: string | null;
  /** how many frames there will be; null where nobody knows yet */
  readonly expected: number | null;
  readonly stage: SweepStage;
}

export type SweepStage =
  | { readonly kind: 'collecting' }
  /** all frames were looked at, and are being measured together */
  | { readonly kind: 'measuring' }
  | { readonly kind: 'failed'; readonly failure: SweepTrouble };

export type SweepRunEvent =
  | { readonly kind: 'frame-taken'; readonly id: number }
  | {
      readonly kind: 'frame-settled';
      readonly id: number;
      readonly outcome: FrameOutcome;
      readonly thumbnail: Picture | null;
      readonly kept: Blob | null;
    }
  /** how many frames there will be became known */
  | { readonly kind: 'frames-counted'; readonly expected: number }
  /** no more frames will come; those that still wait are not looked at any more */
  | { readonly kind: 'frames-complete' }
  /** it cannot go on: the file cannot be opened, or nothing can look at frames */
  | { readonly kind: 'sweep-failed'; readonly failure: SweepTrouble };

/** All that happens to a sweep, seen by whoever holds its run. */
export type SweepEvent =
  | {
      readonly kind: 'sweep-begun';
      readonly origin: SweepRun['origin'];
      readonly expected: number | null;
      readonly at?: string;
    }
  | SweepRunEvent
  /** the adjustment of a sweep ended, for the first time or after its frames or the settings changed */
  | { readonly kind: 'sweep-measured'; readonly outcome: SweepOutcome }
  /** the sweep on its way is given up; what was there before stays */
  | { readonly kind: 'sweep-dropped' };

export function beginSweep(
  origin: SweepRun['origin'],
  expected: number | null,
  begunAt: string | null = null,
): SweepRun {
  const takenBy: TakenBy = origin === 'camera' ? { kind: 'camera', camera: null } : FROM_FILES;
  return { origin, takenBy, begunAt, frames: [], expected, stage: { kind: 'collecting' } };
}

/** The run after an event; what does not fit its stage leaves it as it is. */
export function sweepRunReducer(run: SweepRun, event: SweepRunEvent): SweepRun {
  if (run.stage.kind !== 'collecting') return run;
  switch (event.kind) {
    case 'frame-taken':
      return { ...run, frames: [...run.frames, waitingFrame(event.id)] };
    case 'frame-settled':
      return {
        ...run,
        frames: run.frames.map((frame) =>
          frame.id === event.id
            ? { ...frame, outcome: event.outcome, thumbnail: event.thumbnail, kept: event.kept }
            : frame,
        ),
      };
    case 'frames-counted':
      return { ...run, expected: event.expected };
    case 'frames-complete': {
      const frames = run.frames.filter(({ outcome }) => outcome.kind !== 'waiting');
      const failure = tooFewFrames(frames);
      return {
        ...run,
        frames,
        expected: frames.length,
        stage: failure === null ? { kind: 'measuring' } : { kind: 'failed', failure },
      };
    }
    case 'sweep-failed':
      return { ...run, stage: { kind: 'failed', failure: event.failure } };
    default:
      return unreachable(event);
  }
}

function waitingFrame(id: number): SweepFrame {
  return { id, outcome: { kind: 'waiting' }, thumbnail: null, kept: null, isLeftOut: false };
}
