import type { ImagePoint } from './vector.js';

/** The unit direction that points down a face whose eyes stand in direction `rollRad` in the picture (y points down). */
export function perpendicularDown(rollRad: number): ImagePoint {
  return { xPx: -Math.sin(rollRad), yPx: Math.cos(rollRad) };
}

/** The point at a distance from another, px. */
export function pointAlong(from: ImagePoint, direction: ImagePoint, distancePx: number): ImagePoint {
  return { xPx: from.xPx + direction.xPx * distancePx, yPx: from.yPx + direction.yPx * distancePx };
}
