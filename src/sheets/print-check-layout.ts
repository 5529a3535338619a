import { REFERENCE_CARD } from '../core/camera/reference-card.js';
import {
  heading,
  PAPER_SIZES_MM,
  paragraph,
  SHEET_MARGIN_MM,
  sheetFoot,
  sheetHead,
  TEXT_SIZES_MM,
  type Paper,
  type SheetLayout,
  type SheetRectangle,
} from './layout.js';
import { ruledLine } from './ruled-line.js';

/** Where the outline of a real card lies on the sheet. */
const CARD_OUTLINE_ON_SHEET: SheetRectangle = {
  xMm: 45,
  yMm: 156,
  widthMm: REFERENCE_CARD.widthMm,
  heightMm: REFERENCE_CARD.heightMm,
};

/** The sheet that shows whether a printer keeps true size: a line across, a line down, and an outline for a real card. */
export function printCheckLayout(paper: Paper): SheetLayout {
  const besideXMm = 45;
  return {
    title: 'Glabella print check',
    ...PAPER_SIZES_MM[paper],
    elements: [
      ...sheetHead(
        'Print check',
        'Shows whether a printer keeps true size. Print at 100 % (“actual size”), without “fit to page” or other scaling.',
      ),

      heading({ xMm: SHEET_MARGIN_MM, yMm: 43 }, '1   Measure the line across'),
      ...paragraph({ xMm: SHEET_MARGIN_MM, yMm: 49.5 }, [
        'Lay a good rule along this line. Measure from the middle of the first long mark to the middle of the last one, and type',
        'the measured length into the app. It should be 150.0 mm. If the printer has scaled the page, the app corrects for it.',
      ]),
      ...ruledLine({ xMm: (PAPER_SIZES_MM[paper].widthMm - 150) / 2, yMm: 65 }, 'across'),

      ...ruledLine({ xMm: 24, yMm: 93 }, 'down'),
      heading({ xMm: besideXMm, yMm: 96 }, '2   Measure the line down'),
      ...paragraph({ xMm: besideXMm, yMm: 102.5 }, [
        'It must be as long as the line across, to half a millimetre. Where it is not, this printer stretches',
        'the page in one direction, which the app cannot correct: print the marker card elsewhere.',
      ]),

      heading({ xMm: besideXMm, yMm: 126 }, '3   Lay a card onto the outline'),
      ...paragraph({ xMm: besideXMm, yMm: 132.5 }, [
        'A bank card or an identity card covers the line evenly on all four sides when the print is at',
        'true size. If both lines measure 150.0 mm and your card does not fit, it is not an ID-1 card:',
        'do not use it as the reference in a picture.',
      ]),
      {
        kind: 'outline',
        rectangle: CARD_OUTLINE_ON_SHEET,
        cornerRadiusMm: REFERENCE_CARD.cornerRadiusMm,
        strokeMm: 0.2,
      },
      {
        kind: 'text',
        text: 'lay the card here',
        at: {
          xMm: CARD_OUTLINE_ON_SHEET.xMm + CARD_OUTLINE_ON_SHEET.widthMm / 2,
          yMm: CARD_OUTLINE_ON_SHEET.yMm + CARD_OUTLINE_ON_SHEET.heightMm / 2 + 1,
        },
        anchor: 'middle',
        sizeMm: TEXT_SIZES_MM.small,
        weight: 'regular',
      },
      ...sheetFoot(PAPER_SIZES_MM[paper], 'Outline 85.60 × 53.98 mm, corners of radius 3.18 mm (ISO/IEC 7810, ID-1).'),
    ],
  };
}
