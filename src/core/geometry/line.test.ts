import { describe, expect, it } from 'vitest';
import { perpendicularDown, pointAlong } from './image-direction.js';
import { intersection, lineThrough, signedDistancePx } from './line.js';

const point = (xPx: number, yPx: number) => ({ xPx, yPx });

describe('lineThrough', () => {
  it('holds both points, and its normal is the direction turned by a quarter clockwise as seen', () => {
    // To the right turned clockwise is down, since y points down.
    const line = lineThrough(point(1, 4), point(7, 4));
    expect(line).toEqual({ normalX: -0, normalY: 1, offsetPx: 4 });
  });
});

describe('signedDistancePx', () => {
  it('is the height of a 3-4-5 triangle, positive on the side of the normal', () => {
    // Area 6 = hypotenuse 5 times height / 2: the right angle lies 2.4 from the hypotenuse.
    const hypotenuse = lineThrough(point(3, 0), point(0, 4));
    expect(Math.abs(signedDistancePx(hypotenuse, point(0, 0)))).toBeCloseTo(2.4, 12);
    const below = lineThrough(point(0, 0), point(1, 0));
    expect(signedDistancePx(below, point(0.3, 2))).toBeCloseTo(2, 12);
    expect(signedDistancePx(below, point(0.3, -2))).toBeCloseTo(-2, 12);
  });
});

describe('intersection', () => {
  it('is where both lines meet', () => {
    const meeting = intersection(lineThrough(point(0, 0), point(2, 2)), lineThrough(point(0, 6), point(6, 0)));
    expect(meeting?.xPx).toBeCloseTo(3, 12);
    expect(meeting?.yPx).toBeCloseTo(3, 12);
  });

  it('is nothing for parallel lines', () => {
    expect(intersection(lineThrough(point(0, 0), point(2, 1)), lineThrough(point(0, 5), point(2, 6)))).toBeNull();
  });
});

describe('perpendicularDown', () => {
  it('points down a level face, and to picture left of down where the left eye stands lower', () => {
    expect(perpendicularDown(0).yPx).toBeCloseTo(1, 12);
    // At a right angle to (cos r, sin r), by construction: (-sin r, cos r).
    const rolled = pointAlong(point(10, 20), perpendicularDown(Math.PI / 6), 4);
    expect(rolled.xPx).toBeCloseTo(8, 12);
    expect(rolled.yPx).toBeCloseTo(20 + 2 * Math.sqrt(3), 12);
  });
});
