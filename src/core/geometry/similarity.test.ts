import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitSimilarity } from './similarity.js';
import { distancePx, type ImagePoint } from './vector.js';

const CORNERS: readonly ImagePoint[] = [
  { xPx: 100, yPx: 80 },
  { xPx: 260, yPx: 90 },
  { xPx: 250, yPx: 190 },
  { xPx: 95, yPx: 180 },
];

describe('fitSimilarity', () => {
  it('finds the turn, shift and growth that points were moved by, exactly (closed form)', () => {
    const angle = fc.double({ min: -3, max: 3, noNaN: true });
    const shift = fc.double({ min: -200, max: 200, noNaN: true });
    const growth = fc.double({ min: 0.3, max: 3, noNaN: true });
    fc.assert(
      fc.property(angle, shift, shift, growth, (turnRad, rightPx, downPx, factor) => {
        const move = ({ xPx, yPx }: ImagePoint): ImagePoint => ({
          xPx: rightPx + factor * (Math.cos(turnRad) * xPx - Math.sin(turnRad) * yPx),
          yPx: downPx + factor * (Math.sin(turnRad) * xPx + Math.cos(turnRad) * yPx),
        });
        const found = fitSimilarity(CORNERS, CORNERS.map(move));
        for (const point of [...CORNERS, { xPx: 0, yPx: 0 }]) {
          expect(distancePx(found(point), move(point))).toBeLessThan(1e-6);
        }
      }),
    );
  });

  it('leaves the mean where it was told to go, whatever one point does besides', () => {
    const bent = CORNERS.map((corner, i) => (i === 2 ? { xPx: corner.xPx + 8, yPx: corner.yPx } : corner));
    const move = fitSimilarity(CORNERS, bent);
    const moved = CORNERS.map(move);
    expect(moved.reduce((sum, { xPx }) => sum + xPx, 0)).toBeCloseTo(
      bent.reduce((sum, { xPx }) => sum + xPx, 0),
      9,
    );
    // a shear is no similarity: something of it must be left
    expect(Math.max(...moved.map((corner, i) => distancePx(corner, bent[i]!)))).toBeGreaterThan(2);
  });

  it('does not hear points without weight', () => {
    const to = [...CORNERS.slice(0, 3), { xPx: 900, yPx: -400 }];
    const move = fitSimilarity(CORNERS, to, [1, 1, 1, 0]);
    for (const point of CORNERS) expect(distancePx(move(point), point)).toBeLessThan(1e-9);
  });
});
