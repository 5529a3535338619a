import type { BoardFailure, BoardView } from '../core/camera/board.js';
import type { BoardPosition } from '../core/camera/profile-quality.js';
import {
  BOARD_POSITIONS,
  boardMovementPx,
  isNewView,
  judgeViews,
  nextPosition,
  positionsOf,
  WANTED_VIEWS,
} from '../core/camera/profile-quality.js';
import type { DeviceFailure } from './ports.js';

/** What becomes of a frame of the camera while views of the sheet are being taken. */
export type FrameVerdict =
  /** the sheet was not found in it */
  | 'no-sheet'
  /** the sheet moved since the frame before */
  | 'moving'
  /** a view like this one is there already */
  | 'nothing-new'
  /** a view worth taking, if it is sharp */
  | 'worth-taking';

/** Chosen, over the width of the picture: a sheet that moves by less between two frames is not smeared by more than a pixel. */
const STILL_SHARE = 0.003;

/**
 * What to do with a frame.
 *
 * @param frame the sheet in this frame, null where it was not found
 * @param before the sheet in the frame before
 * @param taken the views that were taken so far
 * @param skipped positions that are not asked for
 */
export function judgeFrame(
  frame: BoardView | null,
  before: BoardView | null,
  taken: readonly BoardView[],
  skipped: ReadonlySet<BoardPosition> = new Set(),
): FrameVerdict {
  if (frame === null) return 'no-sheet';
  if (taken.length > 0 && !addsSomething(frame, taken, skipped)) return 'nothing-new';
  if (before === null) return 'moving';
  const movedPx = boardMovementPx(before, frame);
  return movedPx !== null && movedPx < STILL_SHARE * frame.widthPx ? 'worth-taking' : 'moving';
}

/** Whether a view shows a position that none of the others shows, fills more of the frame, or comes when only the number is short. */
function addsSomething(frame: BoardView, taken: readonly BoardView[], skipped: ReadonlySet<BoardPosition>): boolean {
  const nearestPx = Math.min(...taken.map((view) => boardMovementPx(view, frame) ?? Infinity));
  const shown = new Set<BoardPosition>(taken.flatMap((view) => [...positionsOf(view)]));
  // A sheet that is tilted on the spot moves its corners by less than one that is carried elsewhere.
  if ([...positionsOf(frame)].some((position) => !shown.has(position))) return nearestPx > TILTED_SHARE * frame.widthPx;
  if (!isNewView(frame, taken)) return false;
  return (
    BOARD_POSITIONS.every((position) => shown.has(position) || skipped.has(position)) ||
    judgeViews([...taken, frame]).coverage - judgeViews(taken).coverage > NEW_COVERAGE
  );
}

/** Chosen, over the width of the picture: less than half of what a tilt of 17 degrees moves the corners of a sheet on the spot. */
const TILTED_SHARE = 0.004;

/** Chosen: three cells of the 48 of the coverage grid. */
const NEW_COVERAGE = 0.06;

/**
 * The views of the size that most of them have, in their order: pictures of another size were made by another camera, or cropped.
 * Of two sizes that are equally frequent the one that came first.
 */
export function viewsOfOneSize<View extends { readonly view: BoardView }>(views: readonly View[]): readonly View[] {
  const sizeOf = ({ view }: View): string => `${view.widthPx} ${view.heightPx}`;
  const counts = new Map<string, number>();
  for (const each of views) counts.set(sizeOf(each), (counts.get(sizeOf(each)) ?? 0) + 1);
  const most = Math.max(0, ...counts.values());
  const common = [...counts].find(([, count]) => count === most)?.[0];
  return views.filter((each) => sizeOf(each) === common);
}

/**
 * The position to ask for next; null where there is enough.
 *
 * @param skipped positions that the reader cannot take, in this room or with this camera
 */
export function askedPosition(
  views: readonly BoardView[],
  skipped: ReadonlySet<BoardPosition> = new Set(),
): BoardPosition | null {
  const next = nextPosition(views);
  if (next === null || !skipped.has(next)) return next;
  const shown = new Set<BoardPosition>(views.flatMap((view) => [...positionsOf(view)]));
  const left = BOARD_POSITIONS.find((position) => !shown.has(position) && !skipped.has(position));
  if (left !== undefined) return left;
  // All that can be shown was shown: any further view does, until there are enough of them.
  return views.length >= WANTED_VIEWS ? null : 'middle';
}

const BOARD_FAILURES: ReadonlySet<string> = new Set<BoardFailure['kind']>([
  'no-board',
  'too-few-views',
  'views-of-different-size',
  'views-too-alike',
  'profile-misfit',
]);

/** Whether something is wrong with the device, and not with what was before the camera. */
export function isOfDevice(failure: BoardFailure | DeviceFailure): failure is DeviceFailure {
  return !BOARD_FAILURES.has(failure.kind);
}
