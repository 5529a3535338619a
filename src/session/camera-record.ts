import type { FaceMeasurement } from '../core/estimate/face-estimates.js';
import type { SweepMeasurement } from '../core/estimate/sweep.js';
import type { CameraRecord } from '../core/record/session-record.js';
import type { PictureState } from './picture-state.js';
import { lidsByHand } from './picture-state.js';

/** What the camera says, as it is measured on this desk, or was recorded before. */
export type SheetMeasurement =
  | ({ readonly kind: 'picture' } & FaceMeasurement)
  | ({ readonly kind: 'sweep' } & SweepMeasurement)
  | {
      readonly kind: 'recorded';
      readonly camera: CameraRecord;
      readonly estimates: CameraRecord['estimates'];
      readonly pixelsPerMm: number;
    };

/** Whether what the camera says comes from a distant wearer: nobody else saw how it was taken. */
export function isTakenAlone(picture: PictureState): boolean {
  return picture.kind === 'recorded' && picture.camera.supervision === 'none';
}

/** What of a measurement is kept with the session. */
export function cameraRecordOf(measurement: SheetMeasurement, picture: PictureState, takenAt: string): CameraRecord {
  if (measurement.kind === 'recorded') return measurement.camera;
  const { estimates, pixelsPerMm } = measurement;
  const byHand = lidsByHand(picture) ?? { R: false, L: false };
  const taken = { takenAt, supervision: 'reader', estimates, pixelsPerMm, lidsByHand: byHand } as const;
  if (measurement.kind === 'picture') {
    const { advice } = measurement;
    return { kind: 'picture', ...taken, advice };
  }
  const { advice, framesUsed, fates } = measurement;
  return { kind: 'sweep', ...taken, advice, framesUsed, framesTaken: fates.length };
}
