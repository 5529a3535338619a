import { boardLayout } from './board-layout.js';
import type { Paper } from './layout.js';
import { markerCardLayout } from './marker-card-layout.js';
import { printCheckLayout } from './print-check-layout.js';
import { sheetPdf } from './sheet-pdf.js';

export type { Paper } from './layout.js';

export interface SheetOptions {
  readonly paper: Paper;
}

/**
 * The marker card as a PDF of one page at true size. The ruled line stands on the same page, so that what is measured is the
 * scale of the very print that the card is cut from. This module brings the PDF library with it: import it when asked for.
 */
export function markerCardPdf(options: SheetOptions): Promise<Uint8Array<ArrayBuffer>> {
  return sheetPdf(markerCardLayout(options.paper));
}

/** The print check as a PDF of one page at true size: for trying a printer, and whether a bought card is of ID-1 size. */
export function printCheckPdf(options: SheetOptions): Promise<Uint8Array<ArrayBuffer>> {
  return sheetPdf(printCheckLayout(options.paper));
}

/**
 * The ChArUco sheet as a PDF of one page at true size, the paper lying on its long side. A camera profile asks only that the
 * sheet is flat and its squares are square; its size does not matter.
 */
export function boardPdf(options: SheetOptions): Promise<Uint8Array<ArrayBuffer>> {
  return sheetPdf(boardLayout(options.paper));
}
