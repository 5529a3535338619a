import type { CameraProfile } from '../../src/core/camera/camera-profile.js';
import type { StoredProfile } from '../../src/session/stored-profile.js';

/** Invented: a webcam of 1280 x 720 with a field of view of about 57 degrees. */
export const EXAMPLE_CAMERA_PROFILE: CameraProfile = {
  widthPx: 1280,
  heightPx: 720,
  fx: 1180.4,
  fy: 1179.8,
  cx: 633.1,
  cy: 366.7,
  distortion: [0.041, -0.063, 0.0011, -0.0005, 0],
  uncertainty: { fx: 1.4, fy: 1.3, cx: 1.1, cy: 0.9, distortion: [0.004, 0.02, 0.0002, 0.0002, 0] },
  rmsPx: 0.21,
  viewCount: 13,
};

export function exampleProfile(change: Partial<StoredProfile> = {}): StoredProfile {
  return {
    id: 'desk-1',
    name: 'Desk camera',
    cameraLabel: 'Invented Cam 720',
    madeOn: '2026-03-04',
    profile: EXAMPLE_CAMERA_PROFILE,
    coverage: 0.79,
    ...change,
  };
}
