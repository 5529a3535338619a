import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { readContent, readPdfShapes } from './pdf-shapes.js';

describe('readContent', () => {
  it('reads fills, strokes with their width, and texts', () => {
    // written by hand after ISO 32000-1, 8.5 and 9.4
    const content =
      '1 2 m 3 2 l 3 4 l h 5 5 m 6 5 l 6 6 l h f q 0.5 w 0 0 m 10 0 l S Q 0 1 m 0 2 l S BT /F1 12 Tf 1 0 0 1 7 8 Tm <41> Tj ET';
    expect(readContent(content)).toEqual({
      fills: [
        [
          [
            { xPt: 1, yPt: 2 },
            { xPt: 3, yPt: 2 },
            { xPt: 3, yPt: 4 },
          ],
          [
            { xPt: 5, yPt: 5 },
            { xPt: 6, yPt: 5 },
            { xPt: 6, yPt: 6 },
          ],
        ],
      ],
      strokes: [
        {
          widthPt: 0.5,
          paths: [
            [
              { xPt: 0, yPt: 0 },
              { xPt: 10, yPt: 0 },
            ],
          ],
        },
        {
          widthPt: 1,
          paths: [
            [
              { xPt: 0, yPt: 1 },
              { xPt: 0, yPt: 2 },
            ],
          ],
        },
      ],
      texts: [{ xPt: 7, yPt: 8, sizePt: 12 }],
    });
  });

  it('refuses what would move the drawing unseen', () => {
    expect(() => readContent('2 0 0 2 0 0 cm 0 0 m 1 1 l S')).toThrow('cm');
  });
});

describe('readPdfShapes', () => {
  it('reads the size of the page', async () => {
    const document = await PDFDocument.create();
    document.addPage([300, 200]).drawText('x', { x: 10, y: 20, size: 9 });
    const shapes = await readPdfShapes(await document.save());
    expect(shapes).toMatchObject({
      pageCount: 1,
      widthPt: 300,
      heightPt: 200,
      texts: [{ xPt: 10, yPt: 20, sizePt: 9 }],
    });
  });
});
