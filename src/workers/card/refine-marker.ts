import type { FourCorners } from '../../core/camera/features.js';
import { distancePx } from '../../core/geometry/vector.js';
import type { ImagePoint } from '../../core/geometry/vector.js';
import type { GrayImage } from './gray-image.js';
import { levelAt } from './gray-image.js';

/** A straight line in the picture: a point on it and its direction (unit length). */
interface EdgeLine {
  readonly point: ImagePoint;
  readonly alongX: number;
  readonly alongY: number;
}

/** A 4x4 marker is six cells wide with its border; a search across an edge must stay within the border cell. */
const CELLS_PER_SIDE = 6;

/** Chosen: the first pass must reach over the doubt of the detector, the second only over the blur. */
const SEARCH_CELLS = [0.95, 0.75] as const;

/** Chosen: the smallest step, in grey levels, that counts as the edge of a marker printed black on white. */
const LEAST_STEP_LEVELS = 20;

/** Chosen: the ends of each edge, as a share of its length, where the neighbouring edge blurs in. */
const END_MARGIN = 0.1;

const SAMPLE_STEP_PX = 0.25;

/**
 * The corners of a marker as the intersections of lines fitted to its four outer edges, in the same order. Each edge is
 * found where the brightness crosses half way between black border and white paper, which a symmetric blur does not move.
 * The corners are in pixels with (0,0) at the outer corner of the top-left pixel. Returns null where an edge is hidden or
 * out of reach of the start: the caller then keeps the corners it has.
 */
export function refineMarker(gray: GrayImage, start: FourCorners<ImagePoint>): FourCorners<ImagePoint> | null {
  let corners: FourCorners<ImagePoint> = start;
  for (const searchCells of SEARCH_CELLS) {
    const [topLeft, topRight, bottomRight, bottomLeft] = corners;
    const top = fitEdge(gray, topLeft, topRight, searchCells);
    const right = fitEdge(gray, topRight, bottomRight, searchCells);
    const bottom = fitEdge(gray, bottomRight, bottomLeft, searchCells);
    const left = fitEdge(gray, bottomLeft, topLeft, searchCells);
    if (top === null || right === null || bottom === null || left === null) return null;
    const refined = [intersect(left, top), intersect(top, right), intersect(right, bottom), intersect(bottom, left)];
    const [a, b, c, d] = refined;
    if (a == null || b == null || c == null || d == null) return null;
    corners = [a, b, c, d];
  }
  const side = distancePx(start[0], start[1]);
  const moved = corners.map((corner, index) => distancePx(corner, start[index] ?? corner));
  return Math.max(...moved) > side / CELLS_PER_SIDE ? null : corners;
}

/** Fits the edge from one corner to the next, clockwise, so that the marker lies to the right of the way. */
function fitEdge(gray: GrayImage, from: ImagePoint, to: ImagePoint, searchCells: number): EdgeLine | null {
  const length = distancePx(from, to);
  const alongX = (to.xPx - from.xPx) / length;
  const alongY = (to.yPx - from.yPx) / length;
  // outwards: to the left of the way when y points down
  const outX = alongY;
  const outY = -alongX;
  const reachPx = Math.max(1.5, (length / CELLS_PER_SIDE) * searchCells);
  const count = Math.max(5, Math.round(length * (1 - 2 * END_MARGIN)));
  const places: { along: number; across: number }[] = [];
  for (let index = 0; index < count; index++) {
    const along = length * (END_MARGIN + ((1 - 2 * END_MARGIN) * (index + 0.5)) / count);
    const across = findStep(gray, from.xPx + along * alongX, from.yPx + along * alongY, outX, outY, reachPx);
    if (across !== null) places.push({ along, across });
  }
  if (places.length < count / 2) return null;
  const fitted = fitLine(places);
  if (fitted === null) return null;
  const across = (along: number) => fitted.offset + fitted.slope * along;
  const at = (along: number): ImagePoint => ({
    xPx: from.xPx + along * alongX + across(along) * outX,
    yPx: from.yPx + along * alongY + across(along) * outY,
  });
  const start = at(0);
  const end = at(length);
  const fittedLength = distancePx(start, end);
  return {
    point: start,
    alongX: (end.xPx - start.xPx) / fittedLength,
    alongY: (end.yPx - start.yPx) / fittedLength,
  };
}

/** Where, along the outward direction, the brightness rises through half of the step; null without a step. */
function findStep(gray: GrayImage, x: number, y: number, outX: number, outY: number, reachPx: number): number | null {
  const half = Math.round(reachPx / SAMPLE_STEP_PX);
  const profile: number[] = [];
  for (let index = -half; index <= half; index++) {
    const offset = index * SAMPLE_STEP_PX;
    const level = levelAt(gray, x + offset * outX, y + offset * outY);
    if (level === null) return null;
    profile.push(level);
  }
  let steepest = -1;
  let steepestRise = 0;
  const span = Math.round(1 / SAMPLE_STEP_PX);
  for (let index = span; index < profile.length - span; index++) {
    const rise = (profile[index + span] ?? 0) - (profile[index - span] ?? 0);
    if (rise > steepestRise) {
      steepestRise = rise;
      steepest = index;
    }
  }
  if (steepest < 0 || steepestRise < LEAST_STEP_LEVELS) return null;
  const dark = Math.min(...profile.slice(0, steepest));
  const bright = Math.max(...profile.slice(steepest));
  const middle = (dark + bright) / 2;
  let nearest: number | null = null;
  for (let index = 0; index + 1 < profile.length; index++) {
    const low = profile[index] ?? 0;
    const high = profile[index + 1] ?? 0;
    if (low < middle && high >= middle) {
      const crossing = index + (middle - low) / (high - low);
      if (nearest === null || Math.abs(crossing - steepest) < Math.abs(nearest - steepest)) nearest = crossing;
    }
  }
  return nearest === null ? null : (nearest - half) * SAMPLE_STEP_PX;
}

/** across = offset + slope * along by least squares, three times, each time without what lies far from the line. */
function fitLine(places: readonly { along: number; across: number }[]): { offset: number; slope: number } | null {
  let kept = places;
  for (let round = 0; ; round++) {
    const n = kept.length;
    if (n < 4) return null;
    const meanAlong = kept.reduce((sum, place) => sum + place.along, 0) / n;
    const meanAcross = kept.reduce((sum, place) => sum + place.across, 0) / n;
    const spread = kept.reduce((sum, place) => sum + (place.along - meanAlong) ** 2, 0);
    if (spread === 0) return null;
    const slope =
      kept.reduce((sum, place) => sum + (place.along - meanAlong) * (place.across - meanAcross), 0) / spread;
    const offset = meanAcross - slope * meanAlong;
    if (round === 2) return { offset, slope };
    const residuals = kept.map((place) => Math.abs(place.across - offset - slope * place.along));
    const median = [...residuals].sort((a, b) => a - b)[Math.floor(n / 2)] ?? 0;
    // chosen: three robust standard deviations (1.48 times the median deviation), and never tighter than 0.1 px
    const limit = Math.max(0.1, 3 * 1.48 * median);
    kept = kept.filter((_, index) => (residuals[index] ?? 0) <= limit);
  }
}

function intersect(a: EdgeLine, b: EdgeLine): ImagePoint | null {
  const turn = a.alongX * b.alongY - a.alongY * b.alongX;
  if (Math.abs(turn) < 0.2) return null;
  const t = ((b.point.xPx - a.point.xPx) * b.alongY - (b.point.yPx - a.point.yPx) * b.alongX) / turn;
  return { xPx: a.point.xPx + t * a.alongX, yPx: a.point.yPx + t * a.alongY };
}
