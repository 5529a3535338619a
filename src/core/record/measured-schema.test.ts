import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../../calibration/contact-depth.json' with { type: 'json' };
import { chainScene, featuresOfScene, perfectSeeing } from '../../../tests/support/synthetic-face.js';
import type { Advice } from '../camera/failure.js';
import { DEFAULT_MEASURING_SETTINGS } from '../estimate/face-estimates.js';
import { measureFace } from '../estimate/measure-face.js';
import type { SweepAdvice } from '../estimate/sweep.js';
import { adviceSchema, estimateSchema, faceEstimatesSchema, sweepAdviceSchema } from './measured-schema.js';

const scene = chainScene();
const measured = measureFace(featuresOfScene(scene, perfectSeeing(scene)), DEFAULT_MEASURING_SETTINGS, {
  canonicalFace,
  contactDepth,
});
if (!measured.ok) throw new Error(measured.failure.kind);
const { estimates } = measured.value;

/** Whatever it is, through the text that it is kept as. */
function asKept(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

describe('estimates', () => {
  it('come back as a picture gave them', () => {
    expect(faceEstimatesSchema.parse(asKept(estimates))).toEqual(estimates);
    for (const estimate of Object.values(estimates)) expect(estimateSchema.parse(asKept(estimate))).toEqual(estimate);
  });

  it('may be without what only some pictures tell, and of nothing else', () => {
    const { pupilDiameterR: _, ...others } = { ...estimates, pupilDiameterR: estimates.irisDiameter };
    expect(faceEstimatesSchema.parse(asKept(others))).toEqual(others);
    const { headWidth: __, ...without } = estimates;
    expect(faceEstimatesSchema.safeParse(without).success).toBe(false);
    expect(faceEstimatesSchema.parse({ ...estimates, beard: estimates.headWidth })).toEqual(estimates);
  });

  it('are refused in the other unit', () => {
    expect(faceEstimatesSchema.safeParse({ ...estimates, headYaw: estimates.pdFar }).success).toBe(false);
    expect(faceEstimatesSchema.safeParse({ ...estimates, pdFar: estimates.headYaw }).success).toBe(false);
  });

  const { pdFar } = estimates;
  it.each([
    ['without an uncertainty', { ...pdFar, standardUncertainty: 0, budget: [] }],
    ['with a budget that does not add up', { ...pdFar, budget: pdFar.budget.slice(1) }],
    [
      'with an uncertainty that its budget does not carry',
      { ...pdFar, standardUncertainty: pdFar.standardUncertainty / 2 },
    ],
    [
      'with a source twice',
      { ...pdFar, budget: [...pdFar.budget, { source: pdFar.budget[0]?.source, standardUncertainty: 0 }] },
    ],
    ['with an unknown source', { ...pdFar, budget: [...pdFar.budget, { source: 'moon', standardUncertainty: 0 }] }],
    ['outside of its interval', { ...pdFar, low: pdFar.value + 0.1 }],
    ['that is no number', { ...pdFar, value: null }],
    ['that is infinite', { ...pdFar, high: Infinity }],
    ['larger than anything', { ...pdFar, value: 20_000, high: 20_001 }],
    ['in inches', { ...pdFar, unit: 'in' }],
  ])('are refused %s', (_name, estimate) => {
    expect(estimateSchema.safeParse(estimate).success).toBe(false);
    expect(faceEstimatesSchema.safeParse({ ...estimates, pdFar: estimate }).success).toBe(false);
  });
});

describe('advice', () => {
  const everyAdvice: { readonly [Kind in Advice['kind']]: Extract<Advice, { kind: Kind }> } = {
    'come-nearer': { kind: 'come-nearer', pixelsPerMm: 1.1 },
    'card-covered': { kind: 'card-covered', edge: 'left' },
    'turn-to-camera': { kind: 'turn-to-camera', turnDeg: -9 },
    'level-card': { kind: 'level-card', rollDeg: 4 },
    'card-on-forehead': { kind: 'card-on-forehead' },
    'check-points': { kind: 'check-points', what: 'irisR' },
  };
  const everySweepAdvice: { readonly [Kind in SweepAdvice['kind']]: Extract<SweepAdvice, { kind: Kind }> } = {
    'turn-further': { kind: 'turn-further', rangeDeg: 12, usefulDeg: 20 },
    'lean-more': { kind: 'lean-more', ratio: 1.1, usefulRatio: 1.3 },
    'more-frames': { kind: 'more-frames', used: 5, useful: 12 },
    'card-slipped': { kind: 'card-slipped', fromFrame: 0 },
    'come-nearer': { kind: 'come-nearer', pixelsPerMm: 1.1 },
    'eyes-elsewhere': { kind: 'eyes-elsewhere' },
  };

  it('comes back, of every kind', () => {
    for (const advice of Object.values(everyAdvice)) expect(adviceSchema.parse(asKept(advice))).toEqual(advice);
    for (const advice of Object.values(everySweepAdvice))
      expect(sweepAdviceSchema.parse(asKept(advice))).toEqual(advice);
  });

  it('is refused of another kind, or without its facts', () => {
    expect(adviceSchema.safeParse({ kind: 'eyes-elsewhere' }).success).toBe(false);
    expect(adviceSchema.safeParse({ kind: 'card-covered', edge: 'back' }).success).toBe(false);
    expect(sweepAdviceSchema.safeParse({ kind: 'card-slipped', fromFrame: -1 }).success).toBe(false);
    expect(sweepAdviceSchema.safeParse({ kind: 'lean-more', ratio: 1.1 }).success).toBe(false);
  });
});
