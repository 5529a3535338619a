import type { CvDictionary, CvMat, OpenCvInNode } from '../../calibration/opencv-in-node.js';
import { openCvInNode } from '../../calibration/opencv-in-node.js';
import type { BoardCorner } from '../../src/core/camera/board.js';
import { BOARD } from '../../src/core/camera/board.js';
import type { Camera } from '../../src/core/camera/pinhole.js';
import type { Pose } from '../../src/core/geometry/pose.js';
import type { GreyImage } from './detect-markers.js';
import { sheetGrid } from './sheet-grid.js';

interface OnHeap {
  delete(): void;
}

interface CvBoard extends OnHeap {
  generateImage(size: unknown, image: CvMat, marginPx: number, borderCells: number): void;
}

/** What OpenCV has for ChArUco boards. */
interface CharucoOpenCv extends OpenCvInNode {
  readonly Size: new (width: number, height: number) => unknown;
  readonly aruco_CharucoBoard: new (
    size: unknown,
    squareLength: number,
    markerLength: number,
    dictionary: CvDictionary,
    ids: CvMat,
  ) => CvBoard;
  readonly aruco_CharucoParameters: new () => OnHeap;
  readonly aruco_CharucoDetector: new (
    board: CvBoard,
    charucoParameters: OnHeap,
    detectorParameters: OnHeap,
    refineParameters: OnHeap,
  ) => OnHeap & {
    detectBoard(image: CvMat, corners: CvMat, ids: CvMat, markerCorners: OnHeap, markerIds: CvMat): void;
  };
}

async function withBoard<Value>(use: (cv: CharucoOpenCv, board: CvBoard) => Value): Promise<Value> {
  const cv = (await openCvInNode()).cv as CharucoOpenCv;
  const dictionary = cv.getPredefinedDictionary(cv.DICT_4X4_50);
  const allIds = new cv.Mat();
  const { columns, rows, squareMm, markerMm } = BOARD;
  const board = new cv.aruco_CharucoBoard(new cv.Size(columns, rows), squareMm, markerMm, dictionary, allIds);
  try {
    return use(cv, board);
  } finally {
    for (const object of [board, allIds, dictionary]) object.delete();
  }
}

/** The board as OpenCV itself draws it, without a margin. */
export function boardByOpenCv(pixelsPerMm: number): Promise<GreyImage> {
  return withBoard((cv, board) => {
    const image = new cv.Mat();
    try {
      const widthPx = BOARD.columns * BOARD.squareMm * pixelsPerMm;
      const heightPx = BOARD.rows * BOARD.squareMm * pixelsPerMm;
      board.generateImage(new cv.Size(widthPx, heightPx), image, 0, 1);
      return { widthPx, heightPx, levels: Uint8Array.from(image.data) };
    } finally {
      image.delete();
    }
  });
}

/** The inner corners that OpenCV's own detector finds, by their index; pixels from the image's corner. */
export function detectBoard(image: GreyImage): Promise<readonly BoardCorner[]> {
  return withBoard((cv, board) => {
    const charucoParameters = new cv.aruco_CharucoParameters();
    const detectorParameters = new cv.aruco_DetectorParameters();
    // OpenCV's own defaults; the bindings want every argument
    const refineParameters = new cv.aruco_RefineParameters(10, 3, true);
    const detector = new cv.aruco_CharucoDetector(board, charucoParameters, detectorParameters, refineParameters);
    const mat = new cv.Mat(image.heightPx, image.widthPx, cv.CV_8UC1);
    const corners = new cv.Mat();
    const ids = new cv.Mat();
    const markerCorners = new cv.MatVector();
    const markerIds = new cv.Mat();
    try {
      mat.data.set(image.levels);
      detector.detectBoard(mat, corners, ids, markerCorners, markerIds);
      return Array.from(ids.data32S.slice(0, ids.rows), (index, at) => ({
        index,
        // unlike corners of markers, these already count from the image's corner
        xPx: corners.data32F[2 * at] ?? NaN,
        yPx: corners.data32F[2 * at + 1] ?? NaN,
      })).sort((a, b) => a.index - b.index);
    } finally {
      for (const object of [mat, corners, ids, markerCorners, markerIds]) object.delete();
      for (const object of [detector, refineParameters, detectorParameters, charucoParameters]) object.delete();
    }
  });
}

/** Points along a side of a pixel at which the scene is looked at. */
const SAMPLES = 3;

/**
 * A flat sheet before a camera. Coordinates on the sheet in mm, x to the right and y down, in the frame that `sheetToCamera`
 * carries into the camera's (with z = 0). Beyond the sheet everything is grey.
 *
 * @param pixelsPerMm of the sheet's own picture, whose corner is the sheet's origin
 */
export function photographSheet(
  sheet: GreyImage,
  pixelsPerMm: number,
  camera: Camera,
  sheetToCamera: Pose,
  widthPx: number,
  heightPx: number,
): GreyImage {
  const grid = sheetGrid(camera, sheetToCamera, widthPx, heightPx);
  const levels = new Uint8Array(widthPx * heightPx);
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
      for (let i = 0; i < SAMPLES * SAMPLES; i++) {
        const [u, v] = [((i % SAMPLES) + 0.5) / SAMPLES, (Math.floor(i / SAMPLES) + 0.5) / SAMPLES];
        const x = pixelsPerMm * ((1 - v) * ((1 - u) * leftX + u * rightX) + v * ((1 - u) * lowLeftX + u * lowRightX));
        const y = pixelsPerMm * ((1 - v) * ((1 - u) * leftY + u * rightY) + v * ((1 - u) * lowLeftY + u * lowRightY));
        const isBeyond = x < 0 || y < 0 || x >= sheet.widthPx || y >= sheet.heightPx;
        // Ink is not wholly black, nor paper wholly white.
        sum += isBeyond ? 110 : 25 + 0.8 * sheet.levels[Math.floor(y) * sheet.widthPx + Math.floor(x)]!;
      }
      levels[row * widthPx + column] = Math.round(sum / (SAMPLES * SAMPLES));
    }
  }
  return { widthPx, heightPx, levels };
}
