/**
 * Derives `markers-4x4-50.json`, the patterns of the printed marker card and of the printed ChArUco sheet, from OpenCV's own
 * dictionary:
 *
 *   npx tsx calibration/derive-marker-patterns.ts
 *
 * The patterns are asked of the very build that later looks for them, so that print and detector cannot disagree.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { openCvInNode } from './opencv-in-node.js';

/** The ChArUco sheet bears one in each of its 17 white squares, row by row; the card has the first four. */
const IDS = Array.from({ length: 17 }, (_, id) => id);

/** Cells of a marker along a side: 4 of the pattern and the black border around them. */
const CELLS = 6;

export interface MarkerPattern {
  readonly id: number;
  /** rows from the top, border included; `#` is a black cell, `.` a white one */
  readonly rows: readonly string[];
}

/** The patterns of the ids 0 to 16 of the dictionary 4x4_50 as OpenCV draws them, one pixel for each cell. */
export async function deriveMarkerPatterns(): Promise<readonly MarkerPattern[]> {
  const { cv } = await openCvInNode();
  const dictionary = cv.getPredefinedDictionary(cv.DICT_4X4_50);
  const image = new cv.Mat();
  try {
    return IDS.map((id) => {
      dictionary.generateImageMarker(id, CELLS, image, 1);
      const levels = Array.from(image.data);
      const rows = Array.from({ length: CELLS }, (_, row) =>
        levels
          .slice(row * CELLS, (row + 1) * CELLS)
          .map((level) => (level < 128 ? '#' : '.'))
          .join(''),
      );
      return { id, rows };
    });
  } finally {
    image.delete();
    dictionary.delete();
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { version } = JSON.parse(
    readFileSync(new URL('../node_modules/@techstark/opencv-js/package.json', import.meta.url), 'utf8'),
  ) as { version: string };
  const table = {
    title: 'Patterns of the markers of the printed marker card and of the printed ChArUco sheet',
    source: `OpenCV, predefined dictionary DICT_4X4_50, Dictionary::generateImageMarker with one pixel for each cell, by @techstark/opencv-js ${version}; derived by derive-marker-patterns.ts`,
    dictionary: '4x4_50',
    cells: CELLS,
    legend: { '#': 'black', '.': 'white' },
    markers: await deriveMarkerPatterns(),
  };
  writeFileSync(new URL('./markers-4x4-50.json', import.meta.url), `${JSON.stringify(table, null, 2)}\n`);
}
