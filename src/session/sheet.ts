import type { CameraRecord } from '../core/record/session-record.js';
import { unreachable } from '../core/result.js';
import type { Confirmations } from '../core/record/confirmation.js';
import type { EntryEvent, ReaderEntries } from './entries.js';
import { confirmationsUnder, entriesReducer, openEntries } from './entries.js';
import type { MeasuredKind, PictureEvent, PictureState } from './picture-state.js';
import { measuredKind, pictureOf, pictureReducer } from './picture-state.js';
import type { Picture } from './ports.js';
import type { Practice } from '../core/record/practice.js';
import type { LiveCamera, TakenBy } from './profile-choice.js';
import { FROM_FILES } from './profile-choice.js';
import type { ReaderId, ReaderSheet } from '../core/record/reader-sheet.js';
import type { SweepOutcome } from './sweep-frames.js';
import { frameCounts, posesOf } from './sweep-frames.js';
import type { SweepEvent, SweepRun } from './sweep-run.js';
import { beginSweep, sweepRunReducer } from './sweep-run.js';
import type { TypedPrescription } from '../core/record/typed-prescription.js';
import type { SheetSettings, TypedSheet } from '../core/record/typed-sheet.js';
import { EMPTY_TYPED_SHEET } from '../core/record/typed-sheet.js';
import type { WearerNotes } from '../core/record/wearer-notes.js';
import type { PrescriptionChange } from './sheet-changes.js';
import { changedNotes, changedPrescription } from './sheet-changes.js';

/** Something that was let go and is to be said, until the next picture or sweep comes. */
export interface SheetNotice {
  /** a sweep was given up although frames had been taken */
  readonly kind: 'frames-dropped';
  readonly frames: number;
}

/** The whole sheet as it stands on the screen. */
export interface SheetState {
  readonly readers: Readonly<Record<ReaderId, ReaderEntries>>;
  /** whose sheet is open: what is typed goes there */
  readonly reader: ReaderId;
  readonly notes: WearerNotes;
  readonly prescription: TypedPrescription;
  readonly confirmations: Confirmations;
  readonly settings: SheetSettings;
  readonly picture: PictureState;
  /** what took `picture` */
  readonly takenBy: TakenBy;
  /** when `picture` came, ISO 8601; null where none came since the session was opened */
  readonly takenAt: string | null;
  /**
   * A sweep on its way, or one that failed; `picture` stays what it was until the sweep was measured. While a failed one
   * stands here, it hides the earlier picture.
   */
  readonly sweep: SweepRun | null;
  /** the estimates of this picture were shown without hand readings: readings taken after that are not independent */
  readonly alone: boolean;
  readonly notice: SheetNotice | null;
}

export type SheetEvent =
  | EntryEvent
  | PictureEvent
  | { readonly kind: 'notes-changed'; readonly change: Partial<WearerNotes> }
  | { readonly kind: 'prescription-changed'; readonly change: PrescriptionChange }
  | { readonly kind: 'practice-changed'; readonly change: Partial<Practice> }
  | { readonly kind: 'estimates-shown-alone'; readonly shown: boolean }
  | { readonly kind: 'settings-changed'; readonly change: Partial<SheetSettings> }
  | SweepEvent
  /** the camera that took the frames of the sweep on its way; null where it cannot be told any more */
  | { readonly kind: 'sweep-camera-told'; readonly camera: LiveCamera | null };

/**
 * A sheet to begin with: what was kept, or an empty one.
 *
 * @param camera what the camera said when the session was open last; its picture is gone
 */
export function openSheet(kept: TypedSheet | null, camera: CameraRecord | null = null): SheetState {
  const { readers, reader, notes, prescription, confirmations, settings } = kept ?? EMPTY_TYPED_SHEET;
  return {
    readers: { first: openEntries(readers.first), second: openEntries(readers.second) },
    reader,
    notes,
    prescription,
    confirmations,
    settings,
    picture: camera === null ? { kind: 'none' } : { kind: 'recorded', camera },
    takenBy: FROM_FILES,
    takenAt: null,
    sweep: null,
    // Nobody will have read by hand what a distant wearer sends: there is nothing to be kept covered.
    alone: camera?.supervision === 'none',
    notice: null,
  };
}

/**
 * The sheet after an event. Events that do not fit the state (an answer that comes after its picture was put away) leave it
 * as it is. Effects (opening, finding, closing of pictures) are the caller's, and so is the
 * clock: times come with the events.
 */
export function sheetReducer(state: SheetState, event: SheetEvent): SheetState {
  switch (event.kind) {
    case 'reader-chosen':
      // the one who comes now has not seen what was uncovered for the one before
      return state.reader === event.reader ? state : { ...withEntries(state, event), alone: false };
    case 'reading-typed':
    case 'reading-entered':
    case 'restoration-taken':
    case 'reader-named':
    case 'readings-confirmed':
    case 'confirmation-withdrawn':
      return withEntries(state, event);
    case 'notes-changed':
      return { ...state, notes: changedNotes(state.notes, event.change) };
    case 'prescription-changed':
      return { ...state, prescription: changedPrescription(state.prescription, event.change) };
    case 'practice-changed':
      return withSettings(state, { practice: { ...state.settings.practice, ...event.change } });
    case 'estimates-shown-alone':
      return { ...state, alone: event.shown };
    case 'settings-changed':
      return withSettings(state, event.change);
    case 'sweep-begun':
      // A picture that is still being looked at gives way; one that was measured stays until the sweep is.
      return {
        ...state,
        picture: state.picture.kind === 'working' ? { kind: 'none' } : state.picture,
        sweep: beginSweep(event.origin, event.expected, event.at),
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
    case 'reset-to-found':
    case 'frame-shown':
    case 'frame-left-out': {
      const picture = pictureReducer(state.picture, event);
      if (picture === state.picture) return state;
      // A new picture takes the place of whatever was there or on its way.
      return event.kind === 'picture-awaited'
        ? {
            ...state,
            picture,
            takenBy: event.takenBy ?? FROM_FILES,
            takenAt: event.at ?? null,
            sweep: null,
            alone: false,
            notice: null,
          }
        : { ...state, picture };
    }
    default:
      return unreachable(event);
  }
}

function withEntries(state: SheetState, event: EntryEvent): SheetState {
  const { readers, reader, confirmations } = state;
  const before = { readers, reader, confirmations };
  const entries = entriesReducer(before, event, state.settings.practice);
  return entries === before ? state : { ...state, ...entries };
}

function withSettings(state: SheetState, change: Partial<SheetSettings>): SheetState {
  const settings = { ...state.settings, ...change };
  const { practice } = state.settings;
  const confirmations = confirmationsUnder(state.confirmations, practice, settings.practice);
  return { ...state, settings, confirmations };
}

/** A first outcome makes the sweep the picture of the sheet; a later one renews it; one that is out of date changes nothing. */
function withSweepMeasured(state: SheetState, outcome: SweepOutcome): SheetState {
  const { frames } = outcome.basis;
  if (state.sweep !== null && state.sweep.stage.kind === 'measuring' && state.sweep.frames === frames) {
    return outcome.result.ok
      ? {
          ...state,
          picture: { kind: 'swept', frames, outcome, shownId: null, poses: posesOf(outcome) },
          takenBy: state.sweep.takenBy,
          takenAt: state.sweep.begunAt,
          sweep: null,
          alone: false,
        }
      : { ...state, sweep: { ...state.sweep, stage: { kind: 'failed', failure: outcome.result.failure } } };
  }
  const { picture } = state;
  if (picture.kind !== 'swept' || picture.frames !== frames) return state;
  return { ...state, picture: { ...picture, outcome, poses: new Map([...picture.poses, ...posesOf(outcome)]) } };
}

/** A failed sweep is closed, not dropped: nothing is lost that was of use. */
function framesDropped({ frames, stage }: SweepRun): SheetNotice | null {
  const { found, missed } = frameCounts(frames);
  return stage.kind === 'failed' || found + missed === 0 ? null : { kind: 'frames-dropped', frames: frames.length };
}

/** What was typed: this is what is kept on the device. */
export function typedSheet(
  state: Pick<SheetState, 'readers' | 'reader' | 'notes' | 'prescription' | 'confirmations' | 'settings'>,
): TypedSheet {
  const { readers, reader, notes, prescription, confirmations, settings } = state;
  const kept = { first: asKept(readers.first), second: asKept(readers.second) };
  return { readers: kept, reader, notes, prescription, confirmations, settings };
}

function asKept({ reader, readings, history }: ReaderEntries): ReaderSheet {
  return { reader, readings, history };
}

/** The sheet that is open. */
export function openReader({ readers, reader }: SheetState): ReaderEntries {
  return readers[reader];
}

/** What the numbers on the sheet are of while a newer sweep is on its way; null where they are up to date, or there are none. */
export function earlierMeasured({ picture, sweep }: SheetState): MeasuredKind | null {
  return sweep === null || sweep.stage.kind === 'failed' ? null : measuredKind(picture);
}

/** Whether a failed sweep hides what was measured before it: what stands on the screen then carries no numbers. */
export function isHiddenByFailure({ sweep }: SheetState): boolean {
  return sweep?.stage.kind === 'failed';
}

/** All pictures that the sheet shows. */
export function picturesOf({ picture, sweep }: Pick<SheetState, 'picture' | 'sweep'>): ReadonlySet<Picture> {
  const one = pictureOf(picture);
  const frames = [...(picture.kind === 'swept' ? picture.frames : []), ...(sweep?.frames ?? [])];
  return new Set([
    ...(one === null ? [] : [one]),
    ...frames.flatMap(({ thumbnail }) => (thumbnail === null ? [] : [thumbnail])),
  ]);
}
