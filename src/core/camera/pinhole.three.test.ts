import { Euler, Object3D, PerspectiveCamera, Vector3 as ThreeVector } from 'three';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../tests/support/seeded-random.js';
import { toCamera, type Pose } from '../geometry/pose.js';
import { rotationFromVector } from '../geometry/rotation.js';
import { multiplyVector, norm, subtract, type ImagePoint, type Vector3 } from '../geometry/vector.js';
import { degreesToRadians, radiansToDegrees } from '../units/angle.js';
import type { FourCorners } from './features.js';
import { rotationOfHead } from './head-pose.js';
import { cameraFromFieldOfView, NO_DISTORTION, project, type Camera } from './pinhole.js';
import { findPlanarPoses } from './planar-pose.js';
import { CARD_CORNERS_MM } from './reference-card.js';

/*
 * Projection and poses against a second library, three.js (a PerspectiveCamera and its scene graph). Its axes are x right, y up, z towards
 * the viewer, ours x right, y down, z forward: the same but for half a turn about x, which turns a point, an axis of rotation and a
 * rotation likewise. Its pictures reach from -1 to 1, y up.
 */
const WIDTH_PX = 1280;
const HEIGHT_PX = 720;
const FIELD_OF_VIEW_DEG = 62;

/** Between two computations in double precision, px. */
const SAME_PX = 1e-8;

const flipped = ([x, y, z]: Vector3): Vector3 => [x, -y, -z];

function cameraOfThree(): PerspectiveCamera {
  const aspect = WIDTH_PX / HEIGHT_PX;
  // three asks for the vertical field of view.
  const vertical = 2 * Math.atan(Math.tan(degreesToRadians(FIELD_OF_VIEW_DEG) / 2) / aspect);
  const camera = new PerspectiveCamera(radiansToDegrees(vertical), aspect, 1, 10_000);
  camera.updateMatrixWorld();
  return camera;
}

/** A body that stands in three's scene as `pose` says in ours. */
function bodyOfThree(rotationVector: Vector3, translationMm: Vector3): Object3D {
  const body = new Object3D();
  body.position.set(...flipped(translationMm));
  const angle = norm(rotationVector);
  if (angle > 0) {
    body.quaternion.setFromAxisAngle(new ThreeVector(...flipped(rotationVector)).normalize(), angle);
  }
  body.updateMatrixWorld();
  return body;
}

/** Where three shows a point of a body's frame (given in our axes), px. */
function seenByThree(camera: PerspectiveCamera, body: Object3D, pointMm: Vector3): ImagePoint {
  const shown = body.localToWorld(new ThreeVector(...flipped(pointMm))).project(camera);
  return { xPx: ((shown.x + 1) / 2) * WIDTH_PX, yPx: ((1 - shown.y) / 2) * HEIGHT_PX };
}

/** Cards, and points of a head, as they stand before a webcam. */
function scenes(seed: number): readonly { readonly rotationVector: Vector3; readonly translationMm: Vector3 }[] {
  const random = seededRandom(seed);
  const between = (low: number, high: number): number => low + (high - low) * random.uniform();
  return Array.from({ length: 40 }, () => ({
    rotationVector: [between(-0.4, 0.4), between(-0.4, 0.4), between(-0.3, 0.3)],
    translationMm: [between(-80, 80), between(-60, 60), between(300, 900)],
  }));
}

const CAMERA = cameraFromFieldOfView(WIDTH_PX, HEIGHT_PX, degreesToRadians(FIELD_OF_VIEW_DEG));
const THREE_CAMERA = cameraOfThree();
/** ears, pupils, bridge and chin of a head, about its pupils' midpoint, mm */
const HEAD_POINTS: readonly Vector3[] = [
  [-75, 10, 95],
  [75, 10, 95],
  [-31, 0, 0],
  [31, 0, 0],
  [0, -4, -14],
  [0, 105, -9],
];

describe('projection against three', () => {
  it('shows cards and heads at the same places', () => {
    for (const { rotationVector, translationMm } of scenes(3)) {
      const pose: Pose = { rotation: rotationFromVector(rotationVector), translationMm };
      const body = bodyOfThree(rotationVector, translationMm);
      for (const point of [...CARD_CORNERS_MM, ...HEAD_POINTS]) {
        const ours = project(CAMERA, toCamera(pose, point));
        const theirs = seenByThree(THREE_CAMERA, body, point);
        expect(Math.abs(ours.xPx - theirs.xPx)).toBeLessThan(SAME_PX);
        expect(Math.abs(ours.yPx - theirs.yPx)).toBeLessThan(SAME_PX);
      }
    }
  });

  it('shows the part of a picture whose middle is not the principal point', () => {
    // three cuts a 800 x 600 picture out of the whole at (310, 40): the principal point lies at (640 - 310, 360 - 40) in it.
    const cut = cameraOfThree();
    cut.setViewOffset(WIDTH_PX, HEIGHT_PX, 310, 40, 800, 600);
    cut.updateProjectionMatrix();
    const camera: Camera = { ...CAMERA, cx: 330, cy: 320, distortion: NO_DISTORTION };
    for (const { rotationVector, translationMm } of scenes(5)) {
      const pose: Pose = { rotation: rotationFromVector(rotationVector), translationMm };
      const body = bodyOfThree(rotationVector, translationMm);
      const shown = body.localToWorld(new ThreeVector(...flipped([20, 10, 0]))).project(cut);
      const ours = project(camera, toCamera(pose, [20, 10, 0]));
      expect(Math.abs(ours.xPx - ((shown.x + 1) / 2) * 800)).toBeLessThan(SAME_PX);
      expect(Math.abs(ours.yPx - ((1 - shown.y) / 2) * 600)).toBeLessThan(SAME_PX);
    }
  });
});

describe('poses against three', () => {
  it('finds the pose of a card that three shows', () => {
    for (const { rotationVector, translationMm } of scenes(7)) {
      const body = bodyOfThree(rotationVector, translationMm);
      const [a, b, c, d] = CARD_CORNERS_MM.map((corner) => seenByThree(THREE_CAMERA, body, corner));
      const corners: FourCorners<ImagePoint> = [a!, b!, c!, d!];
      const found = findPlanarPoses(CAMERA, CARD_CORNERS_MM, corners);
      if (!found.ok) throw new Error(found.failure.kind);
      const { pose, residualPx } = found.value[0];
      expect(residualPx).toBeLessThan(1e-3);
      // Where the refinement ends, corners fit to better than a thousandth of a pixel; what that leaves open of distance and
      // angle of a card is some 5e-6 of the distance, and a few 1e-3 degrees.
      expect(norm(subtract(pose.translationMm, translationMm))).toBeLessThan(0.01);
      for (const axis of [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ] as const) {
        const theirs = new ThreeVector(...flipped(axis)).applyQuaternion(body.quaternion);
        const ours = multiplyVector(pose.rotation, axis);
        const [x, y, z] = flipped([theirs.x, theirs.y, theirs.z]);
        expect(radiansToDegrees(norm(subtract(ours, [x, y, z])))).toBeLessThan(0.01);
      }
    }
  });

  it('turns a head by yaw, pitch and roll as three does by its order YXZ', () => {
    const random = seededRandom(11);
    for (let i = 0; i < 40; i++) {
      const [yawRad, pitchRad, rollRad] = [random.normal(0, 0.3), random.normal(0, 0.3), random.normal(0, 0.3)];
      const rotation = rotationOfHead({ yawRad, pitchRad, rollRad });
      for (const point of HEAD_POINTS) {
        const theirs = new ThreeVector(...point).applyEuler(new Euler(pitchRad, yawRad, rollRad, 'YXZ'));
        expect(norm(subtract(multiplyVector(rotation, point), [theirs.x, theirs.y, theirs.z]))).toBeLessThan(1e-9);
      }
    }
  });
});
