import { describe, expect, it } from 'vitest';
import type { HeadView } from '../core/camera/head-view.js';
import { coverageOf, ENOUGH } from './sweep-coverage.js';

function view(yawDeg: number, spanPx = 80): HeadView {
  return { yawDeg, spanPx };
}

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
