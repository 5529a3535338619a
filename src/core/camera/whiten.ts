import type { PointCovariance } from './features.js';

/** Turns a deviation of a point, in px, into two residuals of unit variance (Cholesky factor of the inverse covariance). */
export function whiten({ xx, xy, yy }: PointCovariance, dxPx: number, dyPx: number): [number, number] {
  const a = Math.sqrt(xx);
  const b = xy / a;
  const c = Math.sqrt(Math.max(yy - b * b, 1e-9));
  const first = dxPx / a;
  return [first, (dyPx - b * first) / c];
}
