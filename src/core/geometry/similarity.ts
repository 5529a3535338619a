import type { ImagePoint } from './vector.js';

/**
 * The turn, shift and growth that take points nearest to their counterparts, in weighted least squares (closed form; Umeyama 1991 without its
 * mirrored case). At least two points must lie apart.
 */
export function fitSimilarity(
  from: readonly ImagePoint[],
  to: readonly ImagePoint[],
  weights: readonly number[] = from.map(() => 1),
): (point: ImagePoint) => ImagePoint {
  let [total, x0, y0, x1, y1] = [0, 0, 0, 0, 0];
  weights.forEach((weight, i) => {
    total += weight;
    x0 += weight * from[i]!.xPx;
    y0 += weight * from[i]!.yPx;
    x1 += weight * to[i]!.xPx;
    y1 += weight * to[i]!.yPx;
  });
  [x0, y0, x1, y1] = [x0 / total, y0 / total, x1 / total, y1 / total];
  let [same, turned, spread] = [0, 0, 0];
  weights.forEach((weight, i) => {
    const [dx, dy] = [from[i]!.xPx - x0, from[i]!.yPx - y0];
    const [ex, ey] = [to[i]!.xPx - x1, to[i]!.yPx - y1];
    same += weight * (dx * ex + dy * ey);
    turned += weight * (dx * ey - dy * ex);
    spread += weight * (dx * dx + dy * dy);
  });
  // growth times cosine and sine of the turn
  const [cosine, sine] = [same / spread, turned / spread];
  return ({ xPx, yPx }) => ({
    xPx: x1 + cosine * (xPx - x0) - sine * (yPx - y0),
    yPx: y1 + sine * (xPx - x0) + cosine * (yPx - y0),
  });
}
