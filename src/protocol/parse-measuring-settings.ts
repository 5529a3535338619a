import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import { isPositive, oneOf, orNull, shape } from './checks.js';
import { isCameraProfile } from './parse-camera-profile.js';

/** What a measurement is made with. */
export const isMeasuringSettings = shape<MeasuringSettings>({
  gaze: oneOf('camera', 'far'),
  workingDistanceMm: isPositive,
  printScale: isPositive,
  profile: orNull(isCameraProfile),
});
