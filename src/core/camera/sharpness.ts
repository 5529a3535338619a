import type { RgbaImage } from './find-features.js';

/**
 * How sharp a picture is, to compare frames of the same scene: the variance of its Laplacian, in squared levels of green. Sharper is
 * larger; the number says nothing across scenes. 0 for less than 3 x 3 pixels.
 * Source: Pech-Pacheco et al., "Diatom autofocusing in brightfield microscopy", ICPR 2000, measure LAP4 (from memory).
 */
export function measureSharpness({ widthPx, heightPx, data }: RgbaImage): number {
  let sum = 0;
  let sumOfSquares = 0;
  let count = 0;
  const row = 4 * widthPx;
  for (let y = 1; y < heightPx - 1; y++) {
    for (let x = 1; x < widthPx - 1; x++) {
      // green alone: it carries most of the luminance, and in a camera half of the pixels
      const at = y * row + 4 * x + 1;
      const around = (data[at - 4] ?? 0) + (data[at + 4] ?? 0) + (data[at - row] ?? 0) + (data[at + row] ?? 0);
      const laplacian = around - 4 * (data[at] ?? 0);
      sum += laplacian;
      sumOfSquares += laplacian * laplacian;
      count += 1;
    }
  }
  return count === 0 ? 0 : sumOfSquares / count - (sum / count) ** 2;
}
