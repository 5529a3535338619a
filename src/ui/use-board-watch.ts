import { useEffect, useEffectEvent, useState } from 'react';
import type { BoardView } from '../core/camera/board.js';
import { measureBoardBlurPx } from '../core/camera/board-sharpness.js';
import type { CameraStream, MeasuringFailure } from '../session/ports.js';
import type { FrameVerdict } from '../session/profile-views.js';
import { isOfDevice } from '../session/profile-views.js';
import { useEquipment } from './equipment.js';
import { pixelsOf } from './picture-pixels.js';
import { useFault } from './use-fault.js';

/** What the camera saw last. */
export interface BoardLook {
  readonly view: BoardView | null;
  readonly verdict: FrameVerdict | 'blurred' | 'taken';
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * Chosen: standard deviation of the blur that is accepted, px in a picture of 1280 or less across, in proportion beyond. Softer
 * edges are found as well, but less surely, and motion shifts them.
 */
const BLUR_LIMIT_PX = 2;

/** Chosen: a sheet that was still over so many frames is not smeared; what is soft about them then is the lens, which may stay. */
const PATIENCE_FRAMES = 8;

/** Chosen: lets a slow computer breathe, and a hand move on after a view was taken. */
const PAUSE_MS = 60;
const PAUSE_AFTER_TAKING_MS = 600;

/**
 * Looks for the sheet in one frame after the other of an open camera, as long as the component stands.
 *
 * @param judge what becomes of a frame; what is worth taking is taken when it is sharp
 * @returns what was seen last; null before the first frame was looked at
 */
export function useBoardWatch(
  camera: CameraStream | null,
  judge: (frame: BoardView | null, before: BoardView | null) => FrameVerdict,
  onTaken: (view: BoardView) => void,
  onFailure: (failure: MeasuringFailure) => void,
): BoardLook | null {
  const { vision } = useEquipment();
  const [look, setLook] = useState<BoardLook | null>(null);
  const onFault = useFault();
  const judgeNow = useEffectEvent(judge);
  const take = useEffectEvent(onTaken);
  const giveUp = useEffectEvent(onFailure);

  useEffect(() => {
    if (camera === null) return;
    const abort = new AbortController();
    const { signal } = abort;

    let softFrames = 0;
    const sharpVerdict = (bitmap: ImageBitmap, view: BoardView): 'taken' | 'blurred' => {
      softFrames = isSharp(bitmap, view) ? 0 : softFrames + 1;
      return softFrames === 0 || softFrames > PATIENCE_FRAMES ? 'taken' : 'blurred';
    };
    const lookOnce = async (before: BoardView | null): Promise<BoardLook | null> => {
      const frame = await camera.takeFrame();
      if (!frame.ok) {
        if (!signal.aborted) giveUp(frame.failure);
        return null;
      }
      const { bitmap, widthPx, heightPx } = frame.value;
      try {
        const found = await vision.findBoard(frame.value, signal);
        if (signal.aborted) return null;
        if (!found.ok && isOfDevice(found.failure)) {
          giveUp(found.failure);
          return null;
        }
        const view = found.ok ? found.value : null;
        const judged = judgeNow(view, before);
        if (judged !== 'worth-taking' || view === null) {
          softFrames = 0;
          return { view, verdict: judged, widthPx, heightPx };
        }
        const verdict = sharpVerdict(bitmap, view);
        return { view, verdict, widthPx, heightPx };
      } finally {
        bitmap.close();
      }
    };
    const watch = async (): Promise<void> => {
      let before: BoardView | null = null;
      while (!signal.aborted) {
        const seen = await lookOnce(before);
        if (seen === null) return;
        setLook(seen);
        if (seen.verdict === 'taken' && seen.view !== null) take(seen.view);
        before = seen.view;
        await pause(seen.verdict === 'taken' ? PAUSE_AFTER_TAKING_MS : PAUSE_MS);
      }
    };
    watch().catch((reason: unknown) => {
      // An abort rejects with the signal's reason and is expected; anything else is a bug, for the boundary at the top.
      if (!signal.aborted) onFault(reason);
    });
    return () => {
      abort.abort();
    };
  }, [camera, onFault, vision]);
  return look;
}

function isSharp(bitmap: ImageBitmap, view: BoardView): boolean {
  const limitPx = BLUR_LIMIT_PX * Math.max(1, view.widthPx / 1280);
  const blurPx = measureBoardBlurPx(pixelsOf(bitmap), view);
  return blurPx !== null && blurPx <= limitPx;
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
