import {
  closePath,
  fill,
  lineTo,
  moveTo,
  PDFDocument,
  PrintScaling,
  popGraphicsState,
  pushGraphicsState,
  setLineWidth,
  StandardFonts,
  stroke,
  appendBezierCurve,
  type PDFFont,
  type PDFOperator,
  type PDFPage,
} from '@cantoo/pdf-lib';
import { unreachable } from '../core/result.js';
import type { OutlineElement, SheetElement, SheetLayout, SheetRectangle, TextElement } from './layout.js';

/** A point of PDF is 1/72 inch, an inch is 25.4 mm (ISO 32000-1, 8.3.2.3). */
const POINTS_PER_MM = 72 / 25.4;

/** Control points of a cubic that follows a quarter circle of radius 1 to 0.03 %: 4/3 tan(pi/8). */
const QUARTER_CIRCLE = (4 / 3) * Math.tan(Math.PI / 8);

/**
 * A PDF with the sheet as its one page at true size, its text in Helvetica. The same layout gives the same bytes: nothing of the
 * time or the device goes in. Asks the viewer to print without scaling, which not every viewer obeys.
 */
export async function sheetPdf(layout: SheetLayout): Promise<Uint8Array<ArrayBuffer>> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(layout.title, { showInWindowTitleBar: true });
  document.setLanguage('en');
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const fonts: Fonts = {
    regular: await document.embedFont(StandardFonts.Helvetica),
    bold: await document.embedFont(StandardFonts.HelveticaBold),
  };

  const page = document.addPage([layout.widthMm * POINTS_PER_MM, layout.heightMm * POINTS_PER_MM]);
  for (const element of layout.elements) draw(element, page, new Pen(layout.heightMm), fonts);
  const bytes = await document.save();
  return new Uint8Array(bytes);
}

type Fonts = Readonly<Record<TextElement['weight'], PDFFont>>;

/** From the sheet's millimetres (y down) to the page's points (y up). */
class Pen {
  constructor(private readonly pageHeightMm: number) {}

  x(xMm: number): number {
    return xMm * POINTS_PER_MM;
  }

  y(yMm: number): number {
    return (this.pageHeightMm - yMm) * POINTS_PER_MM;
  }

  moveTo(xMm: number, yMm: number): PDFOperator {
    return moveTo(this.x(xMm), this.y(yMm));
  }

  lineTo(xMm: number, yMm: number): PDFOperator {
    return lineTo(this.x(xMm), this.y(yMm));
  }
}

function draw(element: SheetElement, page: PDFPage, pen: Pen, fonts: Fonts): void {
  switch (element.kind) {
    case 'fill':
      page.pushOperators(...element.rectangles.flatMap((rectangle) => rectanglePath(rectangle, pen)), fill());
      return;
    case 'line':
      page.pushOperators(
        ...stroked(element.strokeMm, [
          pen.moveTo(element.from.xMm, element.from.yMm),
          pen.lineTo(element.to.xMm, element.to.yMm),
        ]),
      );
      return;
    case 'outline':
      page.pushOperators(...stroked(element.strokeMm, outlinePath(element, pen)));
      return;
    case 'text':
      drawText(element, page, pen, fonts);
      return;
    default:
      unreachable(element);
  }
}

function stroked(strokeMm: number, path: readonly PDFOperator[]): readonly PDFOperator[] {
  return [pushGraphicsState(), setLineWidth(strokeMm * POINTS_PER_MM), ...path, stroke(), popGraphicsState()];
}

function rectanglePath({ xMm, yMm, widthMm, heightMm }: SheetRectangle, pen: Pen): readonly PDFOperator[] {
  return [
    pen.moveTo(xMm, yMm),
    pen.lineTo(xMm + widthMm, yMm),
    pen.lineTo(xMm + widthMm, yMm + heightMm),
    pen.lineTo(xMm, yMm + heightMm),
    closePath(),
  ];
}

function outlinePath({ rectangle, cornerRadiusMm: radiusMm }: OutlineElement, pen: Pen): readonly PDFOperator[] {
  const leftMm = rectangle.xMm;
  const topMm = rectangle.yMm;
  const rightMm = leftMm + rectangle.widthMm;
  const bottomMm = topMm + rectangle.heightMm;
  // From a corner's point to its control point on each side.
  const controlMm = radiusMm * (1 - QUARTER_CIRCLE);
  const curve = (x1: number, y1: number, x2: number, y2: number, x3: number, y3: number): PDFOperator =>
    appendBezierCurve(pen.x(x1), pen.y(y1), pen.x(x2), pen.y(y2), pen.x(x3), pen.y(y3));
  return [
    pen.moveTo(leftMm + radiusMm, topMm),
    pen.lineTo(rightMm - radiusMm, topMm),
    curve(rightMm - controlMm, topMm, rightMm, topMm + controlMm, rightMm, topMm + radiusMm),
    pen.lineTo(rightMm, bottomMm - radiusMm),
    curve(rightMm, bottomMm - controlMm, rightMm - controlMm, bottomMm, rightMm - radiusMm, bottomMm),
    pen.lineTo(leftMm + radiusMm, bottomMm),
    curve(leftMm + controlMm, bottomMm, leftMm, bottomMm - controlMm, leftMm, bottomMm - radiusMm),
    pen.lineTo(leftMm, topMm + radiusMm),
    curve(leftMm, topMm + controlMm, leftMm + controlMm, topMm, leftMm + radiusMm, topMm),
    closePath(),
  ];
}

/** Share of a text's width that stands left of its anchor. */
const ANCHOR_SHARES: Readonly<Record<TextElement['anchor'], number>> = { left: 0, middle: 0.5, right: 1 };

function drawText(element: TextElement, page: PDFPage, pen: Pen, fonts: Fonts): void {
  const font = fonts[element.weight];
  const size = element.sizeMm * POINTS_PER_MM;
  const widthLeftOfAnchor = font.widthOfTextAtSize(element.text, size) * ANCHOR_SHARES[element.anchor];
  page.drawText(element.text, {
    x: pen.x(element.at.xMm) - widthLeftOfAnchor,
    y: pen.y(element.at.yMm),
    size,
    font,
  });
}
