import { useEffect, useState } from 'react';
import type { CameraStream, Picture } from '../session/ports.js';
import type { LiveCamera } from '../session/profile-choice.js';
import { CameraFailure, DeviceChoice, Preview } from './camera-parts.js';
import { liveCameraOf } from './live-camera.js';
import { Holding } from './holding.js';
import { Modal } from './modal.js';
import { useCamera } from './use-camera.js';
import { words } from './language.js';

/** A countdown on one camera; `left` whole seconds to go, at 0 the burst is being taken. */
interface Countdown {
  readonly camera: CameraStream;
  readonly left: number;
}

const COUNTDOWN_SECONDS = 3;

/** Of so many pictures in a row the sharpest is kept. */
const BURST_FRAMES = 5;

/** Takes a picture with a camera. The camera is released as soon as the dialog closes, whatever the reason. */
export function CameraDialog(props: {
  readonly gaze: 'camera' | 'far';
  readonly cameraId: string | null;
  readonly onCameraChosen: (id: string) => void;
  /** `camera` is what took the picture; null where it cannot be told any more */
  readonly onTaken: (picture: Picture, camera: LiveCamera | null) => void;
  readonly onClose: () => void;
}) {
  const { onTaken, onClose } = props;
  const { state, devices, wantedId, openAgain, fail } = useCamera(props.cameraId);
  const camera = state.kind === 'live' ? state.camera : null;
  const [begun, setBegun] = useState<Countdown | null>(null);
  // A countdown ends with the camera that it was begun on.
  const left = begun !== null && begun.camera === camera ? begun.left : null;

  useEffect(() => {
    if (left === null || camera === null) return;
    if (left > 0) {
      const timer = setTimeout(() => {
        setBegun({ camera, left: left - 1 });
      }, 1000);
      return () => {
        clearTimeout(timer);
      };
    }
    const life = { isOver: false };
    const take = async (): Promise<void> => {
      const taken = await camera.takeBurst(BURST_FRAMES, null);
      if (life.isOver) {
        if (taken.ok) taken.value.bitmap.close();
        return;
      }
      if (!taken.ok) {
        fail(taken.failure);
        return;
      }
      onTaken(taken.value, liveCameraOf(camera));
      onClose();
    };
    void take();
    return () => {
      life.isOver = true;
    };
  }, [left, camera, fail, onTaken, onClose]);

  return (
    <Modal heading={words.camera.heading} closeLabel={words.camera.close} onClose={onClose} wide>
      <div className="camera">
        <div className="camera-view">
          <Preview stream={camera?.stream ?? null} />
          {left !== null && (
            <div className="countdown" aria-hidden="true">
              {left > 0 ? left : words.camera.hold}
            </div>
          )}
          <p className={state.kind === 'opening' ? 'camera-status' : 'visually-hidden'} role="status">
            {state.kind === 'opening' && words.camera.opening}
            {left !== null && (left > 0 ? words.camera.inSeconds(left) : words.camera.hold)}
          </p>
          {state.kind === 'failed' && <CameraFailure failure={state.failure} />}
        </div>
        <div className="camera-side">
          {devices.length > 0 && (
            <DeviceChoice
              devices={devices}
              chosen={camera?.deviceId ?? wantedId}
              onChoose={(id) => {
                props.onCameraChosen(id);
                openAgain(id);
              }}
            />
          )}
          <p>
            <strong>{words.camera.gaze[props.gaze]}</strong>
          </p>
          <div className="actions">
            {camera !== null && left === null && (
              <button
                type="button"
                className="main-action"
                onClick={() => {
                  setBegun({ camera, left: COUNTDOWN_SECONDS });
                }}
              >
                {words.camera.start}
              </button>
            )}
            {left !== null && (
              <button
                type="button"
                onClick={() => {
                  setBegun(null);
                }}
              >
                {words.camera.stop}
              </button>
            )}
            {state.kind === 'failed' && (
              <button
                type="button"
                className="main-action"
                onClick={() => {
                  openAgain(wantedId);
                }}
              >
                {words.camera.again}
              </button>
            )}
          </div>
          <Holding />
          <p className="note">{words.camera.mirrored}</p>
        </div>
      </div>
    </Modal>
  );
}
