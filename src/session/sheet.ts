import type { PictureFeatures } from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { unreachable } from '../core/result.js';
import type { Handle } from './handles.js';
import { moveHandle, vouchForCorners } from './handles.js';
import type { FindingFailure, MeasuringFailure, MeasuringProgress, Picture } from './ports.js';
import type { LiveCamera, PictureSize, TakenBy } from './profile-choice.js';
import { FROM_FILES } from './profile-choice.js';
import type { FramePose, SweepFrame, SweepOutcome } from './sweep-frames.js';
import { frameCounts, posesOf } from './sweep-frames.js';
import type { SweepRun, SweepRunEvent } from './sweep-run.js';
import { beginSweep, sweepRunReducer } from './sweep-run.js';
import type { ReadingField, SheetSettings, TypedReadings, TypedSheet } from './typed-sheet.js';
import { DEFAULT_SHEET_SETTINGS, NO_READINGS } from './typed-sheet.js';

/** What was found in a picture, and what a person made of it. */
export interface Marking {
  /** as the computer found it, or, with a guessed card, as it starts */
  readonly found: PictureFeatures;
  /** as it stands now: all estimates follow from it */
  readonly features: PictureFeatures;
  /** earlier and undone versions, the nearest last */
  readonly past: readonly PictureFeatures[];
  readonly future: readonly PictureFeatures[];
  /** the gesture (one drag, one stay on a handle) that made the last edit: its steps are undone together */
  readonly gesture: number | null;
}

export type PictureState =
  | { readonly kind: 'none' }
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

/** Something that was let go and is to be said, until the next picture or sweep comes. */
export type SheetNotice =
  /** a sweep was given up although frames had been taken */
  | { readonly kind: 'frames-dropped'; readonly frames: number }
  /** the reader's own readings came back, and what had been measured did not */
  | { readonly kind: 'readings-back'; readonly gone: MeasuredKind };

/** The whole sheet as it stands on the screen. */
export interface SheetState {
  /** what stands in the fields at this moment */
  readonly readings: TypedReadings;
  /**
   * What stood in each field when the reader last went on from it. Covers and findings follow from this, so that half a
   * number that is still being typed neither uncovers the camera's value nor is judged.
   */
  readonly entered: TypedReadings;
  readonly settings: SheetSettings;
  readonly picture: PictureState;
  /** what took `picture` */
  readonly takenBy: TakenBy;
  /**
   * A sweep on its way, or one that failed; `picture` stays what it was until the sweep was measured. While a failed one
   * stands here, it hides the earlier picture.
   */
  readonly sweep: SweepRun | null;
  /** the estimates of this picture were shown without hand readings: readings taken after that are not independent */
  readonly alone: boolean;
  /** readings that were cleared just now and can be brought back */
  readonly cleared: TypedReadings | null;
  /** the reader's own sheet, put aside while the invented wearer of the demo is on the screen; null otherwise */
  readonly putAside: TypedSheet | null;
  /** what had been measured and went when the sheet was cleared, or put aside for the demo; it cannot be brought back */
  readonly gone: MeasuredKind | null;
  readonly notice: SheetNotice | null;
}

export type SheetEvent =
  | { readonly kind: 'reading-typed'; readonly field: ReadingField; readonly text: string }
  /** the reader went on from a field */
  | { readonly kind: 'reading-entered'; readonly field: ReadingField }
  | { readonly kind: 'estimates-shown-alone'; readonly shown: boolean }
  | { readonly kind: 'settings-changed'; readonly change: Partial<SheetSettings> }
  /** from a file unless `takenBy` says otherwise */
  | { readonly kind: 'picture-awaited'; readonly takenBy?: TakenBy }
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
  | { readonly kind: 'undone' }
  | { readonly kind: 'redone' }
  | { readonly kind: 'reset-to-found' }
  | { readonly kind: 'sweep-begun'; readonly origin: SweepRun['origin']; readonly expected: number | null }
  /** the camera that took the frames of the sweep on its way; null where it cannot be told any more */
  | { readonly kind: 'sweep-camera-told'; readonly camera: LiveCamera | null }
  | SweepRunEvent
  /** the adjustment of a sweep ended, for the first time or after its frames or the settings changed */
  | { readonly kind: 'sweep-measured'; readonly outcome: SweepOutcome }
  /** the sweep on its way is given up; what was there before stays */
  | { readonly kind: 'sweep-dropped' }
  | { readonly kind: 'frame-shown'; readonly id: number }
  | { readonly kind: 'frame-left-out'; readonly id: number; readonly isLeftOut: boolean }
  /** The picture of the demo comes by 'picture-awaited' and so on, like every other. */
  | { readonly kind: 'demo-loaded'; readonly sheet: TypedSheet }
  | { readonly kind: 'demo-left' }
  | { readonly kind: 'sheet-cleared' }
  | { readonly kind: 'clearing-undone' };

/** A sheet to begin with: what was kept, or an empty one. */
export function openSheet(kept: TypedSheet | null): SheetState {
  const readings = kept?.readings ?? NO_READINGS;
  return {
    readings,
    entered: readings,
    settings: kept?.settings ?? DEFAULT_SHEET_SETTINGS,
    picture: { kind: 'none' },
    takenBy: FROM_FILES,
    sweep: null,
    alone: false,
    cleared: null,
    putAside: null,
    gone: null,
    notice: null,
  };
}

/**
 * The sheet after an event. Events that do not fit the state (an answer that comes after its picture was put away, an undo
 * with nothing to undo) leave it as it is. Effects (opening, finding, closing of pictures) are the caller's.
 */
export function sheetReducer(state: SheetState, event: SheetEvent): SheetState {
  switch (event.kind) {
    case 'reading-typed':
      return { ...state, readings: { ...state.readings, [event.field]: event.text }, cleared: null };
    case 'reading-entered':
      return state.entered[event.field] === state.readings[event.field]
        ? state
        : { ...state, entered: { ...state.entered, [event.field]: state.readings[event.field] } };
    case 'estimates-shown-alone':
      return { ...state, alone: event.shown };
    case 'settings-changed':
      return { ...state, settings: { ...state.settings, ...event.change } };
    case 'demo-loaded':
      return {
        ...openSheet(event.sheet),
        picture: state.picture,
        takenBy: state.takenBy,
        putAside: state.putAside ?? ownSheet(state),
        gone: state.putAside === null ? measuredKind(state.picture) : state.gone,
      };
    case 'demo-left':
      return state.putAside === null ? state : { ...openSheet(state.putAside), notice: readingsBack(state.gone) };
    case 'sheet-cleared':
      return {
        // The next wearer is asked to look into the camera again; what belongs to the desk stays.
        ...openSheet({
          readings: NO_READINGS,
          settings: { ...state.settings, gaze: DEFAULT_SHEET_SETTINGS.gaze },
        }),
        cleared: state.readings,
        putAside: state.putAside,
        // what belongs to the invented wearer can be shown again
        gone: state.putAside === null ? measuredKind(state.picture) : state.gone,
      };
    case 'clearing-undone':
      return state.cleared === null
        ? state
        : {
            ...state,
            readings: state.cleared,
            entered: state.cleared,
            cleared: null,
            notice: state.picture.kind === 'none' && state.putAside === null ? readingsBack(state.gone) : null,
          };
    case 'sweep-begun':
      // A picture that is still being looked at gives way; one that was measured stays until the sweep is.
      return {
        ...state,
        picture: state.picture.kind === 'working' ? { kind: 'none' } : state.picture,
        sweep: beginSweep(event.origin, event.expected),
        notice: null,
      };
    case 'sweep-camera-told':
      return state.sweep === null
        ? state
        : { ...state, sweep: { ...state.sweep, takenBy: { kind: 'camera', camera: event.camera } } };
    case 'sweep-dropped':
      return state.sweep === null ? state : { ...state, sweep: null, notice: framesDropped(state.sweep) };
    case 'frame-taken':
    case 'frame-settled':
    case 'frames-counted':
    case 'frames-complete':
    case 'sweep-failed': {
      if (state.sweep === null) return state;
      const sweep = sweepRunReducer(state.sweep, event);
      return sweep === state.sweep ? state : { ...state, sweep };
    }
    case 'sweep-measured':
      return withSweepMeasured(state, event.outcome);
    case 'picture-awaited':
    case 'picture-opened':
    case 'progress-made':
    case 'features-found':
    case 'finding-failed':
    case 'picture-put-away':
    case 'placing-started':
    case 'corners-vouched':
    case 'handle-moved':
    case 'undone':
    case 'redone':
    case 'reset-to-found':
    case 'frame-shown':
    case 'frame-left-out': {
      const picture = pictureReducer(state.picture, event);
      if (picture === state.picture) return state;
      // A new picture takes the place of whatever was there or on its way.
      return event.kind === 'picture-awaited'
        ? { ...state, picture, takenBy: event.takenBy ?? FROM_FILES, sweep: null, alone: false, notice: null }
        : { ...state, picture };
    }
    default:
      return unreachable(event);
  }
}

type PictureEvent = Exclude<
  SheetEvent,
  {
    kind:
      | 'reading-typed'
      | 'reading-entered'
      | 'estimates-shown-alone'
      | 'settings-changed'
      | 'demo-loaded'
      | 'demo-left'
      | 'sheet-cleared'
      | 'clearing-undone'
      | 'sweep-begun'
      | 'sweep-camera-told'
      | 'sweep-measured'
      | 'sweep-dropped'
      | SweepRunEvent['kind'];
  }
>;

/** A first outcome makes the sweep the picture of the sheet; a later one renews it; one that is out of date changes nothing. */
function withSweepMeasured(state: SheetState, outcome: SweepOutcome): SheetState {
  const { frames } = outcome.basis;
  if (state.sweep !== null && state.sweep.stage.kind === 'measuring' && state.sweep.frames === frames) {
    return outcome.result.ok
      ? {
          ...state,
          picture: { kind: 'swept', frames, outcome, shownId: null, poses: posesOf(outcome) },
          takenBy: state.sweep.takenBy,
          sweep: null,
          alone: false,
        }
      : { ...state, sweep: { ...state.sweep, stage: { kind: 'failed', failure: outcome.result.failure } } };
  }
  const { picture } = state;
  if (picture.kind !== 'swept' || picture.frames !== frames) return state;
  return { ...state, picture: { ...picture, outcome, poses: new Map([...picture.poses, ...posesOf(outcome)]) } };
}

/** What carries numbers; null where nothing does. */
function measuredKind({ kind }: PictureState): MeasuredKind | null {
  return kind === 'swept' ? 'sweep' : kind === 'measured' ? 'picture' : null;
}

function readingsBack(gone: MeasuredKind | null): SheetNotice | null {
  return gone === null ? null : { kind: 'readings-back', gone };
}

/** A failed sweep is closed, not dropped: nothing is lost that was of use. */
function framesDropped({ frames, stage }: SweepRun): SheetNotice | null {
  const { found, missed } = frameCounts(frames);
  return stage.kind === 'failed' || found + missed === 0 ? null : { kind: 'frames-dropped', frames: frames.length };
}

function pictureReducer(state: PictureState, event: PictureEvent): PictureState {
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
            marking: { ...state.marking, features: vouchForCorners(state.marking.features), gesture: null },
          }
        : state;
    case 'handle-moved':
      return withMarking(state, (marking) => edit(marking, event.handle, event.to, event.gesture));
    case 'undone':
      return withMarking(state, undo);
    case 'redone':
      return withMarking(state, redo);
    case 'reset-to-found':
      return withMarking(state, (marking) =>
        marking.features === marking.found ? marking : { ...kept(marking), features: marking.found, gesture: null },
      );
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

function startMarking(found: PictureFeatures): Marking {
  return { found, features: found, past: [], future: [], gesture: null };
}

function withMarking(state: PictureState, change: (marking: Marking) => Marking): PictureState {
  if (state.kind !== 'measured' && state.kind !== 'placing') return state;
  const marking = change(state.marking);
  return marking === state.marking ? state : { ...state, marking };
}

/** The marking with its present features put on the pile of the past. */
function kept(marking: Marking): Marking {
  return { ...marking, past: [...marking.past, marking.features], future: [] };
}

function edit(marking: Marking, handle: Handle, to: ImagePoint, gesture: number): Marking {
  const base = marking.gesture === gesture ? marking : kept(marking);
  return { ...base, features: moveHandle(marking.features, handle, to), future: [], gesture };
}

function undo(marking: Marking): Marking {
  const before = marking.past.at(-1);
  if (before === undefined) return marking;
  return {
    ...marking,
    features: before,
    past: marking.past.slice(0, -1),
    future: [...marking.future, marking.features],
    gesture: null,
  };
}

function redo(marking: Marking): Marking {
  const after = marking.future.at(-1);
  if (after === undefined) return marking;
  return {
    ...marking,
    features: after,
    past: [...marking.past, marking.features],
    future: marking.future.slice(0, -1),
    gesture: null,
  };
}

/** What the reader typed, without the demo's invented wearer: this is what is kept on the device. */
export function ownSheet(state: SheetState): TypedSheet {
  return state.putAside ?? { readings: state.readings, settings: state.settings };
}

/** What the numbers on the sheet are of while a newer sweep is on its way; null where they are up to date, or there are none. */
export function earlierMeasured({ picture, sweep }: SheetState): MeasuredKind | null {
  return sweep === null || sweep.stage.kind === 'failed' ? null : measuredKind(picture);
}

/** Whether a failed sweep hides what was measured before it: what stands on the screen then carries no numbers. */
export function isHiddenByFailure({ sweep }: SheetState): boolean {
  return sweep?.stage.kind === 'failed';
}

/** The one picture that the state holds; null where there is none, or a sweep. */
export function pictureOf(state: PictureState): Picture | null {
  return state.kind === 'none' || state.kind === 'swept' ? null : state.picture;
}

/** All pictures that the sheet holds, for whoever has to close them once they are gone. */
export function picturesOf({ picture, sweep }: SheetState): ReadonlySet<Picture> {
  const one = pictureOf(picture);
  const frames = [...(picture.kind === 'swept' ? picture.frames : []), ...(sweep?.frames ?? [])];
  return new Set([
    ...(one === null ? [] : [one]),
    ...frames.flatMap(({ thumbnail }) => (thumbnail === null ? [] : [thumbnail])),
  ]);
}

/** The size of the picture, or of the frames of the sweep, that is measured; null where nothing is. */
export function measuredSize(picture: PictureState): PictureSize | null {
  if (picture.kind === 'measured') return picture.marking.features;
  if (picture.kind !== 'swept') return null;
  for (const { outcome } of picture.frames) if (outcome.kind === 'found') return outcome.features;
  return null;
}
