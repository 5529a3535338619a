import { describe, expect, it } from 'vitest';
import { EXAMPLE_CAMERA_PROFILE as PROFILE } from '../../../tests/support/example-profile.js';
import { rayOf } from '../camera/pinhole.js';
import { assumedCamera, matchingProfile } from './assumed-camera.js';

const NO_DEVIATION = { logFocal: 0, k1: 0, cxPx: 0, cyPx: 0 };

describe('matchingProfile', () => {
  it('is none without a profile', () => {
    expect(matchingProfile(null, { widthPx: 1280, heightPx: 720 })).toBeNull();
  });

  it('is the profile itself for a picture of its own size', () => {
    expect(matchingProfile(PROFILE, { widthPx: 1280, heightPx: 720 })).toEqual(PROFILE);
  });

  it.each([
    ['half', 640, 360, 0.5],
    ['three times', 3840, 2160, 3],
  ])('scales to %s the size with all that is in pixels, and its doubt', (_, widthPx, heightPx, factor) => {
    const scaled = matchingProfile(PROFILE, { widthPx, heightPx })!;
    expect(scaled).toMatchObject({ widthPx, heightPx });
    for (const name of ['fx', 'fy', 'cx', 'cy'] as const) {
      expect(scaled[name]).toBeCloseTo(factor * PROFILE[name], 9);
      expect(scaled.uncertainty[name]).toBeCloseTo(factor * PROFILE.uncertainty[name], 9);
    }
    // Coefficients stand on the plane z = 1, which has no pixels.
    expect(scaled.distortion).toEqual(PROFILE.distortion);
    expect(scaled.uncertainty.distortion).toEqual(PROFILE.uncertainty.distortion);
  });

  it('sees along the same ray through the same share of a scaled picture', () => {
    const scaled = matchingProfile(PROFILE, { widthPx: 1920, heightPx: 1080 })!;
    const [small, large] = [rayOf(PROFILE, { xPx: 300, yPx: 500 }), rayOf(scaled, { xPx: 450, yPx: 750 })];
    expect(large.x).toBeCloseTo(small.x, 9);
    expect(large.y).toBeCloseTo(small.y, 9);
  });

  it('bears a size that was rounded to whole pixels', () => {
    // 854 x 480 is 16:9 to a tenth of a per cent.
    expect(matchingProfile(PROFILE, { widthPx: 854, heightPx: 480 })).not.toBeNull();
  });

  it.each([
    ['4:3', 1280, 960],
    ['16:10', 1280, 800],
    ['upright', 720, 1280],
    ['cropped by a hundredth', 1280, 713],
  ])('is none for other proportions: %s', (_, widthPx, heightPx) => {
    expect(matchingProfile(PROFILE, { widthPx, heightPx })).toBeNull();
  });
});

describe('assumedCamera', () => {
  it('has the field of view of most webcams and its axis in the middle, without a profile', () => {
    const camera = assumedCamera({ widthPx: 1280, heightPx: 720 }, null, NO_DEVIATION);
    expect(camera).toEqual({ fx: 1024, fy: 1024, cx: 640, cy: 360, distortion: [0, 0, 0, 0, 0] });
    // 64 degrees across: mostly 52 to 78 (common practice).
    expect((2 * Math.atan(640 / camera.fx) * 180) / Math.PI).toBeCloseTo(64, 1);
  });

  it('takes the long side of an upright picture', () => {
    const { fx, fy, cx, cy } = assumedCamera({ widthPx: 720, heightPx: 1280 }, null, NO_DEVIATION);
    expect([fx, fy, cx, cy]).toEqual([1024, 1024, 360, 640]);
  });

  it('deviates as told, without a profile', () => {
    const camera = assumedCamera({ widthPx: 1280, heightPx: 720 }, null, {
      logFocal: Math.log(1.1),
      k1: -0.04,
      cxPx: 3,
      cyPx: -2,
    });
    expect(camera.fx).toBeCloseTo(1126.4, 9);
    expect(camera.fy).toBeCloseTo(1126.4, 9);
    expect(camera).toMatchObject({ cx: 643, cy: 358, distortion: [-0.04, 0, 0, 0, 0] });
  });

  it('is the camera of the profile, whatever the picture', () => {
    const { fx, fy, cx, cy, distortion } = PROFILE;
    expect(assumedCamera({ widthPx: 1, heightPx: 1 }, PROFILE, NO_DEVIATION)).toEqual({ fx, fy, cx, cy, distortion });
  });

  it('deviates from the profile: both focal lengths by the same ratio, the other coefficients not', () => {
    const camera = assumedCamera(PROFILE, PROFILE, { logFocal: Math.log(0.98), k1: 0.01, cxPx: -1, cyPx: 4 });
    expect(camera.fx / PROFILE.fx).toBeCloseTo(0.98, 12);
    expect(camera.fy / PROFILE.fy).toBeCloseTo(0.98, 12);
    expect(camera.cx).toBeCloseTo(632.1, 9);
    expect(camera.cy).toBeCloseTo(370.7, 9);
    expect(camera.distortion[0]).toBeCloseTo(0.051, 12);
    expect(camera.distortion.slice(1)).toEqual(PROFILE.distortion.slice(1));
  });
});
