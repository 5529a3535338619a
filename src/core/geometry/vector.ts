/** A point or direction in the picture, in pixels: x right, y down, (0,0) at the outer corner of the top-left pixel. */
export interface ImagePoint {
  readonly xPx: number;
  readonly yPx: number;
}

/** Three coordinates in a frame that the name of the variable tells, in millimetres or without unit for a direction. */
export type Vector3 = readonly [x: number, y: number, z: number];

/** A 3x3 matrix, row by row. */
export type Matrix3 = readonly [Vector3, Vector3, Vector3];

export function add(a: Vector3, b: Vector3): Vector3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function subtract(a: Vector3, b: Vector3): Vector3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function scale(a: Vector3, factor: number): Vector3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

export function dot(a: Vector3, b: Vector3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function norm(a: Vector3): number {
  return Math.hypot(a[0], a[1], a[2]);
}

/** The unit vector along `a`; the zero vector has none, and stays as it is. */
export function normalise(a: Vector3): Vector3 {
  const length = norm(a);
  return length > 0 ? scale(a, 1 / length) : a;
}

/** Distance between two points of the picture, in pixels. */
export function distancePx(a: ImagePoint, b: ImagePoint): number {
  return Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx);
}

/** The point midway between two points of the picture. */
export function midpointPx(a: ImagePoint, b: ImagePoint): ImagePoint {
  return { xPx: (a.xPx + b.xPx) / 2, yPx: (a.yPx + b.yPx) / 2 };
}

/** Matrix times column vector. */
export function multiplyVector(m: Matrix3, v: Vector3): Vector3 {
  return [dot(m[0], v), dot(m[1], v), dot(m[2], v)];
}

/** Matrix product a b. */
export function multiply(a: Matrix3, b: Matrix3): Matrix3 {
  const bt = transpose(b);
  const row = (r: Vector3): Vector3 => [dot(r, bt[0]), dot(r, bt[1]), dot(r, bt[2])];
  return [row(a[0]), row(a[1]), row(a[2])];
}

export function transpose(m: Matrix3): Matrix3 {
  return [
    [m[0][0], m[1][0], m[2][0]],
    [m[0][1], m[1][1], m[2][1]],
    [m[0][2], m[1][2], m[2][2]],
  ];
}
