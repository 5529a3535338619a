import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../../calibration/contact-depth.json' with { type: 'json' };
import {
  axesOfSyntheticHead,
  chainScene,
  featuresOfScene,
  perfectSeeing,
  photograph,
  type SyntheticScene,
} from '../../../tests/support/synthetic-face.js';
import { exampleSweep, framesOfSweep } from '../../../tests/support/synthetic-sweep.js';
import type { CameraProfile } from '../camera/camera-profile.js';
import type { PictureFeatures } from '../camera/features.js';
import type { ImagePoint, Vector3 } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import { DEFAULT_MEASURING_SETTINGS, type FaceMeasurement } from './face-estimates.js';
import { sidesApartMm, sidesTangent } from './head-sides.js';
import { measureFace } from './measure-face.js';
import { createMeasureSweep } from './measure-sweep.js';
import type { FaceKnowledge } from './prior-knowledge.js';

const KNOWN = { canonicalFace, contactDepth };
/** A forehead that is known to touch the card where the example's does. */
const KNOWN_FOREHEAD: FaceKnowledge = {
  canonicalFace,
  contactDepth: { ...contactDepth, regions: { ...contactDepth.regions, forehead: { meanMm: 15, sdMm: 0.1 } } },
};
const APART_MM = 150;
/** As far behind the pupils as such an edge is taken to lie: 0.55 of its width. */
const BEHIND_MM = 82.5;
/** 0.997 of the distance of the edges */
const WIDTH_MM = 149.55;

type Stance = Pick<SyntheticScene, 'eyesMm' | 'yawRad' | 'pitchRad' | 'rollRad'>;

/** The features with the edges of the skin where a camera shows points of the head (own geometry). */
function withSkinEdge(
  features: PictureFeatures,
  camera: SyntheticScene['camera'],
  { eyesMm, yawRad, pitchRad, rollRad }: Stance,
): PictureFeatures {
  const { x, z } = axesOfSyntheticHead(yawRad, pitchRad, rollRad);
  const at = (side: 1 | -1): ImagePoint =>
    photograph(
      camera,
      eyesMm.map((eyes, i) => eyes + (side * APART_MM * x[i]!) / 2 - BEHIND_MM * z[i]!) as unknown as Vector3,
    );
  return { ...features, outline: { ...features.outline, skinEdge: { R: at(-1), L: at(1), uncertaintyPx: 1 } } };
}

/** With a camera that is known well. */
function measured(features: PictureFeatures): FaceMeasurement['estimates'] {
  const { widthPx, heightPx, focalPx, centre } = { ...chainScene().camera };
  const profile: CameraProfile = {
    ...{ widthPx, heightPx, fx: focalPx, fy: focalPx, cx: centre.xPx, cy: centre.yPx, distortion: [0, 0, 0, 0, 0] },
    uncertainty: { fx: 1, fy: 1, cx: 0.5, cy: 0.5, distortion: [1e-3, 1e-3, 1e-4, 1e-4, 0] },
    ...{ rmsPx: 0.2, viewCount: 14 },
  };
  const outcome = measureFace(features, { ...DEFAULT_MEASURING_SETTINGS, profile }, KNOWN_FOREHEAD);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
  return outcome.value.estimates;
}

describe('sides of the head', () => {
  it('stand as far apart as their picture at their depth says', () => {
    // 150 mm seen from 500 + 82.5 mm; landmarks 60 mm behind the pupils
    expect(sidesTangent('skin-edge', APART_MM, 500)).toBeCloseTo(150 / 582.5, 12);
    expect(sidesTangent('landmarks', APART_MM, 500)).toBeCloseTo(150 / 560, 12);
  });

  it.each(['skin-edge', 'landmarks'] as const)('are found again from their picture: %s', (kind) => {
    for (const apartMm of [120, 145, 170]) {
      expect(sidesApartMm(kind, sidesTangent(kind, apartMm, 430), 430)).toBeCloseTo(apartMm, 10);
    }
  });
});

describe('head width of one picture', () => {
  const straight = chainScene();

  it('follows from the edge of the skin where that is seen', () => {
    const { headWidth, templeWidth } = measured(
      withSkinEdge(featuresOfScene(straight, perfectSeeing(straight)), straight.camera, straight),
    );
    expect(Math.abs(headWidth.value - WIDTH_MM)).toBeLessThan(0.05);
    expect(Math.abs(templeWidth.value - straight.templeWidthMm)).toBeLessThan(0.05);
  });

  it('is then doubted less than with landmarks alone', () => {
    const features = featuresOfScene(straight, perfectSeeing(straight));
    const { headWidth } = measured(withSkinEdge(features, straight.camera, straight));
    expect(headWidth.standardUncertainty).toBeLessThan(0.85 * measured(features).headWidth.standardUncertainty);
    // The edge lies at 1.3 % of the width from what it stands for.
    expect(headWidth.standardUncertainty).toBeGreaterThan(0.013 * WIDTH_MM);
  });

  it('is left to the landmarks when the head is turned out of the line of sight', () => {
    const turned: SyntheticScene = { ...straight, yawRad: degreesToRadians(9) };
    const features = featuresOfScene(turned, perfectSeeing(turned));
    expect(measured(withSkinEdge(features, turned.camera, turned)).headWidth).toEqual(measured(features).headWidth);
  });

  it('follows from the edge of a head aside that is turned towards the camera', () => {
    // 90 mm to the side at 500 mm: turned back by atan(90 / 500) it faces the camera.
    const aside: SyntheticScene = { ...straight, eyesMm: [90, 0, 500], yawRad: -Math.atan(90 / 500) };
    const features = featuresOfScene(aside, perfectSeeing(aside));
    const seen = measured(withSkinEdge(features, aside.camera, aside)).headWidth;
    expect(seen.value).not.toBeCloseTo(measured(features).headWidth.value, 1);
  });
});

describe('head width of a sweep', () => {
  const sweep = exampleSweep();
  const { camera } = sweep.head;
  const frames = framesOfSweep(sweep);
  const measure = createMeasureSweep(KNOWN);
  const widthOf = (seen: (frame: number) => boolean) => {
    const shown = frames.map((each, i) => (seen(i) ? withSkinEdge(each, camera, sweep.stances[i]!) : each));
    const outcome = measure(shown, DEFAULT_MEASURING_SETTINGS, () => undefined);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
    return outcome.value.estimates.headWidth;
  };
  const byLandmarks = widthOf(() => false);
  /** The frame that shows the head turned least. */
  const facing = sweep.stances.map(({ yawRad, eyesMm }) => Math.abs(yawRad + Math.atan(eyesMm[0] / eyesMm[2])));
  const straightest = facing.indexOf(Math.min(...facing));

  it('follows from the edge of the skin in those frames that face the camera', () => {
    const width = widthOf(() => true);
    expect(Math.abs(width.value - WIDTH_MM)).toBeLessThan(0.5);
    expect(width.standardUncertainty).toBeLessThan(0.75 * byLandmarks.standardUncertainty);
  });

  it('does not trust one frame', () => {
    expect(widthOf((frame) => frame === straightest)).toEqual(byLandmarks);
  });
});
