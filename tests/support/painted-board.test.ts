import { describe, expect, it } from 'vitest';
import { NO_DISTORTION } from '../../src/core/camera/pinhole.js';
import { boardPose, paintBoard, projectedView } from './painted-board.js';
import { seededRandom } from './seeded-random.js';

/** Seen straight on at 420 mm with a focal length of 420 px, a millimetre is a pixel, and the sheet's corner lies at (15, 25). */
const CAMERA = { fx: 420, fy: 420, cx: 120, cy: 100, distortion: NO_DISTORTION };
const SIZE = { widthPx: 240, heightPx: 200 };
const POSE = boardPose([0, 0, 0], [0, 0, 420]);

describe('paintBoard', () => {
  const image = paintBoard(CAMERA, POSE, SIZE, seededRandom(1), 0);
  const level = (xPx: number, yPx: number) => image.data[4 * (yPx * image.widthPx + xPx)];

  it('draws squares of 30 mm, the first one black, on white paper before a grey wall', () => {
    expect([level(30, 40), level(12, 40), level(1, 1)]).toEqual([30, 215, 110]);
    // two millimetres into the second square of the first row there is white, where the first one is black
    expect([level(43, 40), level(47, 40), level(43, 70), level(47, 60)]).toEqual([30, 215, 215, 30]);
  });

  it('draws marker 0, as OpenCV defines it, into the second square', () => {
    // the second row of marker 0 reads # . # . . #; its cells are 22 / 6 mm wide and begin 4 mm from the square's edges
    const row = [0, 1, 2, 3, 4, 5].map((cell) =>
      level(Math.floor(45 + 4 + (22 / 6) * (cell + 0.5)), Math.floor(25 + 4 + (22 / 6) * 1.5)),
    );
    expect(row.map((each) => ((each ?? 0) < 120 ? '#' : '.')).join('')).toBe('#.#..#');
  });
});

describe('projectedView', () => {
  it('puts the inner corners where the drawing has them, and leaves out what is outside of the picture', () => {
    const view = projectedView(CAMERA, POSE, SIZE);
    expect(view.corners).toHaveLength(24);
    expect(view.corners[0]?.xPx).toBeCloseTo(45, 9);
    expect(view.corners[0]?.yPx).toBeCloseTo(55, 9);
    expect(view.corners[7]?.xPx).toBeCloseTo(75, 9);
    expect(view.corners[7]?.yPx).toBeCloseTo(85, 9);
    const aside = projectedView(CAMERA, boardPose([0, 0, 0], [-50, 0, 420]), SIZE);
    expect(aside.corners).toHaveLength(20);
  });
});
