import { lineThrough, intersection, type ImageLine } from '../geometry/line.js';
import { distancePx, type ImagePoint } from '../geometry/vector.js';
import { median } from '../statistics/robust.js';
import type { FourCorners, MeasuredPoint, PointCovariance } from './features.js';
import { CHANNELS, CHANNEL_WEIGHTS, type RgbaImage } from './pixel-plane.js';
import { REFERENCE_CARD } from './reference-card.js';

/** A card whose four sides were fitted to the pixels. */
export interface FittedCard {
  readonly corners: FourCorners<MeasuredPoint>;
  /** share of each side (top, right, bottom, left) along which its edge was seen, 0 to 1 */
  readonly support: FourCorners<number>;
  /** mean strength of the edge where it was seen, levels per pixel */
  readonly strength: FourCorners<number>;
  /** scatter of the edge about each straight side, px: cards are straight, hair and collars are not */
  readonly scatterPx: FourCorners<number>;
  /**
   * width over which the second softest side rises, px: about three in focus. Motion softens two sides; one alone may be faint or covered.
   */
  readonly edgeWidthPx: number;
}

/** How closely a side is looked at. */
export interface EdgeEffort {
  /** positions along a side at which the step across it is looked for */
  readonly positions: number;
  /** lines read and averaged for each position */
  readonly linesEach: 1 | 3;
}

/** For a picture that is measured, and for one frame among many of a card that was just seen. Chosen. */
const MEASURING: EdgeEffort = { positions: 48, linesEach: 3 };
export const FOLLOWING: EdgeEffort = { positions: 20, linesEach: 1 };

/** So many places along a side are witnesses of their own: nearer ones share pixels and texture. */
const INDEPENDENT_PLACES = 16;
/** A step of this many levels per pixel counts in full when a side is voted for. */
const FULL_STEP_PER_PX = 12;
/** Weakest step that is held for an edge at all, levels per pixel; below it noise and skin decide. */
const FAINTEST_STEP_PER_PX = 2;
/** Smallest standard uncertainty of a fitted side: pixels are square, print and shadow run along edges. Chosen. */
const FLOOR_PX = 0.12;

/** The steps across one side in one channel: rows along the side, columns across it, outward positive. */
interface SideProfile {
  readonly steps: Float32Array;
  readonly rows: number;
  readonly across: number;
  readonly firstPx: number;
  readonly spacingPx: number;
}

interface SideFit {
  readonly line: ImageLine;
  readonly support: number;
  readonly strength: number;
  readonly scatterPx: number;
  readonly widthPx: number;
  /** standard uncertainty of the side's offset at its two ends, px */
  readonly startUncertaintyPx: number;
  readonly endUncertaintyPx: number;
}

/**
 * Fits the four sides of a card to sub-pixel steps of brightness or colour, from a rough outline, and intersects them. The
 * corners are virtual: those of a real card are round. Each side is first voted for by all its positions (a straight line with
 * the same sign of step along all of it wins, so that print, fingers and hair over a part of it do no harm), then fitted
 * robustly to the steps next to it.
 *
 * @param reaches how far from the outline the sides are looked for, as shares of the card's width, one pass each
 * @returns null where a side has no step at all or two sides are parallel
 */
export function fitCardEdges(
  image: RgbaImage,
  outline: FourCorners<ImagePoint>,
  reaches: readonly number[] = [0.07, 0.03, 0.015],
  effort: EdgeEffort = MEASURING,
): FittedCard | null {
  let corners = outline;
  let fits: SideFit[] = [];
  for (const reach of reaches) {
    fits = [];
    const centre = {
      xPx: corners.reduce((sum, corner) => sum + corner.xPx, 0) / 4,
      yPx: corners.reduce((sum, corner) => sum + corner.yPx, 0) / 4,
    };
    const widthPx = (distancePx(corners[0], corners[1]) + distancePx(corners[3], corners[2])) / 2;
    for (let side = 0; side < 4; side++) {
      const fit = fitSide(image, sideOf(corners, side), centre, reach * widthPx, effort);
      if (fit === null) return null;
      fits.push(fit);
    }
    const next: ImagePoint[] = [];
    for (let corner = 0; corner < 4; corner++) {
      const point = intersection(fits[(corner + 3) % 4]!.line, fits[corner]!.line);
      if (point === null) return null;
      next.push(point);
    }
    corners = next as unknown as FourCorners<ImagePoint>;
  }
  const measured = corners.map((corner, i) => ({
    ...corner,
    covariance: cornerCovariance(fits[(i + 3) % 4]!, fits[i]!),
  }));
  return {
    corners: measured as unknown as FourCorners<MeasuredPoint>,
    support: fits.map((fit) => fit.support) as unknown as FourCorners<number>,
    strength: fits.map((fit) => fit.strength) as unknown as FourCorners<number>,
    scatterPx: fits.map((fit) => fit.scatterPx) as unknown as FourCorners<number>,
    edgeWidthPx: fits.map((fit) => fit.widthPx).sort((a, b) => b - a)[1]!,
  };
}

/** An outline that could be a card, and how coherent the steps along its sides are (top, right, bottom, left; 0 to 1). */
export interface OutlineProposal {
  readonly corners: FourCorners<ImagePoint>;
  readonly coherence: FourCorners<number>;
  /** number of sides beyond which another edge, at least as coherent, runs: print inside a card */
  readonly inside: number;
}

/** How many lines are kept for each side of a rough outline: print inside the card runs along its edges too. */
const LINES_PER_SIDE = 5;

/**
 * All outlines with the proportions of an ID-1 card that the lines near a rough outline make, best first. A printed band inside
 * the card or a finger beside it gives lines of its own; only the right four have the proportions of the card.
 */
export function proposeOutlines(
  image: RgbaImage,
  rough: FourCorners<ImagePoint>,
  limit: number,
  effort: EdgeEffort = MEASURING,
): OutlineProposal[] {
  const centre = {
    xPx: rough.reduce((sum, corner) => sum + corner.xPx, 0) / 4,
    yPx: rough.reduce((sum, corner) => sum + corner.yPx, 0) / 4,
  };
  const reachPx = 0.11 * distancePx(rough[0], rough[1]);
  const sides = rough.map((from, side) => {
    const to = rough[(side + 1) % 4]!;
    const lengthPx = distancePx(from, to);
    const axes = axesOfSide(from, to, centre);
    const positions = positionsAlong(side % 2 === 0, effort.positions);
    const profiles = readProfiles(image, from, lengthPx, axes, { positions, reachPx, linesEach: effort.linesEach });
    const { firstPx, spacingPx } = profiles[0]!;
    return voteForLines(profiles, LINES_PER_SIDE).map((vote) => {
      const at = (place: number, column: number): ImagePoint => {
        const offset = firstPx + column * spacingPx;
        return {
          xPx: from.xPx + axes.alongX * lengthPx * place + axes.outX * offset,
          yPx: from.yPx + axes.alongY * lengthPx * place + axes.outY * offset,
        };
      };
      return {
        line: lineThrough(at(positions[0]!, vote.start), at(positions.at(-1)!, vote.end)),
        coherence: vote.coherence,
        outward: (vote.start + vote.end) / 2,
      };
    });
  });
  // Print runs along the edges inside a card; hardly anything as straight and as long runs just outside of it.
  const beyond = (lines: (typeof sides)[number], own: (typeof sides)[number][number]): number =>
    lines.some((line) => line.outward > own.outward && line.coherence >= Math.max(0.75, 0.9 * own.coherence)) ? 1 : 0;
  const proposals: (OutlineProposal & { readonly score: number })[] = [];
  for (const top of sides[0]!) {
    for (const right of sides[1]!) {
      const topRight = intersection(top.line, right.line);
      if (topRight === null) continue;
      for (const bottom of sides[2]!) {
        const bottomRight = intersection(right.line, bottom.line);
        if (bottomRight === null) continue;
        for (const left of sides[3]!) {
          const topLeft = intersection(left.line, top.line);
          const bottomLeft = intersection(bottom.line, left.line);
          if (topLeft === null || bottomLeft === null) continue;
          const corners = [topLeft, topRight, bottomRight, bottomLeft] as const;
          const misfit = misfitOfProportions(corners);
          if (misfit === null) continue;
          const coherence = [top.coherence, right.coherence, bottom.coherence, left.coherence] as const;
          const scores = coherence.map((value) => Math.min(value, 0.6) + 0.25 * Math.max(value - 0.6, 0));
          const inside = [top, right, bottom, left].reduce((sum, own, side) => sum + beyond(sides[side]!, own), 0);
          const score =
            scores.reduce((sum, value) => sum + value, 0) + Math.min(...scores) - 0.5 * misfit - 0.35 * inside;
          proposals.push({ corners, coherence, inside, score });
        }
      }
    }
  }
  proposals.sort((a, b) => b.score - a.score);
  return proposals.slice(0, limit).map(({ corners, coherence, inside }) => ({ corners, coherence, inside }));
}

/**
 * How far four corners are from what an ID-1 card tilted to about 22 degrees can show, 0 to 1; null beyond that. Opposite sides of
 * a card at four times its width or more differ by at most 8 %, its proportions change by the cosine of its tilt.
 */
export function misfitOfProportions([a, b, c, d]: FourCorners<ImagePoint>): number | null {
  const top = distancePx(a, b);
  const right = distancePx(b, c);
  const bottom = distancePx(d, c);
  const left = distancePx(a, d);
  const aspect = (top + bottom) / (right + left) / (REFERENCE_CARD.widthMm / REFERENCE_CARD.heightMm);
  const convergence = Math.max(Math.abs(Math.log(top / bottom)), Math.abs(Math.log(left / right)));
  // Diagonals of a rectangle are equal; those of a sheared one are not.
  const shear = Math.abs(Math.log(distancePx(a, c) / distancePx(b, d)));
  const share = Math.max(Math.abs(Math.log(aspect)) / 0.09, convergence / 0.085, shear / 0.11);
  return share <= 1 ? share : null;
}

/** Covariance of the point in which the end of one side meets the start of the next. */
function cornerCovariance(ending: SideFit, starting: SideFit): PointCovariance {
  const { normalX: a, normalY: b } = ending.line;
  const { normalX: c, normalY: d } = starting.line;
  const determinant = a * d - b * c;
  const ue = ending.endUncertaintyPx;
  const us = starting.startUncertaintyPx;
  // The corner moves by [d, -c] / determinant per pixel of the first line, and by [-b, a] / determinant of the second.
  const k = 1 / (determinant * determinant);
  return {
    xx: k * (d * d * ue * ue + b * b * us * us),
    xy: k * (-d * c * ue * ue - b * a * us * us),
    yy: k * (c * c * ue * ue + a * a * us * us),
  };
}

/** One side of an outline: top, right, bottom, left. */
interface Side {
  readonly from: ImagePoint;
  readonly to: ImagePoint;
  readonly long: boolean;
}

function sideOf(corners: FourCorners<ImagePoint>, side: number): Side {
  return { from: corners[side]!, to: corners[(side + 1) % 4]!, long: side % 2 === 0 };
}

function fitSide(
  image: RgbaImage,
  { from, to, long }: Side,
  centre: ImagePoint,
  reachPx: number,
  { positions: count, linesEach }: EdgeEffort,
): SideFit | null {
  const lengthPx = distancePx(from, to);
  const axes = axesOfSide(from, to, centre);
  const { alongX, alongY, outX, outY } = axes;
  const positions = positionsAlong(long, count);
  const profiles = readProfiles(image, from, lengthPx, axes, { positions, reachPx, linesEach });
  const vote = voteForLines(profiles, 1)[0];
  if (vote === undefined) return null;
  const profile = profiles[vote.channel]!;

  const offsets: number[] = [];
  const places: number[] = [];
  const strengths: number[] = [];
  const widths: number[] = [];
  for (let i = 0; i < count; i++) {
    const expected = vote.start + ((vote.end - vote.start) * i) / (count - 1);
    const peak = peakNear(profile, i, expected, vote.sign);
    if (peak === null) continue;
    offsets.push(peak.offsetPx);
    strengths.push(peak.strength);
    widths.push(peak.widthPx);
    places.push(positions[i]!);
  }
  const fit = fitLineRobustly(places, offsets);
  if (fit === null) return null;
  const { atStart, slope, scatterPx } = fit;
  const tolerancePx = Math.max(2.5 * scatterPx, 0.6);
  const near = offsets.map((offset, i) => Math.abs(offset - atStart - slope * places[i]!) < tolerancePx);
  const seen = near.filter(Boolean).length;
  if (seen < 5) return null;
  const supported = places.filter((_, i) => near[i]);
  const mean = supported.reduce((sum, place) => sum + place, 0) / seen;
  const spread = supported.reduce((sum, place) => sum + (place - mean) ** 2, 0);
  const independent = Math.max(seen * Math.min(1, INDEPENDENT_PLACES / count), 2);
  const endUncertainty = (place: number): number =>
    Math.hypot(
      FLOOR_PX,
      scatterPx * Math.sqrt(1 / independent + ((place - mean) ** 2 / Math.max(spread, 1e-6)) * (seen / independent)),
    );
  const at = (place: number): ImagePoint => {
    const offset = atStart + slope * place;
    return {
      xPx: from.xPx + alongX * lengthPx * place + outX * offset,
      yPx: from.yPx + alongY * lengthPx * place + outY * offset,
    };
  };
  return {
    line: lineThrough(at(0), at(1)),
    support: seen / count,
    strength: strengths.filter((_, i) => near[i]).reduce((sum, value) => sum + value, 0) / seen,
    scatterPx,
    widthPx: median(widths.filter((_, i) => near[i])),
    startUncertaintyPx: endUncertainty(0),
    endUncertaintyPx: endUncertainty(1),
  };
}

interface SideAxes {
  readonly alongX: number;
  readonly alongY: number;
  readonly outX: number;
  readonly outY: number;
}

/** Where profiles across a side are read, how far to both sides of it, and from how many lines each. */
interface ProfileReach {
  /** shares of the side's length */
  readonly positions: readonly number[];
  readonly reachPx: number;
  readonly linesEach: 1 | 3;
}

/** Reads all channels across a side at once. */
function readProfiles(
  image: RgbaImage,
  from: ImagePoint,
  lengthPx: number,
  axes: SideAxes,
  { positions, reachPx, linesEach }: ProfileReach,
): SideProfile[] {
  const spacingPx = Math.max(0.5, reachPx / 40);
  const half = Math.max(4, Math.ceil(reachPx / spacingPx)) + 3;
  const across = 2 * half + 1;
  const { data, widthPx, heightPx } = image;
  const levels = CHANNELS.map(() => new Float32Array(across));
  const steps = CHANNELS.map(() => new Float32Array(positions.length * across));
  // Mean over the stretch of side that a position stands for, so that noise falls without blurring across.
  const strideShare = (positions[1]! - positions[0]!) / 3;
  const farthest = (linesEach - 1) / 2;
  for (let i = 0; i < positions.length; i++) {
    for (const channel of levels) channel.fill(0);
    for (let part = -farthest; part <= farthest; part++) {
      const along = (positions[i]! + part * strideShare) * lengthPx;
      const x0 = from.xPx + axes.alongX * along - 0.5;
      const y0 = from.yPx + axes.alongY * along - 0.5;
      for (let k = 0; k < across; k++) {
        const offset = (k - half) * spacingPx;
        const x = Math.min(Math.max(x0 + axes.outX * offset, 0), widthPx - 1.001);
        const y = Math.min(Math.max(y0 + axes.outY * offset, 0), heightPx - 1.001);
        const left = Math.floor(x);
        const top = Math.floor(y);
        const fx = x - left;
        const fy = y - top;
        const i00 = (top * widthPx + left) * 4;
        const i10 = i00 + widthPx * 4;
        const w00 = ((1 - fx) * (1 - fy)) / linesEach;
        const w01 = (fx * (1 - fy)) / linesEach;
        const w10 = ((1 - fx) * fy) / linesEach;
        const w11 = (fx * fy) / linesEach;
        const red = w00 * data[i00]! + w01 * data[i00 + 4]! + w10 * data[i10]! + w11 * data[i10 + 4]!;
        const green = w00 * data[i00 + 1]! + w01 * data[i00 + 5]! + w10 * data[i10 + 1]! + w11 * data[i10 + 5]!;
        const blue = w00 * data[i00 + 2]! + w01 * data[i00 + 6]! + w10 * data[i10 + 2]! + w11 * data[i10 + 6]!;
        for (let channel = 0; channel < CHANNELS.length; channel++) {
          const [wr, wg, wb] = CHANNEL_WEIGHTS[CHANNELS[channel]!];
          levels[channel]![k]! += wr * red + wg * green + wb * blue;
        }
      }
    }
    // Derivative of a Gaussian of about two samples: smooth enough for noise, sharp enough for an edge in focus.
    for (let channel = 0; channel < CHANNELS.length; channel++) {
      const level = levels[channel]!;
      for (let k = 3; k < across - 3; k++) {
        const step =
          0.42 * (level[k + 1]! - level[k - 1]!) +
          0.4 * (level[k + 2]! - level[k - 2]!) +
          0.18 * (level[k + 3]! - level[k - 3]!);
        steps[channel]![i * across + k] = step / (2 * spacingPx * (0.42 * 1 + 0.4 * 2 + 0.18 * 3));
      }
    }
  }
  return steps.map((channelSteps) => ({
    steps: channelSteps,
    rows: positions.length,
    across,
    firstPx: -half * spacingPx,
    spacingPx,
  }));
}

function axesOfSide(from: ImagePoint, to: ImagePoint, centre: ImagePoint): SideAxes {
  const lengthPx = distancePx(from, to);
  const alongX = (to.xPx - from.xPx) / lengthPx;
  const alongY = (to.yPx - from.yPx) / lengthPx;
  const outward = alongY * ((from.xPx + to.xPx) / 2 - centre.xPx) - alongX * ((from.yPx + to.yPx) / 2 - centre.yPx);
  return outward >= 0
    ? { alongX, alongY, outX: alongY, outY: -alongX }
    : { alongX, alongY, outX: -alongY, outY: alongX };
}

/** Places along a side, as shares of its length, where its edge is straight: round corners are left out, with some room. */
function positionsAlong(long: boolean, count: number): readonly number[] {
  const round = (REFERENCE_CARD.cornerRadiusMm + 1) / (long ? REFERENCE_CARD.widthMm : REFERENCE_CARD.heightMm);
  return Array.from({ length: count }, (_, i) => round + ((1 - 2 * round) * (i + 0.5)) / count);
}

interface Vote {
  readonly channel: number;
  readonly sign: 1 | -1;
  /** columns of the profile at the first and the last position */
  readonly start: number;
  readonly end: number;
  /** mean limited step along the line, 0 to 1 */
  readonly coherence: number;
}

/** The straight lines through the profiles along which the signed steps, each limited, add up to most; apart from one another. */
function voteForLines(profiles: readonly SideProfile[], limit: number): Vote[] {
  // For each place of a line's middle only the best line is kept, whatever its slope and channel.
  const best = new Map<number, Vote>();
  profiles.forEach((profile, channel) => {
    const { steps, rows, across, spacingPx } = profile;
    const limited = new Float32Array(steps.length);
    for (let i = 0; i < steps.length; i++) limited[i] = Math.min(Math.max(steps[i]! / FULL_STEP_PER_PX, -1), 1);
    const stride = Math.max(1, Math.round(0.5 / spacingPx), Math.floor(across / 40));
    const steepest = 0.5 * across;
    for (let start = 3; start < across - 3; start += stride) {
      for (let end = 3; end < across - 3; end += stride) {
        if (Math.abs(end - start) > steepest) continue;
        let sum = 0;
        const slope = (end - start) / (rows - 1);
        let column = start + 0.5;
        for (let i = 0; i < rows; i++, column += slope) sum += limited[i * across + (column | 0)]!;
        const coherence = Math.abs(sum) / rows;
        if (coherence > (best.get(start + end)?.coherence ?? 0)) {
          best.set(start + end, { channel, sign: sum > 0 ? 1 : -1, start, end, coherence });
        }
      }
    }
  });
  const votes = [...best.values()].sort((a, b) => b.coherence - a.coherence);
  const kept: Vote[] = [];
  const apart = Math.max(3, profiles[0]!.across / 14);
  for (const vote of votes) {
    if (kept.length >= limit) break;
    const middle = (vote.start + vote.end) / 2;
    if (kept.every((other) => Math.abs((other.start + other.end) / 2 - middle) > apart)) kept.push(vote);
  }
  return kept;
}

/** The step nearest to an expected column, by the centroid of what rises above its foot; null where there is none. */
function peakNear(
  profile: SideProfile,
  row: number,
  expected: number,
  sign: 1 | -1,
): { readonly offsetPx: number; readonly strength: number; readonly widthPx: number } | null {
  const { steps, across, firstPx, spacingPx } = profile;
  const reach = Math.max(5, Math.round(across / 20));
  let peak = -1;
  let height = FAINTEST_STEP_PER_PX;
  for (
    let k = Math.max(3, Math.round(expected) - reach);
    k <= Math.min(across - 4, Math.round(expected) + reach);
    k++
  ) {
    const step = sign * steps[row * across + k]!;
    if (step > height) {
      height = step;
      peak = k;
    }
  }
  if (peak < 0) return null;
  let weight = 0;
  let moment = 0;
  const half = 0.4 * height;
  for (let k = peak; k >= 3; k--) {
    const over = sign * steps[row * across + k]! - half;
    if (over <= 0) break;
    weight += over;
    moment += over * k;
  }
  for (let k = peak + 1; k < across - 3; k++) {
    const over = sign * steps[row * across + k]! - half;
    if (over <= 0) break;
    weight += over;
    moment += over * k;
  }
  // Area over height of what rises above the foot, made whole for the part below it as in a triangle.
  const widthPx = ((weight / (height - half)) * spacingPx) / 0.6;
  return { offsetPx: firstPx + (moment / weight) * spacingPx, strength: height, widthPx };
}

/** Line offset = atStart + slope place by iteratively re-weighted least squares (Tukey's biweight). */
function fitLineRobustly(
  places: readonly number[],
  offsets: readonly number[],
): { readonly atStart: number; readonly slope: number; readonly scatterPx: number } | null {
  if (places.length < 6) return null;
  let atStart = median(offsets);
  let slope = 0;
  let scatterPx = Infinity;
  for (let round = 0; round < 20; round++) {
    const residuals = offsets.map((offset, i) => offset - atStart - slope * places[i]!);
    scatterPx = Math.max(1.4826 * median(residuals.map(Math.abs)), 0.05);
    const cut = 4 * scatterPx;
    let s = 0;
    let sx = 0;
    let sxx = 0;
    let sy = 0;
    let sxy = 0;
    residuals.forEach((residual, i) => {
      const share = residual / cut;
      const w = Math.abs(share) < 1 ? (1 - share * share) ** 2 : 0;
      const x = places[i]!;
      s += w;
      sx += w * x;
      sxx += w * x * x;
      sy += w * offsets[i]!;
      sxy += w * x * offsets[i]!;
    });
    const determinant = s * sxx - sx * sx;
    if (Math.abs(determinant) < 1e-9) return null;
    const nextStart = (sxx * sy - sx * sxy) / determinant;
    const nextSlope = (s * sxy - sx * sy) / determinant;
    const moved = Math.abs(nextStart - atStart) + Math.abs(nextSlope - slope);
    atStart = nextStart;
    slope = nextSlope;
    if (moved < 1e-5) break;
  }
  return { atStart, slope, scatterPx };
}
