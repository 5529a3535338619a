import { words } from './language.js';

/** Beside a value of the camera: nobody but the wearer saw how it was taken. */
export function AloneMark() {
  return (
    <small className="camera-alone" title={words.invitations.aloneMarkLong}>
      {words.invitations.aloneMark}
    </small>
  );
}
