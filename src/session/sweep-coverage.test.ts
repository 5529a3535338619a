import { describe, expect, it } from 'vitest';
import { LANDMARK } from '../core/camera/face-landmarks.js';
import type { Landmark } from '../core/camera/features.js';
import type { HeadView } from './sweep-coverage.js';
import { coverageOf, ENOUGH, headView } from './sweep-coverage.js';

/** Landmarks whose outer eye corners lie 80 px apart on a line turned by the yaw and rolled in the picture. */
function landmarks(yawDeg: number, rollDeg = 0): readonly Landmark[] {
  const [yaw, roll] = [(yawDeg * Math.PI) / 180, (rollDeg * Math.PI) / 180];
  const all: Landmark[] = Array.from({ length: 478 }, () => ({ xPx: 0, yPx: 0, depthPx: 0 }));
  all[LANDMARK.outerEyeCorner.R] = { xPx: 600, yPx: 300, depthPx: -10 };
  all[LANDMARK.outerEyeCorner.L] = {
    xPx: 600 + 80 * Math.cos(yaw) * Math.cos(roll),
    yPx: 300 + 80 * Math.cos(yaw) * Math.sin(roll),
    depthPx: -10 + 80 * Math.sin(yaw),
  };
  return all;
}

function view(yawDeg: number, spanPx = 80): HeadView {
  return { yawDeg, spanPx };
}

describe('the view of a head', () => {
  it.each([-15, -4, 0, 7, 18])('tells a yaw of %s degrees and keeps the span, however the head leans', (yawDeg) => {
    for (const rollDeg of [-20, 0, 12]) {
      const seen = headView(landmarks(yawDeg, rollDeg));
      expect(seen?.yawDeg).toBeCloseTo(yawDeg, 9);
      expect(seen?.spanPx).toBeCloseTo(80, 9);
    }
  });

  it('is not known without landmarks', () => {
    expect(headView([])).toBeNull();
  });
});

describe('coverage', () => {
  it('lacks everything at the beginning', () => {
    expect(coverageOf([])).toEqual({
      usable: 0,
      turnedDeg: { R: 0, L: 0 },
      distanceRatio: 1,
      missing: ['turned-R', 'turned-L', 'distance', 'frames'],
    });
  });

  it('counts a face to picture left as turned to the wearer’s right', () => {
    const { turnedDeg, missing } = coverageOf([view(-9), view(3)]);
    expect(turnedDeg).toEqual({ R: 9, L: 3 });
    expect(missing).toEqual(['turned-L', 'distance', 'frames']);
  });

  it('takes the ratio of distances from the spans', () => {
    expect(coverageOf([view(0, 80), view(0, 100), view(0, 90)]).distanceRatio).toBeCloseTo(1.25, 9);
  });

  it('is enough with a dozen frames to both sides, nearer and farther, and not with one less of anything', () => {
    const enough = Array.from({ length: ENOUGH.frames }, (_, index) =>
      view(index % 2 === 0 ? -8.5 : 8.5, index < 2 ? 100 : 86),
    );
    expect(coverageOf(enough).missing).toEqual([]);
    expect(coverageOf(enough.slice(1)).missing).toEqual(['frames']);
    expect(coverageOf(enough.map((one) => view(Math.abs(one.yawDeg), one.spanPx))).missing).toEqual(['turned-R']);
    expect(coverageOf(enough.map((one) => view(one.yawDeg, 90))).missing).toEqual(['distance']);
  });
});
