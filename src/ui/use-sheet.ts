import type { Dispatch } from 'react';
import { useCallback, useDeferredValue, useEffect, useMemo, useReducer, useRef, useState } from 'react';
import type { FaceMeasurement } from '../core/estimate/face-estimates.js';
import type { PictureFailure } from '../core/camera/failure.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import { measuringSettings } from '../session/measuring-settings.js';
import type { Misfit } from '../session/misfits.js';
import { sheetMisfits } from '../session/misfits.js';
import type { MeasuringFailure, Picture, PicturePort } from '../session/ports.js';
import type { SheetRow } from '../session/rows.js';
import { sheetRows } from '../session/rows.js';
import type { SheetEvent, SheetState } from '../session/sheet.js';
import { openSheet, ownSheet, pictureOf, sheetReducer } from '../session/sheet.js';
import { useEquipment } from './equipment.js';

/** A picture to be measured: a file, one that is still to be fetched, or a frame of the camera that is open already. */
export type PictureSource =
  | { readonly kind: 'file'; readonly blob: Blob; readonly name: string }
  | { readonly kind: 'fetched'; readonly fetch: () => Promise<Blob | null>; readonly name: string }
  | { readonly kind: 'taken'; readonly picture: Picture };

export interface SheetInHand {
  readonly state: SheetState;
  readonly dispatch: Dispatch<SheetEvent>;
  /** what the picture says; null without one, a failure where its features do not carry a number */
  readonly measurement: Result<FaceMeasurement, PictureFailure> | null;
  readonly rows: readonly SheetRow[];
  readonly misfits: readonly Misfit[];
  readonly measurePicture: (source: PictureSource) => void;
  readonly stopMeasuring: () => void;
}

async function openSource(source: PictureSource, pictures: PicturePort): Promise<Result<Picture, MeasuringFailure>> {
  if (source.kind === 'taken') return succeed(source.picture);
  const blob = source.kind === 'file' ? source.blob : await source.fetch();
  return blob === null ? fail({ kind: 'picture-broken' }) : pictures.open(blob, source.name);
}

/** The sheet with its effects: pictures are opened, looked at and closed, and what is typed is kept. */
export function useSheet(): SheetInHand {
  const { catalogue, measureFace, pictures, store, vision } = useEquipment();
  const [state, dispatch] = useReducer(sheetReducer, store, (from) => openSheet(from.load()));
  const running = useRef<AbortController | null>(null);
  const [fault, setFault] = useState<{ readonly reason: unknown } | null>(null);
  if (fault !== null) throw fault.reason;

  const stopMeasuring = useCallback(() => {
    running.current?.abort();
    running.current = null;
  }, []);

  const measurePicture = useCallback(
    (source: PictureSource) => {
      running.current?.abort();
      const abort = new AbortController();
      running.current = abort;
      dispatch({ kind: 'picture-awaited' });
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
        if (!abort.signal.aborted) setFault({ reason });
      });
    },
    [pictures, vision],
  );

  // A bitmap holds tens of megabytes outside the script's memory: it is closed as soon as the sheet lets go of it.
  const picture = pictureOf(state.picture);
  const shown = useRef<Picture | null>(null);
  useEffect(() => {
    const before = shown.current;
    shown.current = picture;
    if (before !== null && before !== picture) before.bitmap.close();
  }, [picture]);

  const own = ownSheet(state);
  const { readings: ownReadings, settings: ownSettings } = own;
  useEffect(() => {
    store.save({ readings: ownReadings, settings: ownSettings });
  }, [store, ownReadings, ownSettings]);

  // A handle follows the pointer at once; the estimates follow as fast as they can be worked out.
  const features = useDeferredValue(state.picture.kind === 'measured' ? state.picture.marking.features : null);
  const settings = useMemo(() => measuringSettings(state.settings), [state.settings]);
  const measurement = useMemo(
    () => (features === null ? null : measureFace(features, settings)),
    [features, settings, measureFace],
  );
  const rows = useMemo(
    () => sheetRows(state, measurement?.ok === true ? measurement.value.estimates : null, catalogue),
    [state, measurement, catalogue],
  );
  const misfits = useMemo(
    () => sheetMisfits(rows, catalogue, settings.workingDistanceMm),
    [rows, catalogue, settings.workingDistanceMm],
  );

  return { state, dispatch, measurement, rows, misfits, measurePicture, stopMeasuring };
}
