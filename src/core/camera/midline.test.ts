import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json';
import { eyesFromLandmarks, LANDMARK, LANDMARK_COUNT } from './face-landmarks.js';
import type { Landmark } from './features.js';
import { MIRRORED_PAIRS, midlineFromLandmarks } from './midline.js';

const FOCAL_PX = 1000;
const DISTANCE_MM = 500;
/** Of the mean face: the pupils' plane and the height of the pupils, mm. */
const PUPILS = { heightMm: 27, forwardMm: 40 };

/** Landmarks of the mean face, moved to its left, turned about the vertical between its pupils, before a pinhole camera. */
function landmarksOf(turnRad: number, asideMm: number): readonly Landmark[] {
  const seen = (x: number, y: number, z: number): Landmark => {
    const depth = DISTANCE_MM - (z * Math.cos(turnRad) - x * Math.sin(turnRad));
    const across = x * Math.cos(turnRad) + z * Math.sin(turnRad);
    return { xPx: 640 + (FOCAL_PX * across) / depth, yPx: 360 - (FOCAL_PX * y) / depth, depthPx: 0 };
  };
  const mesh = canonicalFace.verticesMm.map((vertex) =>
    seen(vertex[0]! + asideMm, vertex[1]! - PUPILS.heightMm, vertex[2]! - PUPILS.forwardMm),
  );
  const eyes = [-31, 31].flatMap((x) => [
    [x, 0],
    [x - 6, 0],
    [x, 6],
    [x + 6, 0],
    [x, -6],
  ]);
  return [...mesh, ...eyes.map(([x, y]) => seen(x!, y!, 0))];
}

function midlineOf(turnRad: number, asideMm: number, card: Parameters<typeof midlineFromLandmarks>[3] = null) {
  const landmarks = landmarksOf(turnRad, asideMm);
  const centre = (index: number) => ({
    centre: { ...landmarks[index]!, covariance: { xx: 0.01, xy: 0, yy: 0.01 } },
  });
  const iris = { R: centre(LANDMARK.irisCentre.R), L: centre(LANDMARK.irisCentre.L) };
  return midlineFromLandmarks(landmarks, iris, eyesFromLandmarks(landmarks), card);
}

describe('midlineFromLandmarks', () => {
  it('pairs landmarks that mirror one another on the mean face', () => {
    expect(landmarksOf(0, 0)).toHaveLength(LANDMARK_COUNT);
    for (const [right, left, forwardMm] of MIRRORED_PAIRS) {
      const [a, b] = [canonicalFace.verticesMm[right]!, canonicalFace.verticesMm[left]!];
      expect(a[0]! + b[0]!).toBeCloseTo(0, 1);
      expect(a[0]).toBeLessThan(0);
      const expected = (a[2]! + b[2]!) / 2 - PUPILS.forwardMm;
      expect(Math.abs(expected - forwardMm)).toBeLessThanOrEqual(0.51);
    }
  });

  it('finds the middle of a face that stands aside of its eyes', () => {
    const { betweenPupils } = midlineOf(0, 0.8);
    // 0.8 mm at 500 mm and 1000 px.
    expect(betweenPupils!.xPx).toBeCloseTo(640 + 1.6, 1);
  });

  it('keeps the place between the pupils as the head turns, while the bridge moves aside', () => {
    for (const turnDeg of [-12, -5, 5, 12]) {
      const turnRad = (turnDeg * Math.PI) / 180;
      const { betweenPupils, point } = midlineOf(turnRad, 0);
      // The nearer half looks wider: up to half a millimetre at 12 degrees.
      expect(Math.abs(betweenPupils!.xPx - 640)).toBeLessThan(1);
      // Skin 13 mm before the pupils.
      const expected = (FOCAL_PX * 13 * Math.sin(turnRad)) / (DISTANCE_MM - 13 * Math.cos(turnRad));
      expect(Math.abs(point.xPx - betweenPupils!.xPx - expected)).toBeLessThan(0.9);
    }
  });

  it('leaves out what the card covers', () => {
    const corners = [
      { xPx: 560, yPx: 380 },
      { xPx: 720, yPx: 380 },
      { xPx: 720, yPx: 560 },
      { xPx: 560, yPx: 560 },
    ] as const;
    expect(midlineOf(0, 0.8, corners).betweenPupils!.xPx).toBeCloseTo(640 + 1.6, 1);
  });
});
