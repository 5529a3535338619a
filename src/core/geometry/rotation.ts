import { cross, dot, normalise, scale, subtract, type Matrix3, type Vector3 } from './vector.js';

/**
 * Rotation matrix of a rotation vector (axis times angle in radians), by Rodrigues' formula.
 */
export function rotationFromVector(rotationRad: Vector3): Matrix3 {
  const angle = Math.hypot(...rotationRad);
  const [x, y, z] = angle > 1e-300 ? scale(rotationRad, 1 / angle) : rotationRad;
  const s = Math.sin(angle);
  const c = Math.cos(angle);
  const k = 1 - c;
  return [
    [c + k * x * x, k * x * y - s * z, k * x * z + s * y],
    [k * x * y + s * z, c + k * y * y, k * y * z - s * x],
    [k * x * z - s * y, k * y * z + s * x, c + k * z * z],
  ];
}

/**
 * Rotation vector (axis times angle in radians, angle at most pi) of a rotation matrix.
 * Near pi the axis comes from the symmetric part, where the antisymmetric part vanishes.
 */
export function vectorFromRotation(r: Matrix3): Vector3 {
  const antisymmetric: Vector3 = [r[2][1] - r[1][2], r[0][2] - r[2][0], r[1][0] - r[0][1]];
  const twiceSine = Math.hypot(...antisymmetric);
  const cosine = Math.min(1, Math.max(-1, (r[0][0] + r[1][1] + r[2][2] - 1) / 2));
  const angle = Math.atan2(twiceSine / 2, cosine);
  if (twiceSine > 1e-6) return scale(antisymmetric, angle / twiceSine);
  if (cosine > 0) return scale(antisymmetric, 0.5);
  const diagonal: Vector3 = [r[0][0], r[1][1], r[2][2]];
  const largest = diagonal.indexOf(Math.max(...diagonal)) as 0 | 1 | 2;
  const column: Vector3 = [r[0][largest], r[1][largest], r[2][largest]];
  const unit: [number, number, number] = [0, 0, 0];
  unit[largest] = 1;
  return scale(normalise([column[0] + unit[0], column[1] + unit[1], column[2] + unit[2]]), angle);
}

/** The nearest frame with z along `zAxis` and x as near to `xHint` as a right angle to z allows: columns x, y, z. */
export function rotationFromAxes(xHint: Vector3, zAxis: Vector3): Matrix3 {
  const z = normalise(zAxis);
  const x = normalise(subtract(xHint, scale(z, dot(xHint, z))));
  const y = cross(z, x);
  return [
    [x[0], y[0], z[0]],
    [x[1], y[1], z[1]],
    [x[2], y[2], z[2]],
  ];
}
