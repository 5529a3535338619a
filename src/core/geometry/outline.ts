import type { ImagePoint } from './vector.js';

/** Whether a point lies within a convex or concave outline (even-odd rule). */
export function isWithin(outline: readonly ImagePoint[], point: ImagePoint): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const a = outline[i]!;
    const b = outline[j]!;
    if (
      a.yPx > point.yPx !== b.yPx > point.yPx &&
      point.xPx < ((b.xPx - a.xPx) * (point.yPx - a.yPx)) / (b.yPx - a.yPx) + a.xPx
    ) {
      inside = !inside;
    }
  }
  return inside;
}
