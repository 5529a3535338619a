import { perpendicularDown } from '../geometry/image-direction.js';
import { distancePx, midpointPx, type ImagePoint } from '../geometry/vector.js';
import type { BothSides } from '../units/side.js';
import type { SkinEdgeObservation } from './features.js';
import type { RgbaImage } from './pixel-plane.js';

/**
 * Lengths below are in units of which the landmarks before the ears lie 140 apart: close to millimetres at the sides of the head. All limits
 * were chosen on rendered heads with even numbers and checked on those with odd ones.
 */
const LANDMARKS_APART = 140;
/** Units from one sample to the next. */
const STEP = 0.5;
/** What is cut out of the picture on each side: outward from the middle of the face, and downward from the line of the landmarks. */
const CUT = { inner: 44, outer: 94, top: -42, bottom: 36 } as const;
/** Where the corner between head and ear is looked for. */
const SOUGHT = { inner: 58, outer: 82, top: -20, bottom: 22 } as const;
/** Contrast beyond which more tells nothing more, as a share of the level of the skin. */
const ENOUGH_CONTRAST = 0.45;
/** Added to the level of the skin, so that noise in the dark is no contrast. */
const DARK_LEVEL = 20;
/** A corner with less than this is none; one with just enough contrast and nothing against it has 0.855. */
const LEAST_SCORE = 0.3;
/** The ears' upper ends lie equally high, and equally far out, to within about this; beyond four times this it tells nothing. */
const HEIGHTS_ALIKE = 2;
const SIDES_ALIKE = 4;
const ALIKE_WEIGHT = 0.03;
/** Corners whose heights differ by more than this are not both the ears' upper ends. */
const HEIGHT_LIMIT = 2.5;
/** Nor do they lie so differently far out, unless the head is turned too far to see both. */
const SIDE_LIMIT = 5.5;
/** Their distance, as a share of that of the landmarks: 0.93 to 1.04 was seen. */
const SPAN_SHARE = { least: 0.915, most: 1.055 } as const;
/** Rows above the corner along which the edge of the skin is followed, and the most by which it may wander there. */
const FOLLOWED = { from: 3, to: 9 } as const;
const WANDER_LIMIT = 1;
/** Doubt of the edge, units: how far it wanders between neighbouring pictures of one head. */
const EDGE_UNCERTAINTY = 0.5;

type Colour = readonly [number, number, number];

/** The places that the outline is measured from: the landmarks before the ears, and the direction from the right eye to the left. */
export interface OutlineSeed {
  readonly head: BothSides<ImagePoint>;
  readonly rollRad: number;
}

/**
 * The edge of the skin just above and in front of the upper end of each ear. There the skin ends against hair or background above, and goes on
 * outward into the ear below: a corner that is looked for on both sides together. Null where one of them is not plainly seen: covered
 * by hair or a hand, cut off, of too little contrast.
 */
export function findSkinEdge(image: RgbaImage, { head, rollRad }: OutlineSeed): SkinEdgeObservation | null {
  const unitPx = distancePx(head.R, head.L) / LANDMARKS_APART;
  const frame: Frame = { middle: midpointPx(head.R, head.L), rollRad, unitPx };
  const cuts = { R: cutSide(image, frame, -1), L: cutSide(image, frame, 1) };
  const pair = bestPair(findCorners(cuts.R), findCorners(cuts.L));
  if (pair === null || Math.abs(pair.R.down - pair.L.down) > HEIGHT_LIMIT) return null;
  if (Math.min(pair.R.score, pair.L.score) < LEAST_SCORE) return null;
  const edges = { R: followEdge(cuts.R, pair.R), L: followEdge(cuts.L, pair.L) };
  if (edges.R === null || edges.L === null) return null;
  const share = (edges.R + edges.L) / LANDMARKS_APART;
  if (Math.abs(edges.R - edges.L) > SIDE_LIMIT || share < SPAN_SHARE.least || share > SPAN_SHARE.most) return null;
  return {
    R: placeIn(frame, -edges.R, pair.R.down),
    L: placeIn(frame, edges.L, pair.L.down),
    uncertaintyPx: EDGE_UNCERTAINTY * unitPx,
  };
}

/** Origin, direction and unit in which the sides of the head are looked at. */
interface Frame {
  readonly middle: ImagePoint;
  readonly rollRad: number;
  readonly unitPx: number;
}

function placeIn({ middle, rollRad, unitPx }: Frame, across: number, down: number): ImagePoint {
  const along = { xPx: Math.cos(rollRad), yPx: Math.sin(rollRad) };
  const below = perpendicularDown(rollRad);
  return {
    xPx: middle.xPx + unitPx * (across * along.xPx + down * below.xPx),
    yPx: middle.yPx + unitPx * (across * along.yPx + down * below.yPx),
  };
}

/** One side of the head, upright, with columns outward and rows downward. */
interface SideCut {
  readonly columns: number;
  readonly rows: number;
  /** red, green and blue of each sample; NaN outside the picture */
  readonly levels: Float32Array;
  /** sums of the levels above and inward of each corner between samples */
  readonly sums: Float64Array;
}

function cutSide(image: RgbaImage, frame: Frame, sign: 1 | -1): SideCut {
  const columns = Math.round((CUT.outer - CUT.inner) / STEP);
  const rows = Math.round((CUT.bottom - CUT.top) / STEP);
  const levels = new Float32Array(columns * rows * 3);
  const origin = placeIn(frame, sign * (CUT.inner + STEP / 2), CUT.top + STEP / 2);
  const next = placeIn(frame, sign * (CUT.inner + (3 * STEP) / 2), CUT.top + STEP / 2);
  const below = placeIn(frame, sign * (CUT.inner + STEP / 2), CUT.top + (3 * STEP) / 2);
  const { data, widthPx, heightPx } = image;
  for (let row = 0, at = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++, at += 3) {
      // The centre of the top left pixel is at (0.5, 0.5).
      const x = origin.xPx + column * (next.xPx - origin.xPx) + row * (below.xPx - origin.xPx) - 0.5;
      const y = origin.yPx + column * (next.yPx - origin.yPx) + row * (below.yPx - origin.yPx) - 0.5;
      const left = Math.floor(x);
      const top = Math.floor(y);
      if (left < 0 || top < 0 || left + 1 >= widthPx || top + 1 >= heightPx) {
        levels.fill(NaN, at, at + 3);
        continue;
      }
      const upper = (top * widthPx + left) * 4;
      const lower = upper + widthPx * 4;
      const [u, v] = [x - left, y - top];
      for (let k = 0; k < 3; k++) {
        const above = data[upper + k]! * (1 - u) + data[upper + 4 + k]! * u;
        levels[at + k] = above * (1 - v) + (data[lower + k]! * (1 - u) + data[lower + 4 + k]! * u) * v;
      }
    }
  }
  return { columns, rows, levels, sums: sumUp(levels, columns, rows) };
}

function sumUp(levels: Float32Array, columns: number, rows: number): Float64Array {
  const stride = (columns + 1) * 3;
  const sums = new Float64Array(stride * (rows + 1));
  for (let row = 0; row < rows; row++) {
    const line = [0, 0, 0];
    for (let column = 0; column < columns; column++) {
      const at = (row + 1) * stride + (column + 1) * 3;
      for (let k = 0; k < 3; k++) {
        const level = levels[(row * columns + column) * 3 + k]!;
        line[k] = line[k]! + (Number.isNaN(level) ? 0 : level);
        sums[at + k] = sums[at - stride + k]! + line[k]!;
      }
    }
  }
  return sums;
}

/** Mean colour of a rectangle; null where it is not all within the picture. */
function meanColour(cut: SideCut, from: number, to: number, top: number, bottom: number): Colour | null {
  const [c0, c1] = [Math.round((from - CUT.inner) / STEP), Math.round((to - CUT.inner) / STEP)];
  const [r0, r1] = [Math.round((top - CUT.top) / STEP), Math.round((bottom - CUT.top) / STEP)];
  if (c0 < 0 || r0 < 0 || c1 > cut.columns || r1 > cut.rows) return null;
  const seen = (column: number, row: number): boolean => !Number.isNaN(cut.levels[(row * cut.columns + column) * 3]!);
  // The picture is convex: a rectangle lies within it if its corners do.
  if (!seen(c0, r0) || !seen(c1 - 1, r0) || !seen(c0, r1 - 1) || !seen(c1 - 1, r1 - 1)) return null;
  const stride = (cut.columns + 1) * 3;
  const [a, b, c, d] = [r1 * stride + c1 * 3, r0 * stride + c1 * 3, r1 * stride + c0 * 3, r0 * stride + c0 * 3];
  const count = (c1 - c0) * (r1 - r0);
  const mean = (k: number): number =>
    (cut.sums[a + k]! - cut.sums[b + k]! - cut.sums[c + k]! + cut.sums[d + k]!) / count;
  return [mean(0), mean(1), mean(2)];
}

const contrast = (a: Colour, b: Colour): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** A place where the head's edge above could meet the ear. */
interface Corner {
  readonly out: number;
  readonly down: number;
  readonly score: number;
}

/** Best corners of each height, downward: of whole units, and of the halves beside the best of these. */
function findCorners(cut: SideCut): readonly Corner[] {
  const all: Corner[] = [];
  for (let down: number = SOUGHT.top; down <= SOUGHT.bottom; down++) {
    const line: Corner[] = [];
    const look = (out: number): void => {
      const score = cornerScore(cut, out, down);
      if (score !== null) line.push({ out, down, score });
    };
    for (let out: number = SOUGHT.inner; out <= SOUGHT.outer; out++) look(out);
    line.sort(byScore);
    for (const out of new Set(line.slice(0, CORNERS_KEPT).flatMap((each) => [each.out - STEP, each.out + STEP])))
      look(out);
    all.push(...line.sort(byScore).slice(0, CORNERS_KEPT));
  }
  return all;
}
const CORNERS_KEPT = 4;
const byScore = (a: Corner, b: Corner): number => b.score - a.score;

/**
 * How much a place looks like the corner: sharp contrast across the edge above it, contrast between what lies outside above and below, none
 * between the skin and the ear, nor along the skin. All as shares of the level of the skin.
 */
function cornerScore(cut: SideCut, out: number, down: number): number | null {
  const skin = meanColour(cut, out - 11, out - 4, down - 8, down + 8);
  const headAbove = meanColour(cut, out - 4, out - 0.5, down - 11, down - 1);
  const edgeAbove = meanColour(cut, out - 2.5, out - 0.5, down - 11, down - 1);
  const nearAbove = meanColour(cut, out + 0.5, out + 3, down - 11, down - 1.5);
  const outsideAbove = meanColour(cut, out + 0.5, out + 5, down - 11, down - 1.5);
  const headBelow = meanColour(cut, out - 4, out - 0.5, down + 1, down + 11);
  const ear = meanColour(cut, out + 1, out + 6, down + 2, down + 12);
  if (!skin || !headAbove || !edgeAbove || !nearAbove || !outsideAbove || !headBelow || !ear) return null;
  const level = (skin[0] + skin[1] + skin[2]) / 3 + DARK_LEVEL;
  // Its excess over what is enough tells nothing of whether this is a corner, but at which height it lies.
  const earContrast = contrast(ear, outsideAbove) / level;
  return (
    Math.min(contrast(edgeAbove, nearAbove) / level, ENOUGH_CONTRAST) +
    0.7 * Math.min(earContrast, ENOUGH_CONTRAST) +
    0.2 * earContrast -
    (0.6 * contrast(headBelow, ear) + contrast(headAbove, skin) + 0.5 * contrast(nearAbove, outsideAbove)) / level
  );
}

function bestPair(right: readonly Corner[], left: readonly Corner[]): BothSides<Corner> | null {
  const unlike = (a: number, b: number, alike: number): number => Math.min(((a - b) / alike) ** 2, 16);
  let best: BothSides<Corner> | null = null;
  let bestScore = -Infinity;
  for (const R of right) {
    for (const L of left) {
      if (R.score + L.score <= bestScore) continue;
      const apart = unlike(R.down, L.down, HEIGHTS_ALIKE) + unlike(R.out, L.out, SIDES_ALIKE);
      const score = R.score + L.score - ALIKE_WEIGHT * apart;
      if (score <= bestScore) continue;
      best = { R, L };
      bestScore = score;
    }
  }
  return best;
}

/** How far out the skin ends in the rows above the corner; null where that cannot be followed. */
function followEdge(cut: SideCut, corner: Corner): number | null {
  const found: number[] = [];
  for (let above: number = FOLLOWED.from; above < FOLLOWED.to; above++) {
    const edge = edgeOfRow(cut, corner.out, corner.down - above);
    if (edge !== null) found.push(edge);
  }
  if (found.length < FOLLOWED.to - FOLLOWED.from) return null;
  found.sort((a, b) => a - b);
  const wander = found[found.length - 2]! - found[1]!;
  return wander > WANDER_LIMIT ? null : found[Math.floor(found.length / 2)]!;
}

/** Half of the stretch in which the edge is looked for, on how much of each side it is seen, and how near it is expected. */
const REACH = 4.5;
const WINDOW = 2.5;
const NEARNESS = 4;

/** Steepest place of one row, one unit high, between samples by a parabola. */
function edgeOfRow(cut: SideCut, expected: number, down: number): number | null {
  const steps: number[] = [];
  for (let out = expected - REACH; out <= expected + REACH; out += STEP) {
    const inside = meanColour(cut, out - WINDOW, out, down - 1, down);
    const outside = meanColour(cut, out, out + WINDOW, down - 1, down);
    if (inside === null || outside === null) return null;
    steps.push(contrast(inside, outside) * Math.exp(-0.5 * ((out - expected) / NEARNESS) ** 2));
  }
  const top = steps.indexOf(Math.max(...steps));
  const [before, at, after] = [steps[top - 1], steps[top]!, steps[top + 1]];
  const bend = before === undefined || after === undefined ? 0 : before - 2 * at + after;
  const shift = bend < 0 ? (before! - after!) / (2 * bend) : 0;
  return expected - REACH + (top + shift) * STEP;
}
