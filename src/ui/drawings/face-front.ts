import type { Figure, Point } from './figure.js';
import { area, circle, curve, mirrored, onBothSides, wholeOutline } from './figure.js';

// A face from the front, 0, 0 midway between the pupils; lengths as in an ordinary adult. Points are given for the side at the right of the
// picture, which is the wearer's left.

/** Half the pupil distance of the drawn person, mm. */
export const HALF_PD = 31.5;
export const IRIS_RADIUS = 5.85;
export const PUPIL_RADIUS = 2.1;

/** Places on the face of the wearer's left; `mirrored` is the right. */
export const FRONT = {
  pupil: [HALF_PD, 0],
  upperLid: [HALF_PD, -4.5],
  lowerLid: [HALF_PD, 5.6],
  innerCorner: [16.6, 2.4],
  outerCorner: [46.4, -0.6],
  earPoint: [73.4, -3],
} as const satisfies Record<string, Point>;

const UPPER_LID: readonly Point[] = [
  FRONT.innerCorner,
  [19.4, 0.2],
  [24.6, -3.4],
  FRONT.upperLid,
  [38.5, -3.6],
  [43.4, -1.9],
  FRONT.outerCorner,
];
const LOWER_LID: readonly Point[] = [
  FRONT.outerCorner,
  [43, 2.4],
  [38, 4.9],
  FRONT.lowerLid,
  [25.6, 5.2],
  [20.6, 4.1],
  FRONT.innerCorner,
];
const OPENING: readonly Point[] = [...UPPER_LID, ...LOWER_LID.slice(1, -1)];

const BROW: readonly Point[] = [
  [11, -17.6],
  [13, -20.6],
  [20, -23.8],
  [31, -26],
  [41, -24.4],
  [51, -17.4],
  [41, -21.4],
  [31, -22.2],
  [20, -19],
  [13.4, -16.2],
];

/** Both eyes with their lids and brows. */
export const EYES: Figure = onBothSides(
  area('white', ...OPENING),
  circle('iris', FRONT.pupil, IRIS_RADIUS, OPENING),
  circle('pupil', FRONT.pupil, PUPIL_RADIUS),
  curve('fine', [19.4, 0.4], [20.6, 2], [20.2, 3.8]),
  curve('outline', ...UPPER_LID, [47.6, 0]),
  curve('fine', ...LOWER_LID),
  curve('fine', [18.4, -3.4], [24, -7.6], [31.5, -9.3], [39.5, -8.2], [46, -4.6]),
  curve('fine', [22, 10.6], [30, 12.4], [38, 11.4]),
  area('hair', ...BROW),
);

/** Both sides of the bridge of the nose, as its shadow shows them. */
const BRIDGE: Figure = onBothSides(curve('fine', [10, -11], [8.4, -5], [8, 1], [8.6, 9]));

const NOSE_TIP: Figure = [
  ...onBothSides(
    curve('fine', [12.4, 27.5], [16.4, 31], [17.2, 36.6], [14.6, 40.8], [11.4, 40.2]),
    curve('fine', [11.4, 40.2], [8.6, 38.2], [5.4, 40.6]),
  ),
  curve('fine', [-5.4, 40.6], [-3.4, 43], [0, 43.8], [3.4, 43], [5.4, 40.6]),
];

const MOUTH: Figure = [
  curve('fine', [-25, 66], [-15, 62.8], [-5, 60.2], [0, 61.6], [5, 60.2], [15, 62.8], [25, 66]),
  curve('outline', [-25.6, 66], [-14, 66.8], [-5, 65.8], [0, 66.8], [5, 65.8], [14, 66.8], [25.6, 66]),
  curve('fine', [-18, 71], [-9, 75.2], [0, 76], [9, 75.2], [18, 71]),
  curve('fine', [-9, 86.4], [0, 84.6], [9, 86.4]),
];

/** One ear from the front, the wearer's left. */
const EAR: readonly Point[] = [
  FRONT.earPoint,
  [77, -12.5],
  [84.5, -15.5],
  [90, -9],
  [90, 6],
  [86, 22],
  [81, 37],
  [75.5, 43],
  [70.6, 37],
];
const EAR_INSIDE: readonly Point[] = [
  [77.4, -1],
  [82.4, -9],
  [86, -4],
  [85, 8],
  [79.6, 21],
];

const HEAD: readonly Point[] = [
  [0, -120],
  [30, -115],
  [53, -98],
  [67, -70],
  [73, -38],
  [74, -14],
  FRONT.earPoint,
  [71.4, 18],
  [68, 42],
  [60.5, 66],
  [48, 87],
  [32, 103],
  [16, 112],
  [0, 114],
];

const HAIR: readonly Point[] = [
  [0, -126],
  [33, -121],
  [59, -103],
  [74, -74],
  [79, -38],
  [75.6, -12],
  [72.6, -22],
  [68.4, -42],
  [58, -63],
  [38, -77],
  [16, -80],
  [0, -80],
];

const NECK: Figure = onBothSides(curve('outline', [45, 90], [44, 108], [47, 134]));

function ears(rightUp: number, leftUp: number): Figure {
  const raised = (points: readonly Point[], up: number): readonly Point[] => points.map(([x, y]) => [x, y - up]);
  return [
    area('skin', ...raised(EAR, leftUp)),
    curve('fine', ...raised(EAR_INSIDE, leftUp)),
    area('skin', ...raised(EAR, rightUp).map(mirrored)),
    curve('fine', ...raised(EAR_INSIDE, rightUp).map(mirrored)),
  ];
}

/** The whole face from the front; the ears may stand at different heights, mm above where they usually are. */
export function faceFront({ rightEarUp = 0, leftEarUp = 0, hasBridge = true } = {}): Figure {
  return [
    ...NECK,
    ...ears(rightEarUp, leftEarUp),
    wholeOutline('skin', ...HEAD),
    wholeOutline('hair', ...HAIR),
    ...EYES,
    ...(hasBridge ? BRIDGE : []),
    ...NOSE_TIP,
    ...MOUTH,
  ];
}

/** The nose where a bridge bears on it, as the plane of a front would cut it: an arc that goes over into two straight flanks. */
export const BEARING = {
  crest: [0, -2.5],
  /** mm */
  apicalRadius: 8,
  /** degrees from the vertical */
  frontalAngle: 22,
} as const;

const [SIN, COS] = [BEARING.frontalAngle, 90 - BEARING.frontalAngle].map((degrees) =>
  Math.sin((degrees * Math.PI) / 180),
) as [number, number];

/** The centre of the arc of the bearing nose. */
export const BEARING_CENTRE: Point = [0, BEARING.crest[1] + BEARING.apicalRadius];

/** Where the arc goes over into the wearer's left flank. */
export const FLANK_START: Point = [BEARING.apicalRadius * COS, BEARING_CENTRE[1] - BEARING.apicalRadius * SIN];

/** The point of the wearer's left flank so far below the crest, mm. */
export function flankBelowCrest(below: number): Point {
  const y = BEARING.crest[1] + below;
  return [FLANK_START[0] + ((y - FLANK_START[1]) * SIN) / COS, y];
}

/** The contour of the bearing nose, from the wearer's right flank over the crest to the left. */
export const BEARING_CONTOUR: readonly Point[] = [
  mirrored(flankBelowCrest(24)),
  ...Array.from({ length: 37 }, (_, i): Point => {
    const angle = (BEARING.frontalAngle + (i * (180 - 2 * BEARING.frontalAngle)) / 36) * (Math.PI / 180);
    return [-BEARING.apicalRadius * Math.cos(angle), BEARING_CENTRE[1] - BEARING.apicalRadius * Math.sin(angle)];
  }),
  flankBelowCrest(24),
];
