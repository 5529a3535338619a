import { describe, expect, it } from 'vitest';
import {
  blankImage,
  blurred,
  colourOf,
  darkened,
  drawnInto,
  ellipse,
  fartherAway,
  insideOf,
  paintedOver,
  quarterTurned,
  repainted,
  sideBySide,
  turnedHead,
} from './painted-picture.js';

/** Red grows along x, green along y: each point has its own colour. */
const slope = repainted(blankImage(40, 20, 0), ({ xPx, yPx }) => [xPx * 5, yPx * 10, 0, 255]);

/** A square as corners from the top left clockwise. */
function square(left: number, top: number, side: number) {
  return [
    { xPx: left, yPx: top },
    { xPx: left + side, yPx: top },
    { xPx: left + side, yPx: top + side },
    { xPx: left, yPx: top + side },
  ] as const;
}

describe('colourOf', () => {
  it('lies between the four nearest pixels', () => {
    const [red, green] = colourOf(slope, { xPx: 11, yPx: 7 });
    // between the centres 10.5 and 11.5, 6.5 and 7.5; levels are whole numbers
    expect(red).toBeCloseTo(55, 0);
    expect(green).toBeCloseTo(70, 0);
  });
});

describe('paintedOver', () => {
  it('goes on with a slope as if nothing had been there, since a plane solves the equation of Laplace', () => {
    const spot = ellipse({ xPx: 20, yPx: 10 }, 8, 6);
    const spotted = repainted(slope, (at) => (spot(at) ? [255, 255, 255, 255] : null));
    const mended = paintedOver(spotted, spot);
    for (let at = 0; at < slope.data.length; at++) {
      expect(Math.abs((mended.data[at] ?? NaN) - (slope.data[at] ?? NaN))).toBeLessThanOrEqual(1);
    }
  });
});

describe('insideOf', () => {
  it('is as large as the quadrilateral and its margin', () => {
    const inside = insideOf(square(10, 5, 8), 1);
    expect(inside({ xPx: 9.1, yPx: 9 })).toBe(true);
    expect(inside({ xPx: 8.9, yPx: 9 })).toBe(false);
    expect(inside({ xPx: 18.9, yPx: 9 })).toBe(true);
    expect(inside({ xPx: 19.1, yPx: 9 })).toBe(false);
  });
});

describe('drawnInto', () => {
  it('moves the content of one quadrilateral into another and leaves the rest', () => {
    const drawn = drawnInto(slope, square(4, 4, 10), slope, square(24, 6, 10));
    const [red, green] = colourOf(drawn, { xPx: 9, yPx: 9 });
    expect(red).toBeCloseTo(29 * 5, 0);
    expect(green).toBeCloseTo(11 * 10, 0);
    expect(colourOf(drawn, { xPx: 30, yPx: 15 })).toEqual(colourOf(slope, { xPx: 30, yPx: 15 }));
  });
});

describe('blurred', () => {
  it('spreads a point without changing how bright it is in all', () => {
    const point = repainted(blankImage(41, 41, 0), ({ xPx, yPx }) =>
      xPx === 20.5 && yPx === 20.5 ? [250, 250, 250, 255] : null,
    );
    const soft = blurred(point, 1);
    // three passes over three pixels: 7/27 of the level in the middle of a row, and so along columns
    expect(soft.data[(20 * 41 + 20) * 4]).toBe(Math.round(250 * (7 / 27) ** 2));
    expect(soft.data[(20 * 41 + 24) * 4]).toBe(0);
  });
});

describe('darkened', () => {
  it('multiplies the levels and leaves the opacity', () => {
    expect([...darkened(blankImage(1, 1, 200), 0.25).data]).toEqual([50, 50, 50, 255]);
  });
});

describe('fartherAway', () => {
  it('shrinks the picture around its middle', () => {
    const half = fartherAway(slope, 0.5);
    const [red, green] = colourOf(half, { xPx: 15, yPx: 8 });
    // 15 is 5 left of the middle: 10 before
    expect(Math.abs(red - 10 * 5)).toBeLessThan(3);
    expect(Math.abs(green - 6 * 10)).toBeLessThan(6);
    expect(colourOf(half, { xPx: 2, yPx: 2 })[0]).toBe(150);
  });
});

describe('sideBySide', () => {
  it('joins the middles of two pictures', () => {
    const joined = sideBySide(slope, blankImage(40, 20, 9));
    expect(colourOf(joined, { xPx: 5.5, yPx: 3.5 })).toEqual(colourOf(slope, { xPx: 15.5, yPx: 3.5 }));
    expect(colourOf(joined, { xPx: 35.5, yPx: 3.5 })).toEqual([9, 9, 9, 255]);
  });
});

describe('quarterTurned', () => {
  it('brings the bottom left to the top left with the first quarter, and everything back with the fourth', () => {
    const once = quarterTurned(slope, 1);
    expect([once.widthPx, once.heightPx]).toEqual([20, 40]);
    expect(colourOf(once, { xPx: 0.5, yPx: 0.5 })).toEqual(colourOf(slope, { xPx: 0.5, yPx: 19.5 }));
    expect(quarterTurned(once, 3)).toEqual(slope);
  });
});

describe('turnedHead', () => {
  it('moves what was in front by the sine of the turn', () => {
    const head = { centre: { xPx: 20, yPx: 10 }, halfWidthPx: 16, halfHeightPx: 9 };
    const turned = turnedHead(slope, head, Math.PI / 6);
    // the foremost point moves by 16 sin 30° = 8 to the right
    expect(colourOf(turned, { xPx: 28, yPx: 10 })[0]).toBeCloseTo(100, -1);
    // what lies outside of the head stays
    expect(colourOf(turned, { xPx: 2.5, yPx: 2.5 })).toEqual(colourOf(slope, { xPx: 2.5, yPx: 2.5 }));
  });
});
