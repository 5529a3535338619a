import { distancePx, type ImagePoint } from '../geometry/vector.js';
import { isWithin } from '../geometry/outline.js';
import { fitSimilarity } from '../geometry/similarity.js';
import { invariant } from '../result.js';
import { mean } from '../statistics/moments.js';
import { radiansToDegrees } from '../units/angle.js';
import { SIDES, type BothSides, type Side } from '../units/side.js';
import { fitCardEdges, FOLLOWING, misfitOfProportions, type FittedCard } from './card-edges.js';
import { eyesFromLandmarks, LANDMARK, landmarkAt, type EyesSeed } from './face-landmarks.js';
import type { FourCorners, Landmark, MeasuredPoint } from './features.js';
import { followIris, type FollowedIris, type LidMargins } from './follow-iris.js';
import { headView } from './head-view.js';
import type { LiveFace, LiveIris } from './live-sight.js';
import { clipRectangle, type PixelRectangle, type RgbaImage } from './pixel-plane.js';
import { whiteLevelOfEyes } from './white-level.js';

/** A part of a frame, with where in the frame it lies. */
export interface FrameWindow {
  readonly image: RgbaImage;
  readonly leftPx: number;
  readonly topPx: number;
}

/** What of one frame helps to look at the next one. */
export interface FollowedFrame {
  readonly landmarks: readonly Landmark[];
  /** the irises' radius as a share of the distance between the eyes, with how surely it is known; null before the first was seen */
  readonly irisShare: { readonly mean: number; readonly weight: number } | null;
  /** from the landmarks' iris to the seen one, as shares of the radius */
  readonly irisOffset: BothSides<{ readonly across: number; readonly down: number } | null>;
  /** null where no card is followed */
  readonly card: FourCorners<ImagePoint> | null;
  /** frames in a row in which the card was not seen where it should have been */
  readonly cardMissed: number;
}

/** What was found in one frame; points in pixels of the frame. */
export interface FollowedSight {
  readonly face: LiveFace;
  readonly iris: BothSides<FollowedIris | null>;
  readonly card: FittedCard | null;
  readonly next: FollowedFrame;
}

/** How far beside its expected place a card's edges are looked for, as a share of its width. Chosen: six pixels of two hundred. */
const CARD_REACH = 0.035;
/** Landmarks within about so many widths of the card tell how it moved. Chosen. */
const NEARNESS = 0.6;
/** Least support of a followed card: of all four edges together, and of the weakest. A search asks for more. Chosen. */
const LEAST_SUPPORT = { together: 2.2, weakest: 0.2 } as const;
/**
 * A card may move from frame to frame, but hardly changes its shape; by more than this share of its width, one of its edges was taken for print
 * beside it. Chosen: a turn of three degrees from frame to frame stays below.
 */
const MOST_BENT = 0.02;
/** A card that was not seen for so many frames is lost. Chosen: a quarter of a second, as a finger or a blink of the light takes. */
const MOST_MISSED = 6;
/** Landmarks see the iris larger than its edge is, and in doubt by this share (rendered heads). */
const SEED_RADIUS = { share: 0.97, uncertaintyShare: 0.05 } as const;
/** The radius that many frames agree on still errs by this share as the head turns. Chosen. */
const KNOWN_RADIUS_SHARE = 0.015;
/** Frames over which the radius is averaged: older ones count ever less. Chosen. */
const RADIUS_MEMORY = 30;

/** Where in the frame to look: around the face's inner part and the card where it is expected now. */
export function windowOfInterest(
  frame: { readonly widthPx: number; readonly heightPx: number },
  landmarks: readonly Landmark[],
  card: FourCorners<ImagePoint> | null,
): PixelRectangle | null {
  const inner = [LANDMARK.outerEyeCorner.R, LANDMARK.outerEyeCorner.L, ...CHEEKS.flat()].map((index) =>
    landmarkAt(landmarks, index),
  );
  const points: readonly ImagePoint[] = card === null ? inner : [...inner, ...card];
  const xs = points.map(({ xPx }) => xPx);
  const ys = points.map(({ yPx }) => yPx);
  const spanPx = distancePx(inner[0]!, inner[1]!);
  const marginPx = 0.25 * spanPx;
  return clipRectangle(frame, {
    leftPx: Math.min(...xs) - marginPx,
    topPx: Math.min(...ys) - marginPx,
    widthPx: Math.max(...xs) - Math.min(...xs) + 2 * marginPx,
    heightPx: Math.max(...ys) - Math.min(...ys) + 2 * marginPx,
  });
}

/**
 * An outline that moves with the face: turned, shifted and scaled as the landmarks next to it were (least squares, weighed by their nearness,
 * since what lies nearer to the camera than the eyes moves otherwise as the head turns). Those under the card are guessed by the model, but move with the rest.
 */
export function movedWithFace(
  corners: FourCorners<ImagePoint>,
  before: readonly Landmark[],
  now: readonly Landmark[],
): FourCorners<ImagePoint> {
  const widthPx = distancePx(corners[0], corners[1]);
  const [cx, cy] = [mean(corners.map(({ xPx }) => xPx)), mean(corners.map(({ yPx }) => yPx))];
  const weights = before.map(({ xPx, yPx }) =>
    Math.exp(-((xPx - cx) ** 2 + (yPx - cy) ** 2) / (2 * (NEARNESS * widthPx) ** 2)),
  );
  const move = fitSimilarity(before, now, weights);
  return asCorners(corners.map(move));
}

/**
 * Follows irises and card into a frame whose landmarks are known.
 *
 * @param window what `windowOfInterest` named of it
 * @param landmarks in pixels of the frame
 * @param before what the frame before gave; null at the beginning
 * @param card where the card should be now; null where none is followed
 */
export function followFrame(
  window: FrameWindow,
  landmarks: readonly Landmark[],
  before: FollowedFrame | null,
  card: FourCorners<ImagePoint> | null,
): FollowedSight {
  const { image, leftPx, topPx } = window;
  const eyes = eyesFromLandmarks(landmarks);
  const inWindow = <Point extends ImagePoint>(point: Point): Point => ({
    ...point,
    xPx: point.xPx - leftPx,
    yPx: point.yPx - topPx,
  });
  const inFrame = <Point extends ImagePoint>(point: Point): Point => ({
    ...point,
    xPx: point.xPx + leftPx,
    yPx: point.yPx + topPx,
  });

  const lids: BothSides<LidMargins> = { R: lidMargins(landmarks, 'R'), L: lidMargins(landmarks, 'L') };
  const irisOf = (side: Side): FollowedIris | null => {
    const { radiusPx, radiusUncertaintyPx } = expectedRadius(eyes, side, before);
    const offset = before?.irisOffset[side] ?? { across: 0, down: 0 };
    const [cosine, sine] = [radiusPx * Math.cos(eyes.rollRad), radiusPx * Math.sin(eyes.rollRad)];
    const seed = eyes.irisCentre[side];
    const centre = inWindow({
      xPx: seed.xPx + offset.across * cosine - offset.down * sine,
      yPx: seed.yPx + offset.across * sine + offset.down * cosine,
    });
    const { upper, lower } = lids[side];
    const margins = { upper: upper.map(inWindow), lower: lower.map(inWindow) };
    const found = followIris(image, { centre, radiusPx, radiusUncertaintyPx }, margins, eyes.rollRad);
    return found && { ...found, centre: inFrame(found.centre) };
  };
  const iris = { R: irisOf('R'), L: irisOf('L') };

  const seen =
    card &&
    followCard(image, asCorners(card.map(inWindow)), {
      R: inWindow(eyes.irisCentre.R),
      L: inWindow(eyes.irisCentre.L),
    });
  const fitted = seen && { ...seen, corners: asCorners<MeasuredPoint>(seen.corners.map(inFrame)) };
  const cardMissed = fitted === null ? (before?.cardMissed ?? 0) + 1 : 0;

  return {
    face: faceOf(window, landmarks, eyes, { iris, lids, card: seen?.corners ?? null }),
    iris,
    card: fitted,
    next: {
      landmarks,
      irisShare: averagedShare(before?.irisShare ?? null, eyes, iris),
      irisOffset: { R: offsetOf(iris.R, eyes, 'R'), L: offsetOf(iris.L, eyes, 'L') },
      card: fitted?.corners ?? (card !== null && cardMissed <= MOST_MISSED ? card : null),
      cardMissed,
    },
  };
}

/** A card's edges near an outline; null where they are no card's. */
function followCard(
  image: RgbaImage,
  outline: FourCorners<ImagePoint>,
  irises: BothSides<ImagePoint>,
): FittedCard | null {
  const fitted = fitCardEdges(image, outline, [CARD_REACH], FOLLOWING);
  if (fitted === null || misfitOfProportions(fitted.corners) === null) return null;
  const together = fitted.support.reduce((sum, share) => sum + share, 0);
  if (together < LEAST_SUPPORT.together || Math.min(...fitted.support) < LEAST_SUPPORT.weakest) return null;
  if (SIDES.some((side) => isWithin(fitted.corners, irises[side]))) return null;
  const move = fitSimilarity(outline, fitted.corners);
  const bentPx = Math.max(...outline.map((corner, i) => distancePx(move(corner), fitted.corners[i]!)));
  return bentPx > MOST_BENT * distancePx(outline[0], outline[1]) ? null : fitted;
}

function expectedRadius(
  eyes: EyesSeed,
  side: Side,
  before: FollowedFrame | null,
): { readonly radiusPx: number; readonly radiusUncertaintyPx: number } {
  const seedPx = SEED_RADIUS.share * eyes.irisRadiusPx[side];
  if (before?.irisShare == null) {
    return { radiusPx: seedPx, radiusUncertaintyPx: SEED_RADIUS.uncertaintyShare * seedPx };
  }
  // The nearer eye looks larger: by as much as the landmarks' irises do.
  const meanSeedPx = (eyes.irisRadiusPx.R + eyes.irisRadiusPx.L) / 2;
  const radiusPx = before.irisShare.mean * eyes.spanPx * Math.sqrt(eyes.irisRadiusPx[side] / meanSeedPx);
  return { radiusPx, radiusUncertaintyPx: KNOWN_RADIUS_SHARE * radiusPx };
}

/** The mean share of the radius after one more frame, each iris weighed by how well its own edge tells it. */
function averagedShare(
  before: FollowedFrame['irisShare'],
  eyes: EyesSeed,
  iris: BothSides<FollowedIris | null>,
): FollowedFrame['irisShare'] {
  let mean = before?.mean ?? 0;
  let weight = (before?.weight ?? 0) * (1 - 1 / RADIUS_MEMORY);
  for (const side of SIDES) {
    const seen = iris[side];
    if (seen === null) continue;
    const own = (KNOWN_RADIUS_SHARE * seen.radiusPx) ** 2 / seen.radiusUncertaintyPx ** 2;
    weight += own;
    mean += (own / weight) * (seen.radiusPx / eyes.spanPx - mean);
  }
  return weight === 0 ? null : { mean, weight };
}

function offsetOf(seen: FollowedIris | null, eyes: EyesSeed, side: Side): { across: number; down: number } | null {
  if (seen === null) return null;
  const seed = eyes.irisCentre[side];
  const [dx, dy] = [(seen.centre.xPx - seed.xPx) / seen.radiusPx, (seen.centre.yPx - seed.yPx) / seen.radiusPx];
  const [cosine, sine] = [Math.cos(eyes.rollRad), Math.sin(eyes.rollRad)];
  return { across: dx * cosine + dy * sine, down: dy * cosine - dx * sine };
}

/** Places on both cheeks that nothing covers, each the other's mirror: the wearer's right and left. */
const CHEEKS: readonly (readonly [right: number, left: number])[] = [
  [50, 280],
  [101, 330],
  [117, 346],
];

function faceOf(
  { image, leftPx, topPx }: FrameWindow,
  landmarks: readonly Landmark[],
  eyes: EyesSeed,
  seen: {
    readonly iris: BothSides<FollowedIris | null>;
    readonly lids: BothSides<LidMargins>;
    /** in pixels of the window */
    readonly card: FourCorners<ImagePoint> | null;
  },
): LiveFace {
  const irisOf = (side: Side): LiveIris => {
    const followed = seen.iris[side];
    if (followed !== null) {
      const { centre, radiusPx, softness } = followed;
      const { xx, xy, yy } = centre.covariance;
      const [cosine, sine] = [Math.cos(eyes.rollRad), Math.sin(eyes.rollRad)];
      const across = cosine * cosine * xx + 2 * cosine * sine * xy + sine * sine * yy;
      const { xPx, yPx } = centre;
      return { centre: { xPx, yPx }, radiusPx, uncertaintyPx: Math.sqrt(across), source: 'edges', softness };
    }
    const { xPx, yPx } = eyes.irisCentre[side];
    const radiusPx = SEED_RADIUS.share * eyes.irisRadiusPx[side];
    // rendered heads: seeds lie within an eighth of the radius of the iris
    return { centre: { xPx, yPx }, radiusPx, uncertaintyPx: radiusPx / 8, source: 'landmarks', softness: null };
  };
  const opening = (side: Side): number =>
    distancePx(landmarkAt(landmarks, LANDMARK.upperLid[side]), landmarkAt(landmarks, LANDMARK.lowerLid[side])) /
    (2 * eyes.irisRadiusPx[side]);
  const place = (index: number): ImagePoint => {
    const { xPx, yPx } = landmarkAt(landmarks, index);
    return { xPx, yPx };
  };
  const view = headView(landmarks);
  invariant(view !== null, 'a face has eye corners that lie apart');
  const placeInWindow = (index: number): ImagePoint => {
    const { xPx, yPx } = landmarkAt(landmarks, index);
    return { xPx: xPx - leftPx, yPx: yPx - topPx };
  };
  return {
    iris: { R: irisOf('R'), L: irisOf('L') },
    lids: seen.lids,
    midline: [place(LANDMARK.bridge), place(LANDMARK.noseTip)],
    bounds: boundsOf(landmarks),
    yawDeg: view.yawDeg,
    nodDeg: nodDeg(landmarks),
    rollDeg: radiansToDegrees(eyes.rollRad),
    opening: { R: opening('R'), L: opening('L') },
    whiteLevel: whiteLevelOfEyes(image, placeInWindow),
    lightRatio: lightRatio(image, placeInWindow, seen.card),
  };
}

function lidMargins(landmarks: readonly Landmark[], side: Side): LidMargins {
  const along = (margin: readonly number[]): readonly ImagePoint[] =>
    [LANDMARK.outerEyeCorner[side], ...margin, LANDMARK.innerEyeCorner[side]].map((index) => {
      const { xPx, yPx } = landmarkAt(landmarks, index);
      return { xPx, yPx };
    });
  return { upper: along(LANDMARK.upperLidMargin[side]), lower: along(LANDMARK.lowerLidMargin[side]) };
}

/**
 * How far the chin is lowered: half of how far brow and chin lean in the model's depth, less what they do in an upright face. On rendered
 * heads it errs by 2.2 degrees (root mean square).
 */
function nodDeg(landmarks: readonly Landmark[]): number {
  const [top, chin] = [landmarkAt(landmarks, LANDMARK.foreheadTop), landmarkAt(landmarks, LANDMARK.chin)];
  const leanDeg = radiansToDegrees(Math.atan2(top.depthPx - chin.depthPx, chin.yPx - top.yPx));
  return -0.5 * (leanDeg + 6.9);
}

/** Mean level of the wearer's right cheek over that of the left. */
function lightRatio(
  image: RgbaImage,
  placeOf: (index: number) => ImagePoint,
  card: FourCorners<ImagePoint> | null,
): number {
  const free = CHEEKS.filter((pair) => card === null || !pair.some((index) => isWithin(card, placeOf(index))));
  const levelOf = (which: 0 | 1): number => mean(free.map((pair) => levelAround(image, placeOf(pair[which]))));
  return free.length === 0 ? 1 : (levelOf(0) + 1) / (levelOf(1) + 1);
}

/** Mean of green over a few pixels around a place. */
function levelAround({ widthPx, heightPx, data }: RgbaImage, { xPx, yPx }: ImagePoint): number {
  const levels: number[] = [];
  for (let dy = -2; dy <= 2; dy++) {
    for (let dx = -2; dx <= 2; dx++) {
      const x = Math.min(Math.max(Math.floor(xPx) + dx, 0), widthPx - 1);
      const y = Math.min(Math.max(Math.floor(yPx) + dy, 0), heightPx - 1);
      levels.push(data[(y * widthPx + x) * 4 + 1] ?? 0);
    }
  }
  return mean(levels);
}

function boundsOf(landmarks: readonly Landmark[]): LiveFace['bounds'] {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { xPx, yPx } of landmarks) {
    left = Math.min(left, xPx);
    right = Math.max(right, xPx);
    top = Math.min(top, yPx);
    bottom = Math.max(bottom, yPx);
  }
  return { leftPx: left, topPx: top, widthPx: right - left, heightPx: bottom - top };
}

function asCorners<Point extends ImagePoint>(points: readonly Point[]): FourCorners<Point> {
  return points as unknown as FourCorners<Point>;
}
