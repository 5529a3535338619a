import type { DeviceFailure } from '../session/ports.js';

/** Chosen: a picture of 50 megapixels takes 200 MB, and the work on it as much again. */
const LIMIT_MEGAPIXELS = 50;

/** Why a picture, or a video whose frames become pictures, of this size is not opened; null where it may be. */
export function tooLargeToOpen(widthPx: number, heightPx: number): DeviceFailure | null {
  const megapixels = (widthPx * heightPx) / 1e6;
  if (megapixels <= LIMIT_MEGAPIXELS) return null;
  return { kind: 'picture-too-large', megapixels, limitMegapixels: LIMIT_MEGAPIXELS };
}
