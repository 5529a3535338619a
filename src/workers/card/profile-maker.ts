import type { BoardCorner, BoardFailure, BoardView } from '../../core/camera/board.js';
import { boardCornerMm } from '../../core/camera/board.js';
import type { CameraProfile, IntrinsicsUncertainty } from '../../core/camera/camera-profile.js';
import type { Camera, Distortion } from '../../core/camera/pinhole.js';
import { cameraFromFieldOfView, project } from '../../core/camera/pinhole.js';
import type { ViewSetQuality } from '../../core/camera/profile-quality.js';
import { fitLimits, judgeViews, LEAST_VIEWS } from '../../core/camera/profile-quality.js';
import type { Pose } from '../../core/geometry/pose.js';
import { toCamera } from '../../core/geometry/pose.js';
import { rotationFromVector } from '../../core/geometry/rotation.js';
import type { Result } from '../../core/result.js';
import { fail, succeed } from '../../core/result.js';
import { degreesToRadians } from '../../core/units/angle.js';
import { onHeap } from './on-heap.js';
import type { CvMat, CvMatVector, OpenCv } from './open-cv.js';

/** Makes a camera profile from views of the sheet. */
export type ProfileMaker = (views: readonly BoardView[]) => Result<CameraProfile, BoardFailure>;

/** Corners of any flat object and where one picture shows them. */
export interface CalibrationView {
  readonly corners: readonly {
    /** on the object's plane, in any unit of length */
    readonly on: { readonly x: number; readonly y: number };
    readonly xPx: number;
    readonly yPx: number;
  }[];
}

/** Which coefficients of distortion are estimated besides k1; those that are not are held at zero. */
export interface FreedCoefficients {
  readonly k2: boolean;
  /** p1 and p2 */
  readonly tangential: boolean;
  readonly k3: boolean;
}

/** What an adjustment of camera and poses found. */
export interface Calibration {
  readonly camera: Camera;
  readonly uncertainty: IntrinsicsUncertainty;
  readonly rmsPx: number;
  /** of each view */
  readonly poses: readonly Pose[];
}

/** Chosen: a profile that knows the focal length no better helps no more than the usual field of view does. */
const MOST_FOCAL_RELATIVE_UNCERTAINTY = 0.02;

/**
 * Chosen: what lenses of webcams and phones stay within. Where the views know a coefficient worse than this, and it does not
 * stand out from its doubt, holding it at zero says more than they do.
 */
const USUAL_K2 = 0.1;
const USUAL_TANGENTIAL = 0.003;

/** Chosen: a coefficient this many standard deviations from zero is there. */
const STANDS_OUT = 3;

/** Chosen: a corner this many robust standard deviations off was found wrongly, but none within a quarter of a pixel is. */
const MOST_RESIDUAL = 5;
const LEAST_OUTLIER_PX = 0.25;

/** Any start will do that is not absurd: the adjustment came to the same end for lenses of 18 to 122 degrees. */
const START_FIELD_OF_VIEW_RAD = degreesToRadians(66);

/**
 * Makes the maker of profiles. The camera's four intrinsics and k1 are always estimated, k2, p1 and p2 unless the views know
 * nothing of them, k3 only where the views show it: a lens of a webcam has little of it, and freed for nothing it
 * takes the certainty from the others. Corners that stand out of a first adjustment are left out of the second. Where the fit is
 * not as good as one camera's before a flat sheet, the doubt allows for what is wrong with a view as a whole.
 * Throws only if OpenCV does for another reason than that the views are too alike.
 */
export function createProfileMaker(cv: OpenCv): ProfileMaker {
  return (views) => {
    const [first] = views;
    if (first === undefined || views.length < LEAST_VIEWS) {
      return fail({ kind: 'too-few-views', views: views.length, viewsNeeded: LEAST_VIEWS });
    }
    const { widthPx, heightPx } = first;
    if (views.some((view) => view.widthPx !== widthPx || view.heightPx !== heightPx)) {
      return fail({ kind: 'views-of-different-size' });
    }
    const size = { widthPx, heightPx };
    const all = views.map(({ corners }) => ({ corners: corners.map(onSheet) }));
    const rough = calibrate(cv, all, size, { k2: true, tangential: true, k3: false });
    if (rough === null) return fail({ kind: 'views-too-alike' });
    const kept = withoutOutliers(all, rough);
    const found = calibrateByTheData(cv, kept, size, cornerCount(kept) === cornerCount(all) ? rough : undefined);
    if (found === null) return fail({ kind: 'views-too-alike' });
    const { camera, rmsPx } = found;
    // from views without tilt OpenCV comes to any end, and is sure of it
    const isTilted = !hasLittleTilt(judgeViews(views, camera));
    const { goodPx, mostPx } = fitLimits(widthPx);
    // of all corners: those that were left out may be too many to be slips
    if (Math.max(rmsPx, rough.rmsPx / 2) > mostPx)
      return fail({ kind: 'profile-misfit', rmsPx: rough.rmsPx, limitPx: mostPx });
    const isKnown = ({ fx, fy }: IntrinsicsUncertainty): boolean =>
      Math.max(fx / camera.fx, fy / camera.fy) < MOST_FOCAL_RELATIVE_UNCERTAINTY;
    if (!isTilted || !isKnown(found.uncertainty)) return fail({ kind: 'views-too-alike' });
    const uncertainty = rmsPx > goodPx ? uncertaintyOfViews(cv, kept, size, found) : found.uncertainty;
    // the views contradict each other
    if (!isKnown(uncertainty)) return fail({ kind: 'profile-misfit', rmsPx, limitPx: goodPx });
    return succeed({ ...camera, ...size, uncertainty, rmsPx, viewCount: kept.length });
  };
}

/** Chosen: a sheet that is meant to be held straight is not held straighter than this. */
const LEAST_TILT_SPREAD_DEG = 20;

/** Whether the sheet hardly changed its slope in either direction, so that focal length and distance cannot be told apart. */
function hasLittleTilt({ tiltAcrossSpreadDeg, tiltDownSpreadDeg }: ViewSetQuality): boolean {
  return Math.max(tiltAcrossSpreadDeg, tiltDownSpreadDeg) < LEAST_TILT_SPREAD_DEG;
}

function onSheet({ index, xPx, yPx }: BoardCorner): CalibrationView['corners'][number] {
  const { xMm, yMm } = boardCornerMm(index);
  return { on: { x: xMm, y: yMm }, xPx, yPx };
}

function cornerCount(views: readonly CalibrationView[]): number {
  return views.reduce((sum, { corners }) => sum + corners.length, 0);
}

/**
 * The adjustment with those coefficients of distortion that the views know something of; null where `calibrate` gives null.
 *
 * @param usual the adjustment of the same views with k2, p1 and p2 freed, where that was made already
 */
export function calibrateByTheData(
  cv: OpenCv,
  views: readonly CalibrationView[],
  size: { readonly widthPx: number; readonly heightPx: number },
  usual: Calibration | null = calibrate(cv, views, size, { k2: true, tangential: true, k3: false }),
): Calibration | null {
  if (usual === null) return null;
  const isKnown = (index: 1 | 2 | 3, usualSize: number) => {
    const doubt = usual.uncertainty.distortion[index];
    return doubt < usualSize || Math.abs(usual.camera.distortion[index]) > STANDS_OUT * doubt;
  };
  const k2 = isKnown(1, USUAL_K2);
  const tangential = isKnown(2, USUAL_TANGENTIAL) || isKnown(3, USUAL_TANGENTIAL);
  if (!k2 || !tangential) return calibrate(cv, views, size, { k2, tangential, k3: false }) ?? usual;
  const whole = calibrate(cv, views, size, { k2, tangential, k3: true });
  if (whole === null) return usual;
  return Math.abs(whole.camera.distortion[4]) > STANDS_OUT * whole.uncertainty.distortion[4] ? whole : usual;
}

/**
 * One adjustment of camera and poses by OpenCV (Zhang 2000), in the pixels of the corners.
 *
 * @returns null where the system breaks down: views all alike, or too few corners
 */
export function calibrate(
  cv: OpenCv,
  views: readonly CalibrationView[],
  size: { readonly widthPx: number; readonly heightPx: number },
  freed: FreedCoefficients,
): Calibration | null {
  try {
    return onHeap((own) => {
      const objectPoints = own(new cv.MatVector());
      const imagePoints = own(new cv.MatVector());
      for (const { corners } of views) {
        const on = own(new cv.Mat(corners.length, 1, cv.CV_32FC3));
        const seen = own(new cv.Mat(corners.length, 1, cv.CV_32FC2));
        corners.forEach((corner, row) => {
          on.data32F.set([corner.on.x, corner.on.y, 0], 3 * row);
          seen.data32F.set([corner.xPx, corner.yPx], 2 * row);
        });
        objectPoints.push_back(on);
        imagePoints.push_back(seen);
      }
      const matrix = own(new cv.Mat(3, 3, cv.CV_64F));
      const start = cameraFromFieldOfView(size.widthPx, size.heightPx, START_FIELD_OF_VIEW_RAD);
      matrix.data64F.set([start.fx, 0, start.cx, 0, start.fy, start.cy, 0, 0, 1]);
      const distortion = own(new cv.Mat(5, 1, cv.CV_64F));
      distortion.data64F.fill(0);
      const rotations = own(new cv.MatVector());
      const translations = own(new cv.MatVector());
      const deviations = own(new cv.Mat());
      const poseDeviations = own(new cv.Mat());
      const viewErrors = own(new cv.Mat());
      const rmsPx = cv.calibrateCameraExtended(
        objectPoints,
        imagePoints,
        { width: size.widthPx, height: size.heightPx },
        matrix,
        distortion,
        rotations,
        translations,
        deviations,
        poseDeviations,
        viewErrors,
        cv.CALIB_USE_INTRINSIC_GUESS |
          (freed.k2 ? 0 : cv.CALIB_FIX_K2) |
          (freed.tangential ? 0 : cv.CALIB_ZERO_TANGENT_DIST) |
          (freed.k3 ? 0 : cv.CALIB_FIX_K3),
        new cv.TermCriteria(cv.TermCriteria_COUNT + cv.TermCriteria_EPS, MOST_ITERATIONS, LEAST_CHANGE),
      );
      const m = numbers(matrix, 9);
      const sd = numbers(deviations, 9);
      const poses = views.map((_, index) => ({
        rotation: rotationFromVector(threeNumbers(rotations, index)),
        translationMm: threeNumbers(translations, index),
      }));
      const found = numbers(distortion, 5);
      if (![rmsPx, ...m, ...sd, ...found].every(Number.isFinite) || !(m[0]! > 0) || !(m[4]! > 0)) return null;
      return {
        camera: { fx: m[0]!, fy: m[4]!, cx: m[2]!, cy: m[5]!, distortion: fiveOf(found) },
        uncertainty: { fx: sd[0]!, fy: sd[1]!, cx: sd[2]!, cy: sd[3]!, distortion: fiveOf(sd.slice(4)) },
        rmsPx,
        poses,
      };
    });
  } catch (error) {
    // OpenCV throws a bare number where a matrix is singular; anything else is a bug or a lack of memory
    if (typeof error === 'number') return null;
    throw error;
  }
}

/** Chosen: the jackknife makes so many adjustments at most, and leaves out several views at a time where there are more. */
const MOST_GROUPS = 12;

/**
 * The uncertainty by the grouped jackknife: from how the result changes when one view after the other is left out (Efron and
 * Tibshirani 1993, An Introduction to the Bootstrap, chapter 11). What OpenCV tells from the residuals presumes that each corner
 * errs by itself, and is several times too small for pictures of two cameras or a bent sheet; it is what remains where the jackknife gives less.
 */
function uncertaintyOfViews(
  cv: OpenCv,
  views: readonly CalibrationView[],
  size: { readonly widthPx: number; readonly heightPx: number },
  { uncertainty }: Calibration,
): IntrinsicsUncertainty {
  const [, k2, p1, , k3] = uncertainty.distortion;
  const freed = { k2: k2 > 0, tangential: p1 > 0, k3: k3 > 0 };
  const groups = Math.min(views.length, MOST_GROUPS);
  const cameras = Array.from({ length: groups }, (_, group) =>
    calibrate(
      cv,
      views.filter((_, index) => index % groups !== group),
      size,
      freed,
    ),
  ).flatMap((made) => (made === null ? [] : [made.camera]));
  const deviation = (least: number, valueOf: (camera: Camera) => number): number => {
    const values = cameras.map(valueOf);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
    return Math.max(least, values.length < 2 ? 0 : Math.sqrt(((values.length - 1) / values.length) * squares));
  };
  return {
    fx: deviation(uncertainty.fx, ({ fx }) => fx),
    fy: deviation(uncertainty.fy, ({ fy }) => fy),
    cx: deviation(uncertainty.cx, ({ cx }) => cx),
    cy: deviation(uncertainty.cy, ({ cy }) => cy),
    distortion: fiveOf(
      uncertainty.distortion.map((least, index) => deviation(least, ({ distortion }) => distortion[index] ?? 0)),
    ),
  };
}

/** OpenCV's own default stops too early for standard deviations; these suffice by a wide margin. */
const MOST_ITERATIONS = 100;
const LEAST_CHANGE = 1e-10;

function numbers(mat: CvMat, count: number): readonly number[] {
  const values = Array.from(mat.data64F.subarray(0, count));
  if (values.length < count) throw new Error(`OpenCV gave ${values.length} numbers in place of ${count}`);
  return values;
}

function threeNumbers(vectors: CvMatVector, index: number): readonly [number, number, number] {
  // each access to a vector's element makes a new header that must be deleted, too
  const vector = vectors.get(index);
  try {
    const [x, y, z] = numbers(vector, 3);
    return [x!, y!, z!];
  } finally {
    vector.delete();
  }
}

function fiveOf([k1, k2, p1, p2, k3]: readonly number[]): Distortion {
  return [k1!, k2!, p1!, p2!, k3!];
}

/** The views without the corners that the adjustment brings out as wrongly found. */
function withoutOutliers(
  views: readonly CalibrationView[],
  { camera, poses }: Calibration,
): readonly CalibrationView[] {
  const residuals = views.map(({ corners }, index) =>
    corners.map(({ on, xPx, yPx }) => {
      const seen = project(camera, toCamera(poses[index]!, [on.x, on.y, 0]));
      return Math.hypot(seen.xPx - xPx, seen.yPx - yPx);
    }),
  );
  const sorted = residuals.flat().sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)] ?? 0;
  // the median of Rayleigh's distribution is 1.18 standard deviations of one coordinate
  const limitPx = Math.max(LEAST_OUTLIER_PX, (MOST_RESIDUAL * middle) / 1.18);
  return views
    .map(({ corners }, index) => ({
      corners: corners.filter((_, corner) => (residuals[index]?.[corner] ?? 0) <= limitPx),
    }))
    .filter(({ corners }) => corners.length >= LEAST_CORNERS_KEPT);
}

/** Chosen: fewer corners hardly determine a pose, and nothing more. */
const LEAST_CORNERS_KEPT = 5;
