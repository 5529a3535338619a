import type { IrisObservation, PupilObservation } from './features.js';
import { fitCircle, type Circle, type EdgePoint, type FittedCircle } from './iris-edge.js';
import { blurPlane, clipRectangle, cutPlane, sample, type PixelPlane, type RgbaImage } from './pixel-plane.js';
import { median } from '../statistics/robust.js';

/** A pupil is sought between these shares of the iris radius: from 2 to 9 mm in an iris of 11.7 mm (common practice). */
const SMALLEST = 0.17;
const LARGEST = 0.75;
/** It lies no further than this from the middle of the iris, as a share of its radius: half a millimetre in living eyes (common practice). */
const MOST_ASIDE = 0.12;
/** Directions in which its edge is sought. */
const DIRECTIONS = 72;
/** Least step from pupil to iris, levels, and over the noise of a pixel. Chosen: irises darker than that show no edge to trust. */
const LEAST_STEP = 26;
const LEAST_STEP_OVER_NOISE = 4;
/** Least share of the directions that must show the step, and of the worst quarter of them. */
const LEAST_SUPPORT = 0.7;
const LEAST_QUARTER = 0.5;
/** Most scatter of the edge about its circle, as a share of its radius. */
const MOST_SCATTER = 0.08;
/** Fewest pixels of radius: a blurred dot has no edge of its own. */
const LEAST_RADIUS_PX = 2.2;
/** Standard uncertainties that no number of edge points removes. From rendered eyes. */
const FLOOR_PX = 0.12;
const FLOOR_SHARE = 0.012;

/**
 * Fits the edge of the pupil within a fitted iris: the circle with the largest step from dark to light, then a robust circle through
 * the steepest places. Null where the step is too small, too patchy or too ragged to be trusted: of brown irises nearly always.
 *
 * What a camera sees is the entrance pupil, the image of the iris's opening that the cornea makes: about 13 % larger than the opening
 * itself (schematic eye), as every gauge and ruler sees it too. It lies some 3 mm behind the front of the cornea, before the iris.
 */
export function fitPupilEdge(image: RgbaImage, iris: IrisObservation): PupilObservation | null {
  const reachPx = iris.radiusPx + 4;
  const rectangle = clipRectangle(image, {
    leftPx: iris.centre.xPx - reachPx,
    topPx: iris.centre.yPx - reachPx,
    widthPx: 2 * reachPx,
    heightPx: 2 * reachPx,
  });
  if (rectangle === null) return null;
  const sharp = cutPlane(image, rectangle, 'luma');
  const plane = blurPlane(sharp, Math.max(0.5, 0.04 * iris.radiusPx));
  const limbus: Circle = {
    x: iris.centre.xPx - rectangle.leftPx,
    y: iris.centre.yPx - rectangle.topPx,
    radius: iris.radiusPx,
  };
  let circle = searchPupil(plane, limbus);
  let edge: PupilEdge | null = null;
  for (let round = 0; round < 6; round++) {
    edge = pupilEdge(plane, circle);
    if (edge === null) return null;
    const moved = Math.hypot(
      edge.fitted.circle.x - circle.x,
      edge.fitted.circle.y - circle.y,
      edge.fitted.circle.radius - circle.radius,
    );
    circle = edge.fitted.circle;
    if (moved < 0.01) break;
  }
  if (edge === null || !isTrusted(edge, limbus, noiseOf(sharp, limbus))) return null;
  const { fitted, widthPx } = edge;
  const { covariance } = fitted;
  // A disc blurred to a Gaussian step is steepest a little within its rim: by width^2 / (2 radius).
  const radiusPx = circle.radius + widthPx ** 2 / (2 * circle.radius);
  // Lids shade the edge from above and below, and lamps shine in its upper half: down the doubt is larger.
  const floor = FLOOR_PX ** 2 + (FLOOR_SHARE * radiusPx) ** 2;
  return {
    centre: {
      xPx: circle.x + rectangle.leftPx,
      yPx: circle.y + rectangle.topPx,
      covariance: { xx: covariance[0]![0]! + floor, xy: covariance[0]![1]!, yy: covariance[1]![1]! + 3 * floor },
    },
    radiusPx,
    radiusUncertaintyPx: Math.sqrt(covariance[2]![2]! + floor),
  };
}

interface PupilEdge {
  readonly fitted: FittedCircle;
  /** shares of the directions that show the step: all, and the worst quarter */
  readonly support: number;
  readonly worstQuarter: number;
  /** median height of the steps, levels */
  readonly rise: number;
  /** scatter about the circle, px */
  readonly scatterPx: number;
  /** width of the edge as the standard deviation of a Gaussian blur, px */
  readonly widthPx: number;
}

function isTrusted(edge: PupilEdge, limbus: Circle, noise: number): boolean {
  const { circle } = edge.fitted;
  const aside = Math.hypot(circle.x - limbus.x, circle.y - limbus.y) / limbus.radius;
  const share = circle.radius / limbus.radius;
  return (
    edge.rise >= Math.max(LEAST_STEP, LEAST_STEP_OVER_NOISE * noise) &&
    edge.support >= LEAST_SUPPORT &&
    edge.worstQuarter >= LEAST_QUARTER &&
    edge.scatterPx <= MOST_SCATTER * circle.radius &&
    circle.radius >= LEAST_RADIUS_PX &&
    aside <= 1.1 * MOST_ASIDE &&
    share >= SMALLEST &&
    share <= LARGEST
  );
}

function direction(k: number): { readonly cosine: number; readonly sine: number } {
  const angle = (2 * Math.PI * k) / DIRECTIONS;
  return { cosine: Math.cos(angle), sine: Math.sin(angle) };
}

/** The circle with the largest median step: highlights and lids spoil some directions, never half of them. */
function searchPupil(plane: PixelPlane, limbus: Circle): Circle {
  let best: Circle = { ...limbus, radius: 0.4 * limbus.radius };
  let bestScore = -Infinity;
  const half = Math.max(0.8, 0.07 * limbus.radius);
  const stride = MOST_ASIDE * limbus.radius * 0.5;
  for (let i = -2; i <= 2; i++) {
    for (let j = -2; j <= 2; j++) {
      if (i * i + j * j > 5) continue;
      const [x, y] = [limbus.x + i * stride, limbus.y + j * stride];
      for (let share = SMALLEST; share <= LARGEST; share += 0.03) {
        const radius = share * limbus.radius;
        const steps: number[] = [];
        for (let k = 0; k < DIRECTIONS; k += 3) {
          const { cosine, sine } = direction(k);
          const inside = sample(plane, x + (radius - half) * cosine, y + (radius - half) * sine);
          steps.push(sample(plane, x + (radius + half) * cosine, y + (radius + half) * sine) - inside);
        }
        const score = median(steps);
        if (score > bestScore) {
          bestScore = score;
          best = { x, y, radius };
        }
      }
    }
  }
  return best;
}

function pupilEdge(plane: PixelPlane, circle: Circle): PupilEdge | null {
  const spacing = 0.2;
  const reach = Math.max(1.6, 0.3 * circle.radius);
  const count = 2 * Math.ceil(reach / spacing) + 1;
  const middle = (count - 1) / 2;
  const aside = Math.max(1.2, 0.3 * circle.radius);
  const points: (EdgePoint & { readonly k: number; readonly rise: number; readonly steepest: number })[] = [];
  for (let k = 0; k < DIRECTIONS; k++) {
    const { cosine, sine } = direction(k);
    const at = (distance: number): number => sample(plane, circle.x + distance * cosine, circle.y + distance * sine);
    let steepest = 0;
    let peak = -1;
    const slopes: number[] = [];
    for (let i = 0; i < count; i++) {
      const distance = circle.radius + (i - middle) * spacing;
      const slope = (at(distance + 0.5) - at(distance - 0.5)) * Math.exp(-(((i - middle) / middle) ** 2));
      slopes.push(slope);
      if (slope > steepest) {
        steepest = slope;
        peak = i;
      }
    }
    if (peak <= 0 || peak >= count - 1) continue;
    const [before, top, after] = [slopes[peak - 1]!, slopes[peak]!, slopes[peak + 1]!];
    const bend = before - 2 * top + after;
    const offset = bend < 0 ? (0.5 * (before - after)) / bend : 0;
    const distance = circle.radius + (peak + offset - middle) * spacing;
    const rise = at(distance + aside) - at(distance - aside);
    if (rise < 0.5 * LEAST_STEP) continue;
    points.push({
      x: circle.x + distance * cosine,
      y: circle.y + distance * sine,
      step: Math.min(rise, 2 * LEAST_STEP),
      spacingPx: (2 * Math.PI * circle.radius) / DIRECTIONS,
      k,
      rise,
      steepest,
    });
  }
  const fitted = fitCircle(points, circle, { radiusPx: circle.radius, uncertaintyPx: circle.radius });
  if (fitted === null) return null;
  const residuals = points.map(({ x, y }) =>
    Math.abs(Math.hypot(x - fitted.circle.x, y - fitted.circle.y) - fitted.circle.radius),
  );
  const limit = 2 * MOST_SCATTER * fitted.circle.radius;
  const good = points.filter((_, i) => residuals[i]! < limit);
  const quarters = [0, 0, 0, 0];
  for (const { k } of good) quarters[Math.floor((4 * k) / DIRECTIONS)]! += 4 / DIRECTIONS;
  return {
    fitted,
    support: good.length / DIRECTIONS,
    worstQuarter: Math.min(...quarters),
    rise: median(points.map(({ rise }) => rise)),
    scatterPx: 1.4826 * median(residuals),
    widthPx: Math.min(2, median(points.map(({ rise, steepest }) => rise / (steepest * Math.sqrt(2 * Math.PI))))),
  };
}

/** Noise of a pixel's luma within the iris: from differences of pixels two apart to the mean of their neighbours. */
function noiseOf({ widthPx, data }: PixelPlane, limbus: Circle): number {
  const differences: number[] = [];
  const reach = 0.65 * limbus.radius;
  for (let y = Math.ceil(limbus.y - reach); y < limbus.y + reach - 1; y++) {
    for (let x = Math.max(1, Math.ceil(limbus.x - reach)); x < Math.min(widthPx - 1, limbus.x + reach - 1); x++) {
      const i = y * widthPx + x;
      if (i < 1 || i + 1 >= data.length) continue;
      differences.push(Math.abs(data[i]! - (data[i - 1]! + data[i + 1]!) / 2));
    }
  }
  return differences.length === 0 ? 0 : (1.4826 * median(differences)) / Math.sqrt(1.5);
}
