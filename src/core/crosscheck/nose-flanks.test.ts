import { describe, expect, it } from 'vitest';
import { noseWidthMm } from './nose-flanks.js';

describe('width of an idealised nose', () => {
  it.each([
    // worked by hand from the circle with two tangents (own geometry): 2 (r + (h - r) sin phi) / cos phi
    [8, 22, 10, 18.873],
    [8, 22, 15, 22.913],
    [9, 25, 10, 20.793],
  ])('of radius %d mm and frontal angle %d° is at %d mm below the crest %d mm', (radius, angle, below, width) => {
    expect(noseWidthMm(radius, angle, below)).toBeCloseTo(width, 3);
  });

  it('grows between 10 and 15 mm by ten times the tangent of the frontal angle', () => {
    // 18 and 22 mm belong to 21.801 degrees
    const growth = noseWidthMm(8, 21.801, 15) - noseWidthMm(8, 21.801, 10);
    expect(growth).toBeCloseTo(4, 3);
  });
});
