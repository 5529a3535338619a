import { describe, expect, it } from 'vitest';
import { degreesToRadians } from '../units/angle.js';
import { LANDMARK, LANDMARK_COUNT } from './face-landmarks.js';
import type { Landmark } from './features.js';
import { straightAheadPlace } from './straight-ahead.js';

const RADIUS_PX = 14;
/** Distances of a common face in mm, from memory: pupil from the midline, half an opening, corners behind the pupils, pupil before the turning point. */
const [PUPIL_MM, HALF_OPENING_MM, CORNERS_BEHIND_MM, TO_ROTATION_MM, IRIS_MM] = [31, 14, 6, 10.5, 5.8];

/** A level head, turned; its eyes look `asideRad` to picture right of its own straight ahead. Seen from far away. */
function seen(yawRad: number, asideRad: number): { landmarks: Landmark[]; aheadR: number } {
  const scale = RADIUS_PX / IRIS_MM;
  const landmarks = Array.from({ length: LANDMARK_COUNT }, (): Landmark => ({ xPx: 0, yPx: 0, depthPx: 0 }));
  // Yaw positive: the face turns to picture right, its left side goes away from the camera.
  const at = (x: number, forward: number): Landmark => ({
    xPx: 300 + scale * (x * Math.cos(yawRad) + forward * Math.sin(yawRad)),
    yPx: 200,
    depthPx: scale * (x * Math.sin(yawRad) - forward * Math.cos(yawRad)),
  });
  for (const side of ['R', 'L'] as const) {
    const sign = side === 'R' ? -1 : 1;
    landmarks[LANDMARK.outerEyeCorner[side]] = at(sign * (PUPIL_MM + HALF_OPENING_MM), -CORNERS_BEHIND_MM);
    landmarks[LANDMARK.innerEyeCorner[side]] = at(sign * (PUPIL_MM - HALF_OPENING_MM), -CORNERS_BEHIND_MM);
    landmarks[LANDMARK.irisCentre[side]] = at(
      sign * PUPIL_MM + TO_ROTATION_MM * Math.sin(asideRad),
      TO_ROTATION_MM * (Math.cos(asideRad) - 1),
    );
  }
  const shown = landmarks[LANDMARK.irisCentre.R]!;
  return { landmarks, aheadR: (at(-PUPIL_MM, 0).xPx - shown.xPx) / RADIUS_PX };
}

describe('straightAheadPlace', () => {
  it.each([
    ['a head that faces the camera and looks at it', 0, 0],
    ['a turned head that looks straight ahead', 12, 0],
    ['a turned head that looks at the camera', 12, -12],
    ['a head turned the other way that looks at the camera', -15, 15],
    ['a head that looks aside', 0, 8],
  ])('tells where the pupil of %s would stand', (_, yawDeg, asideDeg) => {
    const { landmarks, aheadR } = seen(degreesToRadians(yawDeg), degreesToRadians(asideDeg));
    const centre = landmarks[LANDMARK.irisCentre.R]!;
    const place = straightAheadPlace(landmarks, { centre, radiusPx: RADIUS_PX, rollRad: 0 });
    // Twice the residual of the fit on rendered heads.
    expect(Math.abs(place - aheadR)).toBeLessThan(0.24);
  });
});
