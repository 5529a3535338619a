import { useEffect, useId, useRef } from 'react';
import type { CameraDevice, MeasuringFailure } from '../session/ports.js';
import { goesOnSentence } from './live-sentences.js';
import { failureSaying } from './picture-sentences.js';
import { words } from './language.js';

/** Why there is no camera, and the way out. */
export function CameraFailure({ failure }: { readonly failure: MeasuringFailure }) {
  const { what, next } = failureSaying(failure);
  const goesOn = goesOnSentence(failure);
  return (
    <p className="note note-failure" role="alert">
      <strong>{what}</strong> {next} {goesOn}
    </p>
  );
}

/** The live picture, mirrored: people know their own face from mirrors and move the right way. */
export function Preview({ stream }: { readonly stream: MediaStream | null }) {
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

/** Which of the cameras is used. */
export function DeviceChoice(props: {
  readonly devices: readonly CameraDevice[];
  readonly chosen: string | null;
  readonly onChoose: (id: string) => void;
}) {
  const id = useId();
  return (
    <p className="labelled">
      <label htmlFor={id}>{words.camera.device}</label>
      <select
        id={id}
        value={props.chosen ?? ''}
        onChange={(event) => {
          props.onChoose(event.currentTarget.value);
        }}
      >
        {props.devices.map((device, index) => (
          <option key={device.id} value={device.id}>
            {device.label === '' ? words.camera.unnamed(index + 1) : device.label}
          </option>
        ))}
      </select>
    </p>
  );
}
