/** What a PDF says, as pdfjs reads it. */
export interface PdfText {
  readonly pages: readonly { readonly widthPt: number; readonly heightPt: number }[];
  /** all that is written, with single spaces */
  readonly text: string;
}

export async function readPdfText(bytes: Uint8Array): Promise<PdfText> {
  const { getDocument, VerbosityLevel } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  // pdfjs keeps the bytes for itself, and takes no Buffer of Node.
  const task = getDocument({ data: Uint8Array.from(bytes), verbosity: VerbosityLevel.ERRORS });
  const file = await task.promise;
  const numbers = Array.from({ length: file.numPages }, (_, index) => index + 1);
  const read = await Promise.all(
    numbers.map(async (number) => {
      const page = await file.getPage(number);
      const { items } = await page.getTextContent();
      const [left = NaN, bottom = NaN, right = NaN, top = NaN] = page.view;
      const texts = items.flatMap((item) => ('str' in item ? [item.str] : []));
      return { size: { widthPt: right - left, heightPt: top - bottom }, text: texts.join(' ') };
    }),
  );
  await task.destroy();
  return {
    pages: read.map(({ size }) => size),
    text: read
      .map(({ text }) => text)
      .join(' ')
      .replaceAll(/\s+/g, ' '),
  };
}
