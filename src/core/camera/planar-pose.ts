import { adjust, type Knowledge } from '../fitting/adjustment.js';
import { homographyFromFourPoints, type DegeneratePoints } from '../geometry/homography.js';
import { toCamera, type Pose } from '../geometry/pose.js';
import { rotationFromAxes, rotationFromVector, vectorFromRotation } from '../geometry/rotation.js';
import {
  cross,
  dot,
  norm,
  normalise,
  scale,
  subtract,
  transpose,
  type ImagePoint,
  type Vector3,
} from '../geometry/vector.js';
import { fail, succeed, type Result } from '../result.js';
import type { FourCorners } from './features.js';
import { project, rayOf, type Camera } from './pinhole.js';

/** A pose of a flat body with the root mean square of what it leaves unexplained in the picture. */
export interface PlanarPose {
  readonly pose: Pose;
  readonly residualPx: number;
}

/**
 * Both poses in which a flat body of four known corners could stand, the better first. A plane seen from afar has two: its
 * normal may be mirrored at the line of sight, and only the second order of the perspective tells them apart (Collins and
 * Bartoli, Infinitesimal plane-based pose estimation, 2014). The first comes from the homography, the second from mirroring
 * its normal; each is then refined to least squares of the corners in the picture.
 *
 * @param cornersMm corners in the body's frame, z = 0, mm
 * @param cornersPx the same corners in the picture
 */
export function findPlanarPoses(
  camera: Camera,
  cornersMm: FourCorners<Vector3>,
  cornersPx: FourCorners<ImagePoint>,
): Result<readonly [PlanarPose, PlanarPose], DegeneratePoints> {
  const rays = cornersPx.map((corner) => rayOf(camera, corner));
  const planar = cornersMm.map(([x, y]) => ({ x, y }));
  const found = homographyFromFourPoints(planar, rays);
  if (!found.ok) return found;
  const h = found.value;
  const first: Vector3 = [h[0], h[3], h[6]];
  const second: Vector3 = [h[1], h[4], h[7]];
  const size = (norm(first) + norm(second)) / 2;
  if (!(size > 0) || !Number.isFinite(size)) return fail({ kind: 'degenerate-points' });
  const translationMm: Vector3 = [h[2] / size, h[5] / size, 1 / size];
  const rotation = rotationFromAxes(first, cross(first, second));
  const initial: Pose = { rotation, translationMm };
  const refined = refine(camera, cornersMm, cornersPx, initial);
  const mirrored = refine(camera, cornersMm, cornersPx, mirrorNormal(refined.pose));
  return succeed(
    refined.residualPx <= mirrored.residualPx ? ([refined, mirrored] as const) : ([mirrored, refined] as const),
  );
}

/** The same place with the normal mirrored at the line of sight. */
function mirrorNormal(pose: Pose): Pose {
  const sight = normalise(pose.translationMm);
  const columns = transpose(pose.rotation);
  const normal = columns[2];
  const mirrored = subtract(scale(sight, 2 * dot(normal, sight)), normal);
  return { rotation: rotationFromAxes(columns[0], mirrored), translationMm: pose.translationMm };
}

function refine(
  camera: Camera,
  cornersMm: FourCorners<Vector3>,
  cornersPx: FourCorners<ImagePoint>,
  initial: Pose,
): PlanarPose {
  const knowledge: Knowledge<'corner'> = {
    sources: new Array<'corner'>(8).fill('corner'),
    robust: () => false,
    residuals: (x) => {
      const pose = poseFromParameters(x);
      return cornersMm.flatMap((cornerMm, i) => {
        const seen = project(camera, toCamera(pose, cornerMm));
        return [seen.xPx - cornersPx[i]!.xPx, seen.yPx - cornersPx[i]!.yPx];
      });
    },
  };
  const outcome = adjust(knowledge, parametersOfPose(initial), POSE_STEPS);
  if (!outcome.ok) return { pose: initial, residualPx: Infinity };
  const squares = outcome.value.residuals.reduce((sum, r) => sum + r * r, 0);
  return { pose: poseFromParameters(outcome.value.parameters), residualPx: Math.sqrt(squares / 8) };
}

/** Steps for numeric derivatives of a pose: radians, then millimetres. */
export const POSE_STEPS: readonly number[] = [1e-5, 1e-5, 1e-5, 1e-3, 1e-3, 1e-3];

/** A pose as six parameters: rotation vector in radians, translation in mm, from `offset` on. */
export function poseFromParameters(x: readonly number[], offset = 0): Pose {
  return {
    rotation: rotationFromVector([x[offset]!, x[offset + 1]!, x[offset + 2]!]),
    translationMm: [x[offset + 3]!, x[offset + 4]!, x[offset + 5]!],
  };
}

export function parametersOfPose(pose: Pose): number[] {
  return [...vectorFromRotation(pose.rotation), ...pose.translationMm];
}
