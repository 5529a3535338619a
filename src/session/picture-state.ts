import type { PictureFeatures } from '../core/camera/features.js';
import type { CameraRecord } from '../core/record/session-record.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { unreachable } from '../core/result.js';
import type { Handle } from './handles.js';
import type { Marking } from './marking.js';
import { edit, resetToFound, startMarking, vouched } from './marking.js';
import type { FindingFailure, MeasuringFailure, MeasuringProgress, Picture } from './ports.js';
import type { PictureSize, TakenBy } from './profile-choice.js';
import type { FramePose, SweepFrame, SweepOutcome } from './sweep-frames.js';

export type PictureState =
  | { readonly kind: 'none' }
  /** what the camera said when the session was open last; its picture was not kept */
  | { readonly kind: 'recorded'; readonly camera: CameraRecord }
  /** a picture is being opened, or looked at; `picture` is null until it is open */
  | { readonly kind: 'working'; readonly picture: Picture | null; readonly progress: MeasuringProgress | null }
  /** `picture` is null where it could not even be opened; `partial` is there where the corners can be placed by hand */
  | {
      readonly kind: 'failed';
      readonly picture: Picture | null;
      readonly failure: MeasuringFailure;
      readonly partial: PictureFeatures | null;
    }
  /** the corners of a guessed card are being placed; nothing is estimated before the reader says that they stand */
  | {
      readonly kind: 'placing';
      readonly picture: Picture;
      readonly marking: Marking;
      readonly failure: MeasuringFailure;
    }
  | { readonly kind: 'measured'; readonly picture: Picture; readonly marking: Marking }
  /** a sweep that was measured once; `outcome` may be of an earlier choice of its frames, or of earlier settings */
  | {
      readonly kind: 'swept';
      readonly frames: readonly SweepFrame[];
      readonly outcome: SweepOutcome;
      /** the frame that the reader looks at; null: the one that stands for the sweep */
      readonly shownId: number | null;
      /** how the head stood in each frame that was measured with, by its id: a frame keeps it when it is left out */
      readonly poses: ReadonlyMap<number, FramePose>;
    };

/** What was measured from. */
export type MeasuredKind = 'picture' | 'sweep';

export type PictureEvent =
  /** from a file unless `takenBy` says otherwise; `at` in ISO 8601 */
  | { readonly kind: 'picture-awaited'; readonly takenBy?: TakenBy; readonly at?: string }
  | { readonly kind: 'picture-opened'; readonly picture: Picture }
  | { readonly kind: 'progress-made'; readonly progress: MeasuringProgress }
  | { readonly kind: 'features-found'; readonly features: PictureFeatures }
  | { readonly kind: 'finding-failed'; readonly failure: FindingFailure }
  | { readonly kind: 'picture-put-away' }
  | { readonly kind: 'placing-started' }
  | { readonly kind: 'corners-vouched' }
  | {
      readonly kind: 'handle-moved';
      readonly handle: Handle;
      readonly to: ImagePoint;
      /** the same for all steps of one drag or one stay on a handle */
      readonly gesture: number;
    }
  | { readonly kind: 'reset-to-found' }
  | { readonly kind: 'frame-shown'; readonly id: number }
  | { readonly kind: 'frame-left-out'; readonly id: number; readonly isLeftOut: boolean };

/** The picture after an event; events that do not fit leave it as it is. */
export function pictureReducer(state: PictureState, event: PictureEvent): PictureState {
  switch (event.kind) {
    case 'picture-awaited':
      return { kind: 'working', picture: null, progress: null };
    case 'picture-opened':
      return state.kind === 'working' ? { ...state, picture: event.picture } : state;
    case 'progress-made':
      return state.kind === 'working' ? { ...state, progress: event.progress } : state;
    case 'features-found':
      return state.kind === 'working' && state.picture !== null
        ? { kind: 'measured', picture: state.picture, marking: startMarking(event.features) }
        : state;
    case 'finding-failed':
      return state.kind === 'working'
        ? {
            kind: 'failed',
            picture: state.picture,
            failure: event.failure.failure,
            partial: event.failure.partial,
          }
        : state;
    case 'picture-put-away':
      return { kind: 'none' };
    case 'placing-started':
      return state.kind === 'failed' && state.picture !== null && state.partial !== null
        ? { kind: 'placing', picture: state.picture, marking: startMarking(state.partial), failure: state.failure }
        : state;
    case 'corners-vouched':
      return state.kind === 'placing'
        ? {
            kind: 'measured',
            picture: state.picture,
            marking: vouched(state.marking),
          }
        : state;
    case 'handle-moved':
      return withMarking(state, (marking) => edit(marking, event.handle, event.to));
    case 'reset-to-found':
      return withMarking(state, resetToFound);
    case 'frame-shown':
      return state.kind === 'swept' ? { ...state, shownId: event.id } : state;
    case 'frame-left-out':
      return state.kind === 'swept'
        ? {
            ...state,
            // it is the one that is looked at, whichever stands for the sweep from now on
            shownId: event.id,
            frames: state.frames.map((frame) =>
              frame.id === event.id ? { ...frame, isLeftOut: event.isLeftOut } : frame,
            ),
          }
        : state;
    default:
      return unreachable(event);
  }
}

function withMarking(state: PictureState, change: (marking: Marking) => Marking): PictureState {
  if (state.kind !== 'measured' && state.kind !== 'placing') return state;
  const marking = change(state.marking);
  return marking === state.marking ? state : { ...state, marking };
}

/** What carries numbers; null where nothing does. */
export function measuredKind(state: PictureState): MeasuredKind | null {
  if (state.kind === 'recorded') return state.camera.kind;
  return state.kind === 'swept' ? 'sweep' : state.kind === 'measured' ? 'picture' : null;
}

/** The one picture that the state holds; null where there is none, or a sweep. */
export function pictureOf(state: PictureState): Picture | null {
  return state.kind === 'none' || state.kind === 'swept' || state.kind === 'recorded' ? null : state.picture;
}

/** The size of the picture, or of the frames of the sweep, that is measured; null where nothing is. */
export function measuredSize(picture: PictureState): PictureSize | null {
  if (picture.kind === 'measured') return picture.marking.features;
  if (picture.kind !== 'swept') return null;
  for (const { outcome } of picture.frames) if (outcome.kind === 'found') return outcome.features;
  return null;
}

/** Whether a hand has set the lid marks of each eye; null where no single picture carries numbers. */
export function lidsByHand(picture: PictureState): CameraRecord['lidsByHand'] | null {
  if (picture.kind === 'recorded') return picture.camera.kind === 'picture' ? picture.camera.lidsByHand : null;
  if (picture.kind !== 'measured') return null;
  const { lids } = picture.marking.features;
  return { R: lids.R.source === 'hand', L: lids.L.source === 'hand' };
}
