import { describe, expect, it } from 'vitest';
import { EXAMPLE_CAMERA_PROFILE } from '../../tests/support/example-profile.js';
import { horizontalFieldOfView, weaknessesOf } from './profile-facts.js';

describe('the horizontal field of view', () => {
  it('is a right angle where the picture is twice as wide as the focal length', () => {
    const profile = { ...EXAMPLE_CAMERA_PROFILE, fx: 640, cx: 640 };
    expect(horizontalFieldOfView(profile).valueDeg).toBeCloseTo(90, 10);
    // d(2 atan(a / f)) / df = 2 a / (f^2 + a^2) = 1 / 640 here: 1.4 px are 0.1253 degrees
    expect(horizontalFieldOfView(profile).uncertaintyDeg).toBeCloseTo(0.12533, 4);
  });

  it('adds up two unlike halves', () => {
    // atan(1) and atan(1/3), by hand: 45 + 18.4349 degrees
    const profile = { ...EXAMPLE_CAMERA_PROFILE, fx: 960, cx: 960 };
    expect(horizontalFieldOfView(profile).valueDeg).toBeCloseTo(63.4349, 4);
  });
});

describe('what is weak about a profile', () => {
  it('is told from its views and from its own numbers', () => {
    const doubtful = {
      ...EXAMPLE_CAMERA_PROFILE,
      rmsPx: 2,
      uncertainty: { ...EXAMPLE_CAMERA_PROFILE.uncertainty, fx: 12 },
    };
    const kinds = weaknessesOf(doubtful, []).map(({ kind }) => kind);
    expect(kinds).toEqual(
      expect.arrayContaining(['few-views', 'little-coverage', 'focal-length-doubtful', 'poor-fit']),
    );
  });
});
