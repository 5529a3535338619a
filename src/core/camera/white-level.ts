import { SIDES } from '../units/side.js';
import type { ImagePoint } from '../geometry/vector.js';
import { LANDMARK } from './face-landmarks.js';
import { clipRectangle, cutPlane, type RgbaImage } from './pixel-plane.js';

/**
 * Level, of 255, that a tenth of the pixels between the eye corners exceed: that of the white, whatever colour the irises have.
 *
 * @param placeOf where in the picture a landmark lies
 */
export function whiteLevelOfEyes(image: RgbaImage, placeOf: (index: number) => ImagePoint): number {
  const counts = new Uint32Array(256);
  let total = 0;
  for (const side of SIDES) {
    const outer = placeOf(LANDMARK.outerEyeCorner[side]);
    const inner = placeOf(LANDMARK.innerEyeCorner[side]);
    const upper = placeOf(LANDMARK.upperLid[side]);
    const lower = placeOf(LANDMARK.lowerLid[side]);
    const rectangle = clipRectangle(image, {
      leftPx: Math.min(outer.xPx, inner.xPx),
      topPx: Math.min(upper.yPx, lower.yPx),
      widthPx: Math.abs(outer.xPx - inner.xPx),
      heightPx: Math.abs(lower.yPx - upper.yPx),
    });
    if (rectangle === null) continue;
    for (const level of cutPlane(image, rectangle, 'luma').data) {
      counts[Math.min(255, Math.max(0, Math.round(level)))]! += 1;
      total += 1;
    }
  }
  let above = 0;
  for (let level = 255; level >= 0; level--) {
    above += counts[level]!;
    if (above > 0.1 * total) return level;
  }
  return 0;
}
