import { describe, expect, it } from 'vitest';
import canonicalFace from '../../calibration/canonical-face.json' with { type: 'json' };
import type { ImagePoint, Vector3 } from '../../src/core/geometry/vector.js';
import {
  axesOfSyntheticHead,
  cardCornersOfScene,
  chainScene,
  featuresOfScene,
  landmarksOfScene,
  pdShownOfScene,
  perfectSeeing,
  photograph,
  pupilsOfScene,
} from './synthetic-face.js';

const DEGREE = Math.PI / 180;
const apart = (a: Vector3, b: Vector3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
const apartPx = (a: ImagePoint, b: ImagePoint): number => Math.hypot(a.xPx - b.xPx, a.yPx - b.yPx);

describe('axesOfSyntheticHead', () => {
  it('looks into the camera without any turn: left to picture right, up to picture top', () => {
    const { x, y, z } = axesOfSyntheticHead(0, 0, 0);
    expect(apart(x, [1, 0, 0]) + apart(y, [0, -1, 0]) + apart(z, [0, 0, -1])).toBeCloseTo(0, 12);
  });

  it('turns the face to picture right, down, and the head anticlockwise for positive angles', () => {
    expect(axesOfSyntheticHead(0.1, 0, 0).z[0]).toBeCloseTo(Math.sin(0.1), 12);
    expect(axesOfSyntheticHead(0, 0.1, 0).z[1]).toBeCloseTo(Math.sin(0.1), 12);
    // Anticlockwise as seen: what was at picture right goes up, y falls.
    expect(axesOfSyntheticHead(0, 0, 0.1).x[1]).toBeCloseTo(-Math.sin(0.1), 12);
  });
});

describe('chainScene', () => {
  const scene = chainScene();

  it('has the numbers of the worked example', () => {
    expect(pdShownOfScene(scene)).toBeCloseTo(61.8557, 3);
    const [a, b] = cardCornersOfScene(scene).map((corner) => photograph(scene.camera, corner));
    expect(b!.xPx - a!.xPx).toBeCloseTo(342.4, 9);
    const { R, L } = pupilsOfScene(scene);
    expect(photograph(scene.camera, L).xPx - photograph(scene.camera, R).xPx).toBeCloseTo(240, 2);
  });

  it('stands the wearer’s right on the left of the picture and the card over the eyes', () => {
    const { iris, card, outline } = featuresOfScene(scene, perfectSeeing(scene));
    expect(iris.R.centre.xPx).toBeLessThan(iris.L.centre.xPx);
    expect(outline.head.R.xPx).toBeLessThan(outline.head.L.xPx);
    expect(card.corners[3].yPx).toBeLessThan(iris.R.centre.yPx);
    expect(card.corners[0].yPx).toBeLessThan(card.corners[3].yPx);
  });
});

describe('cardCornersOfScene', () => {
  const scene = {
    ...chainScene(),
    yawRad: 6 * DEGREE,
    pitchRad: -4 * DEGREE,
    rollRad: 9 * DEGREE,
  };
  const card = { ...scene.card, turnRad: 5 * DEGREE, leanRad: 12 * DEGREE, rollRad: 3 * DEGREE, thicknessMm: 0.76 };
  const corners = cardCornersOfScene({ ...scene, card });

  it('keeps the card’s size at any angle', () => {
    expect(apart(corners[0], corners[1])).toBeCloseTo(85.6, 9);
    expect(apart(corners[1], corners[2])).toBeCloseTo(53.98, 9);
    expect(apart(corners[0], corners[2])).toBeCloseTo(Math.hypot(85.6, 53.98), 9);
  });

  it('holds its front a thickness before its back', () => {
    const { x, y, z } = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
    const back = [0, 1, 2].map((i) => scene.eyesMm[i]! + 55 * y[i]! + 15 * z[i]!);
    const middle = [0, 1, 2].map((i) => corners.reduce((sum, corner) => sum + corner[i]!, 0) / 4);
    const step: Vector3 = [middle[0]! - back[0]!, middle[1]! - back[1]!, middle[2]! - back[2]!];
    expect(Math.hypot(...step)).toBeCloseTo(0.76, 9);
    // Out of the face: turned to the wearer's left and facing up by the given angles.
    const along = (axis: Vector3): number => axis[0] * step[0] + axis[1] * step[1] + axis[2] * step[2];
    expect(Math.atan2(along(x), along(z)) / DEGREE).toBeCloseTo(5, 9);
    expect(Math.atan2(along(y), along(z)) / DEGREE).toBeCloseTo(12, 9);
  });
});

describe('landmarksOfScene', () => {
  const scene = chainScene();
  const seeing = { ...perfectSeeing(scene), landmarkPitchRad: 0 };
  const landmarks = landmarksOfScene(scene, seeing);

  it('shows the mean face in its size', () => {
    expect(landmarks).toHaveLength(478);
    // Outer eye corners: f width / depth, the depth from the mesh.
    const [right, left] = [33, 263].map((index) => canonicalFace.verticesMm[index]!);
    const depthMm = 500 - (right![2]! - 31);
    expect(apartPx(landmarks[33]!, landmarks[263]!)).toBeCloseTo((1940 * (left![0]! - right![0]!)) / depthMm, 6);
  });

  it('draws the irises where they are', () => {
    const { iris } = featuresOfScene(scene, seeing);
    expect(apartPx(landmarks[468]!, iris.R.centre)).toBeCloseTo(0, 9);
    expect(apartPx(landmarks[473]!, iris.L.centre)).toBeCloseTo(0, 9);
    expect(apartPx(landmarks[469]!, landmarks[471]!) / 2).toBeCloseTo(iris.R.radiusPx, 6);
  });

  it('sees the eyes behind the card as far as they are', () => {
    const lids = [159, 145, 386, 374].map((index) => landmarks[index]!.depthPx);
    const covered = landmarks.filter((landmark) => landmark.yPx < 720 - 120 && landmark.depthPx < -40);
    expect(covered.length).toBeGreaterThan(2);
    const gapPx = lids.reduce((sum, depth) => sum + depth, 0) / 4 - Math.min(...covered.map(({ depthPx }) => depthPx));
    // 15 mm at 1940 / 500 px per mm
    expect(gapPx).toBeCloseTo((15 * 1940) / 500, 6);
  });
});
