import type { ImagePoint } from '../geometry/vector.js';

/**
 * The printed ChArUco sheet: a chessboard whose white squares carry ArUco markers (dictionary 4x4_50, in the pattern that OpenCV
 * has drawn since version 4.6). Its inner corners are where four squares meet.
 */
export const BOARD = { columns: 7, rows: 5, squareMm: 30, markerMm: 22 } as const;

/** Inner corners of the whole sheet. */
export const BOARD_CORNER_COUNT = (BOARD.columns - 1) * (BOARD.rows - 1);

/** An inner corner of the sheet found in a picture; corners count row by row from the top left of the sheet. */
export interface BoardCorner extends ImagePoint {
  readonly index: number;
}

/** The sheet as one picture shows it. */
export interface BoardView {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly corners: readonly BoardCorner[];
}

/** Where an inner corner lies on the sheet, mm from the outer corner of its top-left square; x to the right, y down. */
export function boardCornerMm(index: number): { readonly xMm: number; readonly yMm: number } {
  const perRow = BOARD.columns - 1;
  return {
    xMm: BOARD.squareMm * ((index % perRow) + 1),
    yMm: BOARD.squareMm * (Math.floor(index / perRow) + 1),
  };
}

/** Why a picture, or a set of views, gave nothing for a profile. */
export type BoardFailure =
  /** too little of the sheet to be seen: hold it nearer, flat, whole in the picture, in more light */
  | { readonly kind: 'no-board'; readonly cornersFound: number; readonly cornersNeeded: number }
  /** too few views: take more */
  | { readonly kind: 'too-few-views'; readonly views: number; readonly viewsNeeded: number }
  /** the views are of different sizes: they were not made by one camera at one resolution */
  | { readonly kind: 'views-of-different-size' }
  /** all views alike: tilt the sheet to all sides, nearer and farther */
  | { readonly kind: 'views-too-alike' }
  /** corners do not fit one flat sheet through one lens: a bent sheet, or pictures of more than one camera or zoom */
  | { readonly kind: 'profile-misfit'; readonly rmsPx: number; readonly limitPx: number };
