import type { CameraRecord } from '../core/record/session-record.js';
import type { FaceMeasurement, MeasureFace, MeasuringSettings } from '../core/estimate/face-estimates.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import type { SweepMeasurement } from '../core/estimate/sweep.js';
import { invariant, unreachable } from '../core/result.js';
import type { AgreedPictures, Answer, AnswerDevice } from './answer.js';
import type { CardKind, Invitation } from './invitation.js';
import type { SweepFrame, SweepOutcome, SweepTrouble } from './sweep-frames.js';
import { judgeFrames, viewOf } from './sweep-frames.js';
import type { SweepEvent, SweepRun } from './sweep-run.js';
import { beginSweep, sweepRunReducer } from './sweep-run.js';

/** What the wearer gets ready before the camera opens, in this order. */
const PREPARING_STEPS = ['card', 'face', 'light', 'distance', 'hold', 'gaze'] as const;

export type PreparingStep = (typeof PREPARING_STEPS)[number];

export type VisitStep = 'welcome' | PreparingStep | 'camera' | 'result' | 'file';

/** All steps in the order in which they are gone. */
export const VISIT_STEPS: readonly VisitStep[] = ['welcome', ...PREPARING_STEPS, 'camera', 'result', 'file'];

/** What the wearer said of the circumstances; nobody else saw to it. */
export type SaidConditions = Pick<Answer['conditions'], 'evenLight' | 'glassesOff' | 'cardFlat'>;

/** Which condition a step asks for. */
const ASKED: Readonly<Partial<Record<VisitStep, keyof SaidConditions>>> = {
  face: 'glassesOff',
  light: 'evenLight',
  hold: 'cardFlat',
};

/** What was measured, with the frames that it was measured from. */
export type TakenEstimates =
  | { readonly kind: 'sweep'; readonly measurement: SweepMeasurement; readonly outcome: SweepOutcome }
  /** the sweep failed, and its best frame was measured alone */
  | { readonly kind: 'picture'; readonly measurement: FaceMeasurement; readonly frame: SweepFrame };

/** When a sweep was complete, and with what it was taken. */
export interface TakenWith {
  /** ISO 8601 */
  readonly at: string;
  readonly facing: AnswerDevice['facing'];
}

/** The visit of a distant wearer, as it stands on the phone. Nothing of it is kept. */
export interface WearerVisit {
  readonly step: VisitStep;
  readonly conditions: SaidConditions;
  /** the sweep on its way, or one that failed and has no frame that can be measured either */
  readonly sweep: SweepRun | null;
  /** what took the sweep on its way, or what is `taken`; null before its frames are complete */
  readonly takenWith: TakenWith | null;
  readonly taken: TakenEstimates | null;
  /** a failed sweep whose frames are still to be tried one by one */
  readonly isTryingFrames: boolean;
  /** when and to what the wearer agreed; null where no picture goes along */
  readonly consent: AgreedPictures['consent'] | null;
}

export type VisitEvent =
  | SweepEvent
  /** on to the next step; `isSo` is whether what the step asks for is as it should be */
  | { readonly kind: 'went-on'; readonly isSo: boolean }
  | { readonly kind: 'went-back' }
  /** all frames of the sweep are there */
  | { readonly kind: 'frames-taken'; readonly with: TakenWith }
  /** the best frame of a failed sweep was measured alone; null where none could be */
  | {
      readonly kind: 'frame-measured';
      readonly best: { readonly frame: SweepFrame; readonly measurement: FaceMeasurement } | null;
    }
  /** back to the camera, with nothing taken */
  | { readonly kind: 'taking-again' }
  | { readonly kind: 'consent-given'; readonly consent: AgreedPictures['consent'] | null };

export const NEW_VISIT: WearerVisit = {
  step: 'welcome',
  conditions: { evenLight: false, glassesOff: false, cardFlat: false },
  sweep: null,
  takenWith: null,
  taken: null,
  isTryingFrames: false,
  consent: null,
};

/** The visit after an event. Events that do not fit leave it as it is. Effects and the clock are the caller's. */
export function visitReducer(visit: WearerVisit, event: VisitEvent): WearerVisit {
  switch (event.kind) {
    case 'went-on':
      return wentOn(visit, event.isSo);
    case 'went-back':
      return wentBack(visit);
    case 'frames-taken':
      return visit.sweep === null ? visit : { ...visit, takenWith: event.with };
    case 'taking-again':
      return visit.step === 'camera' || visit.step === 'result' ? { ...withoutTaken(visit), step: 'camera' } : visit;
    case 'consent-given':
      return { ...visit, consent: event.consent };
    case 'frame-measured': {
      if (!visit.isTryingFrames) return visit;
      const { best } = event;
      if (best === null) return { ...visit, isTryingFrames: false };
      return withTaken(visit, { kind: 'picture', ...best });
    }
    case 'sweep-begun':
      return visit.step === 'camera'
        ? { ...withoutTaken(visit), sweep: beginSweep(event.origin, event.expected) }
        : visit;
    case 'sweep-dropped':
      return { ...visit, sweep: null, isTryingFrames: false };
    case 'sweep-measured': {
      const { sweep } = visit;
      const { basis, result } = event.outcome;
      if (sweep?.stage.kind !== 'measuring' || sweep.frames !== basis.frames) return visit;
      return result.ok
        ? withTaken(visit, { kind: 'sweep', measurement: result.value, outcome: event.outcome })
        : withSweep(visit, { ...sweep, stage: { kind: 'failed', failure: result.failure } });
    }
    case 'frame-taken':
    case 'frame-settled':
    case 'frames-counted':
    case 'frames-complete':
    case 'sweep-failed':
      return visit.sweep === null ? visit : withSweep(visit, sweepRunReducer(visit.sweep, event));
    default:
      return unreachable(event);
  }
}

function wentOn(visit: WearerVisit, isSo: boolean): WearerVisit {
  const { step, conditions, taken } = visit;
  const next = VISIT_STEPS[VISIT_STEPS.indexOf(step) + 1];
  // What was taken leads on from the camera by itself.
  if (next === undefined || step === 'camera' || (step === 'result' && taken === null)) return visit;
  const asked = ASKED[step];
  return { ...visit, step: next, conditions: asked === undefined ? conditions : { ...conditions, [asked]: isSo } };
}

function wentBack(visit: WearerVisit): WearerVisit {
  const before = VISIT_STEPS[VISIT_STEPS.indexOf(visit.step) - 1];
  if (before === undefined) return visit;
  // Whoever leaves the camera, or goes back to it, begins anew there.
  const isAnew = visit.step === 'camera' || visit.step === 'result';
  return { ...(isAnew ? withoutTaken(visit) : visit), step: before };
}

function withoutTaken(visit: WearerVisit): WearerVisit {
  return { ...visit, sweep: null, takenWith: null, taken: null, isTryingFrames: false, consent: null };
}

function withTaken(visit: WearerVisit, taken: TakenEstimates): WearerVisit {
  return { ...visit, step: 'result', taken, sweep: null, isTryingFrames: false };
}

function withSweep(visit: WearerVisit, sweep: SweepRun): WearerVisit {
  if (sweep === visit.sweep) return visit;
  const hasFailed = sweep.stage.kind === 'failed';
  const hasFrames = sweep.frames.some(({ outcome }) => outcome.kind === 'found');
  return { ...visit, sweep, isTryingFrames: hasFailed && hasFrames };
}

/** Why there is no estimate, once no frame is left to be tried; null where there is none of it. */
export function visitFailure({ sweep, isTryingFrames }: WearerVisit): SweepTrouble | null {
  return sweep?.stage.kind === 'failed' && !isTryingFrames ? sweep.stage.failure : null;
}

/** Where the wearer is asked to look, and with which card; the print of a card that was sent counts as true. */
export const WEARER_SETTINGS: MeasuringSettings = { ...DEFAULT_MEASURING_SETTINGS, gaze: 'camera' };

/** What the wearer is asked to hold. */
export function cardAskedFor({ cards }: Pick<Invitation, 'cards'>): CardKind {
  return cards.includes('bought') ? 'bought' : 'printed';
}

/** The straightest frame that can be measured alone; null where none can. */
export function bestFrame(
  frames: readonly SweepFrame[],
  measureFace: MeasureFace,
): { readonly frame: SweepFrame; readonly measurement: FaceMeasurement } | null {
  for (const frame of straightestFirst(frames)) {
    const measured = frame.outcome.kind === 'found' ? measureFace(frame.outcome.features, WEARER_SETTINGS) : null;
    if (measured?.ok === true) return { frame, measurement: measured.value };
  }
  return null;
}

/** The frames that would go along with an answer: the straightest, and of a sweep the one that is turned furthest as well. */
export function framesToSend(taken: TakenEstimates): readonly SweepFrame[] {
  if (taken.kind === 'picture') return [taken.frame];
  const used = judgeFrames(taken.outcome.basis.frames, taken.outcome)
    .filter(({ standing }) => standing === 'used')
    .map(({ frame }) => frame);
  const inOrder = straightestFirst(used);
  const ends = [inOrder[0], inOrder.at(-1)].filter((frame) => frame !== undefined);
  return [...new Set(ends)];
}

function straightestFirst(frames: readonly SweepFrame[]): readonly SweepFrame[] {
  const turnDeg = (frame: SweepFrame): number => Math.abs(viewOf(frame)?.yawDeg ?? 90);
  return frames.filter(({ outcome }) => outcome.kind === 'found').toSorted((a, b) => turnDeg(a) - turnDeg(b));
}

/** What of a measurement goes into an answer. */
function recordOf(taken: TakenEstimates, takenAt: string): CameraRecord {
  const { estimates, pixelsPerMm } = taken.measurement;
  const lidsByHand = { R: false, L: false };
  const common = { takenAt, supervision: 'none', estimates, pixelsPerMm, lidsByHand } as const;
  if (taken.kind === 'picture') return { kind: 'picture', ...common, advice: taken.measurement.advice };
  const { advice, framesUsed, fates } = taken.measurement;
  return { kind: 'sweep', ...common, advice, framesUsed, framesTaken: fates.length };
}

/** The size of the frames that were measured. */
function frameSize(taken: TakenEstimates): Pick<AnswerDevice, 'widthPx' | 'heightPx'> {
  const frames = taken.kind === 'picture' ? [taken.frame] : taken.outcome.basis.frames;
  const found = frames.map(({ outcome }) => outcome).find((outcome) => outcome.kind === 'found');
  invariant(found !== undefined, 'what was measured was found in a frame');
  const { widthPx, heightPx } = found.features;
  return { widthPx, heightPx };
}

/** The answer of a visit; null where nothing was taken. */
export function answerOfVisit(
  { taken, takenWith, conditions }: WearerVisit,
  about: Pick<Answer, 'id' | 'appVersion' | 'language' | 'pictures'> & { readonly invitation: Invitation },
): Answer | null {
  if (taken === null || takenWith === null) return null;
  const { id, invitation, appVersion, language, pictures } = about;
  return {
    id,
    invitationId: invitation.id,
    appVersion,
    language,
    camera: recordOf(taken, takenWith.at),
    conditions: {
      card: cardAskedFor(invitation),
      printScale: WEARER_SETTINGS.printScale,
      gaze: WEARER_SETTINGS.gaze,
      ...conditions,
    },
    device: { ...frameSize(taken), facing: takenWith.facing },
    pictures,
  };
}
