import type { BoardCorner, BoardFailure, BoardView } from '../../core/camera/board.js';
import { BOARD, boardCornerMm } from '../../core/camera/board.js';
import { findBoardPose } from '../../core/camera/board-pose.js';
import type { RgbaImage } from '../../core/camera/find-features.js';
import type { Camera } from '../../core/camera/pinhole.js';
import { cameraFromFieldOfView, project } from '../../core/camera/pinhole.js';
import { LEAST_CORNERS } from '../../core/camera/profile-quality.js';
import type { Pose } from '../../core/geometry/pose.js';
import { toCamera } from '../../core/geometry/pose.js';
import type { Result } from '../../core/result.js';
import { fail, succeed } from '../../core/result.js';
import type { GrayImage } from './gray-image.js';
import { doubled, grayImage, reducedBy } from './gray-image.js';
import { onHeap } from './on-heap.js';
import type { OpenCv } from './open-cv.js';
import type { CrossWindow, SheetDirections } from './refine-saddle.js';
import { refineSaddle } from './refine-saddle.js';

/** Finds the printed sheet in a picture. */
export type BoardFinder = (image: RgbaImage) => Result<BoardView, BoardFailure>;

/** Chosen: in a picture this large a sheet held by hand has markers enough px; larger ones are reduced for the search only. */
const MOST_SEARCHED_PX = 2000;

/** Chosen: in a picture this small, the cells of a sheet held far away are too few px for OpenCV, which does better when enlarged. */
const LEAST_SEARCHED_PX = 1000;

/**
 * Chosen: as far along the edges as they are still straight, through most lenses, to a hundredth of a pixel; and across less
 * than the 4 mm of white between a square's edge and its marker, with room for blur. The second window is for corners near the
 * rim of the picture.
 */
const WINDOWS: readonly CrossWindow[] = [
  { armMm: 12, halfWidthMm: 3.5 },
  { armMm: 5, halfWidthMm: 3.5 },
];

/** Only for the directions of the sheet's edges, for which any usual lens will do. */
const ASSUMED_FIELD_OF_VIEW_RAD = Math.PI / 3;

/**
 * Makes the finder of the printed ChArUco sheet. OpenCV finds markers and corners, which are then refined in the picture's
 * luminance to some hundredths of a pixel; OpenCV's own refinement takes its window so large that the markers come into it.
 * Corners that do not refine (hidden by a finger, at the rim of the picture) are left out. They count from the outer corner of the
 * top-left pixel. Throws only if OpenCV itself does.
 */
export function createBoardFinder(cv: OpenCv): BoardFinder {
  return (image) => {
    const gray = grayImage(image);
    const { searched, factor } = searchable(gray);
    const rough = searchBoard(cv, searched).map((corner) => ({
      ...corner,
      xPx: factor * corner.xPx,
      yPx: factor * corner.yPx,
    }));
    const lens = cameraFromFieldOfView(gray.widthPx, gray.heightPx, ASSUMED_FIELD_OF_VIEW_RAD);
    const pose = findBoardPose(lens, rough);
    const corners = pose === null ? [] : rough.flatMap((corner) => refine(gray, corner, lens, pose) ?? []);
    if (pose === null || !isOnOnePlane(corners, lens, pose)) return noBoard(0);
    // what remains must still span the sheet
    if (corners.length < LEAST_CORNERS || findBoardPose(lens, corners) === null) {
      return noBoard(corners.length);
    }
    return succeed({ widthPx: image.widthPx, heightPx: image.heightPx, corners });
  };
}

function noBoard(cornersFound: number): Result<never, BoardFailure> {
  return fail({ kind: 'no-board', cornersFound, cornersNeeded: LEAST_CORNERS });
}

/**
 * Chosen: the strongest distortion of a usual lens moves no corner by so much of a square against a plane; markers that were
 * taken for others, as in a mirrored picture, lie about by whole squares.
 */
const MOST_OFF_PLANE_SQUARES = 0.3;

/** Whether the corners lie as one flat sheet would show them from its front. */
function isOnOnePlane(corners: readonly BoardCorner[], lens: Camera, pose: Pose): boolean {
  return corners.every((corner) => {
    const { xMm, yMm } = boardCornerMm(corner.index);
    const there = toCamera(pose, [xMm, yMm, 0]);
    if (!(there[2] > 0)) return false;
    const { xPx, yPx } = project(lens, there);
    const squarePx = (lens.fx * BOARD.squareMm) / there[2];
    return Math.hypot(xPx - corner.xPx, yPx - corner.yPx) < MOST_OFF_PLANE_SQUARES * squarePx;
  });
}

/** The picture in a size in which markers are found well and soon, and the px of the picture in one px of it. */
function searchable(gray: GrayImage): { readonly searched: GrayImage; readonly factor: number } {
  const side = Math.max(gray.widthPx, gray.heightPx);
  if (side <= LEAST_SEARCHED_PX) return { searched: doubled(gray), factor: 0.5 };
  const factor = Math.ceil(side / MOST_SEARCHED_PX);
  return { searched: reducedBy(gray, factor), factor };
}

/** OpenCV's ChArUco detector. Its corners already count from the outer corner of the top-left pixel. */
function searchBoard(cv: OpenCv, gray: GrayImage): readonly BoardCorner[] {
  return onHeap((own) => {
    const picture = own(new cv.Mat(gray.heightPx, gray.widthPx, cv.CV_8UC1));
    picture.data.set(gray.data);
    const corners = own(new cv.Mat());
    const ids = own(new cv.Mat());
    const markerCorners = own(new cv.MatVector());
    const markerIds = own(new cv.Mat());
    const dictionary = own(cv.getPredefinedDictionary(cv.DICT_4X4_50));
    const firstIds = own(new cv.Mat());
    const size = { width: BOARD.columns, height: BOARD.rows };
    const board = own(new cv.aruco_CharucoBoard(size, BOARD.squareMm, BOARD.markerMm, dictionary, firstIds));
    const charucoParameters = own(new cv.aruco_CharucoParameters());
    // a corner with one marker beside it is rough, which the refinement mends; the default of two gives away half of a far sheet
    charucoParameters.minMarkers = 1;
    const parameters = own(new cv.aruco_DetectorParameters());
    // OpenCV's own defaults; the bindings want every argument
    const refineParameters = own(new cv.aruco_RefineParameters(10, 3, true));
    const detector = own(new cv.aruco_CharucoDetector(board, charucoParameters, parameters, refineParameters));
    detector.detectBoard(picture, corners, ids, markerCorners, markerIds);
    return Array.from({ length: ids.rows }, (_, row) => {
      const [index, xPx, yPx] = [ids.data32S[row], corners.data32F[2 * row], corners.data32F[2 * row + 1]];
      if (index === undefined || xPx === undefined || yPx === undefined) throw new Error(`No corner in row ${row}`);
      return { index, xPx, yPx };
    });
  });
}

function refine(gray: GrayImage, corner: BoardCorner, lens: Camera, pose: Pose): BoardCorner | null {
  const directions = directionsAt(corner.index, lens, pose);
  for (const window of WINDOWS) {
    const refined = refineSaddle(gray, corner, directions, window);
    if (refined !== null) return { index: corner.index, ...refined };
  }
  return null;
}

/** How a millimetre to the right and one downwards on the sheet run in the picture, at one of its corners. */
function directionsAt(index: number, lens: Camera, pose: Pose): SheetDirections {
  const { xMm, yMm } = boardCornerMm(index);
  const seen = (x: number, y: number) => project(lens, toCamera(pose, [x, y, 0]));
  const [here, along, down] = [seen(xMm, yMm), seen(xMm + 1, yMm), seen(xMm, yMm + 1)];
  return {
    along: [along.xPx - here.xPx, along.yPx - here.yPx],
    down: [down.xPx - here.xPx, down.yPx - here.yPx],
  };
}
