import type { CameraProfile, IntrinsicsUncertainty } from '../core/camera/camera-profile.js';
import type { Distortion } from '../core/camera/pinhole.js';
import { isPositive, shape, type Check } from './checks.js';
import { isFiniteNumber } from './message.js';

function isNotNegative(value: unknown): value is number {
  return isFiniteNumber(value) && value >= 0;
}

function five(check: Check<number>): Check<Distortion> {
  return (value): value is Distortion => Array.isArray(value) && value.length === 5 && value.every(check);
}

/** Whether the value is a camera profile of possible numbers. */
export const isCameraProfile = shape<CameraProfile>({
  fx: isPositive,
  fy: isPositive,
  cx: isFiniteNumber,
  cy: isFiniteNumber,
  distortion: five(isFiniteNumber),
  widthPx: isPositive,
  heightPx: isPositive,
  uncertainty: shape<IntrinsicsUncertainty>({
    fx: isNotNegative,
    fy: isNotNegative,
    cx: isNotNegative,
    cy: isNotNegative,
    distortion: five(isNotNegative),
  }),
  rmsPx: isNotNegative,
  viewCount: isPositive,
});

/** The camera profile; null where a part is missing or not possible. */
export function parseCameraProfile(value: unknown): CameraProfile | null {
  return isCameraProfile(value) ? value : null;
}
