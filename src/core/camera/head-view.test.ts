import { describe, expect, it } from 'vitest';
import { LANDMARK } from './face-landmarks.js';
import type { Landmark } from './features.js';
import { headView } from './head-view.js';

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
