import { describe, expect, it } from 'vitest';
import { searchRegions } from './search-regions.js';

describe('searchRegions', () => {
  it('covers the picture in every round, inside its borders, with squares that halve from round to round', () => {
    for (const [width, height] of [
      [1280, 720],
      [720, 1280],
      [4000, 3000],
      [301, 299],
      [100, 1000],
    ] as const) {
      const rounds = searchRegions(width, height);
      const sides = rounds.map((round) => round[0]?.widthPx ?? 0);
      expect(sides[0]).toBe(Math.min(width, height));
      expect(sides.length).toBeGreaterThanOrEqual(2);
      expect(sides.at(-1)).toBeLessThanOrEqual(800);
      for (const [index, side] of sides.slice(1).entries()) expect(side).toBe(Math.round((sides[index] ?? 0) / 2));
      for (const round of rounds) {
        for (const region of round) {
          expect(region.heightPx).toBe(region.widthPx);
          expect(region.xPx).toBeGreaterThanOrEqual(0);
          expect(region.yPx).toBeGreaterThanOrEqual(0);
          expect(region.xPx + region.widthPx).toBeLessThanOrEqual(width);
          expect(region.yPx + region.heightPx).toBeLessThanOrEqual(height);
        }
        // a face of a quarter of a square lies whole in one of them, wherever it is
        const face = (round[0]?.widthPx ?? 0) / 4;
        for (let x = 0; x + face <= width; x += face / 3) {
          for (let y = 0; y + face <= height; y += face / 3) {
            const isInOne = round.some(
              (region) =>
                region.xPx <= x + 1 &&
                region.yPx <= y + 1 &&
                x + face <= region.xPx + region.widthPx + 1 &&
                y + face <= region.yPx + region.heightPx + 1,
            );
            expect(isInOne, `face at ${x.toFixed(0)}, ${y.toFixed(0)} of ${width} x ${height}`).toBe(true);
          }
        }
      }
    }
  });

  it('begins in the middle', () => {
    // 1680 x 720: squares of 720 at 0, 480, 960; the middle one is centred
    expect(searchRegions(1680, 720)[0]?.[0]).toEqual({ xPx: 480, yPx: 0, widthPx: 720, heightPx: 720 });
  });

  it('looks at a square picture once in the first round', () => {
    expect(searchRegions(500, 500)[0]).toEqual([{ xPx: 0, yPx: 0, widthPx: 500, heightPx: 500 }]);
  });
});
