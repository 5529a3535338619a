import type { ImagePoint } from '../../core/geometry/vector.js';
import type { GrayImage } from './gray-image.js';
import { levelAt } from './gray-image.js';

/** Chosen: steps shorter than this move nothing that a picture could tell. */
const CONVERGED_PX = 0.002;

const MOST_STEPS = 20;

/** How the sheet's directions run in the picture near a corner, px per mm. */
export interface SheetDirections {
  readonly along: readonly [xPx: number, yPx: number];
  readonly down: readonly [xPx: number, yPx: number];
}

/** What lies about a crossing of two edges, in mm on the sheet: a cross with arms of this length and half width. */
export interface CrossWindow {
  readonly armMm: number;
  readonly halfWidthMm: number;
}

/** Chosen: longer arms than this tell nothing more about the point, and cost time in large pictures. */
const MOST_ARM_PX = 24;

/**
 * The point where two dark and two bright fields meet crosswise: every brightness gradient near it is at right angles to the way
 * to it, which the point fulfils best by least squares (Förstner and Gülch 1987), in a window that is moved along until
 * it stays. The window is a cross along both edges, so that much of them counts while the markers stay outside. A symmetric
 * blur does not move the point.
 *
 * @param start a first guess, px from the outer corner of the top-left pixel, as the result
 * @returns null where the window leaves the picture, the point runs away by more than the window, or nothing crosses there
 */
export function refineSaddle(
  gray: GrayImage,
  start: ImagePoint,
  { along, down }: SheetDirections,
  window: CrossWindow,
): ImagePoint | null {
  const area = along[0] * down[1] - along[1] * down[0];
  if (!(Math.abs(area) > 0)) return null;
  const longest = Math.max(Math.hypot(...along), Math.hypot(...down));
  const armMm = Math.min(window.armMm, MOST_ARM_PX / longest);
  const halfWidthMm = Math.min(window.halfWidthMm, armMm);
  const halfX = Math.ceil(Math.max(Math.abs(along[0]), Math.abs(down[0])) * armMm + 1);
  const halfY = Math.ceil(Math.max(Math.abs(along[1]), Math.abs(down[1])) * armMm + 1);
  const reachPx = Math.max(LEAST_REACH_PX, halfWidthMm * longest);
  // weights do not change while the window moves
  const places: { readonly column: number; readonly row: number; readonly weight: number }[] = [];
  for (let row = -halfY; row <= halfY; row++) {
    for (let column = -halfX; column <= halfX; column++) {
      const alongMm = Math.abs(column * down[1] - row * down[0]) / Math.abs(area);
      const downMm = Math.abs(row * along[0] - column * along[1]) / Math.abs(area);
      const weight = Math.max(
        falling(alongMm / armMm) * falling(downMm / halfWidthMm),
        falling(downMm / armMm) * falling(alongMm / halfWidthMm),
      );
      if (weight > 0) places.push({ column, row, weight });
    }
  }
  let [x, y] = [start.xPx, start.yPx];
  for (let step = 0; step < MOST_STEPS; step++) {
    let [xx, xy, yy, bx, by] = [0, 0, 0, 0, 0];
    for (const { column, row, weight } of places) {
      const left = levelAt(gray, x + column - 1, y + row);
      const right = levelAt(gray, x + column + 1, y + row);
      const above = levelAt(gray, x + column, y + row - 1);
      const below = levelAt(gray, x + column, y + row + 1);
      if (left === null || right === null || above === null || below === null) return null;
      const gx = (right - left) / 2;
      const gy = (below - above) / 2;
      const across = weight * (gx * column + gy * row);
      xx += weight * gx * gx;
      xy += weight * gx * gy;
      yy += weight * gy * gy;
      bx += gx * across;
      by += gy * across;
    }
    const determinant = xx * yy - xy * xy;
    if (!(determinant > LEAST_CROSSING * ((xx + yy) / 2) ** 2)) return null;
    const moveX = (yy * bx - xy * by) / determinant;
    const moveY = (xx * by - xy * bx) / determinant;
    x += moveX;
    y += moveY;
    if (Math.hypot(x - start.xPx, y - start.yPx) > reachPx) return null;
    if (Math.hypot(moveX, moveY) < CONVERGED_PX) return { xPx: x, yPx: y };
  }
  return null;
}

/** Chosen: the doubt of the first guess. */
const LEAST_REACH_PX = 2;

/** Chosen: both directions must show; along a single straight edge the determinant is next to nothing. */
const LEAST_CROSSING = 0.02;

/** Falls smoothly to nothing at one, so that what comes in at the rim when the window moves makes no jump. */
function falling(share: number): number {
  return share < 1 ? (1 - share * share) ** 2 : 0;
}
