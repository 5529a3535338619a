import type { ImagePoint } from '../geometry/vector.js';
import { median } from '../statistics/robust.js';
import { degreesToRadians } from '../units/angle.js';
import type { PointCovariance } from './features.js';
import { fitCircle, sectorDirections, type Circle, type EdgePoint } from './iris-edge.js';
import { clipRectangle, cutPlane, sample, type PixelPlane, type RgbaImage } from './pixel-plane.js';

/** An iris whose edge was seen where it was looked for. */
export interface FollowedIris {
  readonly centre: ImagePoint & { readonly covariance: PointCovariance };
  readonly radiusPx: number;
  readonly radiusUncertaintyPx: number;
  /** width over which its edge rises, as a share of the radius */
  readonly softness: number;
}

/** The margins of the lids around an iris, from the outer to the inner corner of the eye. */
export interface LidMargins {
  readonly upper: readonly ImagePoint[];
  readonly lower: readonly ImagePoint[];
}

/** How far to both sides of the expected circle its edge is sought, as a share of the radius, and how far beyond that the white is. Chosen. */
const REACH_SHARE = 0.3;
const BEYOND_SHARE = 0.25;
/** Distance of the samples along a direction, px, and of those whose difference is the slope. */
const SPACING_PX = 0.5;
const LAG = 2;
/** Directions in which the edge is looked for, apart by so much, up to so far above and below the horizontal, degrees. Chosen. */
const STEP_DEG = 6;
const UP_DEG = 36;
const DOWN_DEG = 54;
/** Edge points nearer to a lid than this, as a share of the radius, may be the lid's: the margins are the landmarks'. Chosen. */
const LID_MARGIN_SHARE = 0.12;
/** Weakest rise to the white that counts, levels. Chosen. */
const LEAST_RISE = 14;
/** Keeps the noise of black pixels from counting as colour, levels. */
const BLACK_LEVELS = 12;
/** Below the lower lid there is skin: distances from the centre, as shares of the radius. Chosen. */
const SKIN_SHARES = [1.5, 1.65, 1.8, 1.95];
/** So many of the points, the least red ones, show the white; what is redder by more than half of what skin is, is no white. Chosen. */
const PALE_SHARE = 0.25;
const WHITE_SHARE = 0.5;
const LEAST_DIFFERENCE = 0.08;
/** An edge on one side alone is believed from so many points on. Chosen. */
const LEAST_POINTS = 8;
/** A centre further than this from where it was expected, as a share of the radius, belongs to something else. Chosen. */
const MOST_STRAY = 0.45;
/** What no number of edge points removes, as a share of the radius, across and down: as for the whole fit, and half as much again for what this one leaves out. */
const FLOOR_ACROSS = 0.006;
const FLOOR_DOWN = 0.012;

/**
 * Looks for the edge of an iris where it should be in this frame: steps of brightness between the lids, and a robust circle through them. It
 * leaves out what a picture that is measured needs beside (`fitIrisEdges`): the search, the colour of skin, and the slope of the light.
 *
 * @param expected rough centre, and the radius with its standard uncertainty, px
 * @returns null where too little of the edge was seen
 */
export function followIris(
  image: RgbaImage,
  expected: { readonly centre: ImagePoint; readonly radiusPx: number; readonly radiusUncertaintyPx: number },
  lids: LidMargins,
  rollRad: number,
): FollowedIris | null {
  const { centre, radiusPx } = expected;
  const roomPx = 2.1 * radiusPx + 2;
  const rectangle = clipRectangle(image, {
    leftPx: centre.xPx - roomPx,
    topPx: centre.yPx - roomPx,
    widthPx: 2 * roomPx,
    heightPx: 2 * roomPx,
  });
  if (rectangle === null) return null;
  const luma = cutPlane(image, rectangle, 'luma');
  const redMinusBlue = cutPlane(image, rectangle, 'red-minus-blue');
  const home: Circle = { x: centre.xPx - rectangle.leftPx, y: centre.yPx - rectangle.topPx, radius: radiusPx };
  const directions = sectorDirections(rollRad, degreesToRadians(STEP_DEG), UP_DEG, DOWN_DEG);
  const rednessAt = (x: number, y: number): number => sample(redMinusBlue, x, y) / (sample(luma, x, y) + BLACK_LEVELS);
  const skin = median(
    SKIN_SHARES.map((share) =>
      rednessAt(home.x - share * radiusPx * Math.sin(rollRad), home.y + share * radiusPx * Math.cos(rollRad)),
    ),
  );
  const isBetweenLids = betweenLids(lids, rollRad, LID_MARGIN_SHARE * radiusPx);
  const levels = new Float32Array(2 * Math.ceil((REACH_SHARE * radiusPx) / SPACING_PX) + 1);
  let circle = home;
  let found: ReturnType<typeof fitCircle> = null;
  let softness = 0;
  // The second round looks where the first one found it, so that no step is cut off for lying aside.
  for (let round = 0; round < 2; round++) {
    const seen: (EdgePoint & { readonly widthPx: number; readonly redness: number })[] = [];
    for (const { cosine, sine } of directions) {
      const edge = steepestRise(luma, circle, cosine, sine, levels);
      if (edge === null || edge.rise < LEAST_RISE) continue;
      const x = circle.x + edge.distancePx * cosine;
      const y = circle.y + edge.distancePx * sine;
      if (!isBetweenLids({ xPx: x + rectangle.leftPx, yPx: y + rectangle.topPx })) continue;
      const beyondPx = edge.distancePx + BEYOND_SHARE * radiusPx;
      seen.push({
        x,
        y,
        step: edge.rise,
        spacingPx: degreesToRadians(STEP_DEG) * circle.radius,
        widthPx: edge.rise / edge.slopePerPx,
        redness: rednessAt(circle.x + beyondPx * cosine, circle.y + beyondPx * sine),
      });
    }
    // Skin is redder than the white of the eye, in every light and of every complexion.
    const pale = seen.map(({ redness }) => redness).sort((a, b) => a - b)[Math.floor(PALE_SHARE * seen.length)] ?? 0;
    const points = seen.filter(({ redness }) => redness < pale + WHITE_SHARE * Math.max(skin - pale, LEAST_DIFFERENCE));
    if (points.length < LEAST_POINTS) return null;
    found = fitCircle(points, circle, { radiusPx, uncertaintyPx: expected.radiusUncertaintyPx });
    if (found === null) return null;
    circle = found.circle;
    softness = median(points.map(({ widthPx }) => widthPx)) / radiusPx;
  }
  if (found === null) return null;
  if (Math.hypot(circle.x - home.x, circle.y - home.y) > MOST_STRAY * radiusPx) return null;
  const { covariance } = found;
  return {
    centre: {
      xPx: circle.x + rectangle.leftPx,
      yPx: circle.y + rectangle.topPx,
      covariance: {
        xx: covariance[0]![0]! + (FLOOR_ACROSS * radiusPx) ** 2,
        xy: covariance[0]![1]!,
        yy: covariance[1]![1]! + (FLOOR_DOWN * radiusPx) ** 2,
      },
    },
    radiusPx: circle.radius,
    radiusUncertaintyPx: Math.sqrt(covariance[2]![2]!),
    softness,
  };
}

/** Where it rises most along one direction, not far from the circle; null where it nowhere does. */
function steepestRise(
  luma: PixelPlane,
  circle: Circle,
  cosine: number,
  sine: number,
  levels: Float32Array,
): { readonly distancePx: number; readonly rise: number; readonly slopePerPx: number } | null {
  const firstPx = circle.radius - (SPACING_PX * (levels.length - 1)) / 2;
  for (let k = 0; k < levels.length; k++) {
    const distancePx = firstPx + k * SPACING_PX;
    levels[k] = sample(luma, circle.x + distancePx * cosine, circle.y + distancePx * sine);
  }
  let peak = 0;
  let height = 0;
  for (let k = LAG; k < levels.length - LAG; k++) {
    const difference = levels[k + LAG]! - levels[k - LAG]!;
    if (difference > height) [height, peak] = [difference, k];
  }
  if (height <= 0) return null;
  // The centroid of the slope around its peak, above half of its height.
  let weight = 0;
  let moment = 0;
  for (let k = Math.max(LAG, peak - 3 * LAG); k < Math.min(levels.length - LAG, peak + 3 * LAG + 1); k++) {
    const over = levels[k + LAG]! - levels[k - LAG]! - height / 2;
    if (over <= 0) continue;
    weight += over;
    moment += over * k;
  }
  const distancePx = firstPx + (moment / weight) * SPACING_PX;
  const [withinPx, beyondPx] = [distancePx - BEYOND_SHARE * circle.radius, distancePx + BEYOND_SHARE * circle.radius];
  const rise =
    sample(luma, circle.x + beyondPx * cosine, circle.y + beyondPx * sine) -
    sample(luma, circle.x + withinPx * cosine, circle.y + withinPx * sine);
  return { distancePx, rise, slopePerPx: height / (2 * LAG * SPACING_PX) };
}

/** Whether a point lies between the lids, by more than a margin. */
function betweenLids({ upper, lower }: LidMargins, rollRad: number, marginPx: number): (point: ImagePoint) => boolean {
  const [cosine, sine] = [Math.cos(rollRad), Math.sin(rollRad)];
  const turned = ({ xPx, yPx }: ImagePoint) => ({ along: xPx * cosine + yPx * sine, down: yPx * cosine - xPx * sine });
  const heightOf = (margin: readonly ImagePoint[]) => {
    const points = margin.map(turned).sort((a, b) => a.along - b.along);
    return (along: number): number | null => {
      for (let i = 1; i < points.length; i++) {
        const [before, after] = [points[i - 1]!, points[i]!];
        if (along < before.along || along > after.along) continue;
        const share = (along - before.along) / Math.max(after.along - before.along, 1e-9);
        return before.down + share * (after.down - before.down);
      }
      return null;
    };
  };
  const [upperDown, lowerDown] = [heightOf(upper), heightOf(lower)];
  return (point) => {
    const { along, down } = turned(point);
    const [top, bottom] = [upperDown(along), lowerDown(along)];
    return top !== null && bottom !== null && down > top + marginPx && down < bottom - marginPx;
  };
}
