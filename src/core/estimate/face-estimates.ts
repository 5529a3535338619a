import type { Advice, PictureFailure } from '../camera/failure.js';
import type { PictureFeatures } from '../camera/features.js';
import type { FaceEstimates } from './estimate.js';
import type { Result } from '../result.js';

/** What is known of the camera; without it a wide prior of the field of view is used. */
export interface CameraProfile {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly fx: number;
  readonly fy: number;
  readonly cx: number;
  readonly cy: number;
  /** k1, k2, p1, p2, k3 of the polynomial model */
  readonly distortion: readonly [k1: number, k2: number, p1: number, p2: number, k3: number];
  /** relative standard uncertainty of the focal length */
  readonly focalRelativeUncertainty: number;
}

/** All that the estimates depend on besides the picture. */
export interface MeasuringSettings {
  /** where the wearer was asked to look */
  readonly gaze: 'camera' | 'far';
  /** spectacle plane to the near object, mm */
  readonly workingDistanceMm: number;
  /** true length of a line of the printed marker card over its nominal length; 1 for a bought card */
  readonly printScale: number;
  readonly profile: CameraProfile | null;
}

export const DEFAULT_MEASURING_SETTINGS: MeasuringSettings = {
  gaze: 'camera',
  workingDistanceMm: 400,
  printScale: 1,
  profile: null,
};

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
