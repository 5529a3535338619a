import type { LiveCard, LiveFace, LiveSight } from '../core/camera/live-sight.js';
import { softestEdgePx, TILT_LIMIT_DEG } from '../core/camera/find-card.js';
import {
  CLOSED_SHARE,
  DARKEST_WHITE,
  NOD_LIMIT_DEG,
  SEEN_SHARE_ADVICE,
  SLANT_ADVICE_DEG,
  softestIrisPx,
  TURN_ADVICE_DEG,
  TYPICAL_IRIS_MM,
} from '../core/camera/picture-limits.js';
import { NEAR_ENOUGH_PIXELS_PER_MM } from '../core/estimate/face-estimates.js';
import type { Side } from '../core/units/side.js';
import { SIDES } from '../core/units/side.js';

/** An edge of the card as the unmirrored picture shows it. */
export type CardEdge = 'top' | 'right' | 'bottom' | 'left';

/** What keeps a picture of this moment from being a good one. Sides are the wearer's. */
export type LiveProblem =
  | { readonly kind: 'no-face' }
  | { readonly kind: 'more-light' }
  | { readonly kind: 'farther' }
  | { readonly kind: 'into-frame' }
  | { readonly kind: 'nearer' }
  | { readonly kind: 'no-card' }
  | { readonly kind: 'face-turned'; readonly back: Side }
  | { readonly kind: 'chin'; readonly move: 'up' | 'down' }
  | { readonly kind: 'card-leans' }
  | { readonly kind: 'card-level'; readonly raise: Side }
  | { readonly kind: 'card-hidden'; readonly edge: CardEdge }
  | { readonly kind: 'eyes-closed'; readonly side: Side }
  /** the picture is blurred although nobody moves */
  | { readonly kind: 'sharper' }
  /** the eyes are open and the picture is sharp, yet the edge of an iris is not seen */
  | { readonly kind: 'eyes-hidden' }
  | { readonly kind: 'light-from-front'; readonly darker: Side };

interface Judged {
  readonly problem: LiveProblem;
  /** how bad it is, where 1 is what the measuring refuses or advises against; null where it cannot be told */
  readonly badness: (sight: LiveSight) => number | null;
  /** the problem is there from this badness on ... */
  readonly comes: number;
  /** ... and until it has fallen to this one */
  readonly goes: number;
}

/** Nearer than this the eyes turn in too far, and a webcam is wide enough to show it. Chosen. */
const NEAREST_MM = 280;
/** A face that fills more than this of the frame leaves no room for the card. Chosen. */
const LARGEST_SHARE = 0.85;
/** Nothing of face and card may come nearer to the edge of the frame than this, as a share of its short side. Chosen. */
const RIM_SHARE = 0.01;
/** One half of the face is lit so many times more than the other: the iris edge drowns in the dark one. Chosen. */
const UNEVEN_RATIO = 2;

const EDGES: readonly CardEdge[] = ['top', 'right', 'bottom', 'left'];

/**
 * All problems, the most useful one to be told first. What is told before the picture is taken begins a little before the
 * measuring would refuse, since angles and widths in a running picture are only rough.
 */
const JUDGED: readonly Judged[] = [
  { problem: { kind: 'no-face' }, badness: ({ face }) => Number(face === null), comes: 1, goes: 0 },
  ofFace({ kind: 'more-light' }, 0.8, 0.65, ({ whiteLevel }) => DARKEST_WHITE / Math.max(1, whiteLevel)),
  { problem: { kind: 'farther' }, badness: tooLarge, comes: 1, goes: 0.92 },
  { problem: { kind: 'into-frame' }, badness: outOfFrame, comes: 1, goes: 0 },
  { problem: { kind: 'nearer' }, badness: tooSmall, comes: 1, goes: 0.94 },
  {
    problem: { kind: 'no-card' },
    badness: ({ face, card }) => Number(face !== null && card === null),
    comes: 1,
    goes: 0,
  },
  ...SIDES.map((back) =>
    // Turned to the left, the face comes back to the right.
    ofFace({ kind: 'face-turned', back }, 1.15, 0.8, ({ yawDeg }) => signed(yawDeg, back === 'R') / TURN_ADVICE_DEG),
  ),
  ...(['up', 'down'] as const).map((move) =>
    ofFace({ kind: 'chin', move }, 0.75, 0.6, ({ nodDeg }) => signed(nodDeg, move === 'up') / NOD_LIMIT_DEG),
  ),
  ofCard({ kind: 'card-leans' }, 0.85, 0.72, ({ tiltDeg }) => (tiltDeg ?? 0) / TILT_LIMIT_DEG),
  ...SIDES.map((raise) =>
    ofCard(
      { kind: 'card-level', raise },
      1,
      0.75,
      ({ slantDeg }) => signed(slantDeg, raise === 'L') / SLANT_ADVICE_DEG,
    ),
  ),
  ...EDGES.map((edge, index) =>
    ofCard(
      { kind: 'card-hidden', edge },
      1,
      0.8,
      ({ edgeSupport }) => (1 - (edgeSupport[index] ?? 1)) / (1 - SEEN_SHARE_ADVICE),
    ),
  ),
  ...SIDES.map((side) =>
    ofFace({ kind: 'eyes-closed', side }, 1, 0.85, ({ opening }) => CLOSED_SHARE / Math.max(0.01, opening[side])),
  ),
  { problem: { kind: 'sharper' }, badness: blur, comes: 0.95, goes: 0.8 },
  ofFace({ kind: 'eyes-hidden' }, 1, 0, ({ iris }) => Number(SIDES.some((side) => iris[side].source === 'landmarks'))),
  ...SIDES.map((darker) =>
    ofFace(
      { kind: 'light-from-front', darker },
      1,
      0.85,
      ({ lightRatio }) => (darker === 'L' ? lightRatio : 1 / Math.max(0.01, lightRatio)) / UNEVEN_RATIO,
    ),
  ),
];

/**
 * What is wrong with this frame, the most useful thing to be told first.
 *
 * @param before what was wrong with the frame before: a problem goes later than it comes
 */
export function liveProblems(sight: LiveSight, before: readonly LiveProblem[]): readonly LiveProblem[] {
  return JUDGED.flatMap(({ problem, badness, comes, goes }) => {
    const bad = badness(sight);
    if (bad === null) return [];
    return bad >= comes || (bad > goes && before.includes(problem)) ? [problem] : [];
  });
}

/** Pixels per millimetre at the eyes: of the estimate, or by the size of the irises where there is none. */
export function livePixelsPerMm({ face, estimate }: LiveSight): number | null {
  if (estimate !== null) return estimate.pixelsPerMm;
  return face === null ? null : (face.iris.R.radiusPx + face.iris.L.radiusPx) / TYPICAL_IRIS_MM;
}

function ofFace(problem: LiveProblem, comes: number, goes: number, badness: (face: LiveFace) => number): Judged {
  return { problem, comes, goes, badness: ({ face }) => (face === null ? null : badness(face)) };
}

/** A card beside no face is on its way to one, or away from it. */
function ofCard(problem: LiveProblem, comes: number, goes: number, badness: (card: LiveCard) => number): Judged {
  return { problem, comes, goes, badness: ({ face, card }) => (face === null || card === null ? null : badness(card)) };
}

function signed(value: number, isPositive: boolean): number {
  return isPositive ? value : -value;
}

function tooSmall(sight: LiveSight): number | null {
  const pixelsPerMm = livePixelsPerMm(sight);
  return pixelsPerMm === null ? null : NEAR_ENOUGH_PIXELS_PER_MM / Math.max(0.01, pixelsPerMm);
}

function tooLarge({ face, estimate, widthPx, heightPx }: LiveSight): number | null {
  if (face === null) return null;
  const share = Math.max(face.bounds.widthPx / widthPx, face.bounds.heightPx / heightPx) / LARGEST_SHARE;
  return estimate === null ? share : Math.max(share, NEAREST_MM / estimate.distanceMm);
}

/** 1 at the rim, 0 at four times its width from the edge of the frame. */
function outOfFrame({ face, card, widthPx, heightPx }: LiveSight): number | null {
  if (face === null) return null;
  const { leftPx, topPx } = face.bounds;
  const corners = card?.corners ?? [];
  const insidePx = Math.min(
    leftPx,
    topPx,
    widthPx - leftPx - face.bounds.widthPx,
    heightPx - topPx - face.bounds.heightPx,
    ...corners.flatMap(({ xPx, yPx }) => [xPx, yPx, widthPx - xPx, heightPx - yPx]),
  );
  const rimPx = RIM_SHARE * Math.min(widthPx, heightPx);
  return (4 * rimPx - insidePx) / (3 * rimPx);
}

function blur({ face, card }: LiveSight): number | null {
  const irises = face === null ? [] : SIDES.map((side) => face.iris[side]);
  const widths = [
    ...irises.flatMap(({ softness, radiusPx }) =>
      softness === null ? [] : [(softness * radiusPx) / softestIrisPx(radiusPx)],
    ),
    ...(card === null ? [] : [card.edgeWidthPx / softestEdgePx(card.corners)]),
  ];
  return widths.length === 0 ? null : Math.max(...widths);
}
