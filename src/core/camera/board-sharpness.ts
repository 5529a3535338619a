import { distancePx, type ImagePoint } from '../geometry/vector.js';
import { BOARD, type BoardView } from './board.js';
import type { RgbaImage } from './pixel-plane.js';

/** How far from an edge of two squares the levels are looked at, over the length of a square; a marker begins beyond it. */
const REACH_SHARE = 0.12;

/** Chosen: beyond this many pixels from the edge nothing is left to be seen of a blur that could be accepted. */
const LONGEST_REACH_PX = 10;

/**
 * How softly the edges between the sheet's squares rise in a picture: standard deviation of the blur, px, as if it were
 * Gaussian. The middle edge of all that were found; null where there are none with contrast.
 *
 * A step blurred by a Gaussian of deviation s rises at most by 1 / (s sqrt(2 pi)) of its height per pixel.
 */
export function measureBoardBlurPx(image: RgbaImage, { corners }: BoardView): number | null {
  const byIndex = new Map(corners.map((corner) => [corner.index, corner]));
  const perRow = BOARD.columns - 1;
  const blurs: number[] = [];
  for (const from of corners) {
    const isRowEnd = from.index % perRow === perRow - 1;
    for (const next of isRowEnd ? [from.index + perRow] : [from.index + 1, from.index + perRow]) {
      const to = byIndex.get(next);
      const blurPx = to === undefined ? null : edgeBlurPx(image, from, to);
      if (blurPx !== null) blurs.push(blurPx);
    }
  }
  blurs.sort((a, b) => a - b);
  return blurs[Math.floor(blurs.length / 2)] ?? null;
}

/** Between two neighbouring inner corners a black and a white square meet all along. */
function edgeBlurPx(image: RgbaImage, from: ImagePoint, to: ImagePoint): number | null {
  const lengthPx = distancePx(from, to);
  const [acrossX, acrossY] = [-(to.yPx - from.yPx) / lengthPx, (to.xPx - from.xPx) / lengthPx];
  const reachPx = Math.floor(Math.min(LONGEST_REACH_PX, REACH_SHARE * lengthPx));
  if (reachPx < 2) return null;
  // Half a pixel aside, so that one of the steps straddles the edge, where it is steepest.
  // The mean of several places along the edge: noise of single pixels would look like sharpness.
  const levels = Array.from({ length: 2 * reachPx }, (_, step) => {
    const asidePx = step - reachPx + 0.5;
    let sum = 0;
    for (const share of PLACES) {
      sum += greenAt(
        image,
        from.xPx + share * (to.xPx - from.xPx) + asidePx * acrossX,
        from.yPx + share * (to.yPx - from.yPx) + asidePx * acrossY,
      );
    }
    return sum / PLACES.length;
  });
  const contrast = Math.abs((levels.at(-1) ?? 0) - (levels[0] ?? 0));
  if (contrast < LEAST_CONTRAST) return null;
  const steepest = Math.max(...levels.slice(1).map((level, index) => Math.abs(level - (levels[index] ?? 0))));
  return contrast / steepest / Math.sqrt(2 * Math.PI);
}

const PLACES = [0.4, 0.45, 0.5, 0.55, 0.6] as const;

/** Levels of 255 between black and white below which an edge says nothing. Chosen. */
const LEAST_CONTRAST = 30;

/** Level of green between the four nearest pixels; pixels count from the picture's corner. */
function greenAt({ widthPx, heightPx, data }: RgbaImage, xPx: number, yPx: number): number {
  const x = Math.min(Math.max(xPx - 0.5, 0), widthPx - 1.001);
  const y = Math.min(Math.max(yPx - 0.5, 0), heightPx - 1.001);
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const at = 4 * (top * widthPx + left) + 1;
  const row = 4 * widthPx;
  const above = (data[at] ?? 0) * (1 - x + left) + (data[at + 4] ?? 0) * (x - left);
  const below = (data[at + row] ?? 0) * (1 - x + left) + (data[at + row + 4] ?? 0) * (x - left);
  return above * (1 - y + top) + below * (y - top);
}
