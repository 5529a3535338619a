import { PDFDocument, PrintScaling } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { detectMarkers, paintRectangles } from '../../tests/support/detect-markers.js';
import { readPdfShapes, type PdfPath, type PdfShapes } from '../../tests/support/pdf-shapes.js';
import { MARKER_CARD_ON_SHEET } from './marker-card-layout.js';
import { markerCardPdf, printCheckPdf } from './sheets.js';

/** 1 pt = 25.4 mm / 72 (ISO 32000-1, 8.3.2.3) */
const MM_PER_POINT = 25.4 / 72;

/** A hundredth of a point is 0.0035 mm: far below what any printer holds. */
const TOLERANCE_PT = 0.01;

interface PointBox {
  readonly leftPt: number;
  readonly bottomPt: number;
  readonly rightPt: number;
  readonly topPt: number;
}

function boxAround(paths: readonly PdfPath[]): PointBox {
  const points = paths.flat();
  return {
    leftPt: Math.min(...points.map((point) => point.xPt)),
    bottomPt: Math.min(...points.map((point) => point.yPt)),
    rightPt: Math.max(...points.map((point) => point.xPt)),
    topPt: Math.max(...points.map((point) => point.yPt)),
  };
}

/** The one outline with round corners: lines and curves, eight ends and the start. */
function outlineOf(shapes: PdfShapes): PdfPath {
  const outlines = shapes.strokes.flatMap((stroke) => stroke.paths).filter((path) => path.length === 9);
  expect(outlines).toHaveLength(1);
  return outlines[0] ?? [];
}

/** Lengths of the strokes that run straight across (or down) the page, longest first. */
function strokeLengthsPt(shapes: PdfShapes, direction: 'across' | 'down'): readonly number[] {
  return shapes.strokes
    .flatMap((stroke) => stroke.paths)
    .filter((path) => path.length === 2)
    .map((path) => boxAround([path]))
    .filter((box) => (direction === 'across' ? box.topPt === box.bottomPt : box.leftPt === box.rightPt))
    .map((box) => (direction === 'across' ? box.rightPt - box.leftPt : box.topPt - box.bottomPt))
    .sort((a, b) => b - a);
}

const sheets = [
  ['marker card', markerCardPdf],
  ['print check', printCheckPdf],
] as const;

describe.each(sheets)('the PDF of the %s', (_name, sheetPdf) => {
  it.each([
    // 210 x 297 mm and 8.5 x 11 in, each by hand in points
    ['a4', 595.2756, 841.8898],
    ['letter', 612, 792],
  ] as const)('is one page of %s', async (paper, widthPt, heightPt) => {
    const shapes = await readPdfShapes(await sheetPdf({ paper }));
    expect(shapes.pageCount).toBe(1);
    expect(Math.abs(shapes.widthPt - widthPt)).toBeLessThan(TOLERANCE_PT);
    expect(Math.abs(shapes.heightPt - heightPt)).toBeLessThan(TOLERANCE_PT);
  });

  it('draws the ID-1 outline of 242.646 x 153.014 pt with corners of 9.014 pt', async () => {
    // 85.60, 53.98 and 3.18 mm (ISO/IEC 7810) times 72 / 25.4, by hand
    const outline = outlineOf(await readPdfShapes(await sheetPdf({ paper: 'a4' })));
    const box = boxAround([outline]);
    expect(Math.abs(box.rightPt - box.leftPt - 242.6457)).toBeLessThan(TOLERANCE_PT);
    expect(Math.abs(box.topPt - box.bottomPt - 153.0142)).toBeLessThan(TOLERANCE_PT);
    const [start, endOfTop, endOfFirstCorner] = outline;
    expect(Math.abs((start?.xPt ?? NaN) - box.leftPt - 9.0142)).toBeLessThan(TOLERANCE_PT);
    expect(Math.abs(box.rightPt - (endOfTop?.xPt ?? NaN) - 9.0142)).toBeLessThan(TOLERANCE_PT);
    expect(Math.abs(box.topPt - (endOfFirstCorner?.yPt ?? NaN) - 9.0142)).toBeLessThan(TOLERANCE_PT);
  });

  it('draws a line of 150 mm across: 425.197 pt', async () => {
    const [longestPt = NaN] = strokeLengthsPt(await readPdfShapes(await sheetPdf({ paper: 'letter' })), 'across');
    expect(Math.abs(longestPt - 425.1969)).toBeLessThan(TOLERANCE_PT);
  });

  it('has the same bytes each time it is made', async () => {
    const first = await sheetPdf({ paper: 'a4' });
    // dates would differ only after a second has passed
    await new Promise((resolve) => setTimeout(resolve, 1100));
    expect(await sheetPdf({ paper: 'a4' })).toEqual(first);
  });

  it('asks the viewer not to scale', async () => {
    const document = await PDFDocument.load(await sheetPdf({ paper: 'a4' }), { updateMetadata: false });
    expect(document.catalog.getViewerPreferences()?.getPrintScaling()).toBe(PrintScaling.None);
  });

  it('writes letters that can be read: 7 pt and more', async () => {
    const { texts } = await readPdfShapes(await sheetPdf({ paper: 'letter' }));
    expect(texts.length).toBeGreaterThan(10);
    expect(Math.min(...texts.map((text) => text.sizePt))).toBeGreaterThan(7);
  });
});

describe('the print check', () => {
  it('has a second line of 150 mm down the page', async () => {
    const [longestPt = NaN] = strokeLengthsPt(await readPdfShapes(await printCheckPdf({ paper: 'letter' })), 'down');
    expect(Math.abs(longestPt - 425.1969)).toBeLessThan(TOLERANCE_PT);
  });
});

describe('the markers of the marker card', () => {
  it.each(['a4', 'letter'] as const)(
    'are found by OpenCV on the painted page of %s at their millimetres',
    async (paper) => {
      const shapes = await readPdfShapes(await markerCardPdf({ paper }));
      const pixelsPerMm = 12;
      // The card with 10 mm of paper around it, from the sheet's corner.
      const { xMm, yMm } = MARKER_CARD_ON_SHEET;
      const fromMm = { xMm: xMm - 10, yMm: yMm - 10 };
      const rectangles = shapes.fills.flat().map((path) => {
        const box = boxAround([path]);
        return {
          leftPx: (box.leftPt * MM_PER_POINT - fromMm.xMm) * pixelsPerMm,
          rightPx: (box.rightPt * MM_PER_POINT - fromMm.xMm) * pixelsPerMm,
          topPx: ((shapes.heightPt - box.topPt) * MM_PER_POINT - fromMm.yMm) * pixelsPerMm,
          bottomPx: ((shapes.heightPt - box.bottomPt) * MM_PER_POINT - fromMm.yMm) * pixelsPerMm,
        };
      });
      const image = paintRectangles(106 * pixelsPerMm, 74 * pixelsPerMm, rectangles);

      const found = await detectMarkers(image);
      expect(found.map((marker) => marker.id)).toEqual([0, 1, 2, 3]);

      // Top left corners by hand: 4 mm from the edges, or 85.60 - 20 = 65.60 and 53.98 - 20 = 33.98; side 16 mm.
      const topLeftMm = [
        [4, 4],
        [65.6, 4],
        [65.6, 33.98],
        [4, 33.98],
      ] as const;
      for (const [index, [leftMm, topMm]] of topLeftMm.entries()) {
        const expectedMm = [
          [leftMm, topMm],
          [leftMm + 16, topMm],
          [leftMm + 16, topMm + 16],
          [leftMm, topMm + 16],
        ];
        const distancesMm = expectedMm.map(([x = NaN, y = NaN], corner) => {
          const at = found[index]?.corners[corner];
          return Math.hypot((at?.xPx ?? NaN) / pixelsPerMm - 10 - x, (at?.yPx ?? NaN) / pixelsPerMm - 10 - y);
        });
        expect(Math.max(...distancesMm)).toBeLessThan(0.05);
      }
    },
  );
});
