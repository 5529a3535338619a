import { describe, expect, it } from 'vitest';
import { isWithin } from './outline.js';

describe('isWithin', () => {
  const dart = [
    { xPx: 0, yPx: 0 },
    { xPx: 10, yPx: 0 },
    { xPx: 4, yPx: 4 },
    { xPx: 0, yPx: 10 },
  ];

  it.each([
    [2, 2, true],
    [8, 1, true],
    [6, 6, false],
    [-1, 5, false],
    [11, 0.5, false],
  ])('knows whether (%d, %d) lies in a dart', (xPx, yPx, inside) => {
    expect(isWithin(dart, { xPx, yPx })).toBe(inside);
  });
});
