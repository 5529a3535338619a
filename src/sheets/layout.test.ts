import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { boardLayout } from './board-layout.js';
import { SHEET_MARGIN_MM, type Paper, type SheetElement, type SheetLayout } from './layout.js';
import { markerCardLayout, MARKER_CARD_ON_SHEET } from './marker-card-layout.js';
import { printCheckLayout } from './print-check-layout.js';

interface Box {
  readonly label: string;
  readonly leftMm: number;
  readonly topMm: number;
  readonly rightMm: number;
  readonly bottomMm: number;
}

const document = await PDFDocument.create();
const fonts = {
  regular: await document.embedFont(StandardFonts.Helvetica),
  bold: await document.embedFont(StandardFonts.HelveticaBold),
};

/** What an element covers. An outline covers its four sides, not what it surrounds. */
function boxesOf(element: SheetElement): readonly Box[] {
  switch (element.kind) {
    case 'fill':
      return element.rectangles.map((r) => ({
        label: 'fill',
        leftMm: r.xMm,
        topMm: r.yMm,
        rightMm: r.xMm + r.widthMm,
        bottomMm: r.yMm + r.heightMm,
      }));
    case 'line':
      return [
        {
          label: 'line',
          leftMm: Math.min(element.from.xMm, element.to.xMm) - element.strokeMm / 2,
          topMm: Math.min(element.from.yMm, element.to.yMm) - element.strokeMm / 2,
          rightMm: Math.max(element.from.xMm, element.to.xMm) + element.strokeMm / 2,
          bottomMm: Math.max(element.from.yMm, element.to.yMm) + element.strokeMm / 2,
        },
      ];
    case 'outline': {
      const { xMm, yMm, widthMm, heightMm } = element.rectangle;
      const side = (leftMm: number, topMm: number, rightMm: number, bottomMm: number): Box => ({
        label: 'outline',
        leftMm: leftMm - element.strokeMm / 2,
        topMm: topMm - element.strokeMm / 2,
        rightMm: rightMm + element.strokeMm / 2,
        bottomMm: bottomMm + element.strokeMm / 2,
      });
      return [
        side(xMm, yMm, xMm + widthMm, yMm),
        side(xMm, yMm + heightMm, xMm + widthMm, yMm + heightMm),
        side(xMm, yMm, xMm, yMm + heightMm),
        side(xMm + widthMm, yMm, xMm + widthMm, yMm + heightMm),
      ];
    }
    case 'text': {
      const widthMm = fonts[element.weight].widthOfTextAtSize(element.text, element.sizeMm);
      const leftMm = element.at.xMm - { left: 0, middle: widthMm / 2, right: widthMm }[element.anchor];
      return [
        {
          label: element.text,
          leftMm,
          // Helvetica's ascender and descender are 0.718 and 0.207 of its size (Adobe font metrics).
          topMm: element.at.yMm - 0.718 * element.sizeMm,
          rightMm: leftMm + widthMm,
          bottomMm: element.at.yMm + 0.207 * element.sizeMm,
        },
      ];
    }
  }
}

const layouts: readonly (readonly [string, Paper, (paper: Paper) => SheetLayout])[] = [
  ['marker card', 'a4', markerCardLayout],
  ['marker card', 'letter', markerCardLayout],
  ['print check', 'a4', printCheckLayout],
  ['print check', 'letter', printCheckLayout],
  ['camera sheet', 'a4', boardLayout],
  ['camera sheet', 'letter', boardLayout],
];

describe.each(layouts)('the %s on %s', (name, paper, layoutOn) => {
  const layout = layoutOn(paper);

  it('has the size of the paper', () => {
    // A4: ISO 216. Letter: 8.5 x 11 inches of 25.4 mm.
    const upright = paper === 'a4' ? [210, 297] : [8.5 * 25.4, 11 * 25.4];
    const size = name === 'camera sheet' ? upright.toReversed() : upright;
    expect([layout.widthMm, layout.heightMm]).toEqual(size.map((side): unknown => expect.closeTo(side, 9)));
  });

  it('keeps the margins free', () => {
    const outside = layout.elements.flatMap(boxesOf).filter(
      (box) =>
        // the stroke of an outline that lies on the margin reaches over it by half its width, a foot's descenders by theirs
        box.leftMm < SHEET_MARGIN_MM - 0.11 ||
        box.topMm < SHEET_MARGIN_MM ||
        box.rightMm > layout.widthMm - SHEET_MARGIN_MM + 0.11 ||
        box.bottomMm > layout.heightMm - SHEET_MARGIN_MM + 0.6,
    );
    expect(outside).toEqual([]);
  });

  it('writes no text over anything else', () => {
    const boxes = layout.elements.flatMap(boxesOf);
    const texts = layout.elements.filter((element) => element.kind === 'text').flatMap(boxesOf);
    const clashes = texts.flatMap((text) =>
      boxes
        .filter(
          (box) =>
            (box.label !== text.label || box.topMm !== text.topMm || box.leftMm !== text.leftMm) &&
            box.leftMm < text.rightMm &&
            box.rightMm > text.leftMm &&
            box.topMm < text.bottomMm &&
            box.bottomMm > text.topMm,
        )
        .map((box) => [text.label, box.label]),
    );
    expect(clashes).toEqual([]);
  });
});

describe('the marker card', () => {
  it('keeps more than one cell of white around each marker', () => {
    // The detector needs the black border on white; one cell is the least that OpenCV's own boards leave.
    const cellMm = 16 / 6;
    const { elements } = markerCardLayout('a4');
    const marks = elements.filter((element) => element.kind === 'fill');
    const others = elements.filter((element) => element.kind !== 'fill').flatMap(boxesOf);
    expect(marks).toHaveLength(4);
    for (const mark of marks) {
      const boxes = boxesOf(mark);
      const leftMm = Math.min(...boxes.map((box) => box.leftMm)) - cellMm;
      const rightMm = Math.max(...boxes.map((box) => box.rightMm)) + cellMm;
      const topMm = Math.min(...boxes.map((box) => box.topMm)) - cellMm;
      const bottomMm = Math.max(...boxes.map((box) => box.bottomMm)) + cellMm;
      const inside = others.filter(
        (box) => box.leftMm < rightMm && box.rightMm > leftMm && box.topMm < bottomMm && box.bottomMm > topMm,
      );
      expect(inside.map((box) => box.label)).toEqual([]);
    }
  });

  it('lies where the sheet says, with markers of 16 mm at 4 mm from its edges', () => {
    const card = MARKER_CARD_ON_SHEET;
    // 85.60 x 53.98 mm: ISO/IEC 7810, ID-1. 85.60 - 4 - 16 = 65.60, 53.98 - 4 - 16 = 33.98.
    expect([card.widthMm, card.heightMm]).toEqual([85.6, 53.98]);
    const corners = markerCardLayout('letter')
      .elements.filter((element) => element.kind === 'fill')
      .map((mark) => {
        const boxes = boxesOf(mark);
        const leftMm = Math.min(...boxes.map((box) => box.leftMm));
        const topMm = Math.min(...boxes.map((box) => box.topMm));
        return [
          leftMm - card.xMm,
          topMm - card.yMm,
          Math.max(...boxes.map((box) => box.rightMm)) - leftMm,
          Math.max(...boxes.map((box) => box.bottomMm)) - topMm,
        ];
      });
    const about = (values: readonly number[]): unknown[] => values.map((value): unknown => expect.closeTo(value, 9));
    expect(corners).toEqual([
      about([4, 4, 16, 16]),
      about([65.6, 4, 16, 16]),
      about([65.6, 33.98, 16, 16]),
      about([4, 33.98, 16, 16]),
    ]);
  });
});
