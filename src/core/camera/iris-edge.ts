import { degreesToRadians } from '../units/angle.js';
import { invertSymmetric } from '../fitting/linear-system.js';
import type { ImagePoint } from '../geometry/vector.js';
import { fail, succeed, type Result } from '../result.js';
import { median } from '../statistics/robust.js';
import type { IrisObservation } from './features.js';
import { blurPlane, clipRectangle, cutPlane, sample, type PixelPlane, type RgbaImage } from './pixel-plane.js';

/** The iris edge could not be fitted: too few of its points show a step from dark to light. */
export interface IrisNotFound {
  readonly kind: 'iris-not-found';
  readonly support: number;
}

/** How far above and below the horizontal the iris edge is used, degrees: the upper lid covers more of it than the lower. */
const SECTOR_UP_DEG = 32;
const SECTOR_DOWN_DEG = 56;
/** A step over the edge counts at most this much: a highlight on the white is no better an edge than the white itself. */
const FULL_STEP = 55;
/**
 * Smallest standard uncertainties, as shares of the radius: the model of a circle with an even edge is no better than this.
 * Up and down it is worse, since the lids cut the circle there. Tuned on rendered pictures.
 */
const FLOOR_ACROSS = 0.009;
const FLOOR_DOWN = 0.03;
const FLOOR_RADIUS = 0.014;
/** The fitted radius over the true one on rendered eyes: the lids' shadow beside the iris draws the edge outwards. */
const RADIUS_BIAS = 1.018;
/** A fit whose centre lies further than this from its seed, as a share of the radius, has found something else: seeds err by a fifth. */
const MOST_STRAY = 0.5;
/** Least share of the sampled edge that must show a step. */
const LEAST_SUPPORT = 0.35;

/**
 * Fits the edge between iris and white from a rough centre and radius: a coarse search for the circle with the largest mean
 * step, then a robust circle through the sub-pixel places of the steps. Only the sectors to the right and left are used, since
 * the lids hide the edge above and below. On a face turned by up to 15 degrees the ellipse differs from a circle by 3 % in one
 * axis, evenly on both sides, which leaves the centre in place.
 *
 * @param seed rough centre, px
 * @param seedRadiusPx rough radius, px
 * @param rollRad direction from the wearer's right to the left eye in the picture
 */
export function fitIrisEdge(
  image: RgbaImage,
  seed: ImagePoint,
  seedRadiusPx: number,
  rollRad: number,
): Result<IrisObservation, IrisNotFound> {
  const reachPx = 2.2 * seedRadiusPx + 6;
  const rectangle = clipRectangle(image, {
    leftPx: seed.xPx - reachPx,
    topPx: seed.yPx - reachPx,
    widthPx: 2 * reachPx,
    heightPx: 2 * reachPx,
  });
  if (rectangle === null) return fail({ kind: 'iris-not-found', support: 0 });
  const sharp = cutPlane(image, rectangle, 'luma');
  const plane = blurPlane(sharp, Math.max(0.5, 0.05 * seedRadiusPx));
  const local = { x: seed.xPx - rectangle.leftPx, y: seed.yPx - rectangle.topPx };

  const coarse = searchCircle(plane, local, seedRadiusPx, rollRad);
  let points = edgePoints(plane, coarse, rollRad);
  let fitted = fitCircle(points.found, coarse);
  // Steps are weighed by their nearness to the circle they are sought around, which draws them to it: sought anew around the
  // fitted circle until it stays, the fit forgets where it began.
  for (let round = 0; round < 5 && fitted !== null; round++) {
    const { x, y, radius } = fitted.circle;
    points = edgePoints(plane, fitted.circle, rollRad);
    fitted = fitCircle(points.found, fitted.circle);
    if (fitted !== null && Math.hypot(fitted.circle.x - x, fitted.circle.y - y, fitted.circle.radius - radius) < 0.01) {
      break;
    }
  }
  const support = fitted === null ? 0 : fitted.used / points.asked;
  if (fitted === null || support < LEAST_SUPPORT) return fail({ kind: 'iris-not-found', support });
  const { circle, covariance } = fitted;
  const strayed = Math.hypot(circle.x - local.x, circle.y - local.y) > MOST_STRAY * seedRadiusPx;
  if (strayed) return fail({ kind: 'iris-not-found', support });
  const squared = (share: number): number => (share * circle.radius) ** 2;
  return succeed({
    centre: {
      xPx: circle.x + rectangle.leftPx,
      yPx: circle.y + rectangle.topPx,
      covariance: {
        xx: covariance[0]![0]! + squared(FLOOR_ACROSS),
        xy: covariance[0]![1]!,
        yy: covariance[1]![1]! + squared(FLOOR_DOWN),
      },
    },
    radiusPx: circle.radius / RADIUS_BIAS,
    radiusUncertaintyPx: Math.sqrt(covariance[2]![2]! + squared(FLOOR_RADIUS)),
    support,
    source: 'edges',
  });
}

interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Directions in the two sectors beside the pupil, from the middle of the wearer's left sector on. */
function sectorDirections(rollRad: number, stepDeg: number): { readonly cosine: number; readonly sine: number }[] {
  const directions = [];
  for (const mirror of [1, -1]) {
    for (let deg = -SECTOR_UP_DEG; deg <= SECTOR_DOWN_DEG; deg += stepDeg) {
      const across = mirror * Math.cos(degreesToRadians(deg));
      const down = Math.sin(degreesToRadians(deg));
      directions.push({
        cosine: across * Math.cos(rollRad) - down * Math.sin(rollRad),
        sine: across * Math.sin(rollRad) + down * Math.cos(rollRad),
      });
    }
  }
  return directions;
}

/** The circle with the largest mean step from inside to outside, by descent with shrinking steps from several starts. */
function searchCircle(plane: PixelPlane, seed: { x: number; y: number }, seedRadius: number, rollRad: number): Circle {
  const directions = sectorDirections(rollRad, 5);
  const score = ({ x, y, radius }: Circle): number => {
    const half = 0.08 * radius;
    let left = 0;
    let right = 0;
    directions.forEach(({ cosine, sine }, i) => {
      const inside = sample(plane, x + (radius - half) * cosine, y + (radius - half) * sine);
      const outside = sample(plane, x + (radius + half) * cosine, y + (radius + half) * sine);
      const step = Math.min(Math.max(outside - inside, -FULL_STEP), FULL_STEP);
      if (i < directions.length / 2) right += step;
      else left += step;
    });
    // Both sides must carry the circle: one strong side alone would let it slip sideways.
    return left + right + 0.5 * Math.min(left, right);
  };
  let best: Circle = { ...seed, radius: seedRadius };
  let bestScore = -Infinity;
  for (const startY of [0, -0.25, 0.25]) {
    let circle: Circle = { x: seed.x, y: seed.y + startY * seedRadius, radius: seedRadius };
    let value = score(circle);
    for (const step of [0.12, 0.06, 0.03, 0.015].map((share) => share * seedRadius)) {
      for (let moves = 0; moves < 40; moves++) {
        let next: Circle | null = null;
        for (const [dx, dy, dr] of MOVES) {
          const candidate = { x: circle.x + dx * step, y: circle.y + dy * step, radius: circle.radius + dr * step };
          const tooFar = Math.hypot(candidate.x - seed.x, candidate.y - seed.y) > 0.6 * seedRadius;
          if (tooFar || candidate.radius < 0.75 * seedRadius || candidate.radius > 1.3 * seedRadius) continue;
          const candidateValue = score(candidate);
          if (candidateValue > value + 1e-6) {
            value = candidateValue;
            next = candidate;
          }
        }
        if (next === null) break;
        circle = next;
      }
    }
    if (value > bestScore) {
      bestScore = value;
      best = circle;
    }
  }
  return best;
}

const MOVES: readonly (readonly [number, number, number])[] = [
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
  [0, 0, 1],
  [0, 0, -1],
];

interface EdgePoint {
  readonly x: number;
  readonly y: number;
  readonly step: number;
}

/** Sub-pixel places of the steps across a circle, one for each direction that shows one. */
function edgePoints(plane: PixelPlane, circle: Circle, rollRad: number): { found: EdgePoint[]; asked: number } {
  const directions = sectorDirections(rollRad, 2);
  const spacing = Math.min(0.25, 0.03 * circle.radius);
  const reach = 0.24 * circle.radius;
  const count = 2 * Math.ceil(reach / spacing) + 1;
  const found: EdgePoint[] = [];
  const middle = (count - 1) / 2;
  // Derivative over about a fifth of the reach, so that noise of single pixels does not decide.
  const lag = Math.max(1, Math.round(Math.max(0.5, 0.05 * circle.radius) / spacing));
  for (const { cosine, sine } of directions) {
    const levels = new Float32Array(count);
    for (let k = 0; k < count; k++) {
      const distance = circle.radius + (k - middle) * spacing;
      levels[k] = sample(plane, circle.x + distance * cosine, circle.y + distance * sine);
    }
    let peak = -1;
    let height = 0;
    const steps = new Float32Array(count);
    for (let k = lag; k < count - lag; k++) {
      const away = ((k - middle) * spacing) / (0.13 * circle.radius);
      const step = Math.max(0, levels[k + lag]! - levels[k - lag]!) * Math.exp(-away * away);
      steps[k] = step;
      if (step > height) {
        height = step;
        peak = k;
      }
    }
    if (peak < 0 || height < 3) continue;
    let weight = 0;
    let moment = 0;
    const foot = 0.3 * height;
    for (const direction of [-1, 1]) {
      for (let k = direction < 0 ? peak : peak + 1; k >= lag && k < count - lag; k += direction) {
        const over = steps[k]! - foot;
        if (over <= 0) break;
        weight += over;
        moment += over * k;
      }
    }
    const distance = circle.radius + (moment / weight - middle) * spacing;
    found.push({ x: circle.x + distance * cosine, y: circle.y + distance * sine, step: height });
  }
  return { found, asked: directions.length };
}

/**
 * Circle through points by Gauss-Newton with Tukey's biweight; covariance of (x, y, radius) from the scatter that remains, with
 * every third point counted as independent.
 */
function fitCircle(
  points: readonly EdgePoint[],
  start: Circle,
): { readonly circle: Circle; readonly covariance: number[][]; readonly used: number } | null {
  if (points.length < 12) return null;
  let circle = start;
  let scatter = 0;
  let used = 0;
  let inverse: number[][] | null = null;
  for (let round = 0; round < 30; round++) {
    const distances = points.map((point) => Math.hypot(point.x - circle.x, point.y - circle.y));
    const residuals = distances.map((distance) => distance - circle.radius);
    scatter = Math.max(1.4826 * median(residuals.map(Math.abs)), 0.02 * circle.radius * 0.3, 0.04);
    const cut = 4 * scatter;
    const normal = [
      [0, 0, 0],
      [0, 0, 0],
      [0, 0, 0],
    ];
    const right = [0, 0, 0];
    used = 0;
    points.forEach((point, i) => {
      const share = residuals[i]! / cut;
      if (Math.abs(share) >= 1) return;
      used++;
      const weight = (1 - share * share) ** 2 * Math.min(point.step, FULL_STEP);
      const row = [(point.x - circle.x) / distances[i]!, (point.y - circle.y) / distances[i]!, 1];
      for (let a = 0; a < 3; a++) {
        for (let b = 0; b < 3; b++) normal[a]![b]! += weight * row[a]! * row[b]!;
        right[a]! += weight * row[a]! * residuals[i]!;
      }
    });
    inverse = invertSymmetric(normal);
    if (inverse === null) return null;
    const move = inverse.map((row) => row.reduce((sum, value, i) => sum + value * right[i]!, 0));
    circle = { x: circle.x + move[0]!, y: circle.y + move[1]!, radius: circle.radius + move[2]! };
    if (Math.hypot(move[0]!, move[1]!, move[2]!) < 1e-4) break;
  }
  if (inverse === null || !Number.isFinite(circle.x + circle.y + circle.radius)) return null;
  // Weighted least squares: the inverse normal matrix times the variance of unit weight.
  const meanStep = points.reduce((sum, point) => sum + Math.min(point.step, FULL_STEP), 0) / points.length;
  const factor = scatter * scatter * meanStep * 3;
  return { circle, covariance: inverse.map((row) => row.map((value) => value * factor)), used };
}

/**
 * Width over which an iris edge rises from dark to light beside the pupil, px: its whole step over its steepest slope, from the mean
 * profile across the fitted circle. In focus it is a few pixels and a small part of the radius; blur widens it, motion most of all.
 */
export function irisEdgeWidthPx(image: RgbaImage, iris: IrisObservation, rollRad: number): number {
  const { centre, radiusPx } = iris;
  const reach = 0.6 * radiusPx;
  const rectangle = clipRectangle(image, {
    leftPx: centre.xPx - radiusPx - reach - 2,
    topPx: centre.yPx - radiusPx - reach - 2,
    widthPx: 2 * (radiusPx + reach + 2),
    heightPx: 2 * (radiusPx + reach + 2),
  });
  if (rectangle === null) return Infinity;
  const plane = cutPlane(image, rectangle, 'luma');
  const directions = sectorDirections(rollRad, 4);
  const spacing = Math.min(0.5, 0.05 * radiusPx);
  const half = Math.ceil(reach / spacing);
  const profile: number[] = [];
  for (let k = -half; k <= half; k++) {
    const distance = radiusPx + k * spacing;
    let sum = 0;
    for (const { cosine, sine } of directions) {
      sum += sample(
        plane,
        centre.xPx - rectangle.leftPx + distance * cosine,
        centre.yPx - rectangle.topPx + distance * sine,
      );
    }
    profile.push(sum / directions.length);
  }
  const tenth = Math.max(1, Math.round(profile.length / 10));
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const step = mean(profile.slice(-tenth)) - mean(profile.slice(0, tenth));
  let steepest = 0;
  for (let k = 1; k < profile.length - 1; k++) {
    steepest = Math.max(steepest, (profile[k + 1]! - profile[k - 1]!) / (2 * spacing));
  }
  return steepest > 0 && step > 0 ? step / steepest : Infinity;
}
