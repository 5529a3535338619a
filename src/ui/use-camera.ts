import { useCallback, useEffect, useState } from 'react';
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

/** Opens a camera, and releases it as soon as the component goes, whatever the reason. */
export function useCamera(cameraId: string | null): CameraInHand {
  const { cameras } = useMeasuringEquipment();
  const [wanted, setWanted] = useState<{ readonly id: string | null; readonly attempt: number }>({
    id: cameraId,
    attempt: 0,
  });
  const [state, setState] = useState<CameraState>({ kind: 'opening' });
  const [devices, setDevices] = useState<readonly CameraDevice[]>([]);

  useEffect(() => {
    // An object, not a variable: it changes while the promises below are waited for.
    const life = { isOver: false };
    let opened: CameraStream | null = null;
    const open = async (): Promise<void> => {
      const result = await cameras.open(wanted.id);
      if (life.isOver) {
        if (result.ok) result.value.stop();
        return;
      }
      if (!result.ok) {
        setState({ kind: 'failed', failure: result.failure });
      } else {
        opened = result.value;
        opened.onEnded(() => {
          if (!life.isOver) setState({ kind: 'failed', failure: { kind: 'camera-unplugged' } });
        });
        setState({ kind: 'live', camera: opened });
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

  const openAgain = useCallback((id: string | null) => {
    setState({ kind: 'opening' });
    setWanted(({ attempt }) => ({ id, attempt: attempt + 1 }));
  }, []);
  const fail = useCallback((failure: MeasuringFailure) => {
    setState({ kind: 'failed', failure });
  }, []);
  return { state, devices, wantedId: wanted.id, openAgain, fail };
}
