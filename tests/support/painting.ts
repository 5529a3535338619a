import type { RgbaImage } from '../../src/core/camera/pixel-plane.js';
import type { ImagePoint } from '../../src/core/geometry/vector.js';
import type { SeededRandom } from './seeded-random.js';

export type Rgb = readonly [red: number, green: number, blue: number];

/** Where a paint covers: signed distance from its rim in pixels, negative inside. */
export type Shape = (xPx: number, yPx: number) => number;

/** A picture in the making: levels without rounding, so that what is painted over another paint mixes exactly. */
export interface Canvas {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly levels: Float64Array;
}

/** Light falls off over this at every rim, as a lens in focus does: standard deviation in pixels. */
const SHARP_PX = 0.6;

export function paintBackground(
  widthPx: number,
  heightPx: number,
  colourAt: (xPx: number, yPx: number) => Rgb,
): Canvas {
  const levels = new Float64Array(3 * widthPx * heightPx);
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) {
      const colour = colourAt(x + 0.5, y + 0.5);
      const at = 3 * (y * widthPx + x);
      for (let c = 0; c < 3; c++) levels[at + c] = colour[c]!;
    }
  }
  return { widthPx, heightPx, levels };
}

/** Skin that is lit unevenly, from one side and with slow spots. */
export function skinAt(brightness: number): (xPx: number, yPx: number) => Rgb {
  return (x, y) => {
    const light = brightness * (1 + 0.0002 * x + 0.04 * Math.sin(x / 47) * Math.cos(y / 61));
    return [205 * light, 155 * light, 130 * light];
  };
}

/** Share of normal light on the bright side of a soft rim, after Abramowitz and Stegun 7.1.26 (to 1.5e-7). */
function softStep(distance: number): number {
  const z = Math.abs(distance) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * z);
  const tail =
    0.5 *
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429)))) *
    Math.exp(-z * z);
  return distance > 0 ? tail : 1 - tail;
}

/** Side of the blocks of pixels that are left out, or filled, at one glance. */
const BLOCK = 8;

/**
 * Lays a paint over the canvas; its rim is blurred by `blurPx` (standard deviation). Shapes must not overstate distances more than
 * twice.
 */
export function paint(
  canvas: Canvas,
  shape: Shape,
  colour: Rgb | ((xPx: number, yPx: number) => Rgb),
  blurPx = SHARP_PX,
): void {
  const { widthPx, heightPx, levels } = canvas;
  const reachPx = 5 * blurPx + 2 * BLOCK;
  for (let top = 0; top < heightPx; top += BLOCK) {
    for (let left = 0; left < widthPx; left += BLOCK) {
      const middle = shape(left + BLOCK / 2, top + BLOCK / 2);
      if (middle > reachPx) continue;
      for (let y = top; y < Math.min(top + BLOCK, heightPx); y++) {
        for (let x = left; x < Math.min(left + BLOCK, widthPx); x++) {
          const cover = middle < -reachPx ? 1 : softStep(shape(x + 0.5, y + 0.5) / blurPx);
          const over = typeof colour === 'function' ? colour(x + 0.5, y + 0.5) : colour;
          const at = 3 * (y * widthPx + x);
          for (let c = 0; c < 3; c++) levels[at + c]! += cover * (over[c]! - levels[at + c]!);
        }
      }
    }
  }
}

/** As many deviates are drawn, and dealt out again and again in shifted order. */
const NOISE_TABLE = 20_011;

/** Rounds the canvas to a picture, with noise of the given standard deviation in each channel. */
export function develop({ widthPx, heightPx, levels }: Canvas, random: SeededRandom, noise: number): RgbaImage {
  const deviates = Float64Array.from({ length: NOISE_TABLE }, () => random.normal(0, noise));
  const data = new Uint8ClampedArray(4 * widthPx * heightPx).fill(255);
  let next = 0;
  for (let y = 0; y < heightPx; y++) {
    // A new place in the table for each row, so that its period draws no pattern.
    next = Math.floor(random.uniform() * NOISE_TABLE);
    for (let i = y * widthPx; i < (y + 1) * widthPx; i++) {
      for (let c = 0; c < 3; c++) {
        data[4 * i + c] = levels[3 * i + c]! + deviates[next]!;
        next = next + 1 < NOISE_TABLE ? next + 1 : 0;
      }
    }
  }
  return { widthPx, heightPx, data };
}

export function disc(centre: ImagePoint, radiusPx: number): Shape {
  return (x, y) => Math.hypot(x - centre.xPx, y - centre.yPx) - radiusPx;
}

export function intersectionOf(...shapes: readonly Shape[]): Shape {
  return (x, y) => Math.max(...shapes.map((shape) => shape(x, y)));
}

/** A stroke with round ends. */
export function stroke(from: ImagePoint, to: ImagePoint, halfWidthPx: number): Shape {
  const [dx, dy] = [to.xPx - from.xPx, to.yPx - from.yPx];
  const squared = dx * dx + dy * dy;
  return (x, y) => {
    const share = Math.min(1, Math.max(0, ((x - from.xPx) * dx + (y - from.yPx) * dy) / squared));
    return Math.hypot(x - from.xPx - share * dx, y - from.yPx - share * dy) - halfWidthPx;
  };
}

/**
 * A rectangle in a plane that a camera sees, in coordinates of that plane: `toPlane` takes a pixel to it. Distances are carried to
 * pixels by the scale at the place, which is exact at the rim itself.
 */
export function rectangleInPlane(
  toPlane: (xPx: number, yPx: number) => { readonly x: number; readonly y: number },
  halfWidth: number,
  halfHeight: number,
  cornerRadius: number,
  centre: { readonly x: number; readonly y: number } = { x: 0, y: 0 },
): Shape {
  const distance = (x: number, y: number): number => {
    const p = toPlane(x, y);
    const dx = Math.abs(p.x - centre.x) - halfWidth + cornerRadius;
    const dy = Math.abs(p.y - centre.y) - halfHeight + cornerRadius;
    return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - cornerRadius;
  };
  return (x, y) => {
    const here = distance(x, y);
    const slope = Math.hypot(distance(x + 0.5, y) - distance(x - 0.5, y), distance(x, y + 0.5) - distance(x, y - 0.5));
    return here / Math.max(slope, 1e-6);
  };
}
