import { add, multiplyVector, type Matrix3, type Vector3 } from './vector.js';

/** Where a body stands in the camera frame: x_camera = rotation x_body + translationMm. */
export interface Pose {
  readonly rotation: Matrix3;
  readonly translationMm: Vector3;
}

/** A point of the body's frame in the camera frame, mm. */
export function toCamera(pose: Pose, pointMm: Vector3): Vector3 {
  return add(multiplyVector(pose.rotation, pointMm), pose.translationMm);
}
