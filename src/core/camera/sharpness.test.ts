import { describe, expect, it } from 'vitest';
import type { RgbaImage } from './find-features.js';
import { measureSharpness } from './sharpness.js';

function picture(widthPx: number, heightPx: number, level: (x: number, y: number) => number): RgbaImage {
  const data = new Uint8ClampedArray(4 * widthPx * heightPx);
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) data.fill(level(x, y), 4 * (y * widthPx + x), 4 * (y * widthPx + x) + 4);
  }
  return { widthPx, heightPx, data };
}

describe('measureSharpness', () => {
  it('is zero where the brightness is even, and where it rises evenly', () => {
    expect(measureSharpness(picture(8, 8, () => 90))).toBe(0);
    expect(measureSharpness(picture(8, 8, (x, y) => 10 * x + 5 * y))).toBe(0);
  });

  it('gives the variance of a single bright point', () => {
    // By hand: in 5 x 5 pixels there are 9 with four neighbours; the point gives -40, its four neighbours +10, four give 0.
    // The mean is 0, the mean of the squares (1600 + 4 * 100) / 9.
    const point = picture(5, 5, (x, y) => (x === 2 && y === 2 ? 10 : 0));
    expect(measureSharpness(point)).toBeCloseTo(2000 / 9, 10);
  });

  it('is larger for a hard edge than for the same edge softened', () => {
    const hard = picture(20, 20, (x) => (x < 10 ? 0 : 200));
    const soft = picture(20, 20, (x) => Math.min(200, Math.max(0, (x - 6) * 25)));
    expect(measureSharpness(hard)).toBeGreaterThan(measureSharpness(soft));
  });

  it('is zero for pictures without an inside', () => {
    expect(measureSharpness(picture(2, 9, (x) => 100 * x))).toBe(0);
  });
});
