import type { RgbaImage } from '../../core/camera/find-features.js';

/** Luminance of a picture, row by row. */
export interface GrayImage {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly data: Uint8Array;
}

/** Luminance by the weights of ITU-R BT.601. */
export function grayImage(image: RgbaImage): GrayImage {
  const from = image.data;
  const data = new Uint8Array(image.widthPx * image.heightPx);
  for (let pixel = 0, at = 0; pixel < data.length; pixel++, at += 4) {
    data[pixel] = (299 * (from[at] ?? 0) + 587 * (from[at + 1] ?? 0) + 114 * (from[at + 2] ?? 0) + 500) / 1000;
  }
  return { widthPx: image.widthPx, heightPx: image.heightPx, data };
}

/** Bilinear; px from the outer corner of the top-left pixel; null outside of the picture. */
export function levelAt(gray: GrayImage, xPx: number, yPx: number): number | null {
  const x = xPx - 0.5;
  const y = yPx - 0.5;
  const column = Math.floor(x);
  const row = Math.floor(y);
  if (column < 0 || row < 0 || column + 1 >= gray.widthPx || row + 1 >= gray.heightPx) return null;
  const at = row * gray.widthPx + column;
  const fx = x - column;
  const fy = y - row;
  const { data, widthPx } = gray;
  return (
    (1 - fy) * ((1 - fx) * (data[at] ?? 0) + fx * (data[at + 1] ?? 0)) +
    fy * ((1 - fx) * (data[at + widthPx] ?? 0) + fx * (data[at + widthPx + 1] ?? 0))
  );
}

/** The picture reduced by a whole number: each level is the mean of that many by that many pixels; a rest at the rim is left out. */
export function reducedBy(gray: GrayImage, factor: number): GrayImage {
  if (factor <= 1) return gray;
  const widthPx = Math.floor(gray.widthPx / factor);
  const heightPx = Math.floor(gray.heightPx / factor);
  const data = new Uint8Array(widthPx * heightPx);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      let sum = 0;
      for (let dy = 0; dy < factor; dy++) {
        const at = (row * factor + dy) * gray.widthPx + column * factor;
        for (let dx = 0; dx < factor; dx++) sum += gray.data[at + dx] ?? 0;
      }
      data[row * widthPx + column] = Math.round(sum / (factor * factor));
    }
  }
  return { widthPx, heightPx, data };
}

/** The picture enlarged twice, bilinearly. */
export function doubled(gray: GrayImage): GrayImage {
  const [widthPx, heightPx] = [2 * gray.widthPx, 2 * gray.heightPx];
  const data = new Uint8Array(widthPx * heightPx);
  for (let row = 0; row < heightPx; row++) {
    const y = Math.min(gray.heightPx - 0.5001, Math.max(0.5, (row + 0.5) / 2));
    for (let column = 0; column < widthPx; column++) {
      const x = Math.min(gray.widthPx - 0.5001, Math.max(0.5, (column + 0.5) / 2));
      data[row * widthPx + column] = Math.round(levelAt(gray, x, y) ?? 0);
    }
  }
  return { widthPx, heightPx, data };
}
