/** Decoded pixels as the browser hands them over: four bytes a pixel, row by row. */
export interface RgbaImage {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly data: Uint8ClampedArray;
}

/** One number a pixel, row by row, cut out of a picture and perhaps reduced. */
export interface PixelPlane {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly data: Float32Array;
}

/** A rectangle of whole pixels. */
export interface PixelRectangle {
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * The channels in which edges are sought: luma of ITU-R BT.601 and its two colour differences, the latter enlarged so that
 * a change of hue weighs like a change of brightness. The plain difference of red and blue tells skin from the white of the eye.
 */
export type Channel = 'luma' | 'blue-difference' | 'red-difference' | 'red-minus-blue';

/** Those in which the edges of cards are sought. */
export const CHANNELS: readonly Channel[] = ['luma', 'blue-difference', 'red-difference'];

/** Weights of red, green and blue in each channel. */
export const CHANNEL_WEIGHTS: Readonly<Record<Channel, readonly [red: number, green: number, blue: number]>> = {
  luma: [0.299, 0.587, 0.114],
  'blue-difference': [-0.27, -0.53, 0.8],
  'red-difference': [0.8, -0.67, -0.13],
  'red-minus-blue': [1, 0, -1],
};

/** A rectangle grown by a margin and clipped to the picture; null where nothing of it lies inside. */
export function clipRectangle(
  image: { readonly widthPx: number; readonly heightPx: number },
  rectangle: PixelRectangle,
): PixelRectangle | null {
  const leftPx = Math.max(0, Math.floor(rectangle.leftPx));
  const topPx = Math.max(0, Math.floor(rectangle.topPx));
  const widthPx = Math.min(image.widthPx, Math.ceil(rectangle.leftPx + rectangle.widthPx)) - leftPx;
  const heightPx = Math.min(image.heightPx, Math.ceil(rectangle.topPx + rectangle.heightPx)) - topPx;
  return widthPx > 0 && heightPx > 0 ? { leftPx, topPx, widthPx, heightPx } : null;
}

/** One channel of a rectangle of a picture. */
export function cutPlane(image: RgbaImage, rectangle: PixelRectangle, channel: Channel): PixelPlane {
  const { leftPx, topPx, widthPx, heightPx } = rectangle;
  const [red, green, blue] = CHANNEL_WEIGHTS[channel];
  const data = new Float32Array(widthPx * heightPx);
  let to = 0;
  for (let row = 0; row < heightPx; row++) {
    let from = ((topPx + row) * image.widthPx + leftPx) * 4;
    for (let column = 0; column < widthPx; column++, from += 4) {
      data[to++] = red * image.data[from]! + green * image.data[from + 1]! + blue * image.data[from + 2]!;
    }
  }
  return { widthPx, heightPx, data };
}

/** A picture reduced by a whole number in both directions, each pixel the mean of a square block; a rest at the rim is left out. */
export function reduceImage(image: RgbaImage, factor: number): RgbaImage {
  if (factor === 1) return image;
  const widthPx = Math.floor(image.widthPx / factor);
  const heightPx = Math.floor(image.heightPx / factor);
  const data = new Uint8ClampedArray(widthPx * heightPx * 4);
  const share = 1 / (factor * factor);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      let red = 0;
      let green = 0;
      let blue = 0;
      for (let dy = 0; dy < factor; dy++) {
        let from = ((row * factor + dy) * image.widthPx + column * factor) * 4;
        for (let dx = 0; dx < factor; dx++, from += 4) {
          red += image.data[from]!;
          green += image.data[from + 1]!;
          blue += image.data[from + 2]!;
        }
      }
      const to = (row * widthPx + column) * 4;
      data[to] = red * share;
      data[to + 1] = green * share;
      data[to + 2] = blue * share;
      data[to + 3] = 255;
    }
  }
  return { widthPx, heightPx, data };
}

/** Value between pixels by bilinear interpolation; beyond the rim the nearest pixel counts. Pixel centres lie at halves. */
export function sample(plane: PixelPlane, xPx: number, yPx: number): number {
  const { widthPx, heightPx, data } = plane;
  const x = Math.min(Math.max(xPx - 0.5, 0), widthPx - 1);
  const y = Math.min(Math.max(yPx - 0.5, 0), heightPx - 1);
  const column = Math.min(Math.floor(x), Math.max(widthPx - 2, 0));
  const row = Math.min(Math.floor(y), Math.max(heightPx - 2, 0));
  const fx = x - column;
  const fy = y - row;
  const i = row * widthPx + column;
  const right = widthPx > 1 ? 1 : 0;
  const below = heightPx > 1 ? widthPx : 0;
  const top = data[i]! + fx * (data[i + right]! - data[i]!);
  const bottom = data[i + below]! + fx * (data[i + below + right]! - data[i + below]!);
  return top + fy * (bottom - top);
}

/** Blur by a Gaussian of the given standard deviation, separably, cut off at three of them; the rim is repeated. */
export function blurPlane(plane: PixelPlane, sigmaPx: number): PixelPlane {
  const { widthPx, heightPx, data } = plane;
  const reach = Math.ceil(3 * sigmaPx);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) => Math.exp(-(((i - reach) / sigmaPx) ** 2) / 2));
  const total = kernel.reduce((sum, value) => sum + value, 0);
  const weights = kernel.map((value) => value / total);
  const across = new Float32Array(data.length);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      let sum = 0;
      for (let k = -reach; k <= reach; k++) {
        const from = Math.min(Math.max(column + k, 0), widthPx - 1);
        sum += weights[k + reach]! * data[row * widthPx + from]!;
      }
      across[row * widthPx + column] = sum;
    }
  }
  const blurred = new Float32Array(data.length);
  for (let row = 0; row < heightPx; row++) {
    for (let k = -reach; k <= reach; k++) {
      const from = Math.min(Math.max(row + k, 0), heightPx - 1) * widthPx;
      const weight = weights[k + reach]!;
      const to = row * widthPx;
      for (let column = 0; column < widthPx; column++) blurred[to + column]! += weight * across[from + column]!;
    }
  }
  return { widthPx, heightPx, data: blurred };
}
