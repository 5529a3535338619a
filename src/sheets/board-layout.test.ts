import { PDFDocument, PrintScaling } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { boardByOpenCv, detectBoard, photographSheet } from '../../tests/support/detect-board.js';
import type { GreyImage } from '../../tests/support/detect-markers.js';
import { paintRectangles } from '../../tests/support/detect-markers.js';
import { readPdfShapes, type PdfPath } from '../../tests/support/pdf-shapes.js';
import { project } from '../core/camera/pinhole.js';
import { toCamera } from '../core/geometry/pose.js';
import { rotationFromVector } from '../core/geometry/rotation.js';
import { boardLayout } from './board-layout.js';
import { boardPdf } from './sheets.js';
import type { Paper } from './layout.js';

/** 1 pt = 25.4 mm / 72 (ISO 32000-1, 8.3.2.3) */
const MM_PER_POINT = 25.4 / 72;
const PIXELS_PER_MM = 4;

/** Where the board begins on the page, mm: the margin, by hand from the brief of the sheet. */
const BOARD_AT_MM = 15;

async function sheet(paper: Paper) {
  const shapes = await readPdfShapes(await boardPdf({ paper }));
  const boxMm = (path: PdfPath) => ({
    left: Math.min(...path.map((point) => point.xPt)) * MM_PER_POINT,
    right: Math.max(...path.map((point) => point.xPt)) * MM_PER_POINT,
    top: (shapes.heightPt - Math.max(...path.map((point) => point.yPt))) * MM_PER_POINT,
    bottom: (shapes.heightPt - Math.min(...path.map((point) => point.yPt))) * MM_PER_POINT,
  });
  return { ...shapes, boxMm };
}

/** What is filled on the page, painted from its top left corner. */
async function paintedSheet(paper: Paper): Promise<GreyImage> {
  const { fills, boxMm, widthPt, heightPt } = await sheet(paper);
  return paintRectangles(
    Math.round(widthPt * MM_PER_POINT * PIXELS_PER_MM),
    Math.round(heightPt * MM_PER_POINT * PIXELS_PER_MM),
    fills.flat().map((path) => {
      const { left, top, right, bottom } = boxMm(path);
      return {
        leftPx: left * PIXELS_PER_MM,
        rightPx: right * PIXELS_PER_MM,
        topPx: top * PIXELS_PER_MM,
        bottomPx: bottom * PIXELS_PER_MM,
      };
    }),
  );
}

describe.each(['a4', 'letter'] as const)('the PDF of the camera sheet on %s', (paper) => {
  it('is one page on its long side, to be printed without scaling', async () => {
    const { pageCount, widthPt, heightPt } = await sheet(paper);
    // 297 x 210 mm and 11 x 8.5 in, each by hand in points
    const [width, height] = paper === 'a4' ? [841.8898, 595.2756] : [792, 612];
    expect(pageCount).toBe(1);
    expect([widthPt, heightPt]).toEqual([expect.closeTo(width, 2), expect.closeTo(height, 2)]);
    const document = await PDFDocument.load(await boardPdf({ paper }), { updateMetadata: false });
    expect(document.catalog.getViewerPreferences()?.getPrintScaling()).toBe(PrintScaling.None);
  });

  it('has no line to be measured: its size does not matter', async () => {
    const { strokes } = await sheet(paper);
    const words = boardLayout(paper).elements.flatMap((element) => (element.kind === 'text' ? [element.text] : []));
    expect(strokes).toEqual([]);
    expect(words.join(' ')).toMatch(/size does not matter.*flat does matter/);
  });

  it('keeps 10 mm of white around the board, and its words can be read', async () => {
    const { fills, strokes, texts, boxMm, heightPt } = await sheet(paper);
    const board = fills.flat().map(boxMm);
    const edges = [
      Math.min(...board.map((box) => box.left)),
      Math.min(...board.map((box) => box.top)),
      Math.max(...board.map((box) => box.right)),
      Math.max(...board.map((box) => box.bottom)),
    ];
    // 15 + 7 x 30 and 15 + 5 x 30 mm
    expect(edges).toEqual([15, 15, 225, 165].map((edge): unknown => expect.closeTo(edge, 3)));
    expect(strokes.flatMap(({ paths }) => paths.map(boxMm)).filter((box) => box.left < 235 && box.top < 175)).toEqual(
      [],
    );
    const inWhite = texts.filter(
      // 0.718 of its size is how high a letter of Helvetica reaches (Adobe font metrics)
      (text) => text.xPt * MM_PER_POINT < 235 && (heightPt - text.yPt - 0.718 * text.sizePt) * MM_PER_POINT < 175,
    );
    expect(inWhite).toEqual([]);
    expect(texts.length).toBeGreaterThan(7);
    expect(Math.min(...texts.map((text) => text.sizePt))).toBeGreaterThan(7);
  });

  it('shows the board that OpenCV draws, pixel by pixel', async () => {
    const painted = await paintedSheet(paper);
    const drawn = await boardByOpenCv(PIXELS_PER_MM);
    // OpenCV rounds a marker's cells of 22/6 mm to whole pixels, so the pixels beside an edge may differ: only those count
    // that are alike for two pixels around.
    const levelAt = (x: number, y: number): number => drawn.levels[y * drawn.widthPx + x] ?? NaN;
    const around = [-2, 0, 2].flatMap((dx) => [-2, 0, 2].map((dy) => [dx, dy] as const));
    let compared = 0;
    let unlike = 0;
    for (let y = 2; y < drawn.heightPx - 2; y++) {
      for (let x = 2; x < drawn.widthPx - 2; x++) {
        const level = levelAt(x, y);
        const isInside = around.every(([dx, dy]) => levelAt(x + dx, y + dy) === level);
        if (!isInside) continue;
        compared++;
        const at = (y + BOARD_AT_MM * PIXELS_PER_MM) * painted.widthPx + x + BOARD_AT_MM * PIXELS_PER_MM;
        if (painted.levels[at] !== level) unlike++;
      }
    }
    expect(compared).toBeGreaterThan(0.8 * drawn.levels.length);
    expect(unlike).toBe(0);
  });

  it('is found by OpenCV through a camera, all corners at their millimetres', async () => {
    const camera = { fx: 1180, fy: 1180, cx: 633, cy: 366, distortion: [0.04, -0.06, 0.001, -0.0005, 0] } as const;
    const pose = {
      rotation: rotationFromVector([0.3, -0.35, 0.08]),
      translationMm: [-130, -75, 520],
    } as const;
    const picture = photographSheet(await paintedSheet(paper), PIXELS_PER_MM, camera, pose, 1280, 720);
    const corners = await detectBoard(picture);
    expect(corners.map((corner) => corner.index)).toEqual(Array.from({ length: 24 }, (_, index) => index));
    const offPx = corners.map((corner) => {
      // 6 inner corners a row, 30 mm apart, the first one square from the board's outer corner
      const xMm = BOARD_AT_MM + 30 * ((corner.index % 6) + 1);
      const yMm = BOARD_AT_MM + 30 * (Math.floor(corner.index / 6) + 1);
      const expected = project(camera, toCamera(pose, [xMm, yMm, 0]));
      return Math.hypot(corner.xPx - expected.xPx, corner.yPx - expected.yPx);
    });
    // A wrong corner would be off by a square, 60 px; OpenCV's own refinement is good to a few tenths of a pixel here.
    expect(Math.max(...offPx)).toBeLessThan(1);
  });
});
