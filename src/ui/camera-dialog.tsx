import { useEffect, useId, useRef, useState } from 'react';
import type { CameraDevice, CameraStream, MeasuringFailure, Picture } from '../session/ports.js';
import { useEquipment } from './equipment.js';
import { Holding } from './holding.js';
import { Modal } from './modal.js';
import { failureSaying } from './sentences.js';
import { cameraWords as words } from './words.js';

type CameraState =
  | { readonly kind: 'opening' }
  | { readonly kind: 'failed'; readonly failure: MeasuringFailure }
  | { readonly kind: 'live'; readonly camera: CameraStream }
  /** `left` whole seconds to go; at 0 the burst is being taken */
  | { readonly kind: 'counting'; readonly camera: CameraStream; readonly left: number };

const COUNTDOWN_SECONDS = 3;

/** Takes a picture with a camera. The camera is released as soon as the dialog closes, whatever the reason. */
export function CameraDialog(props: {
  readonly gaze: 'camera' | 'far';
  readonly cameraId: string | null;
  readonly onCameraChosen: (id: string) => void;
  readonly onTaken: (picture: Picture) => void;
  readonly onClose: () => void;
}) {
  const { onTaken, onClose } = props;
  const { cameras } = useEquipment();
  const [wanted, setWanted] = useState<{ readonly id: string | null; readonly attempt: number }>({
    id: props.cameraId,
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

  const countingLeft = state.kind === 'counting' ? state.left : null;
  const camera = state.kind === 'counting' || state.kind === 'live' ? state.camera : null;
  useEffect(() => {
    if (countingLeft === null || camera === null) return;
    if (countingLeft > 0) {
      const timer = setTimeout(() => {
        setState({ kind: 'counting', camera, left: countingLeft - 1 });
      }, 1000);
      return () => {
        clearTimeout(timer);
      };
    }
    const life = { isOver: false };
    const take = async (): Promise<void> => {
      const taken = await camera.takeBurst(words.burstFrames);
      if (life.isOver) {
        if (taken.ok) taken.value.bitmap.close();
        return;
      }
      if (!taken.ok) {
        setState({ kind: 'failed', failure: taken.failure });
        return;
      }
      onTaken(taken.value);
      onClose();
    };
    void take();
    return () => {
      life.isOver = true;
    };
  }, [countingLeft, camera, onTaken, onClose]);

  const openAgain = (id: string | null): void => {
    setState({ kind: 'opening' });
    setWanted(({ attempt }) => ({ id, attempt: attempt + 1 }));
  };

  return (
    <Modal heading={words.heading} closeLabel={words.close} onClose={onClose} wide>
      <div className="camera">
        <div className="camera-view">
          <Preview stream={camera?.stream ?? null} />
          {state.kind === 'counting' && (
            <div className="countdown" aria-hidden="true">
              {state.left > 0 ? state.left : words.hold}
            </div>
          )}
          <p className={state.kind === 'opening' ? 'camera-status' : 'visually-hidden'} role="status">
            {state.kind === 'opening' && words.opening}
            {state.kind === 'counting' && (state.left > 0 ? words.inSeconds(state.left) : words.hold)}
          </p>
          {state.kind === 'failed' && <CameraFailure failure={state.failure} />}
        </div>
        <div className="camera-side">
          {devices.length > 0 && (
            <DeviceChoice
              devices={devices}
              chosen={camera?.deviceId ?? wanted.id}
              onChoose={(id) => {
                props.onCameraChosen(id);
                openAgain(id);
              }}
            />
          )}
          <p>
            <strong>{words.gaze[props.gaze]}</strong>
          </p>
          <div className="actions">
            {state.kind === 'live' && (
              <button
                type="button"
                className="main-action"
                onClick={() => {
                  setState({ kind: 'counting', camera: state.camera, left: COUNTDOWN_SECONDS });
                }}
              >
                {words.start}
              </button>
            )}
            {state.kind === 'counting' && (
              <button
                type="button"
                onClick={() => {
                  setState({ kind: 'live', camera: state.camera });
                }}
              >
                {words.stop}
              </button>
            )}
            {state.kind === 'failed' && (
              <button
                type="button"
                className="main-action"
                onClick={() => {
                  openAgain(wanted.id);
                }}
              >
                {words.again}
              </button>
            )}
          </div>
          <Holding />
          <p className="note">{words.mirrored}</p>
        </div>
      </div>
    </Modal>
  );
}

function CameraFailure({ failure }: { readonly failure: MeasuringFailure }) {
  const { what, next } = failureSaying(failure);
  return (
    <p className="note note-failure" role="alert">
      <strong>{what}</strong> {next}
    </p>
  );
}

/** The live picture, mirrored: people know their own face from mirrors and move the right way. */
function Preview({ stream }: { readonly stream: MediaStream | null }) {
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    const element = video.current;
    if (element === null) return;
    element.srcObject = stream;
    // Playing is refused where the stream ended in between; the dialog then says why the camera is gone.
    if (stream !== null) element.play().catch(() => undefined);
    return () => {
      element.srcObject = null;
    };
  }, [stream]);
  return <video ref={video} className="preview" muted playsInline aria-hidden="true" />;
}

function DeviceChoice(props: {
  readonly devices: readonly CameraDevice[];
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
}) {
  const id = useId();
  return (
    <p className="labelled">
      <label htmlFor={id}>{words.device}</label>
      <select
        id={id}
        value={props.chosen ?? ''}
        onChange={(event) => {
          props.onChoose(event.currentTarget.value);
        }}
      >
        {props.devices.map((device, index) => (
          <option key={device.id} value={device.id}>
            {device.label === '' ? words.unnamed(index + 1) : device.label}
          </option>
        ))}
      </select>
    </p>
  );
}
