import type { CameraProfile } from '../camera/camera-profile.js';
import type { Camera } from '../camera/pinhole.js';
import { FOCAL_LOG_SD, FOCAL_OVER_LONG_SIDE, K1_SD } from './prior-knowledge.js';

interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A profile counts for pictures of its own proportions; a picture scaled as a whole scales it likewise. Null where it does not count. */
export function matchingProfile(profile: CameraProfile | null, picture: PictureSize): CameraProfile | null {
  if (profile === null) return null;
  const factor = picture.widthPx / profile.widthPx;
  if (Math.abs(picture.heightPx / profile.heightPx / factor - 1) > 0.005) return null;
  const { uncertainty } = profile;
  return {
    ...profile,
    widthPx: picture.widthPx,
    heightPx: picture.heightPx,
    fx: profile.fx * factor,
    fy: profile.fy * factor,
    cx: profile.cx * factor,
    cy: profile.cy * factor,
    uncertainty: {
      ...uncertainty,
      fx: uncertainty.fx * factor,
      fy: uncertainty.fy * factor,
      cx: uncertainty.cx * factor,
      cy: uncertainty.cy * factor,
    },
  };
}

/** How the camera differs from what is assumed of it: all zero for the assumed camera itself. */
export interface CameraDeviation {
  /** logarithm of the focal length over the assumed one */
  readonly logFocal: number;
  /** added to the first radial coefficient */
  readonly k1: number;
  /** of the principal point, px */
  readonly cxPx: number;
  readonly cyPx: number;
}

/** No deviation: the assumed camera itself. */
export const NO_DEVIATION: CameraDeviation = { logFocal: 0, k1: 0, cxPx: 0, cyPx: 0 };

/** A principal point that is not known lies within this share of the picture's width of the middle (common practice). */
const PRINCIPAL_POINT_SHARE = 0.01;

/** Standard uncertainty of each deviation. Even a good profile leaves a little. */
export function deviationUncertainty(picture: PictureSize, profile: CameraProfile | null): CameraDeviation {
  if (profile === null) {
    const centrePx = PRINCIPAL_POINT_SHARE * picture.widthPx;
    return { logFocal: FOCAL_LOG_SD, k1: K1_SD, cxPx: centrePx, cyPx: centrePx };
  }
  const { fx, cx, cy, distortion } = profile.uncertainty;
  return {
    logFocal: Math.max(fx / profile.fx, 1e-4),
    k1: Math.max(distortion[0], 1e-4),
    cxPx: Math.max(cx, 0.1),
    cyPx: Math.max(cy, 0.1),
  };
}

/** The camera of the profile, or one with the field of view of most webcams, with its deviation. */
export function assumedCamera(
  picture: PictureSize,
  profile: CameraProfile | null,
  { logFocal, k1, cxPx, cyPx }: CameraDeviation,
): Camera {
  const factor = Math.exp(logFocal);
  if (profile !== null) {
    const [first, ...rest] = profile.distortion;
    return {
      fx: profile.fx * factor,
      fy: profile.fy * factor,
      cx: profile.cx + cxPx,
      cy: profile.cy + cyPx,
      distortion: [first + k1, ...rest],
    };
  }
  const focal = FOCAL_OVER_LONG_SIDE * Math.max(picture.widthPx, picture.heightPx) * factor;
  return {
    fx: focal,
    fy: focal,
    cx: picture.widthPx / 2 + cxPx,
    cy: picture.heightPx / 2 + cyPx,
    distortion: [k1, 0, 0, 0, 0],
  };
}
