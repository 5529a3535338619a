import type { PictureFeatures } from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { Side } from '../core/units/side.js';

/** A part of the picture, in px of the picture. It may reach beyond the picture's edges. */
export interface PictureRegion {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

export function wholeRegion(picture: { readonly widthPx: number; readonly heightPx: number }): PictureRegion {
  return { xPx: 0, yPx: 0, widthPx: picture.widthPx, heightPx: picture.heightPx };
}

/** Width over height of the face view and of the eye views. */
const FACE_ASPECT = 4 / 3;
const EYE_ASPECT = 16 / 9;

/** Face and card with a margin around them, inside the picture where it is large enough. */
export function faceRegion(features: PictureFeatures): PictureRegion {
  const points: readonly ImagePoint[] = [...features.landmarks, ...features.card.corners];
  let left = Infinity;
  let right = -Infinity;
  let top = Infinity;
  let bottom = -Infinity;
  for (const { xPx, yPx } of points) {
    left = Math.min(left, xPx);
    right = Math.max(right, xPx);
    top = Math.min(top, yPx);
    bottom = Math.max(bottom, yPx);
  }
  const margin = 0.14 * Math.max(right - left, bottom - top);
  const width = Math.max(right - left + 2 * margin, (bottom - top + 2 * margin) * FACE_ASPECT);
  const widthPx = Math.min(width, features.widthPx, features.heightPx * FACE_ASPECT);
  const heightPx = widthPx / FACE_ASPECT;
  return {
    xPx: clamp((left + right) / 2 - widthPx / 2, 0, features.widthPx - widthPx),
    yPx: clamp((top + bottom) / 2 - heightPx / 2, 0, features.heightPx - heightPx),
    widthPx,
    heightPx,
  };
}

/** One eye, large enough that the lids and the iris edge stand apart. */
export function eyeRegion(features: PictureFeatures, side: Side): PictureRegion {
  const iris = features.iris[side];
  const widthPx = 6.4 * iris.radiusPx;
  const heightPx = widthPx / EYE_ASPECT;
  return { xPx: iris.centre.xPx - widthPx / 2, yPx: iris.centre.yPx - heightPx / 2, widthPx, heightPx };
}

/** What the loupe shows around a point: about an iris across, whatever the resolution. */
export function loupeRegion(features: PictureFeatures, at: ImagePoint): PictureRegion {
  const iris = Math.max(features.iris.R.radiusPx, features.iris.L.radiusPx);
  const span = clamp(1.7 * iris, 12, 240);
  return { xPx: at.xPx - span / 2, yPx: at.yPx - span / 2, widthPx: span, heightPx: span };
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(Math.max(low, high), Math.max(low, value));
}
