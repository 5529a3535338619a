import type { PictureFeatures } from '../core/camera/features.js';
import { cropImage, obscureCard } from '../core/camera/obscure-card.js';
import type { NoCardOutline } from '../core/camera/obscure-card.js';
import type { RgbaImage } from '../core/camera/pixel-plane.js';
import { invariant, succeed, type Result } from '../core/result.js';
import { neededRegion } from '../session/kept-picture.js';
import type { KeptPicture } from '../session/session-store.js';
import { pixelsOf } from './picture-pixels.js';

/** Enough that edges stay where they are by some hundredths of a pixel. */
const QUALITY = 0.9;

/** Chosen: a longer part is made smaller, so that a year of pictures fits on a device. */
const LONGEST_SIDE_PX = 2000;

/** What is kept of a picture: the part that is needed, with the card's face covered, as a JPEG. The bitmap stays the caller's. */
export async function keptPixels(
  bitmap: ImageBitmap,
  features: PictureFeatures,
): Promise<Result<Pick<KeptPicture, 'widthPx' | 'heightPx' | 'bytes'>, NoCardOutline>> {
  const obscured = obscureCard(pixelsOf(bitmap), features.card.corners);
  if (!obscured.ok) return obscured;
  const region = neededRegion(features);
  invariant(region !== null, 'what was measured lies in its picture');
  const canvas = drawn(cropImage(obscured.value, region));
  const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY });
  const bytes = new Uint8Array(await blob.arrayBuffer());
  return succeed({ widthPx: canvas.width, heightPx: canvas.height, bytes });
}

function drawn(image: RgbaImage): OffscreenCanvas {
  const whole = new OffscreenCanvas(image.widthPx, image.heightPx);
  const context = whole.getContext('2d');
  invariant(context !== null, 'a canvas that was asked for nothing else has a 2D context');
  context.putImageData(new ImageData(new Uint8ClampedArray(image.data), image.widthPx, image.heightPx), 0, 0);
  const factor = Math.min(1, LONGEST_SIDE_PX / Math.max(image.widthPx, image.heightPx));
  if (factor === 1) return whole;
  const smaller = new OffscreenCanvas(Math.round(image.widthPx * factor), Math.round(image.heightPx * factor));
  const smallerContext = smaller.getContext('2d');
  invariant(smallerContext !== null, 'a canvas that was asked for nothing else has a 2D context');
  smallerContext.imageSmoothingQuality = 'high';
  smallerContext.drawImage(whole, 0, 0, smaller.width, smaller.height);
  return smaller;
}
