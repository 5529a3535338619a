import type { Dispatch } from 'react';
import { useCallback, useDeferredValue, useEffect, useMemo, useReducer, useRef, useState } from 'react';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import type { PictureFailure } from '../core/camera/failure.js';
import type { Reconciliation } from '../core/crosscheck/reconciliation.js';
import type { SessionRecord } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import { measuringSettings } from '../session/measuring-settings.js';
import type { LiveCamera } from '../session/profile-choice.js';
import { FROM_FILES } from '../session/profile-choice.js';
import type { Misfit } from '../session/misfits.js';
import type { MeasuringFailure, Picture, PicturePort } from '../session/ports.js';
import type { SheetRow } from '../session/rows.js';
import { sheetRows } from '../session/rows.js';
import type { SheetMeasurement } from '../session/camera-record.js';
import type { SheetState } from '../session/sheet.js';
import { isHiddenByFailure, openSheet } from '../session/sheet.js';
import type { SweepTrouble } from '../session/sweep-frames.js';
import type { SheetAct, SheetTimeEvent } from '../session/undo.js';
import { beginTime, heldPictures, nextAct, timeReducer } from '../session/undo.js';
import { useEquipment } from './equipment.js';
import { useFault } from './use-fault.js';
import { useProfiles } from './use-profiles.js';
import { useReasoning } from './use-reasoning.js';
import type { SweepInHand } from './use-sweep.js';
import { nowText } from './now-text.js';
import { useSessionRecord } from './use-session-record.js';
import { useSweep } from './use-sweep.js';

/** A picture to be measured: a file, one that is still to be fetched, or a frame of the camera that is open already. */
export type PictureSource =
  | { readonly kind: 'file'; readonly blob: Blob; readonly name: string }
  | { readonly kind: 'fetched'; readonly fetch: () => Promise<Blob | null>; readonly name: string }
  | { readonly kind: 'taken'; readonly picture: Picture; readonly camera: LiveCamera | null };

/** Why what was found carries no numbers. */
export type SheetTrouble =
  | { readonly kind: 'picture'; readonly failure: PictureFailure }
  | { readonly kind: 'sweep'; readonly failure: SweepTrouble };

export interface SheetInHand {
  readonly sessionId: string;
  /** the invented wearer of the demo, which is not kept */
  readonly isInvented: boolean;
  readonly state: SheetState;
  readonly dispatch: Dispatch<SheetTimeEvent>;
  /** what the next undo takes back, and the next redo does again; null where there is nothing */
  readonly undoes: SheetAct | null;
  readonly redoes: SheetAct | null;
  /** Takes the last step back, or does the one again that was taken back; work on a picture that goes with it ends. */
  readonly step: (which: 'undone' | 'redone') => void;
  /** what the estimates depend on besides what was found */
  readonly settings: MeasuringSettings;
  /**
   * What the picture or the sweep says; null without one or while a failed sweep takes its place, a failure where its
   * features do not carry a number.
   */
  readonly measurement: Result<SheetMeasurement, SheetTrouble> | null;
  readonly rows: readonly SheetRow[];
  /** what all readings of the rows, the rules between them and the uncovered estimates say together */
  readonly reconciliation: Reconciliation;
  /** of the rows as they stood a moment ago: they follow as fast as they can be worked out */
  readonly misfits: readonly Misfit[];
  /** while what finds misfits is on its way, nobody knows whether all fits */
  readonly isReasoned: boolean;
  readonly measurePicture: (source: PictureSource) => void;
  readonly stopMeasuring: () => void;
  readonly sweep: SweepInHand;
  /** Measures what was chosen, dropped or pasted: one picture alone, several or a video as a sweep. */
  readonly bringFiles: (files: readonly File[]) => void;
}

/** As long as the reasoning is on its way. */
const NOTHING_KNOWN: Reconciliation = { suspicions: [], values: {}, doubts: {} };

const VIDEO_NAME = /\.(avi|m4v|mkv|mov|mp4|ogv|webm)$/i;

/** By its type, or by its name where the system has no type for it. */
function isVideo({ name, type }: File): boolean {
  return type === '' ? VIDEO_NAME.test(name) : type.startsWith('video/');
}

async function openSource(source: PictureSource, pictures: PicturePort): Promise<Result<Picture, MeasuringFailure>> {
  if (source.kind === 'taken') return succeed(source.picture);
  const blob = source.kind === 'file' ? source.blob : await source.fetch();
  return blob === null ? fail({ kind: 'picture-broken' }) : pictures.open(blob, source.name);
}

/** What a sheet is opened with. */
export interface OpenedSession {
  readonly record: SessionRecord;
  /** the invented wearer of the demo, which is not kept */
  readonly isInvented: boolean;
}

/**
 * The sheet of one session with its effects: pictures are opened, looked at and closed, and what changes is handed on.
 *
 * @param session the one that is opened; another one takes a component of its own
 * @param onChanged called with the session as it stands now, after every change
 */
export function useSheet(
  { record, isInvented }: OpenedSession,
  onChanged: (record: SessionRecord) => void,
): SheetInHand {
  const { catalogue, pictures, vision } = useEquipment();
  const reasoning = useReasoning();
  const measureFace = reasoning?.measureFace ?? null;
  const [time, dispatch] = useReducer(timeReducer, record, (from) => beginTime(openSheet(from.sheet, from.camera)));
  const state = time.now;
  const { shelf } = useProfiles();
  const running = useRef<AbortController | null>(null);
  const onFault = useFault();

  const settings = useSame(measuringSettings(state.settings, shelf.profiles, state.takenBy));
  // A sweep that is measured for the first time may be another camera's than what is still shown.
  const sweptBy = state.sweep?.stage.kind === 'measuring' ? state.sweep.takenBy : state.takenBy;
  const sweepSettings = useSame(measuringSettings(state.settings, shelf.profiles, sweptBy));
  const sweep = useSweep(state, dispatch, sweepSettings, onFault);
  const { measurePictures, measureVideo, stop: stopSweep } = sweep;

  const stopMeasuring = useCallback(() => {
    running.current?.abort();
    running.current = null;
    stopSweep();
  }, [stopSweep]);

  const measurePicture = useCallback(
    (source: PictureSource) => {
      stopMeasuring();
      const abort = new AbortController();
      running.current = abort;
      dispatch({
        kind: 'picture-awaited',
        at: nowText(),
        takenBy: source.kind === 'taken' ? { kind: 'camera', camera: source.camera } : FROM_FILES,
      });
      const measure = async (): Promise<void> => {
        const opened = await openSource(source, pictures);
        if (abort.signal.aborted) {
          if (opened.ok) opened.value.bitmap.close();
          return;
        }
        if (!opened.ok) {
          dispatch({ kind: 'finding-failed', failure: { failure: opened.failure, partial: null } });
          return;
        }
        dispatch({ kind: 'picture-opened', picture: opened.value });
        const found = await vision.findFeatures(
          opened.value,
          (progress) => {
            if (!abort.signal.aborted) dispatch({ kind: 'progress-made', progress });
          },
          abort.signal,
        );
        if (abort.signal.aborted) return;
        dispatch(
          found.ok
            ? { kind: 'features-found', features: found.value }
            : { kind: 'finding-failed', failure: found.failure },
        );
      };
      measure().catch((reason: unknown) => {
        // An abort rejects with the signal's reason and is expected; anything else is a bug, for the boundary at the top.
        if (!abort.signal.aborted) onFault(reason);
      });
    },
    [onFault, pictures, stopMeasuring, vision],
  );

  const bringFiles = useCallback(
    (files: readonly File[]) => {
      const stills = files.filter((file) => !isVideo(file));
      const [first, second] = stills;
      const [video] = files.filter(isVideo);
      if (first !== undefined && second === undefined) {
        measurePicture({ kind: 'file', blob: first, name: first.name });
        return;
      }
      stopMeasuring();
      if (first !== undefined) measurePictures(stills);
      else if (video !== undefined) measureVideo(video);
    },
    [measurePicture, measurePictures, measureVideo, stopMeasuring],
  );

  useEffect(() => stopMeasuring, [stopMeasuring]);

  const isWorking = state.picture.kind === 'working';
  const wasWorking = useRef(false);
  useEffect(() => {
    // A picture that was undone while it was looked at is looked at no more.
    if (wasWorking.current && !isWorking) running.current?.abort();
    wasWorking.current = isWorking;
  }, [isWorking]);
  const step = useCallback((which: 'undone' | 'redone') => {
    dispatch({ kind: which, at: nowText() });
  }, []);

  // A bitmap holds memory outside the script's: it is closed as soon as neither the sheet nor any step holds it.
  const held = useRef<ReadonlySet<Picture>>(new Set());
  useEffect(() => {
    const now = heldPictures(time);
    for (const before of held.current) if (!now.has(before)) before.bitmap.close();
    held.current = now;
  }, [time]);
  useEffect(
    () => () => {
      for (const before of held.current) before.bitmap.close();
      held.current = new Set();
    },
    [],
  );

  // A handle follows the pointer at once; the estimates follow as fast as they can be worked out.
  const features = useDeferredValue(state.picture.kind === 'measured' ? state.picture.marking.features : null);
  const sweepResult = state.picture.kind === 'swept' ? state.picture.outcome.result : null;
  const isHidden = isHiddenByFailure(state);
  const recorded = state.picture.kind === 'recorded' ? state.picture.camera : null;
  const measurement = useMemo<SheetInHand['measurement']>(() => {
    if (isHidden) return null;
    if (recorded !== null) {
      const { estimates, pixelsPerMm } = recorded;
      return succeed({ kind: 'recorded', camera: recorded, estimates, pixelsPerMm });
    }
    if (sweepResult !== null) {
      return sweepResult.ok
        ? succeed({ kind: 'sweep', ...sweepResult.value })
        : fail({ kind: 'sweep', failure: sweepResult.failure });
    }
    if (features === null || measureFace === null) return null;
    const measured = measureFace(features, settings);
    return measured.ok
      ? succeed({ kind: 'picture', ...measured.value })
      : fail({ kind: 'picture', failure: measured.failure });
  }, [features, settings, measureFace, sweepResult, isHidden, recorded]);
  const rows = useSameItems(
    useMemo(
      () => sheetRows(state, measurement?.ok === true ? measurement.value.estimates : null, catalogue),
      [state, measurement, catalogue],
    ),
  );
  // A number shows at once; what it says about the others follows, in a task of its own.
  const judged = useDeferredValue(rows);
  // While a number is being typed, or a picture shown, nothing new is known.
  const evidence = useSame(
    reasoning?.sheetEvidence(judged, catalogue, {
      hasPicture: measurement?.ok === true,
      workingDistanceMm: settings.workingDistanceMm,
      practice: state.settings.practice,
    }) ?? null,
  );
  const reconciliation = useMemo(
    () => (reasoning === null || evidence === null ? NOTHING_KNOWN : reasoning.reconcile({ ...evidence, catalogue })),
    [reasoning, evidence, catalogue],
  );
  const misfits = useSame(
    useMemo(
      () => reasoning?.sheetMisfits(judged, reconciliation, catalogue) ?? [],
      [reasoning, judged, reconciliation, catalogue],
    ),
  );

  useSessionRecord(
    { record, state, measurement, rows, misfits: reasoning !== null && judged === rows ? misfits : null },
    onChanged,
  );

  return {
    sessionId: record.id,
    isInvented,
    state,
    dispatch,
    undoes: nextAct(time, 'past'),
    redoes: nextAct(time, 'future'),
    step,
    settings,
    measurement,
    rows,
    reconciliation,
    misfits,
    isReasoned: reasoning !== null,
    measurePicture,
    stopMeasuring,
    sweep,
    bringFiles,
  };
}

/** The value as it was before, as long as it says the same: what follows from it is then not worked out again. */
function useSame<Value>(value: Value): Value {
  const text = JSON.stringify(value);
  const [same, setSame] = useState({ text, value });
  if (same.text === text) return same.value;
  setSame({ text, value });
  return value;
}

/** The items as they were before, as far as they say the same: what is drawn of them then stays as it is. */
function useSameItems<Item>(items: readonly Item[]): readonly Item[] {
  const [same, setSame] = useState<{
    readonly from: readonly Item[];
    readonly texts: readonly string[];
    readonly items: readonly Item[];
  }>({ from: [], texts: [], items: [] });
  if (same.from === items) return same.items;
  const texts = items.map((item) => JSON.stringify(item));
  const kept = items.map((item, index) => {
    const before = same.items[index];
    return before !== undefined && same.texts[index] === texts[index] ? before : item;
  });
  const isAllSame = kept.length === same.items.length && kept.every((item, index) => item === same.items[index]);
  const next = isAllSame ? same.items : kept;
  setSame({ from: items, texts, items: next });
  return next;
}
