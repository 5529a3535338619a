import { toCamera } from '../geometry/pose.js';
import { distancePx } from '../geometry/vector.js';
import { degreesToRadians, radiansToDegrees } from '../units/angle.js';
import { BOARD, type BoardView } from './board.js';
import { findBoardPose } from './board-pose.js';
import type { CameraProfile } from './camera-profile.js';
import { cameraFromFieldOfView, project, type Camera } from './pinhole.js';

/**
 * The positions that a page asks for, in this order. Sides are sides of the picture as the camera delivers it: a page that
 * shows the picture mirrored has to swap left and right in what it says. One view can show several of them.
 */
export const BOARD_POSITIONS = [
  /** the whole sheet near the middle of the picture */
  'middle',
  /** near enough to fill about half of the width of the picture */
  'nearer',
  /** so far away that it fills about a quarter of the width of the picture */
  'farther',
  /** some corner of the pattern in that corner of the picture; part of the sheet may be out of the picture */
  'left-top',
  'right-top',
  'right-bottom',
  'left-bottom',
  /** that side of the sheet, as the picture shows it, nearer to the camera than the opposite one */
  'tilted-left',
  'tilted-right',
  'tilted-top',
  'tilted-bottom',
  /** turned in its own plane by about a quarter, so that its long side stands upright */
  'upright',
] as const;

export type BoardPosition = (typeof BOARD_POSITIONS)[number];

/** How the sheet lies in one picture, as far as it can be told while the camera is only assumed. */
export interface BoardPlacement {
  /**
   * slope of the sheet against the picture plane from left to right, degrees: positive where its left side is nearer to the
   * camera, negative where its right side is
   */
  readonly tiltAcrossDeg: number;
  /** the same from top to bottom, degrees: positive where its top, as the picture shows it, is nearer to the camera */
  readonly tiltDownDeg: number;
  /** turn of the sheet in the picture, degrees clockwise, -180 to 180; 0 where its long side lies level and its top is up */
  readonly turnDeg: number;
  /** how long the sheet's long side would be in the middle of the picture, flat at this distance, over the picture's width */
  readonly sizeShare: number;
  /** middle of the sheet in the picture, which may lie outside of it, over its width and height: 0 left or top, 1 right or bottom */
  readonly middle: { readonly xShare: number; readonly yShare: number };
}

/** The four corner regions of the picture. */
export type FrameCorner = 'left-top' | 'right-top' | 'right-bottom' | 'left-bottom';

/**
 * What is weak about a set of views, or about the profile made from it. The profile can be used all the same; its uncertainty
 * says how well. Each kind names the facts, and what was wanted.
 */
export type ProfileWeakness =
  /** take more */
  | { readonly kind: 'few-views'; readonly views: number; readonly wanted: number }
  /** take views with the sheet all over the picture */
  | { readonly kind: 'little-coverage'; readonly coverage: number; readonly wanted: number }
  /** the lens is only guessed in these corners of the picture: take views with the sheet there */
  | { readonly kind: 'corners-uncovered'; readonly corners: readonly FrameCorner[] }
  /** the sheet was tilted too little about one axis, or always to one side: focal length and distance are hard to tell apart */
  | {
      readonly kind: 'little-tilt';
      /** `across`: left or right side nearer; `down`: top or bottom nearer */
      readonly direction: 'across' | 'down';
      /** from the most tilted to one side to the most tilted to the other, degrees */
      readonly spreadDeg: number;
      readonly wantedDeg: number;
    }
  /** all views from about one distance: take nearer and farther ones; the ratio is farthest over nearest */
  | { readonly kind: 'one-distance'; readonly ratio: number; readonly wanted: number }
  /** of a finished profile: the focal length is known worse than wanted; one standard deviation over the focal length */
  | { readonly kind: 'focal-length-doubtful'; readonly relativeUncertainty: number; readonly wanted: number }
  /**
   * of a finished profile: the corners fit worse than those of a flat sheet before one camera do: it is bent, or moved while it
   * was taken, or the pictures are of more than one camera or zoom
   */
  | { readonly kind: 'poor-fit'; readonly rmsPx: number; readonly wantedPx: number };

/** How well a set of views will serve to make a profile. */
export interface ViewSetQuality {
  readonly viewCount: number;
  /** share of the cells of `COVERAGE_GRID` in which some view has a corner of the sheet's pattern, 0 to 1 */
  readonly coverage: number;
  /** for each cell, row by row from the left top, whether some view has a corner of the pattern in it */
  readonly coveredCells: readonly boolean[];
  /** largest less smallest slope of the sheet from left to right, degrees; 0 for one view or none */
  readonly tiltAcrossSpreadDeg: number;
  /** the same from top to bottom */
  readonly tiltDownSpreadDeg: number;
  /** largest and smallest of `BoardPlacement.sizeShare` (nearest and farthest view); null without views */
  readonly nearestSizeShare: number | null;
  readonly farthestSizeShare: number | null;
  /** empty where nothing is left to be wished for */
  readonly weaknesses: readonly ProfileWeakness[];
}

/** The grid over the picture on which coverage is counted. Chosen: cells about as large as a hand-held sheet's half. */
export const COVERAGE_GRID = { columns: 8, rows: 6 } as const;

/** Below this number of views no profile is made. Chosen: three would do in theory (Zhang 2000), with nothing to check them. */
export const LEAST_VIEWS = 6;

/** Chosen: from eight views on, every focal length of our test pictures came out within half a percent. */
export const WANTED_VIEWS = 8;

/** Chosen: more views than this add nothing but time; the worker refuses them. */
export const MOST_VIEWS = 40;

/** Below this number of corners a view is refused. Chosen: a quarter of the sheet; four would do in theory. */
export const LEAST_CORNERS = 6;

/** Chosen, as all limits here: what a dozen positions by hand reach without trouble. */
const WANTED_COVERAGE = 0.6;
const WANTED_TILT_SPREAD_DEG = 35;
const WANTED_DISTANCE_RATIO = 1.3;
const WANTED_FOCAL_RELATIVE_UNCERTAINTY = 0.003;

const NEAR_SIZE_SHARE = 0.43;
const FAR_SIZE_SHARE = 0.31;
const TILTED_DEG = 17;
const CORNER_SHARE = 0.22;

/** Chosen: a webcam in the middle of what is sold. The slopes that are told with it are off by a tenth of themselves or so. */
const ASSUMED_FIELD_OF_VIEW_RAD = degreesToRadians(66);

/**
 * How the sheet lies in a picture.
 *
 * @param camera the profile of the camera where there is one already; without it a usual webcam is assumed
 * @returns null where too few corners were found, or all in line
 */
export function findBoardPlacement(view: BoardView, camera: Camera | null = null): BoardPlacement | null {
  const lens = camera ?? cameraFromFieldOfView(view.widthPx, view.heightPx, ASSUMED_FIELD_OF_VIEW_RAD);
  const pose = findBoardPose(lens, view.corners);
  if (pose === null) return null;
  const [[xx, , xz], [yx, , yz], [, , zz]] = pose.rotation;
  const middleMm = toCamera(pose, [(BOARD.columns * BOARD.squareMm) / 2, (BOARD.rows * BOARD.squareMm) / 2, 0]);
  if (!(middleMm[2] > 0) || !(zz > 0)) return null;
  const middle = project(lens, middleMm);
  return {
    // the sheet is the plane n x = d with n the third column: depth grows by -nx / nz to the right and -ny / nz downwards
    tiltAcrossDeg: radiansToDegrees(Math.atan2(-xz, zz)),
    tiltDownDeg: radiansToDegrees(Math.atan2(-yz, zz)),
    turnDeg: radiansToDegrees(Math.atan2(yx, xx)),
    sizeShare: (BOARD.columns * BOARD.squareMm * lens.fx) / middleMm[2] / view.widthPx,
    middle: { xShare: middle.xPx / view.widthPx, yShare: middle.yPx / view.heightPx },
  };
}

/** The positions that a view shows; none where too little of the sheet was found. */
export function positionsOf(view: BoardView, camera: Camera | null = null): ReadonlySet<BoardPosition> {
  const positions = new Set<BoardPosition>();
  const placement = findBoardPlacement(view, camera);
  if (placement === null || view.corners.length < LEAST_CORNERS) return positions;
  const { tiltAcrossDeg, tiltDownDeg, turnDeg, sizeShare, middle } = placement;
  if (Math.abs(middle.xShare - 0.5) < 0.17 && Math.abs(middle.yShare - 0.5) < 0.17) positions.add('middle');
  if (sizeShare > NEAR_SIZE_SHARE) positions.add('nearer');
  if (sizeShare < FAR_SIZE_SHARE) positions.add('farther');
  for (const corner of cornersReached(view)) positions.add(corner);
  if (tiltAcrossDeg > TILTED_DEG) positions.add('tilted-left');
  if (tiltAcrossDeg < -TILTED_DEG) positions.add('tilted-right');
  if (tiltDownDeg > TILTED_DEG) positions.add('tilted-top');
  if (tiltDownDeg < -TILTED_DEG) positions.add('tilted-bottom');
  if (Math.abs(Math.abs(turnDeg) - 90) < 35) positions.add('upright');
  return positions;
}

/**
 * The position that a page asks for next; null where all were shown by views enough. Once all were shown by too few views, the
 * tilts are asked for again.
 */
export function nextPosition(views: readonly BoardView[]): BoardPosition | null {
  const shown = new Set(views.flatMap((view) => [...positionsOf(view)]));
  const missing = BOARD_POSITIONS.find((position) => !shown.has(position));
  if (missing !== undefined) return missing;
  if (views.length >= WANTED_VIEWS) return null;
  const tilts = BOARD_POSITIONS.filter((position) => position.startsWith('tilted'));
  return tilts[views.length % tilts.length] ?? null;
}

/**
 * How far the sheet moved between two views, px: mean distance of the corners that both have; null where they share none.
 * Small between two frames in a row means that the sheet is held still; small between two views means that the later one tells
 * nothing new.
 */
export function boardMovementPx(a: BoardView, b: BoardView): number | null {
  const places = new Map(a.corners.map((corner) => [corner.index, corner]));
  let [sum, count] = [0, 0];
  for (const corner of b.corners) {
    const before = places.get(corner.index);
    if (before === undefined) continue;
    sum += distancePx(corner, before);
    count += 1;
  }
  return count === 0 ? null : sum / count;
}

/** Chosen: a twentieth of the picture's width; less than that is no other position. */
const NEW_VIEW_SHARE = 0.05;

/** Whether a view differs from all earlier ones by enough to tell something new. */
export function isNewView(view: BoardView, earlier: readonly BoardView[]): boolean {
  return earlier.every((each) => (boardMovementPx(each, view) ?? Infinity) > NEW_VIEW_SHARE * view.widthPx);
}

/** What a set of views covers and lacks. */
export function judgeViews(views: readonly BoardView[], camera: Camera | null = null): ViewSetQuality {
  const coveredCells = cellsCovered(views);
  const coverage = coveredCells.filter(Boolean).length / coveredCells.length;
  const placements = views.flatMap((view) => findBoardPlacement(view, camera) ?? []);
  const tiltAcrossSpreadDeg = spread(placements.map(({ tiltAcrossDeg }) => tiltAcrossDeg));
  const tiltDownSpreadDeg = spread(placements.map(({ tiltDownDeg }) => tiltDownDeg));
  const sizes = placements.map(({ sizeShare }) => sizeShare);
  const [nearest, farthest] = sizes.length === 0 ? [null, null] : [Math.max(...sizes), Math.min(...sizes)];

  const weaknesses: ProfileWeakness[] = [];
  if (views.length < WANTED_VIEWS) weaknesses.push({ kind: 'few-views', views: views.length, wanted: WANTED_VIEWS });
  if (coverage < WANTED_COVERAGE) weaknesses.push({ kind: 'little-coverage', coverage, wanted: WANTED_COVERAGE });
  const reached = new Set(views.flatMap(cornersReached));
  const corners = FRAME_CORNERS.filter((corner) => !reached.has(corner));
  if (corners.length > 0) weaknesses.push({ kind: 'corners-uncovered', corners });
  for (const [direction, spreadDeg] of [
    ['across', tiltAcrossSpreadDeg],
    ['down', tiltDownSpreadDeg],
  ] as const) {
    if (spreadDeg < WANTED_TILT_SPREAD_DEG) {
      weaknesses.push({ kind: 'little-tilt', direction, spreadDeg, wantedDeg: WANTED_TILT_SPREAD_DEG });
    }
  }
  const ratio = nearest === null || farthest === null ? 1 : nearest / farthest;
  if (ratio < WANTED_DISTANCE_RATIO) weaknesses.push({ kind: 'one-distance', ratio, wanted: WANTED_DISTANCE_RATIO });
  return {
    viewCount: views.length,
    coverage,
    coveredCells,
    tiltAcrossSpreadDeg,
    tiltDownSpreadDeg,
    nearestSizeShare: nearest,
    farthestSizeShare: farthest,
    weaknesses,
  };
}

/**
 * How well corners have to fit, root mean square in px. Drawn and rendered sets by one camera leave 0.03 to 0.05 px; two cameras
 * whose focal lengths differ by 5, 10 and 20 percent left 0.12, 0.24 and 0.46 px at a width of 1280. Chosen: up to `goodPx` the
 * corners err each by itself, beyond `wantedPx` the fit is named as weak, and beyond `mostPx` there is no profile. All grow with
 * the width of the picture, since blur and the bend of a sheet do; below 640 px the finder's own noise is left.
 */
export function fitLimits(widthPx: number): {
  readonly goodPx: number;
  readonly wantedPx: number;
  readonly mostPx: number;
} {
  const scale = Math.max(0.5, widthPx / 1280);
  return { goodPx: 0.11 * scale, wantedPx: 0.25 * scale, mostPx: 0.6 * scale };
}

/** What is weak about a finished profile by its own numbers. What its views lacked is told by `judgeViews`. */
export function weaknessesOfProfile(profile: CameraProfile): readonly ProfileWeakness[] {
  const weaknesses: ProfileWeakness[] = [];
  const { fx, fy, uncertainty, rmsPx, widthPx } = profile;
  const relativeUncertainty = Math.max(uncertainty.fx / fx, uncertainty.fy / fy);
  if (relativeUncertainty > WANTED_FOCAL_RELATIVE_UNCERTAINTY) {
    weaknesses.push({ kind: 'focal-length-doubtful', relativeUncertainty, wanted: WANTED_FOCAL_RELATIVE_UNCERTAINTY });
  }
  const { wantedPx } = fitLimits(widthPx);
  if (rmsPx > wantedPx) weaknesses.push({ kind: 'poor-fit', rmsPx, wantedPx });
  return weaknesses;
}

const FRAME_CORNERS: readonly FrameCorner[] = ['left-top', 'right-top', 'right-bottom', 'left-bottom'];

function cornersReached({ widthPx, heightPx, corners }: BoardView): readonly FrameCorner[] {
  const reach = (test: (xShare: number, yShare: number) => boolean) =>
    corners.some(({ xPx, yPx }) => test(xPx / widthPx, yPx / heightPx));
  const [low, high] = [CORNER_SHARE, 1 - CORNER_SHARE];
  return FRAME_CORNERS.filter((corner) => {
    switch (corner) {
      case 'left-top':
        return reach((x, y) => x < low && y < low);
      case 'right-top':
        return reach((x, y) => x > high && y < low);
      case 'right-bottom':
        return reach((x, y) => x > high && y > high);
      case 'left-bottom':
        return reach((x, y) => x < low && y > high);
    }
  });
}

function cellsCovered(views: readonly BoardView[]): readonly boolean[] {
  const { columns, rows } = COVERAGE_GRID;
  const covered = new Array<boolean>(columns * rows).fill(false);
  for (const { widthPx, heightPx, corners } of views) {
    for (const { xPx, yPx } of corners) {
      const column = Math.floor((xPx / widthPx) * columns);
      const row = Math.floor((yPx / heightPx) * rows);
      if (column >= 0 && row >= 0 && column < columns && row < rows) covered[row * columns + column] = true;
    }
  }
  return covered;
}

function spread(values: readonly number[]): number {
  return values.length === 0 ? 0 : Math.max(...values) - Math.min(...values);
}
