import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../../calibration/contact-depth.json' with { type: 'json' };
import { seededRandom } from '../../../tests/support/seeded-random.js';
import { featuresOfScene, pdShownOfScene, type SyntheticScene } from '../../../tests/support/synthetic-face.js';
import { drawWearer } from '../../../tests/support/synthetic-wearers.js';
import type { CardPosition } from '../camera/features.js';
import type { EstimateName, FaceEstimates } from './estimate.js';
import { DEFAULT_MEASURING_SETTINGS } from './face-estimates.js';
import { createMeasureFace } from './measure-face.js';

const WEARERS = 300;

const measure = createMeasureFace({ canonicalFace, contactDepth });

/** What is true of a scene, by the name of the estimate. */
const TRUTH: Partial<Record<EstimateName, (scene: SyntheticScene) => number>> = {
  pdFar: (scene) => scene.pdFarMm,
  pdShown: pdShownOfScene,
  pdNear: (scene) => (scene.pdFarMm * 400) / 427,
  monoPdR: (scene) => scene.pdFarMm / 2 + scene.bridgeLeftMm,
  monoPdL: (scene) => scene.pdFarMm / 2 - scene.bridgeLeftMm,
  apertureR: () => 9.5,
  irisDiameter: (scene) => scene.irisMm,
  distance: (scene) => scene.eyesMm[2],
  headYaw: (scene) => (scene.yawRad * 180) / Math.PI,
  headPitch: (scene) => (scene.pitchRad * 180) / Math.PI,
  headRoll: (scene) => (scene.rollRad * 180) / Math.PI,
};

interface Outcome {
  readonly scene: SyntheticScene;
  readonly estimates: FaceEstimates;
}

/** Estimates of wearers drawn from what is said to be known; none may be refused. */
function simulate(seed: number, position: CardPosition, sameScene: boolean): readonly Outcome[] {
  const random = seededRandom(seed);
  return Array.from({ length: WEARERS }, () => {
    const { scene, seeing } = drawWearer(random, position, sameScene);
    const outcome = measure(featuresOfScene(scene, seeing), DEFAULT_MEASURING_SETTINGS);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
    return { scene, estimates: outcome.value.estimates };
  });
}

function deviations(outcomes: readonly Outcome[], name: EstimateName) {
  return outcomes.map(({ scene, estimates }) => ({
    ...estimates[name],
    deviation: estimates[name].value - TRUTH[name]!(scene),
  }));
}

describe('the uncertainty of measureFace', () => {
  const around = simulate(20_261, 'forehead', true);

  it.each<EstimateName>(['pdFar', 'pdShown', 'monoPdR', 'apertureR', 'distance', 'headYaw', 'headPitch'])(
    'of %s is the spread of deviations when all inputs vary as they are said to',
    (name) => {
      const all = deviations(around, name);
      const spread = Math.sqrt(all.reduce((sum, { deviation }) => sum + deviation ** 2, 0) / all.length);
      const stated = Math.sqrt(all.reduce((sum, { standardUncertainty: u }) => sum + u * u, 0) / all.length);
      // 300 draws know a spread to 4 % themselves; first order does the rest.
      expect(Math.abs(spread / stated - 1)).toBeLessThan(0.15);
    },
  );

  it('leaves the PD without bias', () => {
    const all = deviations(around, 'pdFar');
    const mean = all.reduce((sum, { deviation }) => sum + deviation, 0) / all.length;
    // Three standard errors of the mean.
    expect(Math.abs(mean)).toBeLessThan((3 * all[0]!.standardUncertainty) / Math.sqrt(WEARERS));
  });
});

describe.each<CardPosition>(['forehead', 'upper-lip', 'chin'])(
  'the 95 %% intervals with the card on the %s',
  (position) => {
    const wearers = simulate(7_310 + position.length, position, false);

    it.each(Object.keys(TRUTH) as EstimateName[])('hold the true %s about 95 times in 100', (name) => {
      const held = deviations(wearers, name).filter(
        ({ deviation, low, high, value }) => value - deviation >= low && value - deviation <= high,
      );
      // 300 wearers know the share to 1.3 % themselves.
      const share = held.length / WEARERS;
      expect(share).toBeGreaterThanOrEqual(0.92);
      expect(share).toBeLessThanOrEqual(0.985);
    });
  },
);
