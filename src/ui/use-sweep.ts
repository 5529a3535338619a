import type { Dispatch, RefObject } from 'react';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import { succeed } from '../core/result.js';
import type { MeasuringProgress, Picture, StoredSize } from '../session/ports.js';
import type { SheetState } from '../session/sheet.js';
import type { SweepEvent } from '../session/sweep-run.js';
import { MOST_FRAMES } from '../session/sweep-coverage.js';
import type { SweepBasis } from '../session/sweep-frames.js';
import { featuresInUse } from '../session/sweep-frames.js';
import { useMeasuringEquipment } from './equipment.js';
import type { SettledFrame, SweepFinder } from './sweep-finder.js';
import { createSweepFinder } from './sweep-finder.js';
import { nowText } from './now-text.js';

/** Frames taken from a video file. Chosen: as many as a sweep of a camera has at best. */
const VIDEO_FRAMES = 24;

/** What of a sheet, or of a distant wearer's visit, has to do with sweeps. */
type SweptState = Pick<SheetState, 'sweep' | 'picture'>;

/** What is done with sweeps. */
export interface SweepInHand {
  /** Several pictures of one sweep, taken in the order of their names. */
  readonly measurePictures: (files: readonly File[]) => void;
  readonly measureVideo: (file: File) => void;
  /** Begins a sweep whose frames come from a camera. */
  readonly begin: () => void;
  /** One more frame of the camera; it is closed here. */
  readonly addFrame: (picture: Picture) => void;
  /** No more frames come; those that still wait are let go. */
  readonly complete: () => void;
  /** Gives the sweep on its way up. */
  readonly drop: () => void;
  /** Lets go of all work on frames, without a word to the sheet. */
  readonly stop: () => void;
  /** the sweep of the sheet is being measured, for the first time or anew; share of the work done, or null where it is not */
  readonly measuringShare: number | null;
  /** what the first frame waits for; null where nothing has to be loaded (any more) */
  readonly loading: MeasuringProgress | null;
}

/** The effects of sweeps: frames are opened, looked at and closed, and all of them are measured together. */
export function useSweep(
  state: SweptState,
  dispatch: Dispatch<SweepEvent>,
  settings: MeasuringSettings,
  onFault: (reason: unknown) => void,
): SweepInHand {
  const { pictures, vision } = useMeasuringEquipment();
  const finder = useRef<SweepFinder | null>(null);
  const nextId = useRef(0);
  const [loading, setLoading] = useState<MeasuringProgress | null>(null);

  const stop = useCallback(() => {
    finder.current?.stop();
    finder.current = null;
  }, []);

  const start = useCallback(
    (onSettled: () => void, isNewestFirst: boolean): SweepFinder => {
      finder.current?.stop();
      setLoading(null);
      const started = createSweepFinder({
        vision,
        isNewestFirst,
        onFault,
        onLoading: setLoading,
        onSettled: (frame) => {
          setLoading(null);
          const failure = hopelessFailure(frame);
          if (failure === null) {
            dispatch({ kind: 'frame-settled', ...frame });
            onSettled();
            return;
          }
          frame.thumbnail?.bitmap.close();
          stop();
          dispatch({ kind: 'sweep-failed', failure });
        },
      });
      finder.current = started;
      return started;
    },
    [dispatch, onFault, stop, vision],
  );

  /** Ends the sweep once all its frames were looked at. */
  const completeAfter = useCallback(
    (count: number): (() => void) => {
      let settled = 0;
      return () => {
        settled += 1;
        if (settled === count) dispatch({ kind: 'frames-complete' });
      };
    },
    [dispatch],
  );

  const measurePictures = useCallback(
    (files: readonly File[]) => {
      const chosen = spread(files.toSorted(byName), MOST_FRAMES);
      dispatch({ kind: 'sweep-begun', origin: 'pictures', expected: chosen.length, at: nowText() });
      const life = standIn(finder);
      const begin = async (): Promise<void> => {
        const sizes = await Promise.all(chosen.map((file) => pictures.storedSize(file)));
        if (life.isOver) return;
        if (!areOfOneSize(sizes)) {
          dispatch({ kind: 'sweep-failed', failure: { kind: 'frames-of-different-size' } });
          return;
        }
        const started = start(completeAfter(chosen.length), false);
        for (const file of chosen) {
          const id = nextId.current++;
          dispatch({ kind: 'frame-taken', id });
          started.add({ id, open: () => pictures.open(file, file.name), discard: () => undefined, file });
        }
      };
      begin().catch((reason: unknown) => {
        if (!life.isOver) onFault(reason);
      });
    },
    [completeAfter, dispatch, onFault, pictures, start],
  );

  const measureVideo = useCallback(
    (file: File) => {
      dispatch({ kind: 'sweep-begun', origin: 'video', expected: null, at: nowText() });
      const life = standIn(finder);
      const open = async (): Promise<void> => {
        const opened = await pictures.openVideo(file, file.name, VIDEO_FRAMES);
        if (life.isOver) {
          if (opened.ok) opened.value.close();
          return;
        }
        if (!opened.ok) {
          dispatch({ kind: 'sweep-failed', failure: opened.failure });
          return;
        }
        const video = opened.value;
        dispatch({ kind: 'frames-counted', expected: video.frameCount });
        const complete = completeAfter(video.frameCount);
        let left = video.frameCount;
        const started = start(() => {
          left -= 1;
          if (left === 0) video.close();
          complete();
        }, false);
        finder.current = {
          ...started,
          stop: () => {
            started.stop();
            video.close();
          },
        };
        // A video stands at one place at a time.
        let before: Promise<unknown> = Promise.resolve();
        for (let index = 0; index < video.frameCount; index++) {
          const id = nextId.current++;
          dispatch({ kind: 'frame-taken', id });
          const take = (): ReturnType<typeof video.frame> => {
            const frame = before.then(() => video.frame(index));
            before = frame;
            return frame;
          };
          started.add({ id, open: take, discard: () => undefined, file: null });
        }
      };
      open().catch((reason: unknown) => {
        if (!life.isOver) onFault(reason);
      });
    },
    [completeAfter, dispatch, onFault, pictures, start],
  );

  const begin = useCallback(() => {
    dispatch({ kind: 'sweep-begun', origin: 'camera', expected: null, at: nowText() });
    start(() => undefined, true);
  }, [dispatch, start]);

  const addFrame = useCallback(
    (picture: Picture) => {
      const current = finder.current;
      const discard = (): void => {
        picture.bitmap.close();
      };
      if (current === null) {
        discard();
        return;
      }
      const id = nextId.current++;
      dispatch({ kind: 'frame-taken', id });
      current.add({ id, open: () => Promise.resolve(succeed(picture)), discard, file: null });
    },
    [dispatch],
  );

  const complete = useCallback(() => {
    stop();
    dispatch({ kind: 'frames-complete' });
  }, [dispatch, stop]);

  const drop = useCallback(() => {
    stop();
    dispatch({ kind: 'sweep-dropped' });
  }, [dispatch, stop]);

  const measuringShare = useMeasuring(state, dispatch, settings, onFault);
  return { measurePictures, measureVideo, begin, addFrame, complete, drop, stop, measuringShare, loading };
}

/** Measures the sweep of the sheet whenever its frames or the settings are others than those that were measured. */
function useMeasuring(
  state: SweptState,
  dispatch: Dispatch<SweepEvent>,
  settings: MeasuringSettings,
  onFault: (reason: unknown) => void,
): number | null {
  const { sweep } = useMeasuringEquipment();
  const run = state.sweep?.stage.kind === 'measuring' ? state.sweep : null;
  const swept = state.picture.kind === 'swept' ? state.picture : null;
  const frames = (run ?? swept)?.frames ?? null;
  const measured = run === null ? (swept?.outcome.basis ?? null) : null;
  const wanted = useMemo<SweepBasis | null>(
    () =>
      frames === null || (measured !== null && measured.frames === frames && measured.settings === settings)
        ? null
        : { frames, settings },
    [frames, measured, settings],
  );
  const [progress, setProgress] = useState<{ readonly basis: SweepBasis; readonly share: number } | null>(null);

  useEffect(() => {
    if (wanted === null) return;
    const abort = new AbortController();
    sweep
      .measure(
        featuresInUse(wanted.frames),
        wanted.settings,
        (share) => {
          if (!abort.signal.aborted) setProgress({ basis: wanted, share });
        },
        abort.signal,
      )
      .then(
        (result) => {
          // What is out of date is dropped: another adjustment is under way, or the sweep was put away.
          if (!abort.signal.aborted) dispatch({ kind: 'sweep-measured', outcome: { basis: wanted, result } });
        },
        (reason: unknown) => {
          if (!abort.signal.aborted) onFault(reason);
        },
      );
    return () => {
      abort.abort();
    };
  }, [dispatch, onFault, sweep, wanted]);

  return wanted === null ? null : progress?.basis === wanted ? progress.share : 0;
}

/** What will befall every further frame as well; null where the next one may do better. */
function hopelessFailure({ outcome }: SettledFrame) {
  if (outcome.kind !== 'missed') return null;
  const { failure } = outcome;
  return failure.kind === 'model-not-loadable' || failure.kind === 'vision-not-loadable' ? failure : null;
}

/** Stands in for the finder until files are open: whoever stops it ends this life. */
function standIn(finder: RefObject<SweepFinder | null>): { readonly isOver: boolean } {
  const life = { isOver: false };
  finder.current?.stop();
  finder.current = {
    add: () => undefined,
    discardWaiting: () => undefined,
    stop: () => {
      life.isOver = true;
    },
  };
  return life;
}

/** Cameras number their files; 10 comes after 9. */
const NAMES = new Intl.Collator('en', { numeric: true });

function byName(one: File, other: File): number {
  return NAMES.compare(one.name, other.name);
}

/** Files without a readable size are told of later. Upright and lying count as one: EXIF may say how each is to be turned. */
function areOfOneSize(sizes: readonly (StoredSize | null)[]): boolean {
  const known = sizes.flatMap((size) =>
    size === null ? [] : [[size.widthPx, size.heightPx].toSorted((a, b) => a - b)],
  );
  return known.every((size) => size.join() === known[0]?.join());
}

/** At most `most` of the things, evenly spread, in their order. */
function spread<Thing>(things: readonly Thing[], most: number): readonly Thing[] {
  if (things.length <= most) return things;
  return Array.from(
    { length: most },
    (_, index) => things[Math.round((index * (things.length - 1)) / (most - 1))],
  ).flatMap((thing) => (thing === undefined ? [] : [thing]));
}
