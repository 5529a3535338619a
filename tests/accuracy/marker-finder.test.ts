import { describe, expect, it } from 'vitest';
import patterns from '../../calibration/markers-4x4-50.json' with { type: 'json' };
import { openCvInNode } from '../../calibration/opencv-in-node.js';
import type { RgbaImage } from '../../src/core/camera/find-features.js';
import { createMarkerFinder } from '../../src/workers/card/marker-finder.js';
import type { OpenCv } from '../../src/workers/card/open-cv.js';
import { countedOpenCv } from '../support/counted-open-cv.js';

type Point = readonly [x: number, y: number];

/** The marker card of issue and design: ID-1, 16 mm markers, 4 mm from the edges; left and top of each in mm. */
const CARD_MM: Point = [85.6, 53.98];
const SIDE_MM = 16;
const ORIGINS_MM: readonly Point[] = [
  [4, 4],
  [CARD_MM[0] - 4 - SIDE_MM, 4],
  [CARD_MM[0] - 4 - SIDE_MM, CARD_MM[1] - 4 - SIDE_MM],
  [4, CARD_MM[1] - 4 - SIDE_MM],
];

const [DARK, BRIGHT, BEHIND] = [35, 215, 120];
const WIDTH_PX = 320;
const HEIGHT_PX = 240;

/** A card a little turned and leaning: picture = (a plane motion) / (a mild perspective). Any map would do. */
function toPicture([x, y]: Point): Point {
  const w = 1 + 0.0006 * x - 0.0004 * y;
  return [(40.3 + 2.5 * x - 0.22 * y) / w, (41.7 + 0.25 * x + 2.45 * y) / w];
}

/** Its inverse, by Newton steps with numerical derivatives. */
function toCard([u, v]: Point): Point {
  let [x, y] = [(u - 40) / 2.5, (v - 41) / 2.45];
  for (let step = 0; step < 8; step++) {
    const at = toPicture([x, y]);
    const alongX = toPicture([x + 1e-4, y]);
    const alongY = toPicture([x, y + 1e-4]);
    const [a, b] = [(alongX[0] - at[0]) / 1e-4, (alongY[0] - at[0]) / 1e-4];
    const [c, d] = [(alongX[1] - at[1]) / 1e-4, (alongY[1] - at[1]) / 1e-4];
    const [du, dv] = [u - at[0], v - at[1]];
    const determinant = a * d - b * c;
    x += (d * du - b * dv) / determinant;
    y += (a * dv - c * du) / determinant;
  }
  return [x, y];
}

function levelOnCard([x, y]: Point): number {
  if (x < 0 || y < 0 || x > CARD_MM[0] || y > CARD_MM[1]) return BEHIND;
  for (const [id, [left, top]] of ORIGINS_MM.entries()) {
    const column = Math.floor(((x - left) / SIDE_MM) * 6);
    const row = Math.floor(((y - top) / SIDE_MM) * 6);
    if (column < 0 || row < 0 || column > 5 || row > 5) continue;
    return patterns.markers[id]?.rows[row]?.[column] === '#' ? DARK : BRIGHT;
  }
  return BRIGHT;
}

/**
 * Each pixel is the mean of 5 x 5 points in it, then the picture is blurred by a 3 x 3 box: both without a shift. The points lie
 * straight between the pixel's corners; the map bends by less than a ten-thousandth of a pixel in there.
 */
function paintCard(): RgbaImage {
  const sharp = new Float64Array(WIDTH_PX * HEIGHT_PX);
  const corners = Array.from({ length: (WIDTH_PX + 1) * (HEIGHT_PX + 1) }, (_, at) =>
    toCard([at % (WIDTH_PX + 1), Math.floor(at / (WIDTH_PX + 1))]),
  );
  for (let y = 0; y < HEIGHT_PX; y++) {
    for (let x = 0; x < WIDTH_PX; x++) {
      const at = y * (WIDTH_PX + 1) + x;
      const [a, b, c, d] = [corners[at]!, corners[at + 1]!, corners[at + WIDTH_PX + 1]!, corners[at + WIDTH_PX + 2]!];
      let sum = 0;
      for (let i = 0; i < 25; i++) {
        const [u, v] = [((i % 5) + 0.5) / 5, (Math.floor(i / 5) + 0.5) / 5];
        const along = (k: 0 | 1) => (1 - v) * ((1 - u) * a[k] + u * b[k]) + v * ((1 - u) * c[k] + u * d[k]);
        sum += levelOnCard([along(0), along(1)]);
      }
      sharp[y * WIDTH_PX + x] = sum / 25;
    }
  }
  const data = new Uint8ClampedArray(4 * WIDTH_PX * HEIGHT_PX);
  for (let y = 0; y < HEIGHT_PX; y++) {
    for (let x = 0; x < WIDTH_PX; x++) {
      let sum = 0;
      for (let i = 0; i < 9; i++) {
        const column = Math.min(WIDTH_PX - 1, Math.max(0, x - 1 + (i % 3)));
        const row = Math.min(HEIGHT_PX - 1, Math.max(0, y - 1 + Math.floor(i / 3)));
        sum += sharp[row * WIDTH_PX + column] ?? 0;
      }
      const at = 4 * (y * WIDTH_PX + x);
      data.fill(Math.round(sum / 9), at, at + 3);
      data[at + 3] = 255;
    }
  }
  return { widthPx: WIDTH_PX, heightPx: HEIGHT_PX, data };
}

async function openCv(): Promise<{ readonly cv: OpenCv }> {
  const { cv } = await openCvInNode();
  return { cv: cv as unknown as OpenCv };
}

describe('createMarkerFinder', () => {
  it('finds the four markers, and their corners where they were painted', async () => {
    const { cv } = await openCv();
    const found = createMarkerFinder(cv)(paintCard());
    expect(found.map(({ id }) => id).sort()).toEqual([0, 1, 2, 3]);
    for (const { id, cornersPx } of found) {
      const [left, top] = ORIGINS_MM[id] ?? [NaN, NaN];
      const corners: readonly Point[] = [
        [left, top],
        [left + SIDE_MM, top],
        [left + SIDE_MM, top + SIDE_MM],
        [left, top + SIDE_MM],
      ];
      for (const [index, corner] of corners.entries()) {
        const [x, y] = toPicture(corner);
        // Half a pixel would be the wrong convention; a twentieth is what rounding to whole levels leaves, with room.
        const place = cornersPx[index];
        expect(Math.abs((place?.xPx ?? NaN) - x), `x of corner ${index} of marker ${id}`).toBeLessThan(0.05);
        expect(Math.abs((place?.yPx ?? NaN) - y), `y of corner ${index} of marker ${id}`).toBeLessThan(0.05);
      }
    }
  });

  it('finds nothing in an empty picture', async () => {
    const { cv } = await openCv();
    const data = new Uint8ClampedArray(4 * 64 * 48).fill(128);
    expect(createMarkerFinder(cv)({ widthPx: 64, heightPx: 48, data })).toEqual([]);
  });

  it('deletes all that it makes on the heap of OpenCV', async () => {
    const counted = countedOpenCv((await openCv()).cv);
    const findMarkers = createMarkerFinder(counted.cv);
    expect(findMarkers(paintCard())).toHaveLength(4);
    // a matrix for the picture, one for the ids, two vectors, four elements, dictionary, two sets of parameters, detector
    expect(counted.made()).toBe(12);
    expect(counted.alive()).toBe(0);
  });

  it('deletes all of it also when OpenCV throws', async () => {
    const counted = countedOpenCv((await openCv()).cv);
    const data = new Uint8ClampedArray(0);
    expect(() => createMarkerFinder(counted.cv)({ widthPx: 0, heightPx: 0, data })).toThrow();
    expect(counted.made()).toBeGreaterThan(0);
    expect(counted.alive()).toBe(0);
  });
});
