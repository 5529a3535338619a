import { transpose, type Matrix3, type Vector3 } from '../geometry/vector.js';
import { anglesOfHead, rotationOfHead, type HeadAngles } from './head-pose.js';

/** Axes of the head in a frame with x right, y down and z forward (the camera's, or a card's): to the wearer's left, up, out of the face. */
export interface HeadAxes {
  readonly left: Vector3;
  readonly up: Vector3;
  readonly forward: Vector3;
}

/** Axes of a head with these angles. The viewer's axes, in which the angles are told (y up, z towards the viewer), have y and z the other way. */
export function axesOfHead(head: HeadAngles): HeadAxes {
  const [left, up, forward] = transpose(rotationOfHead(head));
  return { left: seenFromCamera(left), up: seenFromCamera(up), forward: seenFromCamera(forward) };
}

/** The inverse of `axesOfHead`. */
export function anglesOfAxes({ left, up, forward }: HeadAxes): HeadAngles {
  const columns: Matrix3 = [seenFromCamera(left), seenFromCamera(up), seenFromCamera(forward)];
  return anglesOfHead(transpose(columns));
}

function seenFromCamera([x, y, z]: Vector3): Vector3 {
  return [x, -y, -z];
}
