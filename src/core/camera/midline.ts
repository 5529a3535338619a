import { invertSymmetric, multiplyMatrixVector } from '../fitting/linear-system.js';
import { isWithin } from '../geometry/outline.js';
import { midpointPx, type ImagePoint } from '../geometry/vector.js';
import { invariant } from '../result.js';
import type { BothSides } from '../units/side.js';
import { landmarkAt, type EyesSeed } from './face-landmarks.js';
import type { FourCorners, IrisObservation, Landmark, MidlineObservation } from './features.js';

/**
 * Landmarks of the wearer's right and left that mirror one another, every third pair of the mean face beyond 10 mm of its midline, and how far
 * they lie before the pupils (whose plane lies at 40 mm there), mm. That the nearer half of a turned face looks wider is left out: landmarks do
 * not show it in full, and counting it made rendered heads worse.
 */
export const MIRRORED_PAIRS: readonly (readonly [right: number, left: number, forwardMm: number])[] = [
  [7, 249, -7],
  [23, 253, -2],
  [26, 256, -1],
  [29, 259, 0],
  [32, 262, 4],
  [35, 265, -18],
  [40, 270, 10],
  [43, 273, 2],
  [48, 278, 18],
  [52, 282, 6],
  [55, 285, 11],
  [58, 288, -57],
  [62, 292, 2],
  [65, 295, 9],
  [68, 298, -13],
  [71, 301, -24],
  [75, 305, 17],
  [78, 308, 0],
  [88, 318, 7],
  [91, 321, 8],
  [95, 324, 4],
  [100, 329, 3],
  [103, 332, -13],
  [106, 335, 5],
  [109, 338, 3],
  [112, 341, -2],
  [115, 344, 24],
  [118, 347, -5],
  [121, 350, 2],
  [126, 355, 9],
  [129, 358, 9],
  [132, 361, -63],
  [136, 365, -33],
  [139, 368, -33],
  [143, 372, -24],
  [146, 375, 5],
  [149, 378, -12],
  [154, 381, -3],
  [157, 384, -2],
  [160, 387, -3],
  [163, 390, -6],
  [169, 394, -13],
  [172, 397, -46],
  [177, 401, -41],
  [180, 404, 12],
  [183, 407, 4],
  [186, 410, 5],
  [190, 414, -1],
  [194, 418, 5],
  [203, 423, 6],
  [206, 426, 4],
  [209, 429, 12],
  [212, 432, -3],
  [215, 435, -39],
  [218, 438, 25],
  [222, 442, 4],
  [225, 445, -4],
  [228, 448, -9],
  [231, 451, -1],
  [234, 454, -64],
  [243, 463, -1],
  [246, 466, -7],
];

/** How far the bridge's skin lies before the pupils (mean face), mm. */
const BRIDGE_FORWARD_MM = 13;
/** The midline of the fewest pairs that still count. Chosen. */
const FEWEST_PAIRS = 12;
/** Scatter of the midline found so, mm at a distance between the eyes of 63 mm (rendered heads). */
const SCATTER_MM = 0.4;

/**
 * The midline from the middles of mirrored landmarks. As the head turns, a middle moves across the picture by as much as it lies before the
 * pupils; as it leans or the face is uneven, by its height. So a plane laid through the middles (least squares over depth and height) tells where
 * the midline crosses the line between the pupils, whatever the turn, and where the bridge lies on it. Landmarks under the card are left
 * out: there the landmark model guesses.
 */
export function midlineFromLandmarks(
  landmarks: readonly Landmark[],
  iris: BothSides<Pick<IrisObservation, 'centre'>>,
  eyes: EyesSeed,
  card: FourCorners<ImagePoint> | null,
): MidlineObservation {
  const middle = midpointPx(iris.R.centre, iris.L.centre);
  const rollRad = Math.atan2(iris.L.centre.yPx - iris.R.centre.yPx, iris.L.centre.xPx - iris.R.centre.xPx);
  const across = { xPx: Math.cos(rollRad), yPx: Math.sin(rollRad) };
  const seen = MIRRORED_PAIRS.map(([r, l, forwardMm]) => {
    const [right, left] = [landmarkAt(landmarks, r), landmarkAt(landmarks, l)];
    const point = midpointPx(right, left);
    const dx = point.xPx - middle.xPx;
    const dy = point.yPx - middle.yPx;
    return {
      isFree: card === null || !(isWithin(card, right) || isWithin(card, left)),
      asidePx: dx * across.xPx + dy * across.yPx,
      terms: [1, forwardMm, (dy * across.xPx - dx * across.yPx) / eyes.spanPx] as const,
    };
  });
  const free = seen.filter(({ isFree }) => isFree);
  const [atPupilsPx, perForwardMm] = planeThrough(free.length < FEWEST_PAIRS ? seen : free);
  const at = (asidePx: number): ImagePoint => ({
    xPx: middle.xPx + asidePx * across.xPx,
    yPx: middle.yPx + asidePx * across.yPx,
  });
  return {
    point: at(atPupilsPx + BRIDGE_FORWARD_MM * perForwardMm),
    betweenPupils: at(atPupilsPx),
    uncertaintyPx: (SCATTER_MM / 63) * eyes.spanPx,
    source: 'landmarks',
  };
}

/** Least squares of the middles' places across over depth and height: the place between the pupils, and its change per mm of depth. */
function planeThrough(
  middles: readonly { readonly asidePx: number; readonly terms: readonly [number, number, number] }[],
): readonly [atPupilsPx: number, perForwardMm: number] {
  const normal = [0, 1, 2].map((a) =>
    [0, 1, 2].map((b) => middles.reduce((sum, { terms }) => sum + terms[a]! * terms[b]!, 0)),
  );
  const right = [0, 1, 2].map((a) => middles.reduce((sum, { terms, asidePx }) => sum + terms[a]! * asidePx, 0));
  const inverse = invertSymmetric(normal);
  invariant(inverse !== null, 'the mirrored landmarks lie at different depths and heights');
  const [atPupilsPx, perForwardMm] = multiplyMatrixVector(inverse, right);
  return [atPupilsPx!, perForwardMm!];
}
