import { expect, it } from 'vitest';
import { limbusToLimbus } from './limbus-method.js';

// common practice; the numbers are plain arithmetic
it.each([
  { radiusR: 5.85, radiusL: 5.85, reading: 63 },
  { radiusR: 5.95, radiusL: 5.85, reading: 63.1 },
])('reads $reading for irises of $radiusR and $radiusL', ({ radiusR, radiusL, reading }) => {
  const right = { centre: -31.5, radius: radiusR };
  const left = { centre: 31.5, radius: radiusL };
  expect(limbusToLimbus(right, left)).toBeCloseTo(reading, 9);
  // from the other eye the surplus counts the other way
  expect(limbusToLimbus(left, right)).toBeCloseTo(126 - reading, 9);
});
