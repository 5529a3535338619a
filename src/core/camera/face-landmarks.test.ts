import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import { chainScene, landmarksOfScene, perfectSeeing } from '../../../tests/support/synthetic-face.js';
import { degreesToRadians } from '../units/angle.js';
import { eyesFromLandmarks, LANDMARK, landmarkAt } from './face-landmarks.js';

/** A place of the mean face in its own frame, mm: x to the wearer's left, y up. */
function meanFaceAt(index: number): { readonly x: number; readonly y: number; readonly z: number } {
  const [x, y, z] = canonicalFace.verticesMm[index]!;
  return { x: x!, y: y!, z: z! };
}

describe('LANDMARK', () => {
  it.each(['outerEyeCorner', 'innerEyeCorner', 'upperLid', 'lowerLid', 'faceSide', 'templeSide'] as const)(
    'names mirrored places of the mean face for %s, R on the wearer’s right',
    (name) => {
      const R = meanFaceAt(LANDMARK[name].R);
      const L = meanFaceAt(LANDMARK[name].L);
      expect(R.x).toBeLessThan(0);
      expect(L.x).toBeCloseTo(-R.x, 3);
      expect(L.y).toBeCloseTo(R.y, 3);
    },
  );

  it.each(['upperLidMargin', 'lowerLidMargin'] as const)('runs along %s from the outer to the inner corner', (name) => {
    for (const side of ['R', 'L'] as const) {
      const across = LANDMARK[name][side].map((index) => Math.abs(meanFaceAt(index).x));
      expect(across).toEqual([...across].sort((a, b) => b - a));
      expect(across[0]!).toBeLessThan(Math.abs(meanFaceAt(LANDMARK.outerEyeCorner[side]).x));
      expect(across.at(-1)!).toBeGreaterThan(Math.abs(meanFaceAt(LANDMARK.innerEyeCorner[side]).x));
    }
    const upper = meanFaceAt(LANDMARK.upperLid.R);
    expect(upper.y).toBeGreaterThan(meanFaceAt(LANDMARK.lowerLid.R).y);
  });

  it('has its single places on the midline, from forehead to chin', () => {
    const down = [
      LANDMARK.foreheadTop,
      LANDMARK.bridge,
      LANDMARK.crest,
      LANDMARK.noseTip,
      LANDMARK.upperLip,
      LANDMARK.lowerLip,
      LANDMARK.chin,
    ].map(meanFaceAt);
    down.forEach(({ x }) => expect(Math.abs(x)).toBeLessThan(0.01));
    const heights = down.map(({ y }) => y);
    expect(heights).toEqual([...heights].sort((a, b) => b - a));
  });
});

describe('eyesFromLandmarks', () => {
  it('is where the eyes of a known scene are', () => {
    const scene = { ...chainScene(), rollRad: degreesToRadians(10) };
    const eyes = eyesFromLandmarks(landmarksOfScene(scene, perfectSeeing(scene)));
    // 240 px apart around the middle of the picture; radius f 11.71 / 2 / 500.
    expect(eyes.spanPx).toBeCloseTo(240, 2);
    expect(eyes.middle.xPx).toBeCloseTo(960, 6);
    expect(eyes.middle.yPx).toBeCloseTo(720, 6);
    expect(eyes.irisRadiusPx.R).toBeCloseTo((1940 * 11.71) / 2 / 500, 2);
    // A head that leans anticlockwise as seen has its left eye higher: negative as y points down.
    expect(eyes.rollRad).toBeCloseTo(degreesToRadians(-10), 9);
    expect(eyes.irisCentre.R.xPx).toBeLessThan(eyes.irisCentre.L.xPx);
  });
});

describe('landmarkAt', () => {
  it('throws where a list of landmarks is too short', () => {
    expect(() => landmarkAt([], 5)).toThrow('landmark 5 of 0');
  });
});
