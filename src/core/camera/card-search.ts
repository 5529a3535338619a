import type { ImagePoint } from '../geometry/vector.js';
import type { EyesSeed } from './face-landmarks.js';
import type { FourCorners } from './features.js';
import { CHANNELS, CHANNEL_WEIGHTS, reduceImage, type RgbaImage } from './pixel-plane.js';
import { REFERENCE_CARD } from './reference-card.js';

/** A place where a card may be: a rectangle in the picture and how well straight steps of brightness lie along its sides. */
export interface CardCandidate {
  readonly corners: FourCorners<ImagePoint>;
  /** sum over the sides of the coherent step, with more weight on the weakest; larger is better */
  readonly score: number;
}

/** Width of the expected card in the search picture; small enough to be quick, large enough for its sides to be told apart. */
const CARD_WIDTH_CELLS = 50;
/** Mean distance between the eyes of adults, only to guess the card's size (ANSUR II: 63.3 mm). */
const TYPICAL_PD_MM = 63.3;
const SEARCH_WIDTH = Math.round(2.3 * CARD_WIDTH_CELLS);
const SEARCH_HEIGHT = Math.round(3.7 * CARD_WIDTH_CELLS);
const EYE_ROW = Math.round(0.41 * SEARCH_HEIGHT);
const ROLL_STEP_RAD = (2.4 * Math.PI) / 180;

/** How closely a picture is searched. */
export interface SearchEffort {
  /** turns of the card against the eyes, in both directions, in steps of 2.4 degrees */
  readonly rollSteps: number;
  /** widths, over the expected one */
  readonly sizes: readonly number[];
  /** width over height as a leaning card shows it, about the true 1.586 */
  readonly aspects: readonly number[];
}

/** For a picture that is measured. */
export const WHOLE_SEARCH: SearchEffort = {
  rollSteps: 4,
  sizes: [0.76, 0.8, 0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.16, 1.22, 1.28, 1.35],
  aspects: [1.54, 1.6, 1.67],
};

/** For one frame of many: what it misses, the next search may find. Chosen: a tenth of the work. */
export const QUICK_SEARCH: SearchEffort = {
  rollSteps: 2,
  sizes: [0.8, 0.88, 0.96, 1.05, 1.15, 1.26],
  aspects: [1.6],
};
/** A step this large counts in full: what matters is that it goes on along the whole side, not how strong it is. */
const FULL_STEP = 24;
/** A side's coherent step beyond this makes it hardly more of a side: what is left only breaks ties. */
const FULL_SIDE = 0.55;

function sideScore(coherentStep: number): number {
  return coherentStep <= FULL_SIDE ? coherentStep : FULL_SIDE + 0.25 * (coherentStep - FULL_SIDE);
}

/** A picture turned upright and reduced so that the expected card is `CARD_WIDTH_CELLS` wide. */
interface UprightFrame {
  readonly toPicture: (x: number, y: number) => ImagePoint;
  /** running sums along each row of the vertical derivative, and along each column of the horizontal one, per channel */
  readonly rowSums: readonly Float32Array[];
  readonly columnSums: readonly Float32Array[];
}

/**
 * Where an ID-1 card may be held to the face, best first. The face gives size and roll to within a few per cent and degrees;
 * for each roll the signed derivatives across the sides are summed along rows and columns once, so that each rectangle costs a
 * few look-ups. Signed sums make printed texture cancel while a long straight edge adds up.
 *
 * @param limit most candidates to be returned; they lie apart from one another
 */
export function searchCard(
  image: RgbaImage,
  eyes: EyesSeed,
  limit: number,
  effort: SearchEffort = WHOLE_SEARCH,
): CardCandidate[] {
  const expectedWidthPx = (REFERENCE_CARD.widthMm / TYPICAL_PD_MM) * eyes.spanPx;
  const factor = Math.max(1, Math.floor(expectedWidthPx / CARD_WIDTH_CELLS / 1.2));
  const reduced = reduceImage(image, factor);
  const cellPx = expectedWidthPx / CARD_WIDTH_CELLS;
  const found: (CardCandidate & { readonly centre: ImagePoint; readonly widthPx: number })[] = [];
  for (let step = -effort.rollSteps; step <= effort.rollSteps; step++) {
    const frame = turnUpright(reduced, factor, eyes, cellPx, eyes.rollRad + step * ROLL_STEP_RAD);
    for (const candidate of candidatesOf(frame, effort)) {
      found.push({
        corners: candidate.corners.map(({ xPx, yPx }) =>
          frame.toPicture(xPx, yPx),
        ) as unknown as FourCorners<ImagePoint>,
        score: candidate.score,
        centre: frame.toPicture(candidate.centreX, candidate.centreY),
        widthPx: candidate.width * cellPx,
      });
    }
  }
  found.sort((a, b) => b.score - a.score);
  const kept: typeof found = [];
  for (const candidate of found) {
    const repeated = kept.some(
      (other) =>
        Math.hypot(other.centre.xPx - candidate.centre.xPx, other.centre.yPx - candidate.centre.yPx) <
          0.06 * expectedWidthPx && Math.abs(other.widthPx - candidate.widthPx) < 0.06 * expectedWidthPx,
    );
    if (!repeated) kept.push(candidate);
    if (kept.length >= limit) break;
  }
  return kept.map(({ corners, score }) => ({ corners, score }));
}

function turnUpright(
  reduced: RgbaImage,
  factor: number,
  eyes: EyesSeed,
  cellPx: number,
  rollRad: number,
): UprightFrame {
  const cosine = Math.cos(rollRad) * cellPx;
  const sine = Math.sin(rollRad) * cellPx;
  const toPicture = (x: number, y: number): ImagePoint => ({
    xPx: eyes.middle.xPx + cosine * (x - SEARCH_WIDTH / 2) - sine * (y - EYE_ROW),
    yPx: eyes.middle.yPx + sine * (x - SEARCH_WIDTH / 2) + cosine * (y - EYE_ROW),
  });
  const size = SEARCH_WIDTH * SEARCH_HEIGHT;
  const red = new Float32Array(size);
  const green = new Float32Array(size);
  const blue = new Float32Array(size);
  const { widthPx, heightPx, data } = reduced;
  const origin = toPicture(0.5, 0.5);
  for (let row = 0; row < SEARCH_HEIGHT; row++) {
    for (let column = 0; column < SEARCH_WIDTH; column++) {
      const x = Math.min(Math.max((origin.xPx + cosine * column - sine * row) / factor - 0.5, 0), widthPx - 1.001);
      const y = Math.min(Math.max((origin.yPx + sine * column + cosine * row) / factor - 0.5, 0), heightPx - 1.001);
      const left = Math.floor(x);
      const top = Math.floor(y);
      const fx = x - left;
      const fy = y - top;
      const i = (top * widthPx + left) * 4;
      const below = i + widthPx * 4;
      const a = (1 - fx) * (1 - fy);
      const b = fx * (1 - fy);
      const c = (1 - fx) * fy;
      const d = fx * fy;
      const at = row * SEARCH_WIDTH + column;
      red[at] = a * data[i]! + b * data[i + 4]! + c * data[below]! + d * data[below + 4]!;
      green[at] = a * data[i + 1]! + b * data[i + 5]! + c * data[below + 1]! + d * data[below + 5]!;
      blue[at] = a * data[i + 2]! + b * data[i + 6]! + c * data[below + 2]! + d * data[below + 6]!;
    }
  }
  const rowSums: Float32Array[] = [];
  const columnSums: Float32Array[] = [];
  const plane = new Float32Array(size);
  for (const channel of CHANNELS) {
    const [wr, wg, wb] = CHANNEL_WEIGHTS[channel];
    for (let i = 0; i < size; i++) plane[i] = (wr * red[i]! + wg * green[i]! + wb * blue[i]!) / FULL_STEP;
    // Sums have one entry more than pixels in their direction: entry i is the sum before pixel i.
    const rows = new Float32Array(SEARCH_HEIGHT * (SEARCH_WIDTH + 1));
    for (let row = 1; row < SEARCH_HEIGHT - 1; row++) {
      let sum = 0;
      for (let column = 0; column < SEARCH_WIDTH; column++) {
        const at = row * SEARCH_WIDTH + column;
        sum += Math.min(Math.max(plane[at + SEARCH_WIDTH]! - plane[at - SEARCH_WIDTH]!, -1), 1);
        rows[row * (SEARCH_WIDTH + 1) + column + 1] = sum;
      }
    }
    const columns = new Float32Array((SEARCH_HEIGHT + 1) * SEARCH_WIDTH);
    for (let row = 0; row < SEARCH_HEIGHT; row++) {
      for (let column = 0; column < SEARCH_WIDTH; column++) {
        const at = row * SEARCH_WIDTH + column;
        const step =
          column > 0 && column < SEARCH_WIDTH - 1 ? Math.min(Math.max(plane[at + 1]! - plane[at - 1]!, -1), 1) : 0;
        columns[at + SEARCH_WIDTH] = columns[at]! + step;
      }
    }
    rowSums.push(rows);
    columnSums.push(columns);
  }
  return { toPicture, rowSums, columnSums };
}

interface FrameCandidate {
  readonly corners: FourCorners<ImagePoint>;
  readonly score: number;
  readonly centreX: number;
  readonly centreY: number;
  readonly width: number;
}

/** The best rectangles of each size in one upright frame: at most one for each part of the face and size. */
function candidatesOf(frame: UprightFrame, { sizes, aspects }: SearchEffort): FrameCandidate[] {
  const found: FrameCandidate[] = [];
  const eyeClearance = 0.05 * CARD_WIDTH_CELLS;
  const [r0, r1, r2] = frame.rowSums as [Float32Array, Float32Array, Float32Array];
  const [c0, c1, c2] = frame.columnSums as [Float32Array, Float32Array, Float32Array];
  const horizontal = new Float32Array(SEARCH_HEIGHT * SEARCH_WIDTH);
  const vertical = new Float32Array(SEARCH_HEIGHT * SEARCH_WIDTH);
  for (const size of sizes) {
    const width = Math.round(CARD_WIDTH_CELLS * size);
    const trimX = Math.round(0.07 * width);
    const across = Math.min(SEARCH_WIDTH - width, Math.round(0.84 * CARD_WIDTH_CELLS));
    const firstColumn = Math.round((SEARCH_WIDTH - width - across) / 2);
    const shareX = 1 / (width - 2 * trimX);
    for (let row = 0; row < SEARCH_HEIGHT; row++) {
      for (let column = firstColumn; column < firstColumn + across; column++) {
        const from = row * (SEARCH_WIDTH + 1) + column + trimX;
        const to = from + width - 2 * trimX;
        const step = Math.max(
          Math.abs(r0[to]! - r0[from]!),
          Math.abs(r1[to]! - r1[from]!),
          Math.abs(r2[to]! - r2[from]!),
        );
        horizontal[row * SEARCH_WIDTH + column] = step * shareX;
      }
    }
    for (const aspect of aspects) {
      const height = Math.round(width / aspect);
      const trimY = Math.round(0.11 * height);
      const shareY = 1 / (height - 2 * trimY);
      const down = SEARCH_HEIGHT - height;
      const readColumns = (first: number): void => {
        const end = Math.min(first + across, SEARCH_WIDTH);
        for (let row = 0; row < down; row++) {
          for (let column = first; column < end; column++) {
            const from = (row + trimY) * SEARCH_WIDTH + column;
            const to = (row + height - trimY) * SEARCH_WIDTH + column;
            const step = Math.max(
              Math.abs(c0[to]! - c0[from]!),
              Math.abs(c1[to]! - c1[from]!),
              Math.abs(c2[to]! - c2[from]!),
            );
            vertical[row * SEARCH_WIDTH + column] = step * shareY;
          }
        }
      };
      readColumns(firstColumn);
      readColumns(firstColumn + width);
      const best = [
        { score: 0, row: 0, column: 0 },
        { score: 0, row: 0, column: 0 },
      ];
      for (let row = 0; row < down; row++) {
        if (row < EYE_ROW + eyeClearance && row + height > EYE_ROW - eyeClearance) continue;
        const slot = best[row + height <= EYE_ROW ? 0 : 1]!;
        for (let column = firstColumn; column < firstColumn + across; column++) {
          const at = row * SEARCH_WIDTH + column;
          const top = sideScore(horizontal[at]!);
          const bottom = sideScore(horizontal[at + height * SEARCH_WIDTH]!);
          const left = sideScore(vertical[at]!);
          const right = column + width < SEARCH_WIDTH ? sideScore(vertical[at + width]!) : 0;
          // The weakest sides count more: three strong sides of a collar or a fringe are no card.
          const score = top + bottom + left + right + 1.2 * Math.min(top, bottom, left, right);
          if (score > slot.score) {
            slot.score = score;
            slot.row = row;
            slot.column = column;
          }
        }
      }
      for (const { score, row, column } of best) {
        if (score === 0) continue;
        found.push({
          score,
          corners: [
            { xPx: column + 0.5, yPx: row + 0.5 },
            { xPx: column + width + 0.5, yPx: row + 0.5 },
            { xPx: column + width + 0.5, yPx: row + height + 0.5 },
            { xPx: column + 0.5, yPx: row + height + 0.5 },
          ],
          centreX: column + width / 2 + 0.5,
          centreY: row + height / 2 + 0.5,
          width,
        });
      }
    }
  }
  return found;
}
