import { useCallback, useEffect, useEffectEvent, useRef, useState } from 'react';
import type { CameraHope } from '../session/camera-recovery.js';
import { failureAfterRetry, isWorthTrying, RETRY_MS } from '../session/camera-recovery.js';
import type { CameraDevice, CameraStream, MeasuringFailure } from '../session/ports.js';
import { useMeasuringEquipment } from './equipment.js';

export type CameraState =
  | { readonly kind: 'opening' }
  | { readonly kind: 'failed'; readonly failure: MeasuringFailure }
  | { readonly kind: 'live'; readonly camera: CameraStream };

/** A camera that is held open. */
export interface CameraInHand {
  readonly state: CameraState;
  readonly devices: readonly CameraDevice[];
  /** the device that is or was asked for; null for the browser's own choice */
  readonly wantedId: string | null;
  readonly openAgain: (id: string | null) => void;
  /** Says that the open camera gave no picture. */
  readonly fail: (failure: MeasuringFailure) => void;
}

/** One attempt to open a camera. */
interface Wanted {
  readonly id: string | null;
  readonly attempt: number;
  /** what was open before it failed: by itself no other one is opened in its place */
  readonly before: string | null;
}

/**
 * Opens a camera, and releases it as soon as the component goes, whatever the reason. Where it fails it is tried again as soon as that may
 * help: it is back, it was let go, it is allowed, the page is seen again.
 */
export function useCamera(cameraId: string | null): CameraInHand {
  const { cameras } = useMeasuringEquipment();
  const [wanted, setWanted] = useState<Wanted>({ id: cameraId, attempt: 0, before: null });
  const [state, setState] = useState<CameraState>({ kind: 'opening' });
  const [devices, setDevices] = useState<readonly CameraDevice[]>([]);
  const isOpening = useRef(false);
  const openedId = useRef<string | null>(null);

  useEffect(() => {
    // An object, not a variable: it changes while the promises below are waited for.
    const life = { isOver: false };
    let opened: CameraStream | null = null;
    isOpening.current = true;
    const open = async (): Promise<void> => {
      const result = await cameras.open(wanted.before ?? wanted.id);
      if (life.isOver) {
        if (result.ok) result.value.stop();
        return;
      }
      isOpening.current = false;
      if (!result.ok) {
        setState((before) => failedAfter(before, result.failure));
      } else {
        const camera = result.value;
        opened = camera;
        openedId.current = camera.deviceId === '' ? null : camera.deviceId;
        camera.onEnded((why) => {
          if (life.isOver) return;
          // What gives nothing any more is let go, so that it can be opened anew.
          camera.stop();
          setState({ kind: 'failed', failure: why });
        });
        setState({ kind: 'live', camera });
      }
      // Only now: before the first permission devices have no names.
      const known = await cameras.devices();
      if (!life.isOver) setDevices(known);
    };
    void open();
    return () => {
      life.isOver = true;
      opened?.stop();
    };
  }, [cameras, wanted]);

  const onHope = (hope: CameraHope): void => {
    if (state.kind !== 'failed' || !isWorthTrying(state.failure, hope)) return;
    if (hope.kind === 'time-passed' && isOpening.current) return;
    setWanted(({ id, attempt }) => ({ id, attempt: attempt + 1, before: openedId.current }));
  };
  const failure = state.kind === 'failed' ? state.failure : null;
  useHopes(failure, onHope, setDevices);

  const openAgain = useCallback((id: string | null) => {
    setState({ kind: 'opening' });
    openedId.current = null;
    setWanted(({ attempt }) => ({ id, attempt: attempt + 1, before: null }));
  }, []);
  const fail = useCallback((failure: MeasuringFailure) => {
    setState({ kind: 'failed', failure });
  }, []);
  return { state, devices, wantedId: wanted.id, openAgain, fail };
}

/** The same object where nothing else is to be said. */
function failedAfter(before: CameraState, now: MeasuringFailure): CameraState {
  if (before.kind !== 'failed') return { kind: 'failed', failure: now };
  const failure = failureAfterRetry(before.failure, now);
  return failure.kind === before.failure.kind ? before : { kind: 'failed', failure };
}

/** Tells of all that may bring a failed camera back; the list of cameras follows what is plugged in. */
function useHopes(
  failure: MeasuringFailure | null,
  onHope: (hope: CameraHope) => void,
  onDevices: (devices: readonly CameraDevice[]) => void,
): void {
  const { cameras } = useMeasuringEquipment();
  const hope = useEffectEvent(onHope);
  useEffect(() => {
    const abort = new AbortController();
    const { signal } = abort;
    const listDevices = async (): Promise<void> => {
      const known = await cameras.devices();
      if (!signal.aborted) onDevices(known);
    };
    const watch = cameras.watchChanges((change) => {
      if (change.kind === 'devices') void listDevices();
      hope(change);
    }, signal);
    // Where the code for cameras cannot be loaded, opening one says so.
    watch.catch(() => undefined);
    const onSeen = (): void => {
      if (document.visibilityState !== 'hidden') hope({ kind: 'page-shown' });
    };
    document.addEventListener('visibilitychange', onSeen, { signal });
    return () => {
      abort.abort();
    };
  }, [cameras, onDevices]);

  const isTriedByTime = failure !== null && isWorthTrying(failure, { kind: 'time-passed' });
  useEffect(() => {
    if (!isTriedByTime) return;
    const timer = setInterval(() => {
      if (document.visibilityState !== 'hidden') hope({ kind: 'time-passed' });
    }, RETRY_MS);
    return () => {
      clearInterval(timer);
    };
  }, [isTriedByTime]);
}
