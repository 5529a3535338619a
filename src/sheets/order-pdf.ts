import type { PDFOperator, PDFPage } from '@cantoo/pdf-lib';
import {
  beginText,
  endText,
  lineTo,
  moveTo,
  PDFDocument,
  PDFName,
  PDFOperator as Operator,
  PDFOperatorNames,
  setFillingGrayscaleColor,
  setFontAndSize,
  setLineWidth,
  setStrokingGrayscaleColor,
  setTextMatrix,
  stroke,
} from '@cantoo/pdf-lib';
import type { Paper } from './layout.js';
import { PAPER_SIZES_MM } from './layout.js';
import type { OrderDocument } from './order-document.js';
import type { Density, OrderInk, TextStyle, Typefaces } from './order-pdf-bands.js';
import { baselineOf, CALM, DENSE, orderBands } from './order-pdf-bands.js';
import type { FlowFrame } from './order-pdf-flow.js';
import { flow } from './order-pdf-flow.js';
import { TagWriter } from './order-pdf-tags.js';
import type { Typeface } from './order-pdf-typeface.js';
import { embedTypeface, MISSING_LETTER } from './order-pdf-typeface.js';

/** Font files, TrueType or OpenType. Only the letters that are used go into the PDF. */
export interface OrderFonts {
  readonly regular: Uint8Array;
  readonly semiBold: Uint8Array;
}

/** A point of PDF is 1/72 inch, an inch is 25.4 mm (ISO 32000-1, 8.3.2.3). */
const POINTS_PER_MM = 72 / 25.4;

/**
 * All that is printed lies in a box of this size on either paper: pages break at the same places, and a file made for one paper
 * loses nothing on the other, be it centred there or laid to its top left corner. Chosen.
 */
const BOX_MM = { widthMm: 180, heightMm: 254 };
const TOP_MARGIN_MM = 13;
const COLUMN_GAP_MM = 9;

const FOOTER: TextStyle = { weight: 'regular', sizePt: 7.5, leadingPt: 9.5, gray: 0.33 };
const FOOTER_GAP_PT = 6;

/**
 * The order as a PDF with real text in embedded fonts: tagged, with its language and title, and with neither author nor time in
 * it, so that the same order gives the same bytes. It goes on over as many pages as it needs; nothing is cut. A letter that the
 * fonts lack stands as an empty box, and the sheet says so. This module brings the PDF library with it: import it when asked for.
 */
export async function orderPdf(
  order: OrderDocument,
  paper: Paper,
  fonts: OrderFonts,
): Promise<Uint8Array<ArrayBuffer>> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(order.title, { showInWindowTitleBar: true });
  document.setLanguage(order.language);
  const faces: Typefaces = {
    regular: await embedTypeface(document, fonts.regular, 'GLABEL+SourceSans3-Regular'),
    semiBold: await embedTypeface(document, fonts.semiBold, 'GLABEM+SourceSans3-SemiBold'),
  };

  const { widthMm, heightMm } = PAPER_SIZES_MM[paper];
  const leftPt = ((widthMm - BOX_MM.widthMm) / 2) * POINTS_PER_MM;
  const topPt = (heightMm - TOP_MARGIN_MM) * POINTS_PER_MM;
  const widthPt = BOX_MM.widthMm * POINTS_PER_MM;
  const footerLines = (page: number, pages: number): readonly string[] =>
    faces.regular.lines(faces.regular.writable(order.footer(page, pages)), FOOTER.sizePt, widthPt);
  const boxPt = BOX_MM.heightMm * POINTS_PER_MM;
  // as high as it gets with any number of pages
  const footerPt = footerLines(MANY_PAGES, MANY_PAGES).length * FOOTER.leadingPt;
  const frame: FlowFrame = {
    widthPt,
    heightPt: boxPt - footerPt - FOOTER_GAP_PT,
    columnGapPt: COLUMN_GAP_MM * POINTS_PER_MM,
  };
  const [written, aboutLetters] = withLettersOf(faces, order);
  const laidOut = (density: Density) => {
    const { bands, root } = orderBands(written, aboutLetters, faces, frame, density);
    return { pages: flow(bands, frame), root };
  };
  const [calm, dense] = [laidOut(CALM), laidOut(DENSE)];
  // Closer only where that spares a page.
  const { pages, root } = dense.pages.length < calm.pages.length ? dense : calm;

  const tags = new TagWriter(document);
  for (const [index, lines] of pages.entries()) {
    const page = document.addPage([rounded(widthMm * POINTS_PER_MM), rounded(heightMm * POINTS_PER_MM)]);
    const pen = new Pen(page, faces, tags);
    for (const { xPt, yPt, line } of lines) {
      for (const ink of line.inks) pen.draw(ink, leftPt + xPt, topPt - yPt);
    }
    const footer = footerLines(index + 1, pages.length);
    for (const [at, text] of footer.entries()) {
      const yPt = topPt - boxPt + footerPt - at * FOOTER.leadingPt;
      pen.draw({ kind: 'text', text, style: FOOTER, xPt: 0, baselinePt: baselineOf(FOOTER), tag: null }, leftPt, yPt);
    }
  }
  tags.write(root);
  return new Uint8Array(await document.save());
}

/** To a thousandth of a point, so that Letter is 612 and no dust beside it. */
function rounded(pt: number): number {
  return Math.round(1000 * pt) / 1000;
}

const MANY_PAGES = 99;

/** Draws on one page; places are points from its bottom left corner, y up. */
class Pen {
  constructor(
    private readonly page: PDFPage,
    private readonly faces: Typefaces,
    private readonly tags: TagWriter,
  ) {
    for (const [weight, { font }] of Object.entries<Typeface>(faces))
      page.node.setFontDictionary(PDFName.of(weight), font.ref);
  }

  /** @param leftPt @param topPt the top left corner of the line in which the ink stands */
  draw(ink: OrderInk, leftPt: number, topPt: number): void {
    const xPt = leftPt + ink.xPt;
    if (ink.kind === 'rule') {
      const yPt = topPt - ink.yPt;
      this.push(null, [
        setStrokingGrayscaleColor(ink.gray),
        setLineWidth(ink.strokePt),
        moveTo(xPt, yPt),
        lineTo(xPt + ink.widthPt, yPt),
        stroke(),
      ]);
      return;
    }
    const { style, text } = ink;
    this.push(ink.tag, [
      beginText(),
      setFillingGrayscaleColor(style.gray),
      setFontAndSize(style.weight, style.sizePt),
      setTextMatrix(1, 0, 0, 1, xPt, topPt - ink.baselinePt),
      Operator.of(PDFOperatorNames.ShowTextAdjusted, [this.faces[style.weight].encoded(text)]),
      endText(),
    ]);
  }

  private push(tag: Parameters<TagWriter['marked']>[1], operators: readonly PDFOperator[]): void {
    this.page.pushOperators(...this.tags.marked(this.page, tag, operators));
  }
}

/** The order in letters that both fonts have, and the sentence about the others; null where there are none. */
function withLettersOf({ regular, semiBold }: Typefaces, order: OrderDocument): [OrderDocument, string | null] {
  const boxesIn = (text: string): number => text.split(MISSING_LETTER).length;
  let isLacking = false;
  const writable = (text: string): string => {
    const written = semiBold.writable(regular.writable(text));
    isLacking ||= boxesIn(written) > boxesIn(text);
    return written;
  };
  const written = mapTexts(order, writable);
  return [written, isLacking ? writable(order.lettersMissing(MISSING_LETTER)) : null];
}

/** The same with every text in it changed; functions stay as they are. */
function mapTexts<Value>(value: Value, change: (text: string) => string): Value {
  const changed = (one: unknown): unknown => {
    if (typeof one === 'string') return change(one);
    if (Array.isArray(one)) return one.map(changed);
    if (typeof one !== 'object' || one === null) return one;
    return Object.fromEntries(Object.entries(one).map(([name, part]) => [name, changed(part)]));
  };
  return changed(value) as Value;
}
