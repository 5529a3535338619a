import type { PrintPort } from '../session/ports.js';

// The PDF library weighs more than the rest of the screen: it is loaded when a sheet is asked for.
const sheets = () => import('../sheets/sheets.js');

const pdf = (bytes: Uint8Array<ArrayBuffer>): Blob => new Blob([bytes], { type: 'application/pdf' });

/** The sheets to print as PDF files. */
export const printFiles: PrintPort = {
  markerCardPdf: async (paper) => pdf(await (await sheets()).markerCardPdf({ paper })),
  printCheckPdf: async (paper) => pdf(await (await sheets()).printCheckPdf({ paper })),
  boardPdf: async (paper) => pdf(await (await sheets()).boardPdf({ paper })),
};
