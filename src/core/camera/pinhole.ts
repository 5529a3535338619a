import type { ImagePoint, Vector3 } from '../geometry/vector.js';

/**
 * A camera with the polynomial distortion model of five coefficients (Brown 1966, in the order that OpenCV documents).
 * Camera frame: x right, y down, z forward, origin at the centre of projection.
 */
export interface Camera {
  readonly fx: number;
  readonly fy: number;
  readonly cx: number;
  readonly cy: number;
  readonly distortion: Distortion;
}

export type Distortion = readonly [k1: number, k2: number, p1: number, p2: number, k3: number];

export const NO_DISTORTION: Distortion = [0, 0, 0, 0, 0];

/** Coordinates on the plane z = 1 of the camera frame, without unit. */
export interface NormalisedPoint {
  readonly x: number;
  readonly y: number;
}

/** A camera with square pixels and its principal point in the middle, from its horizontal field of view. */
export function cameraFromFieldOfView(widthPx: number, heightPx: number, fieldOfViewRad: number): Camera {
  const focalPx = widthPx / 2 / Math.tan(fieldOfViewRad / 2);
  return { fx: focalPx, fy: focalPx, cx: widthPx / 2, cy: heightPx / 2, distortion: NO_DISTORTION };
}

/** Where the lens displaces an ideal point to. */
export function distort(point: NormalisedPoint, [k1, k2, p1, p2, k3]: Distortion): NormalisedPoint {
  const { x, y } = point;
  const r2 = x * x + y * y;
  const radial = 1 + r2 * (k1 + r2 * (k2 + r2 * k3));
  return {
    x: x * radial + 2 * p1 * x * y + p2 * (r2 + 2 * x * x),
    y: y * radial + p1 * (r2 + 2 * y * y) + 2 * p2 * x * y,
  };
}

/** The ideal point of a displaced one: the inverse of `distort`, by fixed-point iteration to about 1e-12. */
export function undistort(point: NormalisedPoint, distortion: Distortion): NormalisedPoint {
  const [k1, k2, p1, p2, k3] = distortion;
  let { x, y } = point;
  for (let i = 0; i < 100; i++) {
    const r2 = x * x + y * y;
    const radial = 1 + r2 * (k1 + r2 * (k2 + r2 * k3));
    const nextX = (point.x - 2 * p1 * x * y - p2 * (r2 + 2 * x * x)) / radial;
    const nextY = (point.y - p1 * (r2 + 2 * y * y) - 2 * p2 * x * y) / radial;
    const moved = Math.abs(nextX - x) + Math.abs(nextY - y);
    x = nextX;
    y = nextY;
    if (moved < 1e-13) break;
  }
  return { x, y };
}

/** Where a point of the camera frame (mm, z > 0) appears in the picture. */
export function project(camera: Camera, pointMm: Vector3): ImagePoint {
  const bent = distort({ x: pointMm[0] / pointMm[2], y: pointMm[1] / pointMm[2] }, camera.distortion);
  return { xPx: camera.fx * bent.x + camera.cx, yPx: camera.fy * bent.y + camera.cy };
}

/** The ray of a point of the picture, as its ideal point on the plane z = 1. */
export function rayOf(camera: Camera, point: ImagePoint): NormalisedPoint {
  return undistort(
    { x: (point.xPx - camera.cx) / camera.fx, y: (point.yPx - camera.cy) / camera.fy },
    camera.distortion,
  );
}
