/** Steps of every gauge are far above this, binary dust is far below. */
const GRAINS_PER_UNIT = 1e6;

/** Largest number that still has room for the grain behind its point. */
const LARGEST_ROUNDED = Number.MAX_SAFE_INTEGER / GRAINS_PER_UNIT;

/**
 * The decimal number that was meant where sums of decimals miss it in their last binary digit: 0.3 for 0.1 + 0.2. Rounds to a
 * millionth; larger numbers than a scale can show come back as they are. Never gives a negative zero.
 */
export function freeOfDust(value: number): number {
  if (!(Math.abs(value) < LARGEST_ROUNDED)) return value;
  return Math.round(value * GRAINS_PER_UNIT) / GRAINS_PER_UNIT + 0;
}
