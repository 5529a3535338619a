import type { CameraProfile } from '../camera/camera-profile.js';
import type { Advice, PictureFailure } from '../camera/failure.js';
import type { PictureFeatures } from '../camera/features.js';
import type { FaceEstimates } from './estimate.js';
import type { Result } from '../result.js';

/** All that the estimates depend on besides the picture. */
export interface MeasuringSettings {
  /** where the wearer was asked to look */
  readonly gaze: 'camera' | 'far';
  /** spectacle plane to the near object, mm */
  readonly workingDistanceMm: number;
  /** true length of a line of the printed marker card over its nominal length; 1 for a bought card */
  readonly printScale: number;
  /** what is known of the camera; null: a wide prior of the field of view is used */
  readonly profile: CameraProfile | null;
}

export const DEFAULT_MEASURING_SETTINGS: MeasuringSettings = {
  gaze: 'camera',
  workingDistanceMm: 400,
  printScale: 1,
  profile: null,
};

/** Below this scale at the eyes a picture or a sweep is measured with the advice to come nearer. */
export const NEAR_ENOUGH_PIXELS_PER_MM = 1.2;

/** What one picture says of a face. */
export interface FaceMeasurement {
  readonly estimates: FaceEstimates;
  readonly pixelsPerMm: number;
  readonly advice: readonly Advice[];
}

/** Signature of `measureFace`, so that screens can be tried without it. */
export type MeasureFace = (
  features: PictureFeatures,
  settings: MeasuringSettings,
) => Result<FaceMeasurement, PictureFailure>;
