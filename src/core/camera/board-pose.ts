import { invertSymmetric, multiplyMatrixVector } from '../fitting/linear-system.js';
import type { Pose } from '../geometry/pose.js';
import { rotationFromAxes } from '../geometry/rotation.js';
import { cross, norm, type Vector3 } from '../geometry/vector.js';
import { boardCornerMm, type BoardCorner } from './board.js';
import { rayOf, type Camera } from './pinhole.js';

/**
 * How the printed sheet lies before the camera: from the sheet's frame (mm from the outer corner of its top-left square, x along
 * the columns, y down along the rows, z into the paper) to the camera frame. Rough: to some degrees where the camera is only
 * assumed, which is enough to lead a person; a profile is made by the full adjustment.
 *
 * By least squares of the homography from sheet to rays with its last entry held at one (direct linear transformation; Hartley
 * and Zisserman, Multiple View Geometry, 2nd edition, 4.1), taken apart after Zhang 2000, 3.1.
 *
 * @returns null where the corners do not span the sheet (fewer than four, or all in line)
 */
export function findBoardPose(camera: Camera, corners: readonly BoardCorner[]): Pose | null {
  if (corners.length < 4) return null;
  const middle = meanOfSheet(corners);
  const size = 8;
  const normal = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  const addEquation = (row: readonly number[], value: number) => {
    for (let a = 0; a < size; a++) {
      right[a]! += row[a]! * value;
      for (let b = 0; b < size; b++) normal[a]![b]! += row[a]! * row[b]!;
    }
  };
  for (const corner of corners) {
    const { xMm, yMm } = boardCornerMm(corner.index);
    // about the middle of the corners: the depth there is not zero, so that the last entry can be one
    const x = (xMm - middle.xMm) / SHEET_SCALE_MM;
    const y = (yMm - middle.yMm) / SHEET_SCALE_MM;
    const ray = rayOf(camera, corner);
    addEquation([x, y, 1, 0, 0, 0, -ray.x * x, -ray.x * y], ray.x);
    addEquation([0, 0, 0, x, y, 1, -ray.y * x, -ray.y * y], ray.y);
  }
  const inverse = invertSymmetric(normal);
  if (inverse === null) return null;
  const h = multiplyMatrixVector(inverse, right).map((entry, i) =>
    i % 3 === 2 ? entry : entry / SHEET_SCALE_MM,
  ) as unknown as readonly [number, number, number, number, number, number, number, number];
  const first: Vector3 = [h[0], h[3], h[6]];
  const second: Vector3 = [h[1], h[4], h[7]];
  const scale = (norm(first) + norm(second)) / 2;
  if (!(scale > 0) || !Number.isFinite(scale)) return null;
  const rotation = rotationFromAxes(first, cross(first, second));
  const [xMm, yMm, zMm] = [h[2] / scale, h[5] / scale, 1 / scale];
  const shifted = (row: Vector3) => row[0] * middle.xMm + row[1] * middle.yMm;
  return {
    rotation,
    translationMm: [xMm - shifted(rotation[0]), yMm - shifted(rotation[1]), zMm - shifted(rotation[2])],
  };
}

/** Chosen: brings the sheet's coordinates to about one, for the sake of the numbers. */
const SHEET_SCALE_MM = 100;

function meanOfSheet(corners: readonly BoardCorner[]): { readonly xMm: number; readonly yMm: number } {
  let [xMm, yMm] = [0, 0];
  for (const { index } of corners) {
    const place = boardCornerMm(index);
    xMm += place.xMm / corners.length;
    yMm += place.yMm / corners.length;
  }
  return { xMm, yMm };
}
