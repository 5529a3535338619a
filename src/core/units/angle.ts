const RADIANS_PER_DEGREE = Math.PI / 180;

/** Degrees to radians. */
export function degreesToRadians(deg: number): number {
  return deg * RADIANS_PER_DEGREE;
}

/** Radians to degrees. */
export function radiansToDegrees(rad: number): number {
  return rad / RADIANS_PER_DEGREE;
}
