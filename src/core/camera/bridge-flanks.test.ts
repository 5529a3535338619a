import { describe, expect, it } from 'vitest';
import canonicalFace from '../../../calibration/canonical-face.json' with { type: 'json' };
import type { ImagePoint } from '../geometry/vector.js';
import { bridgeBesideCard, bridgeFromLandmarks } from './bridge-flanks.js';
import type { FourCorners, Landmark } from './features.js';

const SCALE = 4;

/** The canonical face seen straight from far away, 4 px/mm; the irises, which it lacks, 63 mm apart. */
function landmarks(): Landmark[] {
  const face = canonicalFace.verticesMm.map(([x, y, z]) => ({
    xPx: 500 + SCALE * x!,
    yPx: 500 - SCALE * y!,
    depthPx: -SCALE * z!,
  }));
  const eyes = Array.from({ length: 10 }, (_, k) => ({
    xPx: 500 + SCALE * (k < 5 ? -31.5 : 31.5),
    yPx: 500 - SCALE * 26,
    depthPx: 0,
  }));
  return [...face, ...eyes];
}

describe('bridgeFromLandmarks', () => {
  it('lays the flanks 10 and 15 mm below the crest, evenly on both sides, in one frontal plane', () => {
    const face = landmarks();
    const crestY = face[168]!.yPx;
    const levels = bridgeFromLandmarks(face);
    expect(levels.map(({ belowCrestMm }) => belowCrestMm)).toEqual([10, 15]);
    for (const { belowCrestMm, R, L, uncertaintyPx } of levels) {
      // Within 0.1 mm, as the shares are rounded.
      expect(Math.abs((R.yPx - crestY) / SCALE - belowCrestMm)).toBeLessThan(0.1);
      expect(Math.abs((L.yPx - crestY) / SCALE - belowCrestMm)).toBeLessThan(0.1);
      expect(Math.abs(R.xPx + L.xPx - 1000) / SCALE).toBeLessThan(0.1);
      expect(uncertaintyPx).toBeCloseTo(1.5 * SCALE, 6);
    }
    const widths = levels.map(({ R, L }) => (L.xPx - R.xPx) / SCALE);
    // By hand from the vertices: 20.2 mm between 245 and 188, 25.0 mm between 188, 174, 128 and 114.
    expect(Math.abs(widths[0]! - 20.2)).toBeLessThan(0.2);
    expect(Math.abs(widths[1]! - 25)).toBeLessThan(0.2);
  });

  it('takes the deepest point of the midline between brows and tip for the crest', () => {
    const midline = [9, 8, 168, 6, 197, 195, 5, 4].map((index) => canonicalFace.verticesMm[index]![2]!);
    expect(Math.min(...midline)).toBe(canonicalFace.verticesMm[168]![2]);
  });
});

describe('bridgeBesideCard', () => {
  const levels = bridgeFromLandmarks(landmarks());
  const card = (topPx: number): FourCorners<ImagePoint> => {
    const [left, right, bottom] = [500 - 42.8 * SCALE, 500 + 42.8 * SCALE, topPx + 54 * SCALE];
    return [
      { xPx: left, yPx: topPx },
      { xPx: right, yPx: topPx },
      { xPx: right, yPx: bottom },
      { xPx: left, yPx: bottom },
    ];
  };
  const seen = (topPx: number) =>
    bridgeBesideCard(levels, card(topPx), 63 * SCALE).map(({ belowCrestMm }) => belowCrestMm);
  const [upper, lower] = levels.map(({ R }) => R.yPx) as [number, number];

  it('keeps what a card on forehead or chin leaves free', () => {
    expect(seen(100)).toEqual([10, 15]);
    expect(seen(700)).toEqual([10, 15]);
  });

  it('drops what a card covers or nearly covers', () => {
    // Below the upper lip's card: 1 mm above the lower level is covered, 2.6 mm clearance on both sides.
    expect(seen(lower - SCALE)).toEqual([10]);
    expect(seen(lower + 2 * SCALE)).toEqual([10]);
    expect(seen(upper - SCALE)).toEqual([]);
    // From the forehead down to just above the upper level.
    expect(seen(upper - 55 * SCALE)).toEqual([15]);
  });
});
