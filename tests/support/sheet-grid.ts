import { rayOf, type Camera } from '../../src/core/camera/pinhole.js';
import type { Pose } from '../../src/core/geometry/pose.js';
import { multiplyVector, transpose } from '../../src/core/geometry/vector.js';

/**
 * Where the rays of the corners of all pixels meet a flat sheet, mm in the sheet's frame, which `sheetToCamera` carries into the
 * camera's; row by row, x before y. Within a pixel one may go straight from corner to corner.
 */
export function sheetGrid(camera: Camera, sheetToCamera: Pose, widthPx: number, heightPx: number): Float64Array {
  const inverse = transpose(sheetToCamera.rotation);
  const origin = multiplyVector(inverse, sheetToCamera.translationMm);
  const grid = new Float64Array(2 * (widthPx + 1) * (heightPx + 1));
  let at = 0;
  for (let row = 0; row <= heightPx; row++) {
    for (let column = 0; column <= widthPx; column++) {
      const ray = rayOf(camera, { xPx: column, yPx: row });
      const along = multiplyVector(inverse, [ray.x, ray.y, 1]);
      const depth = origin[2] / along[2];
      grid[at++] = depth * along[0] - origin[0];
      grid[at++] = depth * along[1] - origin[1];
    }
  }
  return grid;
}
