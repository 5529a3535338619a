import regularFont from '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url';
import semiBoldFont from '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url';
import type { Paper, PrintPort } from '../session/ports.js';
import type { OrderDocument } from '../sheets/order-document.js';

// The PDF library weighs more than the rest of the screen: it is loaded when a sheet is asked for.
const sheets = () => import('../sheets/sheets.js');

const pdf = (bytes: Uint8Array<ArrayBuffer>): Blob => new Blob([bytes], { type: 'application/pdf' });

/** The sheets to print as PDF files. */
export const printFiles: PrintPort = {
  markerCardPdf: async (paper) => pdf(await (await sheets()).markerCardPdf({ paper })),
  printCheckPdf: async (paper) => pdf(await (await sheets()).printCheckPdf({ paper })),
  boardPdf: async (paper) => pdf(await (await sheets()).boardPdf({ paper })),
};

/** The order as a PDF; rejects where the code or the fonts for it cannot be loaded. */
export async function orderPdf(order: OrderDocument, paper: Paper): Promise<Uint8Array<ArrayBuffer>> {
  const [module, regular, semiBold] = await Promise.all([
    import('../sheets/order-pdf.js'),
    fontFile(regularFont),
    fontFile(semiBoldFont),
  ]);
  return module.orderPdf(order, paper, { regular, semiBold });
}

async function fontFile(address: string): Promise<Uint8Array> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`The font ${address} came with status ${response.status}.`);
  return new Uint8Array(await response.arrayBuffer());
}
