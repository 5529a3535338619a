import { degreesToRadians } from '../units/angle.js';
import { invertSymmetric } from '../fitting/linear-system.js';
import type { ImagePoint } from '../geometry/vector.js';
import { fail, succeed, type Result } from '../result.js';
import { mean } from '../statistics/moments.js';
import { median } from '../statistics/robust.js';
import type { BothSides, Side } from '../units/side.js';
import type { EyesSeed } from './face-landmarks.js';
import type { IrisObservation } from './features.js';
import { blurPlane, clipRectangle, cutPlane, sample, type PixelPlane, type RgbaImage } from './pixel-plane.js';

/** The iris edge could not be fitted: too few of its points show a step from dark to the white of the eye. */
export interface IrisNotFound {
  readonly kind: 'iris-not-found';
  readonly support: number;
}

/** What is known of a radius before its edge is fitted, px. */
export interface RadiusKnowledge {
  readonly radiusPx: number;
  readonly uncertaintyPx: number;
}

/** The edge is sought this far above and below the horizontal, degrees; what the lids cover drops out by its colour. */
const SECTOR_DEG = 70;
/** A step over the edge counts at most this much: a highlight on the white is no better an edge than the white itself. */
const FULL_STEP = 55;
/**
 * Landmarks give the radius too large by 1 % within 6 %, the centre too low by 8 % of the radius within 8 % (rendered heads). The
 * search may stray a little further.
 */
const SEED_RADIUS = { share: 0.99, uncertaintyShare: 0.06 } as const;
const SEED_PLACE = { acrossShare: 0.12, downShare: 0.16, lowShare: 0.08 } as const;
/** Weight of the seed's place beside the steps, which count to FULL_STEP in each of some fifty directions. Chosen. */
const SEED_WEIGHT = 60;
/** How well the two irises' radii in the picture follow from one another: irises differ by 0.7 %, the ratio of depths errs by 0.6 %. */
const PAIR_SHARE = 0.012;
/**
 * The steepest place of a lit limbus lies further out than the rim of the iris, by this factor: mean over rendered eyes of 2 to
 * 3 px/mm, light and dark. It is no property of the camera, so it carries doubt (see FLOOR_RADIUS).
 */
const RADIUS_BIAS = 1.011;
/**
 * Standard uncertainties that no number of edge points removes, as shares of the radius: light and lids pull the edge along whole
 * arcs. Up and down it is worse, since the lids shade the edge there. From rendered pictures.
 */
const FLOOR_ACROSS = 0.003;
const FLOOR_DOWN = 0.007;
const FLOOR_RADIUS = 0.011;
/** The same that does not shrink with the iris, px. */
const FLOOR_PX = 0.03;
/** Errors of edge points are alike along this arc, radians, and along this length at least, px. */
const ALIKE_ARC_RAD = 0.44;
const ALIKE_PX = 3;
/**
 * The same on one side only, added as far as the other side shows no edge: of a single arc a small common bend, as lids give it,
 * would be taken for another radius.
 */
const ONE_SIDED_ARC_RAD = 1.5;
/** Least scatter of edge points, as a share of the radius. */
const LEAST_SCATTER = 0.008;
/** A fit whose centre lies further than this from its seed, as a share of the radius, has found something else: seeds err by a fifth. */
const MOST_STRAY = 0.5;
/** The edge between open lids on both sides of the pupil, radians in all: what support is the share of. */
const WHOLE_SUPPORT_RAD = degreesToRadians(2 * 70);
/** Least support of a fit. */
const LEAST_SUPPORT = 0.2;
const LEAST_POINTS = 6;
/** A group of edge points on one side that spans less than this is more likely an eyelash or a corner than the edge, degrees. */
const LEAST_ARC_DEG = 18;
/**
 * How white it must be beyond an edge point, as a share of what is white on that side, and how far the points next to ones that
 * fail are left out, px. The second pair serves eyes of a few pixels, of which the first leaves nothing.
 */
const MASKS = [
  { whiteShare: 0.5, marginPx: 1.5 },
  { whiteShare: 0.35, marginPx: 0.6 },
] as const;

/**
 * Fits both irises. Each is fitted by itself first; then each is fitted anew with what both together say of its radius, since the
 * white often shows on one side of an iris only, where centre and radius cannot be told apart.
 *
 * @param leftOverRight ratio of the radii in the picture, left over right, that the depths of the eyes predict
 */
export function fitIrisEdges(
  image: RgbaImage,
  eyes: EyesSeed,
  leftOverRight: number,
): BothSides<Result<IrisObservation, IrisNotFound>> {
  const fit = (side: Side, known?: RadiusKnowledge) =>
    fitIrisEdge(image, eyes.irisCentre[side], eyes.irisRadiusPx[side], eyes.rollRad, known);
  const alone = { R: fit('R'), L: fit('L') };
  const together = (side: Side): Result<IrisObservation, IrisNotFound> => {
    const own = alone[side];
    const other = alone[side === 'R' ? 'L' : 'R'];
    if (!other.ok) return own;
    const ratio = side === 'L' ? leftOverRight : 1 / leftOverRight;
    const { radiusPx: otherPx, radiusUncertaintyPx: otherDoubtPx } = other.value;
    const fromOther = {
      radiusPx: ratio * otherPx,
      variance: (ratio * otherDoubtPx) ** 2 + (PAIR_SHARE * otherPx) ** 2,
    };
    if (!own.ok) return fit(side, { radiusPx: fromOther.radiusPx, uncertaintyPx: Math.sqrt(fromOther.variance) });
    const ownWeight = 1 / own.value.radiusUncertaintyPx ** 2;
    const otherWeight = 1 / fromOther.variance;
    const radiusPx = (ownWeight * own.value.radiusPx + otherWeight * fromOther.radiusPx) / (ownWeight + otherWeight);
    // The own edge enters the second fit again: the doubt of the mean is not less than that of the ratio.
    const uncertaintyPx = Math.max(1 / Math.sqrt(ownWeight + otherWeight), PAIR_SHARE * radiusPx);
    const again = fit(side, { radiusPx, uncertaintyPx });
    return again.ok ? again : own;
  };
  return { R: together('R'), L: together('L') };
}

/**
 * Fits the edge between iris and white from a rough centre and radius: a coarse search for the circle with the largest mean step
 * to white, then a robust circle through the sub-pixel places of the steepest steps of brightness. White is told from skin by its
 * colour, so that lids drop out; a slope of the light on the white beside the edge, which moves the steepest place, is taken out.
 *
 * An eye that looks at the camera shows a circle. One that looks past it by up to 15 degrees shows an ellipse 3 % narrower, evenly
 * on both sides, which leaves the centre in place and the radius too small by up to 2 %.
 *
 * @param seed rough centre, px
 * @param seedRadiusPx rough radius, px
 * @param rollRad direction from the wearer's right to the left eye in the picture
 * @param known what is known of the radius otherwise; without it the seed is
 */
export function fitIrisEdge(
  image: RgbaImage,
  seed: ImagePoint,
  seedRadiusPx: number,
  rollRad: number,
  known?: RadiusKnowledge,
): Result<IrisObservation, IrisNotFound> {
  const reachPx = 2.2 * seedRadiusPx + 6;
  const rectangle = clipRectangle(image, {
    leftPx: seed.xPx - reachPx,
    topPx: seed.yPx - reachPx,
    widthPx: 2 * reachPx,
    heightPx: 2 * reachPx,
  });
  if (rectangle === null) return fail({ kind: 'iris-not-found', support: 0 });
  const home: Circle = {
    x: seed.xPx - rectangle.leftPx,
    y: seed.yPx - rectangle.topPx,
    radius: known === undefined ? seedRadiusPx : RADIUS_BIAS * known.radiusPx,
  };
  const radius: RadiusKnowledge =
    known === undefined
      ? {
          radiusPx: SEED_RADIUS.share * seedRadiusPx,
          uncertaintyPx: SEED_RADIUS.uncertaintyShare * seedRadiusPx,
        }
      : { radiusPx: RADIUS_BIAS * known.radiusPx, uncertaintyPx: known.uncertaintyPx };
  const most = known === undefined ? 0.2 : Math.min(0.2, Math.max(0.04, (2 * radius.uncertaintyPx) / radius.radiusPx));

  // What is skin and what is white is looked up beside the iris, so the search runs again from where it led.
  const cut: EyeCut = {
    luma: cutPlane(image, rectangle, 'luma'),
    redMinusBlue: cutPlane(image, rectangle, 'red-minus-blue'),
  };
  const first = searchCircle(whiteOfEye(cut, home, rollRad), home, home, most, rollRad);
  const planes: EyePlanes = {
    luma: blurPlane(cut.luma, blurPxOf(first)),
    white: whiteOfEye(cut, first, rollRad),
  };
  const coarse = searchCircle(planes.white, { ...first, radius: home.radius }, home, most, rollRad);
  let fitted: FittedCircle | null = null;
  for (const mask of MASKS) {
    let circle = coarse;
    // Steps are weighed by their nearness to the circle they are sought around, which draws them to it: sought anew around the
    // fitted circle until it stays, the fit forgets where it began.
    for (let round = 0; round < 8; round++) {
      const points = edgePoints(planes, circle, rollRad, mask);
      fitted = fitCircle(points, circle, radius);
      if (fitted === null) break;
      const { x, y, radius: r } = fitted.circle;
      const moved = Math.hypot(circle.x - x, circle.y - y, circle.radius - r);
      circle = fitted.circle;
      if (moved < 0.01) break;
    }
    if (fitted !== null) break;
  }
  const support = fitted === null ? 0 : Math.min(1, fitted.usedRad / WHOLE_SUPPORT_RAD);
  if (fitted === null || support < LEAST_SUPPORT) return fail({ kind: 'iris-not-found', support });
  const { circle, covariance } = fitted;
  const strayed = Math.hypot(circle.x - home.x, circle.y - home.y) > MOST_STRAY * seedRadiusPx;
  if (strayed) return fail({ kind: 'iris-not-found', support });
  const floor = (share: number): number => (share * circle.radius) ** 2 + FLOOR_PX ** 2;
  return succeed({
    centre: {
      xPx: circle.x + rectangle.leftPx,
      yPx: circle.y + rectangle.topPx,
      covariance: {
        xx: covariance[0]![0]! + floor(FLOOR_ACROSS),
        xy: covariance[0]![1]!,
        yy: covariance[1]![1]! + floor(FLOOR_DOWN),
      },
    },
    radiusPx: circle.radius / RADIUS_BIAS,
    radiusUncertaintyPx: Math.sqrt(covariance[2]![2]! + floor(FLOOR_RADIUS)),
    support,
    source: 'edges',
  });
}

/** A circle in the pixels of a plane. */
export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

interface Direction {
  readonly cosine: number;
  readonly sine: number;
  /** angle below the horizontal of the head, radians */
  readonly belowRad: number;
  /** on the wearer's left of the iris */
  readonly left: boolean;
}

/** Directions to both sides of the iris, up to so far above and below the horizontal of the head. */
export function sectorDirections(rollRad: number, stepRad: number, upDeg: number, downDeg: number): Direction[] {
  const directions: Direction[] = [];
  const [from, to] = [-degreesToRadians(upDeg), degreesToRadians(downDeg)];
  const count = Math.floor((to - from) / stepRad + 1e-9);
  for (const left of [true, false]) {
    for (let k = 0; k <= count; k++) {
      const belowRad = from + k * stepRad;
      const across = (left ? 1 : -1) * Math.cos(belowRad);
      const down = Math.sin(belowRad);
      directions.push({
        cosine: across * Math.cos(rollRad) - down * Math.sin(rollRad),
        sine: across * Math.sin(rollRad) + down * Math.cos(rollRad),
        belowRad,
        left,
      });
    }
  }
  return directions;
}

/** The eye and its surroundings as the picture has them. */
interface EyeCut {
  readonly luma: PixelPlane;
  readonly redMinusBlue: PixelPlane;
}

interface EyePlanes {
  /** luma, blurred a little against noise */
  readonly luma: PixelPlane;
  /** luma where it is coloured like the white of the eye, 0 where it is coloured like skin */
  readonly white: PixelPlane;
}

function blurPxOf({ radius }: Circle): number {
  return Math.max(0.5, 0.05 * radius);
}

/**
 * Luma of the white alone. Skin is redder than the white in every light and of every complexion: the difference of red
 * and blue over luma is looked up below the lower lid (skin) and beside the iris (white, the least red third of it).
 */
function whiteOfEye({ luma, redMinusBlue }: EyeCut, circle: Circle, rollRad: number): PixelPlane {
  const colourBlurPx = Math.max(0.8, 0.06 * circle.radius);
  const difference = blurPlane(redMinusBlue, colourBlurPx);
  const level = blurPlane(luma, colourBlurPx);
  // The constant keeps the noise of black pixels from counting as colour.
  const redness: PixelPlane = { ...level, data: difference.data.map((value, i) => value / (level.data[i]! + 12)) };
  const beside = (
    upDeg: number,
    downDeg: number,
    stepDeg: number,
    shares: readonly number[],
    turnRad: number,
  ): number[] =>
    sectorDirections(rollRad + turnRad, degreesToRadians(stepDeg), upDeg, downDeg)
      .filter(({ left }) => left || turnRad === 0)
      .flatMap(({ cosine, sine }) =>
        shares.map((share) =>
          sample(redness, circle.x + share * circle.radius * cosine, circle.y + share * circle.radius * sine),
        ),
      );
  const skin = median(beside(40, 40, 8, [1.4, 1.55, 1.7, 1.85], Math.PI / 2));
  const besideIris = beside(32, 40, 8, [1.15, 1.3, 1.45], 0).sort((a, b) => a - b);
  const pale = Math.min(besideIris[Math.floor(0.3 * besideIris.length)] ?? 0, skin - 0.08);
  const data = luma.data.map((value, i) => {
    const share = (skin - redness.data[i]!) / (skin - pale);
    return value * Math.min(1, Math.max(0, (share - 0.15) / 0.6));
  });
  return blurPlane({ ...luma, data }, blurPxOf(circle));
}

/**
 * The circle with the largest mean step from inside to outside, by descent with shrinking steps from several starts, not far from
 * where the landmarks see it.
 */
function searchCircle(plane: PixelPlane, start: Circle, home: Circle, most: number, rollRad: number): Circle {
  const directions = sectorDirections(rollRad, degreesToRadians(5), 60, 60);
  const score = ({ x, y, radius }: Circle): number => {
    const half = 0.1 * radius;
    let left = 0;
    let right = 0;
    for (const { cosine, sine, left: onLeft } of directions) {
      const inside = sample(plane, x + (radius - half) * cosine, y + (radius - half) * sine);
      const outside = sample(plane, x + (radius + half) * cosine, y + (radius + half) * sine);
      const step = Math.min(Math.max(outside - inside, -FULL_STEP), FULL_STEP);
      if (onLeft) left += step;
      else right += step;
    }
    const across = (x - home.x) / (SEED_PLACE.acrossShare * home.radius);
    const down = (y - home.y + SEED_PLACE.lowShare * home.radius) / (SEED_PLACE.downShare * home.radius);
    // Both sides must carry the circle: one strong side alone would let it slip sideways.
    return left + right + 0.5 * Math.min(left, right) - SEED_WEIGHT * (across * across + down * down);
  };
  let best = start;
  let bestScore = -Infinity;
  for (const startY of [0, -0.25, 0.25]) {
    for (const startX of [0, -0.15, 0.15]) {
      let circle: Circle = {
        x: start.x + startX * start.radius,
        y: start.y + startY * start.radius,
        radius: start.radius,
      };
      let value = score(circle);
      for (const step of [0.12, 0.06, 0.03, 0.015].map((share) => share * start.radius)) {
        for (let moves = 0; moves < 40; moves++) {
          let next: Circle | null = null;
          for (const [dx, dy, dr] of MOVES) {
            const candidate = { x: circle.x + dx * step, y: circle.y + dy * step, radius: circle.radius + dr * step };
            const tooFar = Math.hypot(candidate.x - home.x, candidate.y - home.y) > 0.6 * home.radius;
            if (tooFar || Math.abs(candidate.radius / home.radius - 1) > most) continue;
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

/** A point of an edge: where it is, how high its step is, and how much of the circle's length it stands for. */
export interface EdgePoint {
  readonly x: number;
  readonly y: number;
  readonly step: number;
  readonly spacingPx: number;
}

/** A step along one direction: where it is steepest, and what lies on both sides of it. */
interface Step extends Direction {
  readonly distance: number;
  readonly height: number;
  /** slope at the steepest place, levels a pixel */
  readonly steepest: number;
  /** whole step, levels */
  readonly rise: number;
  /** slope of the light on the white beyond the edge, levels a pixel */
  readonly slopeBeyond: number;
  /** how much whiter it is beyond than within */
  readonly whiter: number;
}

/** Sub-pixel places of the steps to white across a circle, one for each direction that shows one. */
function edgePoints(planes: EyePlanes, circle: Circle, rollRad: number, mask: (typeof MASKS)[number]): EdgePoint[] {
  const stepRad = Math.min((2 * Math.PI) / 72, 1 / circle.radius);
  const directions = sectorDirections(rollRad, stepRad, SECTOR_DEG, SECTOR_DEG);
  const steps = directions.flatMap((direction) => findStep(planes, circle, direction) ?? []);
  const found: EdgePoint[] = [];
  for (const left of [true, false]) {
    const side = steps.filter((step) => step.left === left);
    const whites = side.filter(({ belowRad }) => Math.abs(belowRad) < 0.64).map(({ whiter }) => whiter);
    const reference = whites.sort((a, b) => a - b)[Math.floor(0.75 * whites.length)] ?? 0;
    const least = Math.max(LEAST_WHITER, mask.whiteShare * reference);
    const margin = mask.marginPx / circle.radius;
    const failing = side.filter(({ whiter }) => whiter <= least);
    const good = side.filter(
      ({ whiter, belowRad }) =>
        whiter > least && !failing.some((other) => Math.abs(other.belowRad - belowRad) < margin),
    );
    if (good.length * stepRad < degreesToRadians(LEAST_ARC_DEG)) continue;
    // An edge blurred to a Gaussian step of this width, beside a slope, is steepest further on: slope * width^2 / rise.
    const widthPx = Math.min(
      0.09 * circle.radius,
      Math.max(
        0.06 * circle.radius,
        0.9 * median(good.map(({ rise, steepest }) => rise / (Math.max(steepest, 1) * Math.sqrt(2 * Math.PI)))),
      ),
    );
    for (const step of good) {
      const near = good.filter(({ belowRad }) => Math.abs(belowRad - step.belowRad) < 0.3);
      const shift =
        (median(near.map(({ slopeBeyond }) => slopeBeyond)) * widthPx ** 2) / median(near.map(({ rise }) => rise));
      const distance = step.distance - Math.min(Math.max(shift, -0.04 * circle.radius), 0.04 * circle.radius);
      found.push({
        x: circle.x + distance * step.cosine,
        y: circle.y + distance * step.sine,
        step: step.height,
        spacingPx: stepRad * circle.radius,
      });
    }
  }
  return found;
}

/** Whiter by less than this, levels, is no step to white. */
const LEAST_WHITER = 12;

function findStep({ luma, white }: EyePlanes, circle: Circle, direction: Direction): Step | null {
  const { cosine, sine } = direction;
  const spacing = Math.min(0.25, 0.03 * circle.radius);
  const count = 2 * Math.ceil((0.24 * circle.radius) / spacing) + 1;
  const middle = (count - 1) / 2;
  // Derivative over about a fifth of the reach, so that noise of single pixels does not decide.
  const lag = Math.max(1, Math.round(Math.max(0.5, 0.05 * circle.radius) / spacing));
  const at = (plane: PixelPlane, distance: number): number =>
    sample(plane, circle.x + distance * cosine, circle.y + distance * sine);
  const levels = new Float32Array(count);
  for (let k = 0; k < count; k++) levels[k] = at(luma, circle.radius + (k - middle) * spacing);
  const steps = new Float32Array(count);
  let peak = -1;
  let height = 0;
  for (let k = lag; k < count - lag; k++) {
    const away = ((k - middle) * spacing) / (0.13 * circle.radius);
    const step = Math.max(0, levels[k + lag]! - levels[k - lag]!) * Math.exp(-away * away);
    steps[k] = step;
    if (step > height) {
      height = step;
      peak = k;
    }
  }
  if (peak < 0 || height < 3) return null;
  let weight = 0;
  let moment = 0;
  const foot = 0.3 * height;
  for (const way of [-1, 1]) {
    for (let k = way < 0 ? peak : peak + 1; k >= lag && k < count - lag; k += way) {
      const over = steps[k]! - foot;
      if (over <= 0) break;
      weight += over;
      moment += over * k;
    }
  }
  const distance = circle.radius + (moment / weight - middle) * spacing;
  const typicalWidth = Math.max(0.85, 0.075 * circle.radius);
  const [near, far] = [distance + 1.8 * typicalWidth, distance + 1.8 * typicalWidth + 0.12 * circle.radius];
  const beyond = at(luma, near);
  const aside = Math.max(1.5, 0.11 * circle.radius);
  return {
    ...direction,
    distance,
    height,
    steepest: (levels[peak + lag]! - levels[peak - lag]!) / (2 * lag * spacing),
    rise: Math.max(8, beyond - at(luma, distance - 1.5 * typicalWidth)),
    slopeBeyond: (at(luma, far) - beyond) / (far - near),
    whiter: at(white, distance + aside) - at(white, distance - aside),
  };
}

/** A circle fitted to the points of an edge. */
export interface FittedCircle {
  readonly circle: Circle;
  /** covariance of x, y and radius, px² */
  readonly covariance: number[][];
  /** the arc that carried the fit, radians */
  readonly usedRad: number;
}

/**
 * Circle through points by Gauss-Newton with Tukey's biweight and what is known of the radius. Points are weighed by their steps
 * and by the scatter that remains; as their errors are alike along an arc, they count as one for each such arc.
 */
export function fitCircle(points: readonly EdgePoint[], start: Circle, known: RadiusKnowledge): FittedCircle | null {
  if (points.length < LEAST_POINTS) return null;
  const fullStep = [...points.map(({ step }) => step)].sort((a, b) => a - b)[Math.floor(0.75 * points.length)]!;
  let circle = start;
  let usedRad = 0;
  let inverse: number[][] | null = null;
  for (let round = 0; round < 30; round++) {
    const distances = points.map((point) => Math.hypot(point.x - circle.x, point.y - circle.y));
    const residuals = distances.map((distance) => distance - circle.radius);
    const scatter = Math.max(1.4826 * median(residuals.map(Math.abs)), LEAST_SCATTER * circle.radius, 0.04);
    const cut = 4 * scatter;
    const normal = [
      [0, 0, 0],
      [0, 0, 0],
      [0, 0, 1 / known.uncertaintyPx ** 2],
    ];
    const right = [0, 0, (known.radiusPx - circle.radius) / known.uncertaintyPx ** 2];
    const oneSided = Math.hypot(
      mean(points.map((point, i) => (point.x - circle.x) / distances[i]!)),
      mean(points.map((point, i) => (point.y - circle.y) / distances[i]!)),
    );
    const alikeRad = ALIKE_ARC_RAD + ONE_SIDED_ARC_RAD * Math.max(0, 2 * oneSided - 1);
    const alikePx = Math.max(ALIKE_PX, alikeRad * circle.radius);
    usedRad = 0;
    points.forEach((point, i) => {
      const share = residuals[i]! / cut;
      if (Math.abs(share) >= 1) return;
      usedRad += point.spacingPx / circle.radius;
      const independent = point.spacingPx / alikePx / scatter ** 2;
      const weight = independent * (1 - share * share) ** 2 * Math.min(1, point.step / fullStep);
      const row = [(point.x - circle.x) / distances[i]!, (point.y - circle.y) / distances[i]!, 1];
      for (let a = 0; a < 3; a++) {
        right[a]! += weight * row[a]! * residuals[i]!;
        for (let b = 0; b < 3; b++) normal[a]![b]! += weight * row[a]! * row[b]!;
      }
    });
    inverse = invertSymmetric(normal);
    if (inverse === null) return null;
    const step = inverse.map((row) => row.reduce((sum, value, i) => sum + value * right[i]!, 0));
    circle = { x: circle.x + step[0]!, y: circle.y + step[1]!, radius: circle.radius + step[2]! };
    if (Math.hypot(...step) < 1e-4) break;
  }
  return inverse === null ? null : { circle, covariance: inverse, usedRad };
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
  const directions = sectorDirections(rollRad, degreesToRadians(4), 32, 56);
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
  const step = mean(profile.slice(-tenth)) - mean(profile.slice(0, tenth));
  let steepest = 0;
  for (let k = 1; k < profile.length - 1; k++) {
    steepest = Math.max(steepest, (profile[k + 1]! - profile[k - 1]!) / (2 * spacing));
  }
  return steepest > 0 && step > 0 ? step / steepest : Infinity;
}
