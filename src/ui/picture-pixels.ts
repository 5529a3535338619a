import type { RgbaImage } from '../core/camera/pixel-plane.js';
import { invariant } from '../core/result.js';

/** The pixels of a picture. The bitmap stays the caller's. */
export function pixelsOf(bitmap: ImageBitmap): RgbaImage {
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  invariant(context !== null, 'a canvas that was asked for nothing else has a 2D context');
  context.drawImage(bitmap, 0, 0);
  const { width, height, data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
  return { widthPx: width, heightPx: height, data };
}
