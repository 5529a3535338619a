import { median } from '../statistics/robust.js';
import { radiansToDegrees } from '../units/angle.js';
import { distancePx, type ImagePoint } from '../geometry/vector.js';
import { fail, succeed, type Result } from '../result.js';
import { FOLLOWING, fitCardEdges, misfitOfProportions, proposeOutlines, type FittedCard } from './card-edges.js';
import { QUICK_SEARCH, searchCard } from './card-search.js';
import type { EyesSeed } from './face-landmarks.js';
import type { PictureFailure } from './failure.js';
import type { CardPosition, FourCorners } from './features.js';
import type { RgbaImage } from './pixel-plane.js';
import { cameraFromFieldOfView } from './pinhole.js';
import { isWithin } from '../geometry/outline.js';
import { findPlanarPoses } from './planar-pose.js';
import { CARD_CORNERS_MM, REFERENCE_CARD } from './reference-card.js';

/** A fitted card with what speaks for it. */
export interface ScoredCard {
  readonly fitted: FittedCard;
  readonly residualPx: number;
  /** angle between the card's normal and the line of sight in the nearer of both poses */
  readonly tiltDeg: number;
  readonly score: number;
}

/** A field of view in the middle of those of webcams: the shape of a card hardly depends on it. */
const TYPICAL_FIELD_OF_VIEW_RAD = 1.15;
/** Below this score what was found is no card: four edges, half of each seen, reach it. Tuned on rendered pictures, with and without card. */
const LEAST_SCORE = 3;
/** Edges of cards scatter less about a straight line; foreheads framed by hair scatter by three times as much. Tuned likewise. */
const STRAIGHT_SCATTER_PX = 0.3;
/** Most tilt that is measured, degrees: a tenth of the width is lost to foreshortening there (cos 25 = 0.906). Chosen. */
export const TILT_LIMIT_DEG = 25;

/**
 * The best card by its four edges; candidates that overlap it are the same card, another that does not is a second one.
 *
 * @param isQuick in one frame of a running camera: with a tenth of the work, and a miss now and then
 */
export function findCardByEdges(image: RgbaImage, eyes: EyesSeed, isQuick = false): Result<ScoredCard, PictureFailure> {
  const scored = scoreCandidates(image, eyes, isQuick);
  const best = scored[0];
  if (best === undefined) return fail({ kind: 'no-card' });
  const softest = softestEdgePx(best.fitted.corners);
  if (best.fitted.edgeWidthPx > softest) {
    return fail({ kind: 'blurred', edgeWidthPx: best.fitted.edgeWidthPx, limitPx: softest });
  }
  if (best.score < LEAST_SCORE) return fail({ kind: 'no-card' });
  const second = scored.find((other) => other.score > Math.max(LEAST_SCORE, 0.7 * best.score) && !overlap(other, best));
  if (second !== undefined) return fail({ kind: 'several-cards' });
  return succeed(best);
}

/** Softest edge of a card that is measured; in focus it is three to four pixels wide. Chosen. */
const SOFTEST_EDGE_PX = 5;
const SOFTEST_EDGE_SHARE = 0.025;

/** Widest rise over the edges that a card of this size in the picture may show, px. */
export function softestEdgePx(corners: FourCorners<ImagePoint>): number {
  return Math.max(SOFTEST_EDGE_PX, SOFTEST_EDGE_SHARE * distancePx(corners[0], corners[1]));
}

/** Candidates that a quick search looks at more closely. Chosen. */
const QUICK_CANDIDATES = 4;

/** All cards that the edges speak for, best first. */
export function scoreCandidates(image: RgbaImage, eyes: EyesSeed, isQuick = false): ScoredCard[] {
  const candidates = isQuick ? searchCard(image, eyes, QUICK_CANDIDATES, QUICK_SEARCH) : searchCard(image, eyes, 8);
  const outlines = candidates.flatMap(({ corners }) =>
    isQuick ? proposeOutlines(image, corners, 1, FOLLOWING) : proposeOutlines(image, corners, 2),
  );
  const seen: FourCorners<ImagePoint>[] = [];
  const scored: ScoredCard[] = [];
  for (const outline of outlines) {
    const widthPx = distancePx(outline.corners[0], outline.corners[1]);
    const repeated = seen.some((other) =>
      other.every((corner, i) => distancePx(corner, outline.corners[i]!) < 0.012 * widthPx),
    );
    if (repeated) continue;
    seen.push(outline.corners);
    const fitted = fitCardEdges(image, outline.corners, [0.025, 0.012]);
    if (fitted === null) continue;
    const misfit = misfitOfProportions(fitted.corners);
    if (misfit === null) continue;
    const shape = shapeOfCard(image, fitted.corners);
    if (shape === null || shape.tiltDeg > TILT_LIMIT_DEG) continue;
    if (isWithin(fitted.corners, eyes.irisCentre.R) || isWithin(fitted.corners, eyes.irisCentre.L)) continue;
    const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
    const score =
      sum(fitted.support) +
      0.5 * Math.min(...fitted.support) +
      0.5 * sum(outline.coherence.map((value) => Math.min(value, 0.6))) -
      (150 * shape.residualPx) / widthPx -
      0.3 * outline.inside -
      0.4 * misfit -
      sizePenalty(fitted.corners, eyes) -
      2.5 * Math.max(0, median(fitted.scatterPx) / Math.max(1, widthPx / 250) - STRAIGHT_SCATTER_PX);
    scored.push({ fitted, ...shape, score });
  }
  return scored.sort((a, b) => b.score - a.score);
}

/** Pose of a card from its corners with a typical camera; null where the corners span no plane. */
export function shapeOfCard(
  image: { readonly widthPx: number; readonly heightPx: number },
  corners: FourCorners<ImagePoint>,
): { readonly residualPx: number; readonly tiltDeg: number } | null {
  const camera = cameraFromFieldOfView(image.widthPx, image.heightPx, TYPICAL_FIELD_OF_VIEW_RAD);
  const poses = findPlanarPoses(camera, CARD_CORNERS_MM, corners);
  if (!poses.ok) return null;
  const [best, other] = poses.value;
  const tilt = (rotation: typeof best.pose.rotation): number =>
    radiansToDegrees(Math.acos(Math.min(1, Math.abs(rotation[2][2]))));
  // From afar both poses fit alike; near by only one does, and the other's tilt says nothing.
  const either = other.residualPx < best.residualPx + 0.5;
  const tiltDeg = either ? Math.min(tilt(best.pose.rotation), tilt(other.pose.rotation)) : tilt(best.pose.rotation);
  return { residualPx: best.residualPx, tiltDeg };
}

/**
 * The distance between the eyes tells the size of the card to some 8 % (ANSUR II: PD 63.3 mm, sd 3.7; the card stands nearer
 * to the camera by a few per cent). A smaller rectangle is likely print inside the card; a larger one may be held by a child.
 */
function sizePenalty(corners: FourCorners<ImagePoint>, eyes: EyesSeed): number {
  const widthPx = (distancePx(corners[0], corners[1]) + distancePx(corners[3], corners[2])) / 2;
  const deviation = Math.log(widthPx / eyes.spanPx / (REFERENCE_CARD.widthMm / 61.5));
  const spread = deviation < 0 ? 0.08 : 0.16;
  return 0.12 * (deviation / spread) ** 2;
}

function overlap(a: ScoredCard, b: ScoredCard): boolean {
  const centre = (card: ScoredCard): ImagePoint => {
    const [p, , q] = card.fitted.corners;
    return { xPx: (p.xPx + q.xPx) / 2, yPx: (p.yPx + q.yPx) / 2 };
  };
  const heightPx = distancePx(b.fitted.corners[0], b.fitted.corners[3]);
  return distancePx(centre(a), centre(b)) < heightPx;
}

/**
 * Where on the face the card is held, from how far its top edge lies below the eyes: a card under the nose begins about 0.8 PD
 * below them, one on the chin about 1.35 PD (from the heights of subnasale and lower lip in contact-depth.json).
 */
export function positionOfCard(corners: FourCorners<ImagePoint>, eyes: EyesSeed): CardPosition {
  const downX = -Math.sin(eyes.rollRad);
  const downY = Math.cos(eyes.rollRad);
  const below = (point: ImagePoint): number =>
    ((point.xPx - eyes.middle.xPx) * downX + (point.yPx - eyes.middle.yPx) * downY) / eyes.spanPx;
  const centre = (below(corners[0]) + below(corners[2])) / 2;
  if (centre < 0) return 'forehead';
  return (below(corners[0]) + below(corners[1])) / 2 < 1.08 ? 'upper-lip' : 'chin';
}
