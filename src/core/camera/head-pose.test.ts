import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import { seededRandom } from '../../../tests/support/seeded-random.js';
import {
  axesOfSyntheticHead,
  chainScene,
  landmarksOfScene,
  perfectSeeing,
} from '../../../tests/support/synthetic-face.js';
import { degreesToRadians } from '../units/angle.js';
import type { FourCorners, Landmark } from './features.js';
import { anglesOfHead, choosePoseVertices, fitHeadPose, rotationOfHead, type HeadAngles } from './head-pose.js';
import { NO_DISTORTION, type Camera } from './pinhole.js';
import { isWithin } from '../geometry/outline.js';
import type { ImagePoint } from '../geometry/vector.js';

const { camera } = chainScene();
const CAMERA: Camera = {
  fx: camera.focalPx,
  fy: camera.focalPx,
  cx: camera.centre.xPx,
  cy: camera.centre.yPx,
  distortion: NO_DISTORTION,
};

const NO_CARD: FourCorners<ImagePoint> = [
  { xPx: -4, yPx: -4 },
  { xPx: -1, yPx: -4 },
  { xPx: -1, yPx: -1 },
  { xPx: -4, yPx: -1 },
];

function landmarksOf({ yawRad, pitchRad, rollRad }: HeadAngles, eyesMm = chainScene().eyesMm): Landmark[] {
  const scene = { ...chainScene(), eyesMm, yawRad, pitchRad, rollRad };
  return landmarksOfScene(scene, {
    ...perfectSeeing(scene),
    landmarkYawRad: yawRad,
    landmarkPitchRad: pitchRad,
    landmarkRollRad: rollRad,
  });
}

function expectAngles(found: HeadAngles | null, wanted: HeadAngles, toleranceDeg: number): void {
  expect(found).not.toBeNull();
  for (const name of ['yawRad', 'pitchRad', 'rollRad'] as const) {
    expect(Math.abs(found![name] - wanted[name])).toBeLessThan(degreesToRadians(toleranceDeg));
  }
}

const angle = fc.double({ min: -0.5, max: 0.5, noNaN: true });
const angles = fc.record({ yawRad: angle, pitchRad: angle, rollRad: angle });

describe('rotationOfHead', () => {
  it('rolls, then nods, then turns', () => {
    fc.assert(
      fc.property(angles, (head) => {
        // The other composes three plane rotations of each axis; its y and z have the sign of the camera frame.
        const { x, y, z } = axesOfSyntheticHead(head.yawRad, head.pitchRad, head.rollRad);
        const r = rotationOfHead(head);
        [x, y, z].forEach((axis, column) => {
          expect(r[0][column]).toBeCloseTo(axis[0], 12);
          expect(r[1][column]).toBeCloseTo(-axis[1], 12);
          expect(r[2][column]).toBeCloseTo(-axis[2], 12);
        });
      }),
      { seed: 21, numRuns: 50 },
    );
  });

  it('is undone by anglesOfHead', () => {
    fc.assert(
      fc.property(angles, (head) => {
        const back = anglesOfHead(rotationOfHead(head));
        expect(back.yawRad).toBeCloseTo(head.yawRad, 9);
        expect(back.pitchRad).toBeCloseTo(head.pitchRad, 9);
        expect(back.rollRad).toBeCloseTo(head.rollRad, 9);
      }),
      { seed: 22, numRuns: 50 },
    );
  });
});

describe('choosePoseVertices', () => {
  it('takes as many vertices of either half', () => {
    const chosen = choosePoseVertices(canonicalFace);
    const across = chosen.map((index) => canonicalFace.verticesMm[index]![0]!);
    expect(across.filter((x) => x > 0.5)).toHaveLength(across.filter((x) => x < -0.5).length);
    expect(new Set(chosen).size).toBe(chosen.length);
    expect(chosen.length).toBeGreaterThan(100);
  });
});

describe('fitHeadPose', () => {
  it.each<HeadAngles>([
    { yawRad: 0, pitchRad: 0, rollRad: 0 },
    { yawRad: degreesToRadians(12), pitchRad: degreesToRadians(-8), rollRad: degreesToRadians(5) },
    { yawRad: degreesToRadians(-18), pitchRad: degreesToRadians(15), rollRad: degreesToRadians(-25) },
  ])('finds the angles of the mean face, %j', (head) => {
    expectAngles(fitHeadPose(CAMERA, canonicalFace, landmarksOf(head), NO_CARD), head, 0.05);
  });

  it('finds them beside the middle of the picture, where a straight head is seen from the side', () => {
    const head = { yawRad: 0, pitchRad: 0, rollRad: 0 };
    expectAngles(fitHeadPose(CAMERA, canonicalFace, landmarksOf(head, [110, 70, 480]), NO_CARD), head, 0.05);
  });

  it('bears scatter, and a tenth of the landmarks being astray', () => {
    const head = { yawRad: degreesToRadians(7), pitchRad: degreesToRadians(4), rollRad: degreesToRadians(-3) };
    const random = seededRandom(23);
    const scattered = landmarksOf(head).map((landmark, i) => ({
      ...landmark,
      xPx: landmark.xPx + random.normal(0, 3) + (i % 10 === 0 ? 60 : 0),
      yPx: landmark.yPx + random.normal(0, 3),
    }));
    expectAngles(fitHeadPose(CAMERA, canonicalFace, scattered, NO_CARD), head, 1.5);
  });

  it('leaves out what the card covers', () => {
    const head = { yawRad: degreesToRadians(5), pitchRad: 0, rollRad: 0 };
    const card: FourCorners<ImagePoint> = [
      { xPx: 780, yPx: 400 },
      { xPx: 1140, yPx: 400 },
      { xPx: 1140, yPx: 640 },
      { xPx: 780, yPx: 640 },
    ];
    const guessed = landmarksOf(head).map((landmark) =>
      isWithin(card, landmark) ? { ...landmark, xPx: 0.5 * (landmark.xPx + 960), yPx: landmark.yPx + 20 } : landmark,
    );
    expect(guessed.filter((landmark) => isWithin(card, landmark)).length).toBeGreaterThan(5);
    expectAngles(fitHeadPose(CAMERA, canonicalFace, guessed, card), head, 0.5);
  });

  it('mirrors with the picture', () => {
    const head = { yawRad: degreesToRadians(9), pitchRad: degreesToRadians(3), rollRad: degreesToRadians(6) };
    const mirrored = { ...head, yawRad: -head.yawRad, rollRad: -head.rollRad };
    expectAngles(fitHeadPose(CAMERA, canonicalFace, landmarksOf(mirrored), NO_CARD), mirrored, 0.05);
  });

  it('gives nothing for too few landmarks', () => {
    const head = { yawRad: 0, pitchRad: 0, rollRad: 0 };
    expect(fitHeadPose(CAMERA, canonicalFace, landmarksOf(head).slice(0, 20), NO_CARD)).toBeNull();
  });
});
