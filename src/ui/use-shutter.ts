import { useEffect, useEffectEvent, useState } from 'react';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { CameraStream, MeasuringFailure, Picture } from '../session/ports.js';

/** A countdown on one camera; `left` whole seconds to go, at 0 the burst is being taken. */
interface Countdown {
  readonly camera: CameraStream;
  readonly left: number;
}

const COUNTDOWN_SECONDS = 3;

/** Of so many pictures in a row the sharpest is kept. */
const BURST_FRAMES = 5;

export interface Shutter {
  /** whole seconds to go; 0 while the picture is being taken, null while nothing is */
  readonly left: number | null;
  readonly takeNow: () => void;
  readonly takeInSeconds: () => void;
  readonly stop: () => void;
}

/**
 * Takes a picture now or after a countdown.
 *
 * @param from.around where in the frame sharpness matters at this moment, px of the camera's frame; null for its middle
 */
export function useShutter(from: {
  readonly camera: CameraStream | null;
  readonly around: () => ImagePoint | null;
  readonly onTaken: (picture: Picture, camera: CameraStream) => void;
  readonly onFailure: (failure: MeasuringFailure) => void;
}): Shutter {
  const { camera } = from;
  const [begun, setBegun] = useState<Countdown | null>(null);
  // A countdown ends with the camera that it was begun on.
  const left = begun !== null && begun.camera === camera ? begun.left : null;
  const around = useEffectEvent(from.around);
  const onTaken = useEffectEvent(from.onTaken);
  const onFailure = useEffectEvent(from.onFailure);

  useEffect(() => {
    if (left === null || camera === null) return;
    if (left > 0) {
      const timer = setTimeout(() => {
        // Nobody wants the picture of the moment at which a hidden page is seen again.
        setBegun(document.visibilityState === 'hidden' ? null : { camera, left: left - 1 });
      }, 1000);
      return () => {
        clearTimeout(timer);
      };
    }
    const life = { isOver: false };
    const take = async (): Promise<void> => {
      const taken = await camera.takeBurst(BURST_FRAMES, around());
      if (life.isOver) {
        if (taken.ok) taken.value.bitmap.close();
      } else if (taken.ok) {
        onTaken(taken.value, camera);
      } else {
        onFailure(taken.failure);
      }
    };
    void take();
    return () => {
      life.isOver = true;
    };
  }, [left, camera]);

  return {
    left,
    takeNow: () => {
      if (camera !== null && left !== 0) setBegun({ camera, left: 0 });
    },
    takeInSeconds: () => {
      if (camera !== null) setBegun({ camera, left: COUNTDOWN_SECONDS });
    },
    stop: () => {
      setBegun(null);
    },
  };
}
