import { describe, expect, it } from 'vitest';
import { BOARD_CORNER_COUNT, boardCornerMm, type BoardView } from './board.js';
import { measureBoardBlurPx } from './board-sharpness.js';
import type { RgbaImage } from './pixel-plane.js';

const PIXELS_PER_MM = 3;
const [WIDTH, HEIGHT] = [660, 480];
/** where the board begins in the picture, px */
const AT = 12.3;

const view: BoardView = {
  widthPx: WIDTH,
  heightPx: HEIGHT,
  corners: Array.from({ length: BOARD_CORNER_COUNT }, (_, index) => {
    const { xMm, yMm } = boardCornerMm(index);
    return { index, xPx: AT + xMm * PIXELS_PER_MM, yPx: AT + yMm * PIXELS_PER_MM };
  }),
};

/** A chessboard whose edges rise as a logistic curve, whose steepest slope per pixel is 1 / (4 width) of its height. */
function chessboard(widthPx: number, contrast = 200): RgbaImage {
  const data = new Uint8ClampedArray(4 * WIDTH * HEIGHT).fill(255);
  const wave = (px: number): number => {
    const squarePx = 30 * PIXELS_PER_MM;
    const along = (px - AT) / squarePx;
    const nearest = Math.round(along);
    const sign = nearest % 2 === 0 ? 1 : -1;
    return sign * Math.tanh(((along - nearest) * squarePx) / (2 * widthPx));
  };
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      data[4 * (y * WIDTH + x) + 1] = 128 + (contrast / 2) * wave(x + 0.5) * wave(y + 0.5);
    }
  }
  return { widthPx: WIDTH, heightPx: HEIGHT, data };
}

describe('the blur of the edges of the sheet', () => {
  it.each([0.8, 1.2, 2])('follows from their steepest slope, for a width of %d px', (widthPx) => {
    // slope 1 / (4 w) and, for a Gaussian, 1 / (s sqrt(2 pi)): s = 4 w / sqrt(2 pi) = 1.5958 w
    const blurPx = measureBoardBlurPx(chessboard(widthPx), view) ?? NaN;
    // differences over a whole pixel, between pixels, flatten a sharp rise
    expect(blurPx / (1.5958 * widthPx)).toBeGreaterThan(0.98);
    expect(blurPx / (1.5958 * widthPx)).toBeLessThan(1.15);
  });

  it('does not depend on contrast, and is not told without any', () => {
    const strong = measureBoardBlurPx(chessboard(1.5), view) ?? NaN;
    expect((measureBoardBlurPx(chessboard(1.5, 80), view) ?? NaN) / strong).toBeCloseTo(1, 1);
    expect(measureBoardBlurPx(chessboard(1.5, 10), view)).toBeNull();
  });

  it('is not told of single corners', () => {
    expect(measureBoardBlurPx(chessboard(1), { ...view, corners: view.corners.slice(0, 1) })).toBeNull();
  });
});
