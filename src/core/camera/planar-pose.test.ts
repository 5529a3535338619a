import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toCamera, type Pose } from '../geometry/pose.js';
import { rotationFromVector } from '../geometry/rotation.js';
import { multiply, norm, subtract, transpose, type ImagePoint, type Vector3 } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import type { FourCorners } from './features.js';
import { NO_DISTORTION, project, type Camera } from './pinhole.js';
import { findPlanarPoses, parametersOfPose, poseFromParameters } from './planar-pose.js';
import { CARD_CORNERS_MM } from './reference-card.js';

const CAMERA: Camera = { fx: 1000, fy: 1000, cx: 640, cy: 360, distortion: NO_DISTORTION };

function seenIn(camera: Camera, pose: Pose): FourCorners<ImagePoint> {
  const [a, b, c, d] = CARD_CORNERS_MM.map((corner) => project(camera, toCamera(pose, corner)));
  return [a!, b!, c!, d!];
}

function posesOf(camera: Camera, corners: FourCorners<ImagePoint>) {
  const found = findPlanarPoses(camera, CARD_CORNERS_MM, corners);
  if (!found.ok) throw new Error(found.failure.kind);
  return found.value;
}

/** Angle between two orientations, degrees. */
function angleBetweenDeg(a: Pose, b: Pose): number {
  const r = multiply(transpose(a.rotation), b.rotation);
  return (Math.acos(Math.min(1, Math.max(-1, (r[0][0] + r[1][1] + r[2][2] - 1) / 2))) * 180) / Math.PI;
}

describe('findPlanarPoses', () => {
  it('reads off the distance of a card that stands square to the camera', () => {
    // 171.2 px wide with f = 1000: 85.6 mm at 500 mm; the centre 50 px beside the axis lies 25 mm beside it.
    const corners: FourCorners<ImagePoint> = [
      { xPx: 690 - 85.6, yPx: 360 - 53.98 },
      { xPx: 690 + 85.6, yPx: 360 - 53.98 },
      { xPx: 690 + 85.6, yPx: 360 + 53.98 },
      { xPx: 690 - 85.6, yPx: 360 + 53.98 },
    ];
    const [best] = posesOf(CAMERA, corners);
    expect(norm(subtract(best.pose.translationMm, [25, 0, 500]))).toBeLessThan(1e-4);
    expect(norm(subtract(transpose(best.pose.rotation)[2], [0, 0, 1]))).toBeLessThan(1e-5);
  });

  it('reads the turn of a card from its foreshortening: 85.6 mm at 10 degrees and 500 mm', () => {
    // x = +-(w / 2) cos / (Z +- (w / 2) sin), y = +-(h / 2) / the same depth; positive turn about y brings the left edge nearer.
    const t = degreesToRadians(10);
    const corner = (sx: number, sy: number): ImagePoint => {
      const depth = 500 - sx * 42.8 * Math.sin(t);
      return { xPx: 640 + (1000 * sx * 42.8 * Math.cos(t)) / depth, yPx: 360 + (1000 * sy * 26.99) / depth };
    };
    const [best] = posesOf(CAMERA, [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)]);
    expect(best.residualPx).toBeLessThan(1e-6);
    expect(norm(subtract(best.pose.translationMm, [0, 0, 500]))).toBeLessThan(1e-3);
    expect(transpose(best.pose.rotation)[0][0]).toBeCloseTo(Math.cos(t), 6);
    expect(transpose(best.pose.rotation)[0][2]).toBeCloseTo(-Math.sin(t), 6);
  });

  const angle = fc.double({ min: -0.45, max: 0.45, noNaN: true });
  const place = fc.tuple(
    fc.double({ min: -120, max: 120, noNaN: true }),
    fc.double({ min: -120, max: 120, noNaN: true }),
    fc.double({ min: 300, max: 900, noNaN: true }),
  );
  const lens = fc.double({ min: -0.15, max: 0.15, noNaN: true });

  it('finds the true pose among its two, through any lens, the better first', () => {
    fc.assert(
      fc.property(fc.tuple(angle, angle, angle), place, lens, (rotation, translationMm, k1) => {
        const camera: Camera = { ...CAMERA, distortion: [k1, 0, 0, 0, 0] };
        const truth: Pose = { rotation: rotationFromVector(rotation), translationMm };
        const [best, other] = posesOf(camera, seenIn(camera, truth));
        expect(best.residualPx).toBeLessThanOrEqual(other.residualPx);
        expect(best.residualPx).toBeLessThan(1e-3);
        const nearest = Math.min(
          ...[best, other].map(({ pose }) =>
            Math.max(angleBetweenDeg(pose, truth), norm(subtract(pose.translationMm, truth.translationMm))),
          ),
        );
        // degrees and millimetres alike
        expect(nearest).toBeLessThan(0.2);
      }),
      { seed: 8, numRuns: 60 },
    );
  });

  it('gives a second pose with the normal on the other side of the line of sight', () => {
    const truth: Pose = { rotation: rotationFromVector([0.3, 0.1, 0]), translationMm: [10, -20, 900] };
    const [best, other] = posesOf(CAMERA, seenIn(CAMERA, truth));
    expect(angleBetweenDeg(best.pose, truth)).toBeLessThan(0.1);
    const sight: Vector3 = [10 / 900, -20 / 900, 1];
    const sideways = ({ pose }: { pose: Pose }): number => {
      const n = transpose(pose.rotation)[2];
      return n[1] / n[2] - sight[1];
    };
    expect(sideways(best) * sideways(other)).toBeLessThan(0);
    expect(angleBetweenDeg(best.pose, other.pose)).toBeGreaterThan(20);
  });

  it('keeps the pose when the corners are named from another corner by half a turn', () => {
    const truth: Pose = { rotation: rotationFromVector([0.2, -0.15, 0.1]), translationMm: [30, -60, 450] };
    const [a, b, c, d] = seenIn(CAMERA, truth);
    const [turned] = posesOf(CAMERA, [c, d, a, b]);
    const [straight] = posesOf(CAMERA, [a, b, c, d]);
    expect(norm(subtract(turned.pose.translationMm, straight.pose.translationMm))).toBeLessThan(0.01);
    expect(norm(subtract(transpose(turned.pose.rotation)[2], transpose(straight.pose.rotation)[2]))).toBeLessThan(1e-4);
  });

  it('keeps the pose in a picture of twice the size', () => {
    const truth: Pose = { rotation: rotationFromVector([0.2, -0.15, 0.1]), translationMm: [30, -60, 450] };
    const large: Camera = { fx: 2000, fy: 2000, cx: 1280, cy: 720, distortion: NO_DISTORTION };
    const doubled = seenIn(CAMERA, truth).map(({ xPx, yPx }) => ({ xPx: 2 * xPx, yPx: 2 * yPx }));
    const [found] = posesOf(large, [doubled[0]!, doubled[1]!, doubled[2]!, doubled[3]!]);
    expect(norm(subtract(found.pose.translationMm, truth.translationMm))).toBeLessThan(0.01);
  });

  it('refuses corners in line', () => {
    const flat = [0, 1, 2, 3].map((i) => ({ xPx: 100 + 50 * i, yPx: 200 + 10 * i }));
    expect(findPlanarPoses(CAMERA, CARD_CORNERS_MM, [flat[0]!, flat[1]!, flat[2]!, flat[3]!])).toEqual({
      ok: false,
      failure: { kind: 'degenerate-points' },
    });
  });
});

describe('poseFromParameters', () => {
  it('reads from an offset what parametersOfPose wrote', () => {
    const pose: Pose = { rotation: rotationFromVector([0.1, -0.2, 0.3]), translationMm: [1, 2, 300] };
    const back = poseFromParameters([9, 9, ...parametersOfPose(pose)], 2);
    expect(back.translationMm).toEqual(pose.translationMm);
    back.rotation.forEach((row, i) => row.forEach((value, k) => expect(value).toBeCloseTo(pose.rotation[i]![k]!, 12)));
  });
});
