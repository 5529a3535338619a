import { BOARD } from '../core/camera/board.js';
import {
  heading,
  PAPER_SIZES_MM,
  paragraph,
  SHEET_MARGIN_MM,
  sheetFoot,
  type PageSize,
  type Paper,
  type SheetElement,
  type SheetLayout,
  type SheetPoint,
  type SheetRectangle,
} from './layout.js';
import { marker } from './marker.js';

/** Where the outer corner of the board's top left square lies; the margin around it is the white that a finder needs. */
const BOARD_ON_SHEET: SheetPoint = { xMm: SHEET_MARGIN_MM, yMm: SHEET_MARGIN_MM };

/** White between the board and whatever is printed beside it. A finder needs about a cell of a marker; chosen much wider. */
const WHITE_MM = 10;

const BOARD_HEIGHT_MM = BOARD.rows * BOARD.squareMm;

/** The ChArUco sheet for making a camera profile, on paper that lies on its long side. */
export function boardLayout(paper: Paper): SheetLayout {
  const page: PageSize = { widthMm: PAPER_SIZES_MM[paper].heightMm, heightMm: PAPER_SIZES_MM[paper].widthMm };
  const belowYMm = BOARD_ON_SHEET.yMm + BOARD_HEIGHT_MM + WHITE_MM;
  const columnXMm = SHEET_MARGIN_MM + 125;
  return {
    title: 'Glabella camera sheet',
    ...page,
    elements: [
      ...board(BOARD_ON_SHEET),
      heading({ xMm: SHEET_MARGIN_MM, yMm: belowYMm + 3.5 }, 'Camera sheet: for making a camera profile'),
      ...paragraph({ xMm: SHEET_MARGIN_MM, yMm: belowYMm + 9 }, [
        'Fix the whole page with glue or tape to a stiff, flat board, and keep it flat.',
        'Matt paper; no light that is mirrored in it.',
      ]),
      heading({ xMm: columnXMm, yMm: belowYMm + 3.5 }, 'Flat, not to size'),
      ...paragraph({ xMm: columnXMm, yMm: belowYMm + 9 }, [
        'Its size does not matter, so nothing has to be measured. That it is flat does matter.',
        'Print at 100 % only so that all of it fits on the page.',
      ]),
      ...sheetFoot(
        page,
        `ChArUco, ${BOARD.columns} × ${BOARD.rows} squares of ${BOARD.squareMm} mm. Markers of dictionary 4x4_50, ids 0 to 16, ${BOARD.markerMm} mm.`,
      ),
    ],
  };
}

/**
 * The pattern that OpenCV has drawn since version 4.6: the square at the top left is black, and the white squares bear the
 * markers, row by row in the order of their ids.
 */
function board(place: SheetPoint): readonly SheetElement[] {
  const { columns, rows, squareMm, markerMm } = BOARD;
  const squares = Array.from({ length: columns * rows }, (_, index) => {
    const column = index % columns;
    const row = Math.floor(index / columns);
    return {
      isBlack: (column + row) % 2 === 0,
      square: {
        xMm: place.xMm + column * squareMm,
        yMm: place.yMm + row * squareMm,
        widthMm: squareMm,
        heightMm: squareMm,
      } satisfies SheetRectangle,
    };
  });
  const insetMm = (squareMm - markerMm) / 2;
  return [
    { kind: 'fill', rectangles: squares.filter(({ isBlack }) => isBlack).map(({ square }) => square) },
    ...squares
      .filter(({ isBlack }) => !isBlack)
      .map(({ square }, id) => marker({ xMm: square.xMm + insetMm, yMm: square.yMm + insetMm }, markerMm, id)),
  ];
}
