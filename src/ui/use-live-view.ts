import { useEffect, useEffectEvent, useRef, useState } from 'react';
import type { LiveSight } from '../core/camera/live-sight.js';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { midpointPx } from '../core/geometry/vector.js';
import type { LiveFrame } from '../session/live.js';
import type { LiveHint, LiveHints } from '../session/live-hints.js';
import { nextHints, NO_HINTS, stillShare } from '../session/live-hints.js';
import type { CameraStream, MeasuringFailure, MeasuringProgress } from '../session/ports.js';
import { useMeasuringEquipment } from './equipment.js';
import { useFault } from './use-fault.js';
import type { LiveScreen } from './live-screen.js';
import { createLiveScreen } from './live-screen.js';

/** What the live view says, as far as a new drawing of the page is worth it. */
interface LiveSaid {
  /** frames are drawn: before that, the camera's own preview is shown */
  readonly isDrawn: boolean;
  readonly hint: LiveHint | null;
  readonly loading: MeasuringProgress | null;
  /** why nothing is told any more */
  readonly failure: MeasuringFailure | null;
}

export interface LiveView extends LiveSaid {
  readonly screen: LiveScreen;
  /** Between the eyes as last seen, as shares of the frame's width and height; null without a face. */
  readonly betweenEyes: () => ImagePoint | null;
}

const NOTHING_SAID: LiveSaid = { isDrawn: false, hint: null, loading: null, failure: null };

/**
 * Watches a camera, draws each frame with what was found in it, and tells the one thing to be done. React draws only when that changes.
 *
 * @param onReady called when everything was right and still for long enough, and again with each further frame of that kind
 */
export function useLiveView(camera: CameraStream | null, settings: MeasuringSettings, onReady: () => void): LiveView {
  const { live } = useMeasuringEquipment();
  const onFault = useFault();
  const [screen] = useState(createLiveScreen);
  const [said, setSaid] = useState<LiveSaid & { readonly camera: CameraStream | null }>({
    ...NOTHING_SAID,
    camera: null,
  });
  const last = useRef<LiveSight | null>(null);
  const ready = useEffectEvent(onReady);

  // While the camera is being opened, what looks at its frames can be loaded.
  useEffect(() => {
    live?.prepare().catch(() => undefined);
  }, [live]);

  useEffect(() => {
    if (camera === null || live === null) return;
    const abort = new AbortController();
    const { signal } = abort;
    const say = (change: Partial<LiveSaid>): void => {
      setSaid((before) => ({ ...(before.camera === camera ? before : NOTHING_SAID), ...change, camera }));
    };
    let hints: LiveHints = NO_HINTS;
    let isDrawn = false;
    const onFrame = (frame: LiveFrame): void => {
      if (signal.aborted) {
        frame.bitmap.close();
        return;
      }
      last.current = frame.sight;
      const before = hints.shown;
      hints = nextHints(hints, frame.sight, frame.takenMs);
      const share = stillShare(hints);
      screen.paint(frame, share);
      if (!isDrawn || hints.shown !== before) say({ isDrawn: true, hint: hints.shown, loading: null });
      isDrawn = true;
      if (share === 1) ready();
    };
    const onLoading = (loading: MeasuringProgress | null): void => {
      if (!signal.aborted) say({ loading });
    };
    // A last frame that stands still would be taken for the wearer: the preview comes back.
    const onFailure = (failure: MeasuringFailure): void => {
      if (!signal.aborted) say({ ...NOTHING_SAID, failure });
    };
    live.watch(camera, settings, { onFrame, onLoading, onFailure }, signal).catch((reason: unknown) => {
      // An abort may reject and is expected; anything else is a bug, or code that does not load: for the boundary at the top.
      if (!signal.aborted) onFault(reason);
    });
    return () => {
      abort.abort();
      last.current = null;
    };
  }, [camera, live, onFault, settings, screen]);

  const { isDrawn, hint, loading, failure } = said.camera === camera ? said : NOTHING_SAID;
  return { isDrawn, hint, loading, failure, screen, betweenEyes: () => betweenEyes(last.current) };
}

function betweenEyes(sight: LiveSight | null): ImagePoint | null {
  if (sight === null || sight.face === null) return null;
  const { R, L } = sight.face.iris;
  const { xPx, yPx } = midpointPx(R.centre, L.centre);
  return { xPx: xPx / sight.widthPx, yPx: yPx / sight.heightPx };
}
