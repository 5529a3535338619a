import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../../calibration/contact-depth.json' with { type: 'json' };
import { seededRandom } from '../../../tests/support/seeded-random.js';
import { featuresOfScene, pdShownOfScene, type SyntheticScene } from '../../../tests/support/synthetic-face.js';
import { drawWearer } from '../../../tests/support/synthetic-wearers.js';
import type { CardPosition } from '../camera/features.js';
import type { AlwaysEstimated, FaceEstimates } from './estimate.js';
import { DEFAULT_MEASURING_SETTINGS } from './face-estimates.js';
import { createMeasureFace } from './measure-face.js';

const WEARERS = 300;

const measure = createMeasureFace({ canonicalFace, contactDepth });

/** What is true of a scene, by the name of the estimate. */
const TRUTH: Record<AlwaysEstimated, (scene: SyntheticScene) => number> = {
  pdFar: (scene) => scene.pdFarMm,
  pdShown: pdShownOfScene,
  pdNear: (scene) => (scene.pdFarMm * 400) / 427,
  monoPdR: (scene) => scene.pdFarMm / 2 + scene.bridgeLeftMm,
  monoPdL: (scene) => scene.pdFarMm / 2 - scene.bridgeLeftMm,
  monoNearR: (scene) => ((scene.pdFarMm / 2 + scene.bridgeLeftMm) * 400) / 427,
  monoNearL: (scene) => ((scene.pdFarMm / 2 - scene.bridgeLeftMm) * 400) / 427,
  apertureR: () => 9.5,
  apertureL: () => 9.5,
  headWidth: (scene) => scene.headWidthMm,
  templeWidth: (scene) => scene.templeWidthMm,
  irisDiameter: (scene) => scene.irisMm,
  distance: (scene) => scene.eyesMm[2],
  headYaw: (scene) => (scene.yawRad * 180) / Math.PI,
  headPitch: (scene) => (scene.pitchRad * 180) / Math.PI,
  headRoll: (scene) => (scene.rollRad * 180) / Math.PI,
};

/** Least and most share of intervals that hold the truth; 300 wearers know the share to 1.3 % themselves. */
const PD_COVERAGE = [0.92, 0.98] as const;
/** Distance follows the focal length, of which the logarithm is normal: an even interval holds it about 94 times in 100. */
const OTHER_COVERAGE = [0.9, 0.985] as const;

interface Outcome {
  readonly scene: SyntheticScene;
  readonly estimates: FaceEstimates;
}

const POSITIONS: readonly CardPosition[] = ['forehead', 'upper-lip', 'chin'];

/** Estimates of wearers drawn from what is said to be known, all before one scene or everywhere with the card in all three places. */
function simulate(seed: number, sameScene: boolean): readonly Outcome[] {
  const random = seededRandom(seed);
  const outcomes: Outcome[] = [];
  let refused = 0;
  for (let i = 0; i < WEARERS; i++) {
    const { scene, seeing } = drawWearer(random, sameScene ? 'forehead' : POSITIONS[i % 3]!, sameScene);
    const outcome = measure(featuresOfScene(scene, seeing), DEFAULT_MEASURING_SETTINGS);
    if (outcome.ok) outcomes.push({ scene, estimates: outcome.value.estimates });
    // One head in a thousand nods by more than three standard deviations.
    else if (outcome.failure.kind === 'head-turned') refused++;
    else throw new Error(JSON.stringify(outcome.failure));
  }
  if (refused > 0.02 * WEARERS) throw new Error(`${refused} of ${WEARERS} wearers were refused, seed ${seed}`);
  return outcomes;
}

function deviations(outcomes: readonly Outcome[], name: AlwaysEstimated) {
  return outcomes.map(({ scene, estimates }) => ({
    ...estimates[name],
    deviation: estimates[name].value - TRUTH[name](scene),
  }));
}

describe('the uncertainty of measureFace', () => {
  const around = simulate(20_261, true);

  it.each<AlwaysEstimated>(['pdFar', 'pdShown', 'monoPdR', 'apertureR', 'distance', 'headYaw', 'headPitch'])(
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

describe('the 95 % intervals of measureFace', () => {
  const wearers = simulate(7_310, false);

  it.each(Object.keys(TRUTH) as AlwaysEstimated[])('hold the true %s about 95 times in 100', (name) => {
    const all = deviations(wearers, name);
    const held = all.filter(({ deviation, low, high, value }) => value - deviation >= low && value - deviation <= high);
    const [least, most] = name.startsWith('pd') ? PD_COVERAGE : OTHER_COVERAGE;
    expect(held.length / all.length).toBeGreaterThanOrEqual(least);
    expect(held.length / all.length).toBeLessThanOrEqual(most);
  });
});
