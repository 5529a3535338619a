import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../../calibration/contact-depth.json' with { type: 'json' };
import {
  chainScene,
  featuresOfScene,
  pdShownOfScene,
  perfectSeeing,
  type SyntheticScene,
} from '../../../tests/support/synthetic-face.js';
import type { FollowedIris } from '../camera/follow-iris.js';
import { degreesToRadians } from '../units/angle.js';
import { DEFAULT_MEASURING_SETTINGS, type MeasuringSettings } from './face-estimates.js';
import { averaged, estimateFromFrame, uncertaintyOfMeanMm, type FrameEstimate } from './live-estimate.js';
import { measureFace } from './measure-face.js';
import type { FaceKnowledge } from './prior-knowledge.js';

const ANY_FACE: FaceKnowledge = { canonicalFace, contactDepth };

/** Faces of which the depth of the touched skin is known, 15 mm, as in the scenes. */
const KNOWN_FACE: FaceKnowledge = {
  canonicalFace,
  contactDepth: {
    ...contactDepth,
    regions: {
      forehead: { meanMm: 15, sdMm: 0.1 },
      'upper-lip': { meanMm: 15, sdMm: 0.1 },
      chin: { meanMm: 15, sdMm: 0.1 },
    },
  },
};

function settingsOf({ camera }: SyntheticScene): MeasuringSettings {
  return {
    ...DEFAULT_MEASURING_SETTINGS,
    profile: {
      widthPx: camera.widthPx,
      heightPx: camera.heightPx,
      fx: camera.focalPx,
      fy: camera.focalPx,
      cx: camera.centre.xPx,
      cy: camera.centre.yPx,
      distortion: [camera.k1, 0, 0, 0, 0],
      uncertainty: { fx: 2, fy: 2, cx: 1, cy: 1, distortion: [0.001, 0, 0, 0, 0] },
      rmsPx: 0.2,
      viewCount: 12,
    },
  };
}

function estimateOf(scene: SyntheticScene, settings = settingsOf(scene), known = KNOWN_FACE): FrameEstimate {
  const { card, iris, widthPx, heightPx } = featuresOfScene(scene, perfectSeeing(scene));
  const followed = (side: 'R' | 'L'): FollowedIris => ({ ...iris[side], softness: 0.2 });
  const support = [1, 1, 1, 1] as const;
  const estimate = estimateFromFrame(
    { widthPx, heightPx },
    {
      card: { corners: card.corners, support, strength: support, scatterPx: support, edgeWidthPx: 3 },
      position: card.position,
      iris: { R: followed('R'), L: followed('L') },
      angles: { yawRad: scene.yawRad, pitchRad: scene.pitchRad, rollRad: scene.rollRad },
    },
    settings,
    known,
  );
  if (estimate === null) throw new Error('no estimate');
  return estimate;
}

/** The card's thickness is that of a card, which the scene's paper has not. */
const PLASTIC: Partial<SyntheticScene['card']> = { source: 'edges', thicknessMm: 0.76 };

function sceneWith(changes: Partial<SyntheticScene>): SyntheticScene {
  const base = chainScene();
  return { ...base, ...changes, card: { ...base.card, ...PLASTIC } };
}

describe('estimateFromFrame', () => {
  it.each<readonly [string, Partial<SyntheticScene>]>([
    ['seen straight on', {}],
    ['turned aside', { yawRad: degreesToRadians(6) }],
    ['that leans and nods', { rollRad: degreesToRadians(7), pitchRad: degreesToRadians(4) }],
    ['aside of the middle, nearer', { eyesMm: [60, -30, 380], fixationMm: 395 }],
  ])('gives the PD of a face %s, whose card is seen without error', (_, changes) => {
    const scene = sceneWith(changes);
    const estimate = estimateOf(scene);
    expect(Math.abs(estimate.pdFarMm - scene.pdFarMm)).toBeLessThan(0.15);
    expect(Math.abs(estimate.distanceMm - scene.eyesMm[2])).toBeLessThan(3);
  });

  it('shows eyes that look far away as they are', () => {
    const scene = sceneWith({ fixationMm: 1e9 });
    const estimate = estimateOf(scene, { ...settingsOf(scene), gaze: 'far' });
    expect(Math.abs(estimate.pdFarMm - pdShownOfScene(scene))).toBeLessThan(0.15);
  });

  it('says no less doubt than the whole measuring does, nor twice as much', () => {
    const scene = sceneWith({});
    for (const settings of [settingsOf(scene), DEFAULT_MEASURING_SETTINGS]) {
      const quick = estimateOf(scene, settings, ANY_FACE);
      const whole = measureFace(featuresOfScene(scene, perfectSeeing(scene)), settings, ANY_FACE);
      if (!whole.ok) throw new Error(JSON.stringify(whole.failure));
      const { value, standardUncertainty } = whole.value.estimates.pdFar;
      const doubtMm = Math.hypot(quick.ownUncertaintyMm, quick.commonUncertaintyMm);
      expect(doubtMm).toBeGreaterThan(0.95 * standardUncertainty);
      expect(doubtMm).toBeLessThan(2 * standardUncertainty);
      expect(Math.abs(quick.pdFarMm - value)).toBeLessThan(doubtMm);
    }
  });
});

describe('the mean over frames', () => {
  const frame = (pdFarMm: number): FrameEstimate => ({
    pdFarMm,
    ownUncertaintyMm: 0.4,
    commonUncertaintyMm: 0.6,
    distanceMm: 500,
    pixelsPerMm: 2,
    tiltDeg: 3,
  });

  it('begins with the first frame, and goes to what the later ones say', () => {
    let running = averaged(null, frame(62));
    expect(running.pdFarMm).toBe(62);
    expect(running.frameCount).toBe(1);
    for (let i = 0; i < 400; i++) running = averaged(running, frame(64));
    expect(running.pdFarMm).toBeCloseTo(64, 3);
  });

  it('is, of few frames, their mean', () => {
    const running = [62, 64, 63].reduce<ReturnType<typeof averaged> | null>(
      (before, pd) => averaged(before, frame(pd)),
      null,
    );
    expect(Math.abs((running?.pdFarMm ?? 0) - 63)).toBeLessThan(0.02);
  });

  it('loses the doubt of single frames, and keeps what all have in common', () => {
    let running = averaged(null, frame(63));
    const first = uncertaintyOfMeanMm(running, frame(63));
    expect(first).toBeCloseTo(Math.hypot(0.4, 0.6), 9);
    for (let i = 0; i < 100; i++) running = averaged(running, frame(63));
    const last = uncertaintyOfMeanMm(running, frame(63));
    expect(last).toBeLessThan(0.65);
    expect(last).toBeGreaterThan(0.6);
  });
});
