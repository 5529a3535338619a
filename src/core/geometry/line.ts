import type { ImagePoint } from './vector.js';

/** A line in the picture: points with normalX x + normalY y = offsetPx; the normal has length one. */
export interface ImageLine {
  readonly normalX: number;
  readonly normalY: number;
  readonly offsetPx: number;
}

/** The line through two different points; its normal is the direction a to b turned by a quarter clockwise as seen. */
export function lineThrough(a: ImagePoint, b: ImagePoint): ImageLine {
  const length = Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx);
  const normalX = -(b.yPx - a.yPx) / length;
  const normalY = (b.xPx - a.xPx) / length;
  return { normalX, normalY, offsetPx: normalX * a.xPx + normalY * a.yPx };
}

/** Where two lines meet, or null where they are parallel to within a part in a million. */
export function intersection(a: ImageLine, b: ImageLine): ImagePoint | null {
  const determinant = a.normalX * b.normalY - a.normalY * b.normalX;
  if (Math.abs(determinant) < 1e-6) return null;
  return {
    xPx: (a.offsetPx * b.normalY - b.offsetPx * a.normalY) / determinant,
    yPx: (a.normalX * b.offsetPx - b.normalX * a.offsetPx) / determinant,
  };
}

/** Signed distance of a point from a line, positive on the side to which the normal points, px. */
export function signedDistancePx(line: ImageLine, point: ImagePoint): number {
  return line.normalX * point.xPx + line.normalY * point.yPx - line.offsetPx;
}
