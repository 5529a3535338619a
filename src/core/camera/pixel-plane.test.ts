import { describe, expect, it } from 'vitest';
import {
  blurPlane,
  clipRectangle,
  cutPlane,
  reduceImage,
  sample,
  type PixelPlane,
  type RgbaImage,
} from './pixel-plane.js';

function image(widthPx: number, heightPx: number, colour: (x: number, y: number) => readonly number[]): RgbaImage {
  const data = new Uint8ClampedArray(4 * widthPx * heightPx).fill(255);
  for (let y = 0; y < heightPx; y++) {
    for (let x = 0; x < widthPx; x++) data.set(colour(x, y), 4 * (y * widthPx + x));
  }
  return { widthPx, heightPx, data };
}

function plane(widthPx: number, heightPx: number, level: (x: number, y: number) => number): PixelPlane {
  const data = new Float32Array(widthPx * heightPx);
  for (let y = 0; y < heightPx; y++) for (let x = 0; x < widthPx; x++) data[y * widthPx + x] = level(x, y);
  return { widthPx, heightPx, data };
}

describe('clipRectangle', () => {
  it('grows to whole pixels and stays within the picture', () => {
    expect(
      clipRectangle({ widthPx: 100, heightPx: 80 }, { leftPx: -3.2, topPx: 10.7, widthPx: 20.5, heightPx: 200 }),
    ).toEqual({ leftPx: 0, topPx: 10, widthPx: 18, heightPx: 70 });
  });

  it('is nothing beside the picture', () => {
    expect(
      clipRectangle({ widthPx: 100, heightPx: 80 }, { leftPx: 120, topPx: 0, widthPx: 10, heightPx: 10 }),
    ).toBeNull();
  });
});

describe('cutPlane', () => {
  const picture = image(4, 3, (x, y) => [10 * x, 20 * y, 7]);

  it('takes the luma of ITU-R BT.601 of the rectangle', () => {
    const { widthPx, heightPx, data } = cutPlane(picture, { leftPx: 1, topPx: 1, widthPx: 2, heightPx: 2 }, 'luma');
    expect([widthPx, heightPx]).toEqual([2, 2]);
    const luma = (x: number, y: number): number => 0.299 * 10 * x + 0.587 * 20 * y + 0.114 * 7;
    [luma(1, 1), luma(2, 1), luma(1, 2), luma(2, 2)].forEach((value, i) => expect(data[i]).toBeCloseTo(value, 4));
  });

  it.each(['blue-difference', 'red-difference'] as const)('sees no grey in the %s', (channel) => {
    const grey = image(2, 2, () => [137, 137, 137]);
    for (const value of cutPlane(grey, { leftPx: 0, topPx: 0, widthPx: 2, heightPx: 2 }, channel).data) {
      expect(value).toBeCloseTo(0, 4);
    }
  });
});

describe('reduceImage', () => {
  it('takes the mean of each block and leaves a rest out', () => {
    const reduced = reduceImage(
      image(5, 4, (x, y) => [x, 10 * y, 100]),
      2,
    );
    expect(reduced).toMatchObject({ widthPx: 2, heightPx: 2 });
    // Columns 2 and 3 have a mean of 2.5, rows 2 and 3 of 25; bytes are rounded.
    expect([...reduced.data.slice(12, 16)]).toEqual([2, 25, 100, 255]);
  });

  it('leaves a picture as it is for the factor one', () => {
    const same = image(2, 2, () => [1, 2, 3]);
    expect(reduceImage(same, 1)).toBe(same);
  });
});

describe('sample', () => {
  const slope = plane(6, 5, (x, y) => 2 * (x + 0.5) - 3 * (y + 0.5) + 20);

  it('is exact between the pixels of a plane that rises evenly, whose centres lie at halves', () => {
    expect(sample(slope, 2.5, 1.5)).toBeCloseTo(2 * 2.5 - 3 * 1.5 + 20, 5);
    expect(sample(slope, 3.17, 2.81)).toBeCloseTo(2 * 3.17 - 3 * 2.81 + 20, 5);
  });

  it('repeats the rim beyond it', () => {
    expect(sample(slope, -10, 1.5)).toBeCloseTo(sample(slope, 0.5, 1.5), 5);
    expect(sample(slope, 99, 99)).toBeCloseTo(sample(slope, 5.5, 4.5), 5);
    expect(
      sample(
        plane(1, 1, () => 9),
        0.2,
        0.9,
      ),
    ).toBe(9);
  });
});

describe('blurPlane', () => {
  it('spreads a point to a Gaussian of the wanted width and keeps its sum', () => {
    const blurred = blurPlane(
      plane(41, 41, (x, y) => (x === 20 && y === 20 ? 1000 : 0)),
      2,
    );
    let sum = 0;
    let spread = 0;
    blurred.data.forEach((value, i) => {
      sum += value;
      spread += value * ((i % 41) - 20) ** 2;
    });
    expect(sum).toBeCloseTo(1000, 2);
    // Cut off at three standard deviations a Gaussian keeps 97.3 % of its variance: 1 - 6 phi(3) / (2 Phi(3) - 1).
    expect(Math.abs(spread / sum / 4 - 0.973)).toBeLessThan(0.03);
  });

  it('leaves an even plane even up to its rim', () => {
    const blurred = blurPlane(
      plane(12, 9, () => 55),
      1.5,
    );
    for (const value of blurred.data) expect(value).toBeCloseTo(55, 4);
  });
});
