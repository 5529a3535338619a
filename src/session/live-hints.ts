import type { LiveFace, LiveSight } from '../core/camera/live-sight.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { distancePx } from '../core/geometry/vector.js';
import type { BothSides } from '../core/units/side.js';
import { SIDES } from '../core/units/side.js';
import type { LiveProblem } from './live-problems.js';
import { livePixelsPerMm, liveProblems } from './live-problems.js';

/** The one thing to be told at a moment of a running camera. Facts; the screen writes the sentence. */
export type LiveHint =
  | LiveProblem
  | { readonly kind: 'hold-still' }
  /** nothing is wrong: the wearer looks where the picture wants it */
  | { readonly kind: 'look' }
  /** the picture is taken as soon as this has lasted */
  | { readonly kind: 'all-right' };

/** Another hint takes the place of the one that stands only when it has been the better one for so long. Chosen: a blink is shorter. */
export const RIVAL_MS = 400;

/** Chosen: what is not read within this long was not there. */
export const LEAST_SHOWN_MS = 1_200;

/** Where what stands holds no longer, but nothing else lasts either, the best of the moment takes its place. Chosen. */
const LONGEST_STALE_MS = 1_500;

/** All is right, and the eyes stand still, for so long before the picture is taken. */
export const STILL_MS = 800;

/** After such a gap between two frames nobody is known to have held still in between. Chosen: longer than any slow computer takes. */
const GAP_MS = 1_000;

/**
 * How fast the irises may go across the face, mm/s. Chosen: in little light a webcam exposes for 30 ms; at 20 mm/s an edge is smeared
 * over 0.6 mm then, about a pixel. Whoever sits still sways by less than half of that.
 */
const MOVES_FROM_MM_S = 20;
const STILL_FROM_MM_S = 12;

/** Speed is told over this long: the jitter of what is found in single frames is no motion. Chosen. */
const MOTION_MS = 180;

interface IrisesAt extends BothSides<ImagePoint> {
  readonly atMs: number;
}

/** What was seen up to now, as far as it matters for what is told. */
export interface LiveHints {
  /** null before anything lasted */
  readonly shown: LiveHint | null;
  readonly shownSinceMs: number;
  /** null while all is right and still as seen by the last frame, since when */
  readonly rightSinceMs: number | null;
  readonly lastMs: number | null;
  readonly problems: readonly LiveProblem[];
  readonly isMoving: boolean;
  /** what would be better told than what is shown, and since when */
  readonly rival: { readonly hint: LiveHint; readonly sinceMs: number } | null;
  /** since when what is shown is not the best thing to be told */
  readonly staleSinceMs: number | null;
  /** the wearer was told where to look since face and card are there */
  readonly hasLooked: boolean;
  /** where the irises were of late, the oldest first */
  readonly trail: readonly IrisesAt[];
}

export const NO_HINTS: LiveHints = {
  shown: null,
  shownSinceMs: 0,
  rightSinceMs: null,
  lastMs: null,
  problems: [],
  isMoving: false,
  rival: null,
  staleSinceMs: null,
  hasLooked: false,
  trail: [],
};

const HOLD_STILL: LiveHint = { kind: 'hold-still' };
const LOOK: LiveHint = { kind: 'look' };
const ALL_RIGHT: LiveHint = { kind: 'all-right' };

/** What is told after one more frame, taken at `atMs` on a clock that only goes forward. */
export function nextHints(before: LiveHints, sight: LiveSight, atMs: number): LiveHints {
  const isGap = before.lastMs === null || atMs - before.lastMs > GAP_MS;
  const problems = liveProblems(sight, before.problems);
  const trail = trailAfter(isGap ? [] : before.trail, sight.face, atMs);
  const isMoving = movesNow(trail, livePixelsPerMm(sight), before.isMoving);
  const best = bestHint(problems, isMoving, before.hasLooked && sight.estimate !== null);
  const isRight = problems.length === 0 && !isMoving && sight.estimate !== null;
  const told = tell(before, best, atMs);
  return {
    ...told,
    rightSinceMs: isRight ? (isGap ? atMs : (before.rightSinceMs ?? atMs)) : null,
    lastMs: atMs,
    problems,
    isMoving,
    hasLooked: hasLookedAfter(told.shown, before.hasLooked),
    trail,
  };
}

/** How much of the time is over, 0 to 1, that all must be right and still for: at 1 the picture is taken. */
export function stillShare({ shown, shownSinceMs, rightSinceMs, lastMs }: LiveHints): number {
  if (shown?.kind !== 'all-right' || rightSinceMs === null || lastMs === null) return 0;
  return Math.min(1, (lastMs - Math.max(rightSinceMs, shownSinceMs)) / STILL_MS);
}

function bestHint(problems: readonly LiveProblem[], isMoving: boolean, isReady: boolean): LiveHint {
  const [worst] = problems;
  // A picture is blurred because somebody moves, mostly: then only that is told.
  if (isMoving && (worst === undefined || isForStillness(worst))) return HOLD_STILL;
  return worst ?? (isReady ? ALL_RIGHT : LOOK);
}

function isForStillness({ kind }: LiveProblem): boolean {
  return kind === 'sharper' || kind === 'eyes-hidden' || kind === 'light-from-front';
}

function tell(
  before: LiveHints,
  best: LiveHint,
  atMs: number,
): Pick<LiveHints, 'shown' | 'shownSinceMs' | 'rival' | 'staleSinceMs'> {
  const { shown, shownSinceMs } = before;
  if (shown !== null && isSame(shown, best)) return { shown, shownSinceMs, rival: null, staleSinceMs: null };
  const rival = before.rival !== null && isSame(before.rival.hint, best) ? before.rival : { hint: best, sinceMs: atMs };
  const staleSinceMs = before.staleSinceMs ?? atMs;
  const lasts = atMs - rival.sinceMs >= RIVAL_MS || atMs - staleSinceMs >= LONGEST_STALE_MS;
  const mayGo = shown === null || atMs - shownSinceMs >= LEAST_SHOWN_MS;
  return lasts && mayGo
    ? { shown: best, shownSinceMs: atMs, rival: null, staleSinceMs: null }
    : { shown, shownSinceMs, rival, staleSinceMs };
}

/** Problems are the same objects from frame to frame. */
function isSame(one: LiveHint, other: LiveHint): boolean {
  return one === other;
}

function hasLookedAfter(shown: LiveHint | null, before: boolean): boolean {
  if (shown?.kind === 'look') return true;
  return before && shown?.kind !== 'no-face' && shown?.kind !== 'no-card';
}

function trailAfter(before: readonly IrisesAt[], face: LiveFace | null, atMs: number): readonly IrisesAt[] {
  if (face === null) return [];
  // One that is old enough is kept, so that there is always something to compare with.
  const start = before.findLastIndex((one) => atMs - one.atMs >= MOTION_MS);
  return [...before.slice(Math.max(0, start)), { atMs, R: face.iris.R.centre, L: face.iris.L.centre }];
}

/** Before there is anything to compare with, nobody is known to hold still. */
function movesNow(trail: readonly IrisesAt[], pixelsPerMm: number | null, before: boolean): boolean {
  const [first, last] = [trail[0], trail.at(-1)];
  if (first === undefined || last === undefined || first === last || pixelsPerMm === null) return true;
  const movedPx = Math.max(...SIDES.map((side) => distancePx(first[side], last[side])));
  const mmPerSecond = (1000 * movedPx) / pixelsPerMm / (last.atMs - first.atMs);
  return mmPerSecond > (before ? STILL_FROM_MM_S : MOVES_FROM_MM_S);
}
