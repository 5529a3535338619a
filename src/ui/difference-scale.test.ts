import { describe, expect, it } from 'vitest';
import type { Comparison } from '../core/crosscheck/finding.js';
import { differenceScale, reachOf } from './difference-scale.js';

describe('a scale of differences', () => {
  it('ends at a whole step on both sides, and has zero in its middle', () => {
    const { range, ticks, decimals, percent } = differenceScale(2.3);
    expect([range, ticks, decimals]).toEqual([3, [-3, -2, -1, 0, 1, 2, 3], 0]);
    expect([percent(-3), percent(0), percent(1.5), percent(3)]).toEqual([0, 50, 75, 100]);
    expect(differenceScale(0.7)).toMatchObject({ range: expect.closeTo(0.8, 9) as number, decimals: 1 });
  });

  it('keeps what lies beyond at its end, and says so', () => {
    const { percent, isBeyond } = differenceScale(2);
    expect([percent(9), percent(-9)]).toEqual([100, 0]);
    expect([isBeyond(2), isBeyond(2.1), isBeyond(-2.1)]).toEqual([false, true, true]);
  });
});

describe('how far a scale has to reach', () => {
  const compared = (difference: number, cameraExpanded: number, tolerance: number): Comparison => ({
    name: 'pdFar',
    difference,
    differenceLow: difference - 1,
    differenceHigh: difference + 1,
    handExpanded: 1,
    cameraExpanded,
    enNumber: 0,
    tolerance: { value: tolerance, source: 'invented', status: 'chosen' },
  });
  const inTolerances = ({ tolerance }: Comparison): number => tolerance.value;

  it('shows the tolerance and somewhat more, where all agree', () => {
    expect(reachOf([compared(0.1, 0.5, 2)], () => 1)).toBeCloseTo(2.8, 9);
  });

  it('does not follow a slip, nor the camera’s widest doubts', () => {
    expect(reachOf([compared(-30, 1, 2), compared(0, 1, 2), compared(0, 40, 2)], () => 1)).toBe(12);
    expect(reachOf([compared(-30, 1, 2)], inTolerances)).toBe(6);
  });
});
