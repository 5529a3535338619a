import type { MeasurementId, ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import { withEntry } from '../core/record/reading-history.js';
import type { Confirmations } from '../core/record/confirmation.js';
import type { Practice } from '../core/record/practice.js';
import { keptInUse } from '../core/record/practice.js';
import type { ReaderId } from '../core/record/reader-sheet.js';
import type { TypedPrescription } from '../core/record/typed-prescription.js';
import type { SheetSettings } from '../core/record/typed-sheet.js';
import type { WearerNotes } from '../core/record/wearer-notes.js';
import { unreachable } from '../core/result.js';
import type { Side } from '../core/units/side.js';
import type { ReaderEntries } from './entries.js';
import { confirmationsUnder } from './entries.js';
import type { Handle } from './handles.js';
import type { Picture } from './ports.js';
import { FROM_FILES } from './profile-choice.js';
import type { SheetEvent, SheetState } from './sheet.js';
import { picturesOf, sheetReducer } from './sheet.js';
import type { PrescriptionChange } from './sheet-changes.js';

/** What a person did to a session, in one step that can be undone. */
export type SheetAct =
  /** what stood in the field afterwards; empty where it was cleared */
  | { readonly kind: 'reading'; readonly name: ReadingName; readonly text: string }
  | { readonly kind: 'restoration'; readonly names: readonly ReadingName[] }
  | { readonly kind: 'reader-chosen'; readonly reader: ReaderId }
  | { readonly kind: 'reader-named'; readonly reader: ReaderId }
  | { readonly kind: 'confirmed'; readonly names: readonly ReadingName[] }
  | { readonly kind: 'confirmation-withdrawn'; readonly names: readonly ReadingName[] }
  | { readonly kind: 'note'; readonly field: keyof WearerNotes }
  | { readonly kind: 'prescription'; readonly side: Side | null; readonly field: PrescriptionField }
  | { readonly kind: 'gauge'; readonly measurement: MeasurementId }
  | { readonly kind: 'gaze' }
  | { readonly kind: 'shown-alone' }
  | { readonly kind: 'covered' }
  | { readonly kind: 'picture' }
  | { readonly kind: 'sweep' }
  | { readonly kind: 'picture-put-away' }
  | { readonly kind: 'corners-begun' }
  | { readonly kind: 'corners-placed' }
  | { readonly kind: 'handle'; readonly handle: Handle }
  | { readonly kind: 'reset-to-found' }
  /** `number` as the frames are counted on the screen, from 1 */
  | { readonly kind: 'frame'; readonly number: number; readonly isLeftOut: boolean };

export type PrescriptionField = Exclude<keyof TypedPrescription, Side> | keyof TypedPrescription[Side];

/** What of a sheet is undone: all that a person does to a session, nothing of the desk and nothing of work on its way. */
interface SheetContent {
  readonly first: ReaderEntries;
  readonly second: ReaderEntries;
  readonly reader: ReaderId;
  readonly notes: WearerNotes;
  readonly prescription: TypedPrescription;
  readonly confirmations: Confirmations;
  readonly gaze: SheetSettings['gaze'];
  readonly gaugeInUse: Practice['gaugeInUse'];
  readonly picture: SheetState['picture'];
  readonly takenBy: SheetState['takenBy'];
  readonly takenAt: SheetState['takenAt'];
  readonly alone: boolean;
}

/** A step, seen from one of its ends. */
export interface UndoStep {
  readonly act: SheetAct;
  /** acts with the same key that follow each other are one step; null: a step of its own */
  readonly key: string | null;
  /** the parts of the sheet that it changed, as they stand at its other end */
  readonly other: Partial<SheetContent>;
  /** the practice under which they stood so */
  readonly practice: Practice;
}

/** The sheet with the steps that led to it, and those that were undone; the nearest last. */
export interface SheetInTime {
  readonly now: SheetState;
  readonly past: readonly UndoStep[];
  readonly future: readonly UndoStep[];
  /** the place of the last step has not been left: what is typed there goes on with it */
  readonly isOpen: boolean;
}

export type SheetTimeEvent =
  | SheetEvent
  /** the reader went on from whatever has the focus */
  | { readonly kind: 'place-left' }
  /** `at` in ISO 8601: what is entered again is an entry of its own */
  | { readonly kind: 'undone'; readonly at: string }
  | { readonly kind: 'redone'; readonly at: string };

/** Chosen: more than anybody goes back, and no memory that matters. */
export const MOST_STEPS = 200;

/**
 * Pixels of pictures that only steps hold, about 4 bytes each. Chosen: four or five pictures of a good camera. What is older
 * falls off with all steps before it.
 */
export const MOST_PIXELS = 64e6;

export function beginTime(now: SheetState): SheetInTime {
  return { now, past: [], future: [], isOpen: false };
}

/**
 * The sheet after an event, and with it what can be undone. A step keeps only the parts that it changed, so that whatever
 * came by itself in between (what was found in a picture, a sweep measured anew) stays. The history of readings only grows:
 * what comes back by undoing is entered once more.
 *
 * A picture that is still being looked at when it is undone cannot be had back by redoing: nothing had come of it.
 */
export function timeReducer(time: SheetInTime, event: SheetTimeEvent): SheetInTime {
  if (event.kind === 'place-left') return time.isOpen ? { ...time, isOpen: false } : time;
  if (event.kind === 'undone') return swapped(time, 'past', event.at);
  if (event.kind === 'redone') return swapped(time, 'future', event.at);
  const now = sheetReducer(time.now, event);
  if (now === time.now) return time;
  const act = actOf(event, time.now, now);
  return act === null ? { ...time, now } : withStep(time, now, act, event);
}

/** All pictures that the sheet shows, or would show again; for whoever has to close them once they are gone. */
export function heldPictures({ now, past, future }: SheetInTime): ReadonlySet<Picture> {
  return new Set([now, ...[...past, ...future].map(sheetOfStep)].flatMap((sheet) => [...picturesOf(sheet)]));
}

/** What an undo, or a redo, would take the place of; null where there is nothing. */
export function nextAct(time: SheetInTime, from: 'past' | 'future'): SheetAct | null {
  return time[from].at(-1)?.act ?? null;
}

function sheetOfStep({ other }: UndoStep): Parameters<typeof picturesOf>[0] {
  return { picture: other.picture ?? { kind: 'none' }, sweep: null };
}

function contentOf(state: SheetState): SheetContent {
  const { readers, reader, notes, prescription, confirmations, settings, picture, takenBy, takenAt, alone } = state;
  const { gaze, practice } = settings;
  return {
    first: readers.first,
    second: readers.second,
    reader,
    notes,
    prescription,
    confirmations,
    gaze,
    gaugeInUse: practice.gaugeInUse,
    picture,
    takenBy,
    takenAt,
    alone,
  };
}

function pick(content: SheetContent, keys: readonly (keyof SheetContent)[]): Partial<SheetContent> {
  return Object.fromEntries(keys.map((key) => [key, content[key]]));
}

function keysOf(content: Partial<SheetContent>): readonly (keyof SheetContent)[] {
  return Object.keys(content) as (keyof SheetContent)[];
}

function withStep(time: SheetInTime, now: SheetState, act: SheetAct, event: SheetEvent): SheetInTime {
  const before = contentOf(time.now);
  const after = contentOf(now);
  const changed = keysOf(after).filter((key) => before[key] !== after[key]);
  if (changed.length === 0) return { ...time, now };
  const key = keyOf(act, event, now);
  const last = time.past.at(-1);
  // What is entered belongs to what was typed, and a drag is one drag, whatever has the focus.
  const joins =
    last !== undefined &&
    last.key !== null &&
    last.key === key &&
    (time.isOpen || event.kind === 'reading-entered' || event.kind === 'handle-moved');
  const earlier = joins ? time.past.slice(0, -1) : time.past;
  const settled = changed.includes('picture') ? settledBefore(earlier, before) : { past: earlier, content: before };
  const { practice } = joins ? last : time.now.settings;
  const step: UndoStep = {
    act,
    key,
    other: { ...pick(settled.content, changed), ...(joins ? last.other : {}) },
    practice,
  };
  // Typed and taken back by hand: nothing is left to undo.
  const past = isSame(step.other, after) ? settled.past : [...settled.past, step];
  return { now, past: bounded(past, now), future: [], isOpen: true };
}

/**
 * What stood before a change, and the steps that led there. A picture that is still being looked at gives way to what stood
 * before it, and its step goes: there is nothing to come back to.
 */
function settledBefore(
  past: readonly UndoStep[],
  content: SheetContent,
): { readonly past: readonly UndoStep[]; readonly content: SheetContent } {
  if (content.picture.kind !== 'working') return { past, content };
  const step = past.findLast(({ other }) => other.picture !== undefined);
  const { picture = { kind: 'none' }, takenBy = FROM_FILES, takenAt = null } = step?.other ?? {};
  return { past: past.filter((one) => one !== step), content: { ...content, picture, takenBy, takenAt } };
}

function swapped(time: SheetInTime, from: 'past' | 'future', at: string): SheetInTime {
  const step = time[from].at(-1);
  if (step === undefined) return time;
  const here = contentOf(time.now);
  const now = withContent(time.now, step, at);
  const isLost = step.other.picture !== undefined && here.picture.kind === 'working';
  const reverse = isLost
    ? []
    : [{ ...step, other: pick(here, keysOf(step.other)), practice: time.now.settings.practice }];
  const rest = time[from].slice(0, -1);
  const { past, future } = time;
  return from === 'past'
    ? { now, past: rest, future: [...future, ...reverse], isOpen: false }
    : { now, past: bounded([...past, ...reverse], now), future: rest, isOpen: false };
}

function withContent(state: SheetState, step: UndoStep, at: string): SheetState {
  const { other } = step;
  const { gaze, gaugeInUse } = other;
  const before = state.settings.practice;
  // The practice may have parted with a gauge since.
  const practice = gaugeInUse === undefined ? before : keptInUse({ ...before, gaugeInUse });
  const settings =
    gaze === undefined && gaugeInUse === undefined
      ? state.settings
      : { ...state.settings, practice, gaze: gaze ?? state.settings.gaze };
  const confirmations =
    other.confirmations === undefined
      ? confirmationsUnder(state.confirmations, before, practice)
      : confirmationsUnder(other.confirmations, step.practice, practice);
  const isOtherPicture = other.picture !== undefined;
  return {
    ...state,
    readers: {
      first: enteredAgain(state.readers.first, other.first, at),
      second: enteredAgain(state.readers.second, other.second, at),
    },
    reader: other.reader ?? state.reader,
    notes: other.notes ?? state.notes,
    prescription: other.prescription ?? state.prescription,
    confirmations,
    settings,
    picture: other.picture ?? state.picture,
    takenBy: other.takenBy ?? state.takenBy,
    // null is a time as well: none
    takenAt: other.takenAt === undefined ? state.takenAt : other.takenAt,
    alone: other.alone ?? state.alone,
    // A sweep that failed hides the picture that is wanted back.
    sweep: isOtherPicture && state.sweep?.stage.kind === 'failed' ? null : state.sweep,
    notice: isOtherPicture ? null : state.notice,
  };
}

/** A reader's sheet as it stood once, with the history that it has now, and what comes back entered anew. */
function enteredAgain(now: ReaderEntries, once: ReaderEntries | undefined, at: string): ReaderEntries {
  if (once === undefined) return now;
  const history = READING_NAMES.reduce((entries, name) => {
    const text = once.entered[name];
    return text === now.entered[name]
      ? entries
      : withEntry(entries, now.entered[name], { name, text, by: now.reader, at });
  }, now.history);
  return { ...once, history };
}

function bounded(past: readonly UndoStep[], now: SheetState): readonly UndoStep[] {
  const seen = new Set(picturesOf(now));
  let pixels = 0;
  let kept = 0;
  for (const step of past.toReversed()) {
    for (const picture of picturesOf(sheetOfStep(step))) {
      if (!seen.has(picture)) pixels += picture.widthPx * picture.heightPx;
      seen.add(picture);
    }
    if (kept === MOST_STEPS || pixels > MOST_PIXELS) break;
    kept += 1;
  }
  return kept === past.length ? past : past.slice(past.length - kept);
}

/** Whether these parts stand in the content just so; where the readers' sheets differ in their history alone, they do. */
function isSame(parts: Partial<SheetContent>, content: SheetContent): boolean {
  return keysOf(parts).every((key) => {
    const [one, other] = [parts[key], content[key]];
    if (one === other) return true;
    if (key === 'picture' || key === 'takenBy') return false;
    return JSON.stringify(one, withoutHistory) === JSON.stringify(other, withoutHistory);
  });
}

function withoutHistory(key: string, value: unknown): unknown {
  return key === 'history' ? undefined : value;
}

/** What a person did with this event; null where it came by itself, or concerns the desk or what is looked at. */
function actOf(event: SheetEvent, before: SheetState, now: SheetState): SheetAct | null {
  switch (event.kind) {
    case 'reading-typed':
    case 'reading-entered':
      return { kind: 'reading', name: event.field, text: now.readers[now.reader].readings[event.field].trim() };
    case 'restoration-taken':
      return { kind: 'restoration', names: event.restorations.map(({ name }) => name) };
    case 'reader-chosen':
    case 'reader-named':
      return { kind: event.kind, reader: event.reader };
    case 'readings-confirmed':
      return { kind: 'confirmed', names: event.names };
    case 'confirmation-withdrawn':
      return { kind: event.kind, names: event.names };
    case 'notes-changed':
      return noteAct(event.change);
    case 'prescription-changed':
      return prescriptionAct(event.change);
    case 'practice-changed':
      return gaugeAct(before.settings.practice, now.settings.practice);
    case 'settings-changed':
      return before.settings.gaze === now.settings.gaze ? null : { kind: 'gaze' };
    case 'estimates-shown-alone':
      return { kind: event.shown ? 'shown-alone' : 'covered' };
    case 'sweep-measured':
      // One that is measured anew follows from something else.
      return now.sweep === null && before.sweep !== null ? { kind: 'sweep' } : null;
    case 'picture-awaited':
      return { kind: 'picture' };
    case 'picture-put-away':
      return { kind: event.kind };
    case 'placing-started':
      return { kind: 'corners-begun' };
    case 'corners-vouched':
      return { kind: 'corners-placed' };
    case 'handle-moved':
      return { kind: 'handle', handle: event.handle };
    case 'reset-to-found':
      return { kind: event.kind };
    case 'frame-left-out':
      return { kind: 'frame', number: frameNumber(now, event.id), isLeftOut: event.isLeftOut };
    case 'sweep-begun':
    case 'sweep-camera-told':
    case 'sweep-dropped':
    case 'frame-taken':
    case 'frame-settled':
    case 'frames-counted':
    case 'frames-complete':
    case 'sweep-failed':
    case 'picture-opened':
    case 'progress-made':
    case 'features-found':
    case 'finding-failed':
    case 'frame-shown':
      return null;
    default:
      return unreachable(event);
  }
}

function frameNumber({ picture }: SheetState, id: number): number {
  return picture.kind === 'swept' ? picture.frames.findIndex((frame) => frame.id === id) + 1 : 0;
}

function noteAct(change: Partial<WearerNotes>): SheetAct | null {
  const [field] = Object.keys(change) as (keyof WearerNotes)[];
  return field === undefined ? null : { kind: 'note', field };
}

function prescriptionAct({ R, L, ...whole }: PrescriptionChange): SheetAct | null {
  const eye = R ?? L;
  const side: Side | null = R !== undefined ? 'R' : L !== undefined ? 'L' : null;
  const [field] = Object.keys(eye ?? whole) as PrescriptionField[];
  return field === undefined ? null : { kind: 'prescription', side, field };
}

/** Gauges themselves belong to the practice; which one a wearer was measured with, to the session. */
function gaugeAct(before: Practice, now: Practice): SheetAct | null {
  if (JSON.stringify(before.gauges) !== JSON.stringify(now.gauges)) return null;
  const ids = Object.keys({ ...before.gaugeInUse, ...now.gaugeInUse }) as MeasurementId[];
  const measurement = ids.find((id) => before.gaugeInUse[id] !== now.gaugeInUse[id]);
  return measurement === undefined ? null : { kind: 'gauge', measurement };
}

/** What makes one step of several events: the same place, and for the hand the same gesture. */
function keyOf(act: SheetAct, event: SheetEvent, now: SheetState): string | null {
  switch (act.kind) {
    case 'reading':
      return `reading ${now.reader} ${act.name}`;
    case 'handle':
      return `handle ${event.kind === 'handle-moved' ? event.gesture : ''}`;
    case 'reader-named':
      return `${act.kind} ${act.reader}`;
    case 'note':
      return `note ${act.field}`;
    case 'prescription':
      return `prescription ${act.side ?? ''} ${act.field}`;
    case 'gauge':
      return `gauge ${act.measurement}`;
    case 'reader-chosen':
    case 'gaze':
      return act.kind;
    case 'shown-alone':
    case 'covered':
      return 'alone';
    case 'restoration':
    case 'confirmed':
    case 'confirmation-withdrawn':
    case 'picture':
    case 'sweep':
    case 'picture-put-away':
    case 'corners-begun':
    case 'corners-placed':
    case 'reset-to-found':
    case 'frame':
      return null;
    default:
      return unreachable(act);
  }
}
