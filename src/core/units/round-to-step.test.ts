import { describe, expect, it } from 'vitest';
import { roundToStep } from './round-to-step.js';

describe('rounding to the step of a scale', () => {
  it.each([
    // by hand
    [63.3, 0.5, 63.5],
    [63.2, 0.5, 63],
    [63.25, 0.5, 63.5],
    [-1.6, 1, -2],
    [138, 5, 140],
  ])('takes %d in steps of %d to %d', (value, step, rounded) => {
    expect(roundToStep(value, step)).toBe(rounded);
  });
});
