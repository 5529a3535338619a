import { BOARD_CORNER_COUNT, type BoardCorner, type BoardFailure, type BoardView } from '../core/camera/board.js';
import { MOST_VIEWS } from '../core/camera/profile-quality.js';
import { isOneOfShapes, shape } from './checks.js';
import { isFiniteNumber } from './message.js';

/** Chosen: beyond any camera; keeps absurd sizes from the heap of the WebAssembly. */
const MOST_SIDE_PX = 50_000;

function isSide(value: unknown): value is number {
  return isFiniteNumber(value) && Number.isInteger(value) && value > 0 && value <= MOST_SIDE_PX;
}

function isCornerIndex(value: unknown): value is number {
  return isFiniteNumber(value) && Number.isInteger(value) && value >= 0 && value < BOARD_CORNER_COUNT;
}

const isCorner = shape<BoardCorner>({ index: isCornerIndex, xPx: isFiniteNumber, yPx: isFiniteNumber });

/** Corners of the sheet, each at most once. */
function areCorners(value: unknown): value is readonly BoardCorner[] {
  if (!Array.isArray(value) || value.length > BOARD_CORNER_COUNT || !value.every(isCorner)) return false;
  return new Set(value.map(({ index }) => index)).size === value.length;
}

const hasShapeOfView = shape<BoardView>({ widthPx: isSide, heightPx: isSide, corners: areCorners });

/** Whether the value is a view of the sheet, with all its corners in the picture. */
export function isBoardView(value: unknown): value is BoardView {
  return (
    hasShapeOfView(value) &&
    value.corners.every(({ xPx, yPx }) => xPx >= 0 && yPx >= 0 && xPx <= value.widthPx && yPx <= value.heightPx)
  );
}

/** The views, at most as many as the worker takes; null where one of them is none. */
export function parseBoardViews(value: unknown): readonly BoardView[] | null {
  return Array.isArray(value) && value.length <= MOST_VIEWS && value.every(isBoardView) ? value : null;
}

/** Whether the value is a failure with all its facts. A new kind does not compile until it stands here. */
export const isBoardFailure = isOneOfShapes<BoardFailure>({
  'no-board': { cornersFound: isFiniteNumber, cornersNeeded: isFiniteNumber },
  'too-few-views': { views: isFiniteNumber, viewsNeeded: isFiniteNumber },
  'views-of-different-size': {},
  'views-too-alike': {},
  'profile-misfit': { rmsPx: isFiniteNumber, limitPx: isFiniteNumber },
});
