import { describe, expect, it } from 'vitest';
import { actingLens, actingPowerD, compensatedLens } from './vertex-distance.js';

describe('actingPowerD', () => {
  it.each([
    // lens.vertex of the collected facts: F / (1 - d F), textbook; the first is a published worked example
    [-8, 5, -7.6923],
    [-8, -5, -8.3333],
    [-10, 12, -8.9286],
    [10, 12, 11.3636],
  ])('of %d D moved out by %d mm is %d D', (powerD, mm, expected) => {
    expect(Math.abs(actingPowerD(powerD, mm) - expected)).toBeLessThan(0.0001);
  });
});

describe('compensatedLens', () => {
  it('keeps the effect where the lens sits farther from the eye than the tested one', () => {
    // -8.00 tested at 12 mm needs -8.33 at 17 mm (the same facts); the cylinder's meridian follows alone: -10 needs -10.526
    const lens = compensatedLens({ sphereD: -8, cylinderD: -2, axisDeg: 20 }, 12, 17);
    expect(lens.sphereD).toBeCloseTo(-8.3333, 4);
    expect(lens.sphereD + lens.cylinderD).toBeCloseTo(-10 / (1 - 0.05), 9);
    expect(lens.axisDeg).toBe(20);
  });

  it('undoes what moving does', () => {
    const tested = { sphereD: 7.5, cylinderD: -3, axisDeg: 75 };
    const back = actingLens(compensatedLens(tested, 12, 15), 3);
    expect(back.sphereD).toBeCloseTo(tested.sphereD, 12);
    expect(back.cylinderD).toBeCloseTo(tested.cylinderD, 12);
  });
});
