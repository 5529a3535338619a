import { decodePDFRawStream, PDFArray, PDFDocument, PDFRawStream } from '@cantoo/pdf-lib';

/** A point of a PDF page: 1/72 inch from its bottom left corner, y up. */
export interface PdfPoint {
  readonly xPt: number;
  readonly yPt: number;
}

/** A path of straight pieces; of a curve only the end is kept. */
export type PdfPath = readonly PdfPoint[];

export interface PdfShapes {
  readonly pageCount: number;
  readonly widthPt: number;
  readonly heightPt: number;
  /** each fill with all its paths */
  readonly fills: readonly (readonly PdfPath[])[];
  readonly strokes: readonly { readonly widthPt: number; readonly paths: readonly PdfPath[] }[];
  /** sizes of the letters and where each text begins */
  readonly texts: readonly (PdfPoint & { readonly sizePt: number })[];
}

/**
 * What the first page of a PDF draws, as its content stream says it (ISO 32000-1, 8.5 and 9.4). Knows the operators of plain
 * drawings only, and throws on those that would move what follows without its knowing (`cm`, `Do`).
 */
export async function readPdfShapes(bytes: Uint8Array): Promise<PdfShapes> {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const page = document.getPage(0);
  return {
    pageCount: document.getPageCount(),
    widthPt: page.getWidth(),
    heightPt: page.getHeight(),
    ...readContent(contentOf(page.node.Contents(), document)),
  };
}

function contentOf(contents: unknown, document: PDFDocument): string {
  const streams = contents instanceof PDFArray ? contents.asArray() : [contents];
  return streams
    .map((entry) => {
      const stream = entry instanceof PDFRawStream ? entry : document.context.lookup(entry as never);
      if (!(stream instanceof PDFRawStream)) throw new Error('the page has a content that is no stream');
      return Buffer.from(decodePDFRawStream(stream).decode()).toString('latin1');
    })
    .join('\n');
}

/** The shapes that a content stream draws. */
export function readContent(content: string): Pick<PdfShapes, 'fills' | 'strokes' | 'texts'> {
  const fills: PdfPath[][] = [];
  const strokes: { widthPt: number; paths: PdfPath[] }[] = [];
  const texts: (PdfPoint & { sizePt: number })[] = [];
  const lineWidths = [1];
  let paths: PdfPoint[][] = [];
  let operands: number[] = [];
  let fontSizePt = 0;

  const operand = (fromEnd: number): number => {
    const value = operands.at(-fromEnd);
    if (value === undefined) throw new Error('an operator lacks an operand');
    return value;
  };
  const addPoint = (): void => {
    const path = paths.at(-1);
    if (path === undefined) throw new Error('a path goes on that never began');
    path.push({ xPt: operand(2), yPt: operand(1) });
  };

  for (const token of content.match(/<[^>]*>|\S+/g) ?? []) {
    if (/^[-+]?[\d.]+$/.test(token)) {
      operands.push(Number(token));
      continue;
    }
    if (token.startsWith('<') || token.startsWith('/')) continue;
    switch (token) {
      case 'q':
        lineWidths.push(lineWidths.at(-1) ?? 1);
        break;
      case 'Q':
        lineWidths.pop();
        break;
      case 'w':
        lineWidths[lineWidths.length - 1] = operand(1);
        break;
      case 'm':
        paths.push([]);
        addPoint();
        break;
      case 'l':
      case 'c':
        addPoint();
        break;
      case 'f':
        fills.push(paths);
        paths = [];
        break;
      case 'S':
        strokes.push({ widthPt: lineWidths.at(-1) ?? 1, paths });
        paths = [];
        break;
      case 'Tf':
        fontSizePt = operand(1);
        break;
      case 'Tm':
        texts.push({ xPt: operand(2), yPt: operand(1), sizePt: fontSizePt });
        break;
      case 'cm':
      case 'Do':
      case 're':
        throw new Error(`cannot follow the operator ${token}`);
      default:
        break;
    }
    operands = [];
  }
  return { fills, strokes, texts };
}
