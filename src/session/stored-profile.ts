import type { CameraProfile } from '../core/camera/camera-profile.js';

/** A camera profile with its name and what it was made for. */
export interface StoredProfile {
  /** made once, never shown */
  readonly id: string;
  /** what the reader calls it */
  readonly name: string;
  /** the camera's own label, for telling whether it is the one in use; null where it came from files */
  readonly cameraLabel: string | null;
  /** day of making, ISO 8601 */
  readonly madeOn: string;
  readonly profile: CameraProfile;
  /** share of the frame that the sheet's corners covered over all views, 0 to 1 */
  readonly coverage: number;
}

/** Longest name of a profile, in letters. Longer ones, as earlier versions wrote them, are cut. */
export const PROFILE_NAME_LIMIT = 60;
