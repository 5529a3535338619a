import { describe, expect, it } from 'vitest';
import { exampleFeatures } from '../../tests/support/example-features.js';
import type { CameraProfile } from '../core/camera/camera-profile.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import { moveHandle } from '../session/handles.js';
import type { BudgetBasis } from './budget-basis.js';
import { remedyContext } from './budget-basis.js';

const features = exampleFeatures();
const basis: BudgetBasis = {
  features,
  settings: DEFAULT_MEASURING_SETTINGS,
  isSweep: false,
  pixelsPerMm: 2,
  distanceMm: 520,
};

describe('what remedies depend on', () => {
  it('is read off the features', () => {
    const context = remedyContext(basis, 'pdFar', null);
    // The card's middle is (640, 214), the eyes' (640, 350): 136 px at 2 px/mm.
    expect(context).toMatchObject({
      name: 'pdFar',
      isSweep: false,
      hasProfile: false,
      cardSource: 'edges',
      cardPosition: 'forehead',
      distanceMm: 520,
      lidsByHandShare: null,
    });
    expect(context.cardToEyesMm).toBeCloseTo(68, 9);
  });

  it('counts marks of a hand for the eye that they belong to', () => {
    // Lids of the example are found to 1 px, a hand sets them to 0.5 px.
    expect(remedyContext(basis, 'apertureR', 'R').lidsByHandShare).toBeCloseTo(0.5, 9);
    const moved = moveHandle(features, { kind: 'lid-upper', side: 'R' }, { xPx: 575, yPx: 341 });
    const after = { ...basis, features: moved };
    expect(remedyContext(after, 'apertureR', 'R').lidsByHandShare).toBeNull();
    expect(remedyContext(after, 'apertureL', 'L').lidsByHandShare).toBeCloseTo(0.5, 9);
  });

  it('compares a judged midline with the one found', () => {
    // 0.5 of 63 of the 130 px between the eyes, against the 1.2 px found
    expect(remedyContext(basis, 'monoPdR', 'R').midlineByHandShare).toBeCloseTo(((0.5 / 63) * 130) / 1.2, 9);
    const moved = moveHandle(features, { kind: 'midline' }, { xPx: 641, yPx: 350 });
    expect(remedyContext({ ...basis, features: moved }, 'monoPdR', 'R').midlineByHandShare).toBeNull();
  });

  it('asks no hand for marks in a sweep', () => {
    const context = remedyContext({ ...basis, isSweep: true }, 'apertureR', 'R');
    expect(context).toMatchObject({ isSweep: true, lidsByHandShare: null, midlineByHandShare: null });
  });

  it('counts a profile for pictures of its own proportions only', () => {
    const profile: CameraProfile = {
      widthPx: 1920,
      heightPx: 1080,
      fx: 1500,
      fy: 1500,
      cx: 960,
      cy: 540,
      distortion: [0, 0, 0, 0, 0],
      uncertainty: { fx: 3, fy: 3, cx: 1, cy: 1, distortion: [0.01, 0, 0, 0, 0] },
      rmsPx: 0.3,
      viewCount: 12,
    };
    const withProfile = (one: CameraProfile): boolean =>
      remedyContext({ ...basis, settings: { ...basis.settings, profile: one } }, 'pdFar', null).hasProfile;
    expect(withProfile(profile)).toBe(true);
    expect(withProfile({ ...profile, heightPx: 1440 })).toBe(false);
  });
});
