import patterns from '../../calibration/markers-4x4-50.json' with { type: 'json' };
import { BOARD, BOARD_CORNER_COUNT, boardCornerMm, type BoardView } from '../../src/core/camera/board.js';
import { project, type Camera } from '../../src/core/camera/pinhole.js';
import type { RgbaImage } from '../../src/core/camera/pixel-plane.js';
import { toCamera, type Pose } from '../../src/core/geometry/pose.js';
import { rotationFromVector } from '../../src/core/geometry/rotation.js';
import { multiplyVector, subtract, type Vector3 } from '../../src/core/geometry/vector.js';
import type { SeededRandom } from './seeded-random.js';
import { sheetGrid } from './sheet-grid.js';

const [DARK, BRIGHT, BEHIND] = [30, 215, 110];
const MARGIN_MM = 12;
const CELLS = 6;

const MIDDLE_MM: Vector3 = [(BOARD.columns * BOARD.squareMm) / 2, (BOARD.rows * BOARD.squareMm) / 2, 0];

/** The sheet turned about its middle by a rotation vector (degrees about x, y, z of the camera), its middle at a place, mm. */
export function boardPose(turnDeg: Vector3, middleMm: Vector3): Pose {
  const [a, b, c] = turnDeg;
  const rotation = rotationFromVector([(a * Math.PI) / 180, (b * Math.PI) / 180, (c * Math.PI) / 180]);
  return { rotation, translationMm: subtract(middleMm, multiplyVector(rotation, MIDDLE_MM)) };
}

/** A dozen of poses as a person would hold the sheet before a webcam of about 66 degrees, to all sides, near and far. */
export const BOARD_POSES: readonly Pose[] = [
  boardPose([3, -4, 5], [0, 0, 480]),
  boardPose([-8, 10, -6], [10, 5, 330]),
  boardPose([4, 12, 8], [-10, 10, 640]),
  boardPose([8, 14, 4], [-175, -90, 480]),
  boardPose([-10, -12, -5], [170, -85, 470]),
  boardPose([12, -9, 10], [165, 90, 480]),
  boardPose([-12, 11, -9], [-170, 92, 470]),
  boardPose([2, 33, 3], [0, 0, 430]),
  boardPose([-4, -35, -4], [20, 0, 430]),
  boardPose([34, 3, 6], [0, 10, 440]),
  boardPose([-33, -2, -3], [0, -10, 430]),
  boardPose([16, 12, 88], [10, 0, 470]),
];

/** Cells of the raster to a millimetre: the edges of squares (30 mm), markers (22 mm) and their cells (11/3 mm) all lie on it. */
const RASTER = 3;
const RASTER_COLUMNS = RASTER * (BOARD.columns * BOARD.squareMm + 2 * MARGIN_MM);
const RASTER_ROWS = RASTER * (BOARD.rows * BOARD.squareMm + 2 * MARGIN_MM);

/** Grey levels of the sheet with its margin, cell by cell of the raster. */
const SHEET = Uint8Array.from({ length: RASTER_COLUMNS * RASTER_ROWS }, (_, at) => {
  const [column, row] = [at % RASTER_COLUMNS, Math.floor(at / RASTER_COLUMNS)];
  return levelAt((column + 0.5) / RASTER - MARGIN_MM, (row + 0.5) / RASTER - MARGIN_MM);
});

/** Grey level of the sheet at a place in mm from the outer corner of the top left square. */
function levelAt(xMm: number, yMm: number): number {
  const [widthMm, heightMm] = [BOARD.columns * BOARD.squareMm, BOARD.rows * BOARD.squareMm];
  if (xMm < 0 || yMm < 0 || xMm >= widthMm || yMm >= heightMm) return BRIGHT;
  const [column, row] = [Math.floor(xMm / BOARD.squareMm), Math.floor(yMm / BOARD.squareMm)];
  if ((column + row) % 2 === 0) return DARK;
  // every second square bears a marker, numbered row by row: before this square there are half of all squares, rounded down
  const id = Math.floor((row * BOARD.columns + column) / 2);
  const border = (BOARD.squareMm - BOARD.markerMm) / 2;
  const cellMm = BOARD.markerMm / CELLS;
  const cellX = Math.floor((xMm - column * BOARD.squareMm - border) / cellMm);
  const cellY = Math.floor((yMm - row * BOARD.squareMm - border) / cellMm);
  if (cellX < 0 || cellY < 0 || cellX >= CELLS || cellY >= CELLS) return BRIGHT;
  return patterns.markers[id]?.rows[cellY]?.[cellX] === '#' ? DARK : BRIGHT;
}

/**
 * The sheet through a camera, on a plain background: each pixel is the mean of 4 x 4 points in it; then a blur of 3 x 3 pixels,
 * and noise of that standard deviation in grey levels.
 */
export function paintBoard(
  camera: Camera,
  pose: Pose,
  size: { readonly widthPx: number; readonly heightPx: number },
  random: SeededRandom,
  noise = 2,
): RgbaImage {
  const { widthPx, heightPx } = size;
  const grid = sheetGrid(camera, pose, widthPx, heightPx);
  const sharp = new Float64Array(widthPx * heightPx);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      const above = 2 * (row * (widthPx + 1) + column);
      const below = above + 2 * (widthPx + 1);
      const [leftX, leftY, rightX, rightY] = [grid[above]!, grid[above + 1]!, grid[above + 2]!, grid[above + 3]!];
      const [lowLeftX, lowLeftY, lowRightX, lowRightY] = [
        grid[below]!,
        grid[below + 1]!,
        grid[below + 2]!,
        grid[below + 3]!,
      ];
      let sum = 0;
      for (let i = 0; i < 16; i++) {
        const [u, v] = [((i % 4) + 0.5) / 4, ((i >> 2) + 0.5) / 4];
        const xMm = (1 - v) * ((1 - u) * leftX + u * rightX) + v * ((1 - u) * lowLeftX + u * lowRightX);
        const yMm = (1 - v) * ((1 - u) * leftY + u * rightY) + v * ((1 - u) * lowLeftY + u * lowRightY);
        const [x, y] = [Math.floor(RASTER * (xMm + MARGIN_MM)), Math.floor(RASTER * (yMm + MARGIN_MM))];
        const isSheet = x >= 0 && y >= 0 && x < RASTER_COLUMNS && y < RASTER_ROWS;
        sum += isSheet ? SHEET[y * RASTER_COLUMNS + x]! : BEHIND;
      }
      sharp[row * widthPx + column] = sum / 16;
    }
  }
  const data = new Uint8ClampedArray(4 * widthPx * heightPx);
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      let sum = 0;
      for (let i = 0; i < 9; i++) {
        const x = Math.min(widthPx - 1, Math.max(0, column - 1 + (i % 3)));
        const y = Math.min(heightPx - 1, Math.max(0, row - 1 + Math.floor(i / 3)));
        sum += sharp[y * widthPx + x]!;
      }
      const at = 4 * (row * widthPx + column);
      data.fill(Math.round(sum / 9 + random.normal(0, noise)), at, at + 3);
      data[at + 3] = 255;
    }
  }
  return { widthPx, heightPx, data };
}

/** The corners of the sheet that lie in the picture, as the camera projects them, with noise of that standard deviation in x and y. */
export function projectedView(
  camera: Camera,
  pose: Pose,
  size: { readonly widthPx: number; readonly heightPx: number },
  random: SeededRandom | null = null,
  noisePx = 0,
): BoardView {
  const corners = Array.from({ length: BOARD_CORNER_COUNT }, (_, index) => {
    const { xMm, yMm } = boardCornerMm(index);
    const seen = project(camera, toCamera(pose, [xMm, yMm, 0]));
    return {
      index,
      xPx: seen.xPx + (random?.normal(0, noisePx) ?? 0),
      yPx: seen.yPx + (random?.normal(0, noisePx) ?? 0),
    };
  });
  const isIn = ({ xPx, yPx }: { xPx: number; yPx: number }) =>
    xPx > 0 && yPx > 0 && xPx < size.widthPx && yPx < size.heightPx;
  return { ...size, corners: corners.filter(isIn) };
}
