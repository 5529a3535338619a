import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../../calibration/contact-depth.json' with { type: 'json' };
import {
  chainScene,
  featuresOfScene,
  perfectSeeing,
  type SyntheticScene,
} from '../../../tests/support/synthetic-face.js';
import type { CameraProfile } from '../camera/camera-profile.js';
import type { PictureFeatures } from '../camera/features.js';
import type { AlwaysEstimated, BudgetSource, Estimate, EstimateName } from './estimate.js';
import { DEFAULT_MEASURING_SETTINGS } from './face-estimates.js';
import { measureFace } from './measure-face.js';
import {
  LEAST_GAIN,
  mostHelpful,
  REMEDY_KINDS,
  uncertaintyAfter,
  type RemedyContext,
  type RemedyKind,
} from './most-helpful.js';

function estimate(budget: Partial<Record<BudgetSource, number>>): Estimate {
  const lines = (Object.entries(budget) as [BudgetSource, number][])
    .map(([source, standardUncertainty]) => ({ source, standardUncertainty }))
    .sort((a, b) => b.standardUncertainty - a.standardUncertainty);
  const u = Math.hypot(...lines.map(({ standardUncertainty }) => standardUncertainty));
  return { value: 63, standardUncertainty: u, low: 63 - 1.96 * u, high: 63 + 1.96 * u, unit: 'mm', budget: lines };
}

/** One picture of a bought card on the forehead at 40 cm, with a profile and hand marks: nothing but a sweep is left to do better. */
const BEST_PICTURE: RemedyContext = {
  name: 'pdFar',
  isSweep: false,
  hasProfile: true,
  cardSource: 'edges',
  cardPosition: 'forehead',
  cardToEyesMm: 45,
  distanceMm: 400,
  lidsByHandShare: null,
  midlineByHandShare: null,
};

describe('the most helpful remedy', () => {
  it('takes the one with the largest gain and says what is left', () => {
    // lids 3 by hand halved, card 4 stays: 1.5² + 4² = 18.25 against 25
    const aperture = estimate({ 'lid-edges': 3, 'card-size': 4 });
    const context = { ...BEST_PICTURE, isSweep: true, name: 'apertureR', lidsByHandShare: 0.5 } as const;
    expect(mostHelpful(aperture, context)).toEqual({
      kind: 'place-lids-by-hand',
      standardUncertainty: expect.closeTo(Math.sqrt(18.25), 12) as number,
    });
    // Seen by its markers, the card's own 4 shrinks by 0.125 / 85.6 / sqrt(3) / 0.002 = 0.4215, to 1.686: the better of both.
    expect(mostHelpful(aperture, { ...context, cardSource: 'markers' })).toEqual({
      kind: 'use-bought-card',
      standardUncertainty: expect.closeTo(Math.hypot(3, 4 * 0.42155), 3) as number,
    });
  });

  it('puts the budget of a sweep in the place of the picture’s, and leaves the card its size', () => {
    const before = estimate({ 'contact-depth': 0.8, 'head-pose': 0.5, 'card-size': 0.3 });
    const remedy = mostHelpful(before, BEST_PICTURE);
    // The rendered sweeps claimed 0.155 mm for a PD, 0.087 of it from the size of the card: 0.128 without.
    expect(remedy?.kind).toBe('take-sweep');
    expect(Math.abs(remedy!.standardUncertainty - Math.hypot(0.128, 0.3))).toBeLessThan(0.005);
    // Lid margins are wrong in all frames alike: a picture that knows them as well as that gains nothing.
    const lids = estimate({ 'lid-edges': 0.25, 'contact-depth': 0.05 });
    expect(mostHelpful(lids, { ...BEST_PICTURE, name: 'apertureR' })).toBeNull();
  });

  it('is none where nothing gains more than a tenth', () => {
    const context = { ...BEST_PICTURE, isSweep: true, name: 'apertureR', lidsByHandShare: 0 } as const;
    // Without the lids 4.359² = 19 of 20 would be left, or 3.6² = 12.96 of 16: just less and just more than a tenth of 4.
    expect(mostHelpful(estimate({ 'lid-edges': 1, 'head-shape': Math.sqrt(19) }), context)).toBeNull();
    expect(mostHelpful(estimate({ 'lid-edges': 1.74, 'head-shape': 3.605 }), context)).toBeNull();
    expect(mostHelpful(estimate({ 'lid-edges': 1.76, 'head-shape': 3.595 }), context)?.kind).toBe('place-lids-by-hand');
    expect(mostHelpful(estimate({ 'head-shape': 5 }), { ...context, name: 'headWidth' })).toBeNull();
  });

  it('names each remedy where its sources are the doubt', () => {
    const kindOf = (budget: Partial<Record<BudgetSource, number>>, changes: Partial<RemedyContext>) =>
      mostHelpful(estimate(budget), { ...BEST_PICTURE, ...changes })?.kind;
    const found: Record<RemedyKind, RemedyKind | undefined> = {
      'take-sweep': kindOf({ 'contact-depth': 1 }, {}),
      'make-profile': kindOf({ camera: 1 }, { hasProfile: false }),
      'come-nearer': kindOf({ 'lid-edges': 1 }, { name: 'pupilDiameterR', distanceMm: 800 }),
      'card-on-forehead': kindOf({ 'head-pose': 1 }, { name: 'irisDiameter', cardPosition: 'chin' }),
      'card-nearer-eyes': kindOf({ 'head-pose': 1 }, { name: 'irisDiameter', cardToEyesMm: 80 }),
      'use-bought-card': kindOf({ 'card-size': 1 }, { cardSource: 'markers' }),
      'place-lids-by-hand': kindOf({ 'lid-edges': 1 }, { name: 'apertureL', lidsByHandShare: 0.2 }),
      'place-midline-by-hand': kindOf({ midline: 1 }, { name: 'monoPdL', midlineByHandShare: 0.3 }),
      repeat: kindOf({ 'between-frames': 1 }, { isSweep: true }),
    };
    REMEDY_KINDS.forEach((kind) => {
      expect(found[kind]).toBe(kind);
    });
  });

  it('never asks for what was done', () => {
    const share = fc.double({ min: 0.01, max: 3, noNaN: true });
    const budgets = fc.record({
      'card-size': share,
      'card-edges': share,
      'iris-edges': share,
      'lid-edges': share,
      'contact-depth': share,
      camera: share,
      'head-pose': share,
      midline: share,
      gaze: share,
    });
    const names = fc.constantFrom<EstimateName[]>('pdFar', 'monoPdR', 'apertureL', 'headWidth', 'irisDiameter');
    const contexts = fc.record({
      name: names,
      isSweep: fc.boolean(),
      hasProfile: fc.boolean(),
      cardSource: fc.constantFrom<RemedyContext['cardSource'][]>('edges', 'markers', 'hand'),
      cardPosition: fc.constantFrom<RemedyContext['cardPosition'][]>('forehead', 'upper-lip', 'chin'),
      cardToEyesMm: fc.double({ min: 30, max: 140, noNaN: true }),
      distanceMm: fc.double({ min: 250, max: 1200, noNaN: true }),
      lidsByHandShare: fc.option(fc.double({ min: 0.1, max: 0.9, noNaN: true })),
      midlineByHandShare: fc.option(fc.double({ min: 0.1, max: 0.9, noNaN: true })),
    });
    fc.assert(
      fc.property(budgets, contexts, (budget, context) => {
        const before = estimate(budget);
        const remedy = mostHelpful(before, context);
        if (remedy === null) return;
        expect(remedy.standardUncertainty).toBeLessThan((1 - LEAST_GAIN) * before.standardUncertainty);
        for (const kind of REMEDY_KINDS) {
          const after = uncertaintyAfter(kind, before, context);
          if (after !== null) expect(after).toBeGreaterThanOrEqual(remedy.standardUncertainty);
        }
        if (context.isSweep) expect(['take-sweep', 'card-on-forehead', 'card-nearer-eyes']).not.toContain(remedy.kind);
        if (context.hasProfile) expect(remedy.kind).not.toBe('make-profile');
        if (context.cardSource !== 'markers') expect(remedy.kind).not.toBe('use-bought-card');
        if (context.cardPosition === 'forehead') expect(remedy.kind).not.toBe('card-on-forehead');
        else expect(remedy.kind).not.toBe('card-nearer-eyes');
        if (context.distanceMm <= 400) expect(remedy.kind).not.toBe('come-nearer');
        if (context.lidsByHandShare === null) expect(remedy.kind).not.toBe('place-lids-by-hand');
        if (context.midlineByHandShare === null) expect(remedy.kind).not.toBe('place-midline-by-hand');
      }),
      { seed: 5 },
    );
  });
});

/*
 * What a remedy promises against what it does: the same simulated wearer is measured before and after it. A promise may be smaller than what
 * comes of it (it is an upper bound of what is left), but hardly larger.
 */
describe('the promise of a remedy', () => {
  interface Before {
    readonly scene: SyntheticScene;
    readonly features: PictureFeatures;
    readonly profile: CameraProfile | null;
  }

  function scene(changes: Partial<SyntheticScene>, card: Partial<SyntheticScene['card']> = {}): SyntheticScene {
    const base = chainScene();
    // the field of view that is assumed of an unknown camera, so that a profile changes the doubt and not the numbers
    const camera = { ...base.camera, focalPx: 0.8 * 1920 };
    return { ...base, camera, ...changes, card: { ...base.card, source: 'edges', thicknessMm: 0.76, ...card } };
  }

  function before(one: SyntheticScene, profile: CameraProfile | null = profileOf(one)): Before {
    return { scene: one, features: featuresOfScene(one, { ...perfectSeeing(one), cornerPx: 0.4 }), profile };
  }

  function profileOf({ camera }: SyntheticScene): CameraProfile {
    const { widthPx, heightPx, focalPx, centre, k1 } = camera;
    return {
      widthPx,
      heightPx,
      fx: focalPx,
      fy: focalPx,
      cx: centre.xPx,
      cy: centre.yPx,
      distortion: [k1, 0, 0, 0, 0],
      uncertainty: { fx: 3, fy: 3, cx: 1, cy: 1, distortion: [0.002, 0, 0, 0, 0] },
      rmsPx: 0.3,
      viewCount: 12,
    };
  }

  function measured({ features, profile }: Before, name: AlwaysEstimated): Estimate {
    const known = { canonicalFace, contactDepth };
    const outcome = measureFace(features, { ...DEFAULT_MEASURING_SETTINGS, profile }, known);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.failure));
    return outcome.value.estimates[name];
  }

  /** What was promised over what came of it. */
  function promise(
    kind: RemedyKind,
    name: AlwaysEstimated,
    first: Before,
    second: Before,
    changes: Partial<RemedyContext> = {},
  ): number {
    const context: RemedyContext = {
      name,
      isSweep: false,
      hasProfile: first.profile !== null,
      cardSource: first.scene.card.source,
      cardPosition: first.scene.card.position,
      cardToEyesMm: Math.abs(first.scene.card.backMm[1]),
      distanceMm: first.scene.eyesMm[2],
      lidsByHandShare: null,
      midlineByHandShare: null,
      ...changes,
    };
    const promised = uncertaintyAfter(kind, measured(first, name), context);
    expect(promised).not.toBeNull();
    return promised! / measured(second, name).standardUncertainty;
  }

  /** Promises may be this much better than what comes of them, and this much worse. Chosen. */
  const TOO_GOOD = 0.95;
  const TOO_SHY = 1.25;

  function expectKept(ratio: number): void {
    expect(ratio).toBeGreaterThan(TOO_GOOD);
    expect(ratio).toBeLessThan(TOO_SHY);
  }

  it.each(['pdFar', 'monoPdR', 'headWidth'] as const)('is kept by a camera profile (%s)', (name) => {
    const one = scene({ eyesMm: [0, 0, 550], pitchRad: 0.05 }, { leanRad: 0.1 });
    expectKept(promise('make-profile', name, before(one, null), before(one)));
  });

  it.each([2, 1])('is kept by lid marks under the loupe, found to %d px before', (lidPx) => {
    const first = before(scene({ eyesMm: [0, 0, 550] }));
    const lids = (uncertaintyPx: number): PictureFeatures['lids'] => ({
      R: { ...first.features.lids.R, uncertaintyPx },
      L: { ...first.features.lids.L, uncertaintyPx },
    });
    const found = { ...first, features: { ...first.features, lids: lids(lidPx) } };
    const set = { ...first, features: { ...first.features, lids: lids(0.5) } };
    expectKept(promise('place-lids-by-hand', 'apertureR', found, set, { lidsByHandShare: 0.5 / lidPx }));
  });

  it.each(['apertureL', 'pdFar'] as const)('is kept by coming nearer (%s)', (name) => {
    const [far, near] = [700, 400].map((mm) => before(scene({ eyesMm: [0, 0, mm], fixationMm: mm + 10.5 })));
    expectKept(promise('come-nearer', name, far!, near!));
  });

  it('is kept by a card held lower on the forehead', () => {
    const [high, low] = [80, 45].map((mm) => before(scene({ eyesMm: [0, 0, 500] }, { backMm: [0, mm, 9] })));
    expectKept(promise('card-nearer-eyes', 'pdFar', high!, low!));
  });

  it('is kept by a bought card', () => {
    const eyesMm = [0, 0, 450] as const;
    const printed = before(scene({ eyesMm }, { source: 'markers', thicknessMm: 0 }));
    const bought = before(scene({ eyesMm }));
    expectKept(promise('use-bought-card', 'pdFar', printed, bought));
  });
});
