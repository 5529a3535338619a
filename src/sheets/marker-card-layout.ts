import { MARKER_CARD, REFERENCE_CARD } from '../core/camera/reference-card.js';
import {
  heading,
  PAPER_SIZES_MM,
  paragraph,
  SHEET_MARGIN_MM,
  sheetFoot,
  sheetHead,
  TEXT_SIZES_MM,
  type LineElement,
  type Paper,
  type SheetElement,
  type SheetLayout,
  type SheetPoint,
  type SheetRectangle,
  type TextElement,
} from './layout.js';
import { marker } from './marker.js';
import { ruledLine } from './ruled-line.js';

/** Where the card lies on the sheet. */
export const MARKER_CARD_ON_SHEET: SheetRectangle = {
  xMm: SHEET_MARGIN_MM,
  yMm: 37,
  widthMm: REFERENCE_CARD.widthMm,
  heightMm: REFERENCE_CARD.heightMm,
};

/** A stroke that scissors can follow. Half of it stays on the card and is part of its size. */
const CUT_STROKE_MM = 0.2;

/** The sheet with the marker card to cut out, how to make and hold it, and the line by which the scale of the print is found. */
export function markerCardLayout(paper: Paper): SheetLayout {
  const besideXMm = MARKER_CARD_ON_SHEET.xMm + MARKER_CARD_ON_SHEET.widthMm + 8;
  const left = SHEET_MARGIN_MM;
  return {
    title: 'Glabella marker card',
    ...PAPER_SIZES_MM[paper],
    elements: [
      ...sheetHead('Marker card', 'The reference of known size that is held against the face in the picture.'),
      ...markerCard(MARKER_CARD_ON_SHEET),
      cutCaption(MARKER_CARD_ON_SHEET),

      heading({ xMm: besideXMm, yMm: 40 }, 'How to make it'),
      ...paragraph({ xMm: besideXMm, yMm: 46.5 }, [
        '1.  Print this page at 100 % (“actual size”),',
        '     without “fit to page” or any other scaling.',
        '2.  Take stiff, matt, white paper, or glue the',
        '     card onto an old plastic card.',
        '3.  Cut along the middle of the line, and',
        '     round the corners as drawn.',
        '4.  Keep the card flat. Bent or curled, it',
        '     measures wrongly.',
      ]),
      heading({ xMm: besideXMm, yMm: 92 }, 'Mind the eyes'),
      ...paragraph({ xMm: besideXMm, yMm: 98.5 }, [
        'The edges are sharp: keep them away from the',
        'eyes. Never reach a card to the face quickly.',
      ]),

      heading({ xMm: left, yMm: 117 }, 'Check the print'),
      ...paragraph({ xMm: left, yMm: 123.5 }, [
        'Lay a good rule along this line. Measure from the middle of the first long mark to the middle of the last one, and type',
        'the measured length into the app. It should be 150.0 mm. If the printer has scaled the page, the app corrects for it.',
      ]),
      ...ruledLine({ xMm: (PAPER_SIZES_MM[paper].widthMm - 150) / 2, yMm: 140 }, 'across'),

      heading({ xMm: left, yMm: 163 }, 'How to hold it'),
      ...paragraph({ xMm: left, yMm: 169.5 }, [
        'Flat against the forehead, or above or below the mouth, markers towards the camera, the arrow pointing up, the long',
        'edge level. Hold it by one short end with two fingertips: no finger on a marker or on the white around it.',
        'Let the wearer close both eyes until the card rests on the skin, and again before it is taken away.',
      ]),
      ...sheetFoot(
        PAPER_SIZES_MM[paper],
        'Card 85.60 × 53.98 mm (ISO/IEC 7810, ID-1). Markers of dictionary 4x4_50, ids 0 to 3, 16 mm, 4 mm from the edges.',
      ),
    ],
  };
}

/** The card itself: outline, markers, and in the middle which way up it is held. */
function markerCard(card: SheetRectangle): readonly SheetElement[] {
  const middleXMm = card.xMm + card.widthMm / 2;
  const wordsAt = (text: string, yMm: number, sizeMm: number, weight: TextElement['weight']): TextElement => ({
    kind: 'text',
    text,
    at: { xMm: middleXMm, yMm: card.yMm + yMm },
    anchor: 'middle',
    sizeMm,
    weight,
  });
  return [
    {
      kind: 'outline',
      rectangle: card,
      cornerRadiusMm: REFERENCE_CARD.cornerRadiusMm,
      strokeMm: CUT_STROKE_MM,
    },
    ...markerPlaces(card).map((place, index) => marker(place, MARKER_CARD.markerSideMm, index)),
    ...upArrow({ xMm: middleXMm, yMm: card.yMm + 8 }),
    wordsAt('THIS EDGE UP', 26.5, 4.2, 'bold'),
    wordsAt('markers towards the camera', 31.5, TEXT_SIZES_MM.small, 'regular'),
    wordsAt('Glabella', 46, TEXT_SIZES_MM.small, 'bold'),
  ];
}

/** Top left corners of the markers in the order of their ids: top left, top right, bottom right, bottom left. */
function markerPlaces(card: SheetRectangle): readonly SheetPoint[] {
  const { marginMm, markerSideMm } = MARKER_CARD;
  const leftMm = card.xMm + marginMm;
  const rightMm = card.xMm + card.widthMm - marginMm - markerSideMm;
  const topMm = card.yMm + marginMm;
  const bottomMm = card.yMm + card.heightMm - marginMm - markerSideMm;
  return [
    { xMm: leftMm, yMm: topMm },
    { xMm: rightMm, yMm: topMm },
    { xMm: rightMm, yMm: bottomMm },
    { xMm: leftMm, yMm: bottomMm },
  ];
}

/** An arrow that points up, with its tip at `tip`. */
function upArrow(tip: SheetPoint): readonly LineElement[] {
  const strokeMm = 0.8;
  const at = (xMm: number, yMm: number): SheetPoint => ({ xMm: tip.xMm + xMm, yMm: tip.yMm + yMm });
  const line = (from: SheetPoint, to: SheetPoint): LineElement => ({ kind: 'line', from, to, strokeMm });
  // The strokes of the head are cut off square: each reaches across the tip by half its width, so that the tip is whole.
  const acrossMm = strokeMm / 2 / Math.SQRT2;
  return [
    line(at(0, 12), at(0, 0.4)),
    line(at(-4.5, 4.5), at(acrossMm, -acrossMm)),
    line(at(4.5, 4.5), at(-acrossMm, -acrossMm)),
  ];
}

function cutCaption(card: SheetRectangle): TextElement {
  return {
    kind: 'text',
    text: 'cut along the line',
    at: { xMm: card.xMm + card.widthMm / 2, yMm: card.yMm + card.heightMm + 4.5 },
    anchor: 'middle',
    sizeMm: TEXT_SIZES_MM.small,
    weight: 'regular',
  };
}
