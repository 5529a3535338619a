import type { Figure, Point } from './figure.js';
import { area, circle, curve, ellipse, straight, turned } from './figure.js';

// The wearer's right side: the face looks to the right of the picture. 0, 0 is the front of the right cornea.

/** The tilt of the front in the drawn frame, degrees: the lower rim stands nearer to the cheek. */
export const FRONT_TILT = 9;

/** Places in the profile. */
export const PROFILE = {
  cornea: [0, 0],
  crest: [10.8, -2.5],
  lashTip: [6.4, -7.4],
  earPoint: [-86, -3],
  /** where a side first touches the root of the ear */
  tangentPoint: [-79.4, -3.5],
  /** on the back of the lens, straight before the pupil */
  lensBack: [13, 0],
} as const satisfies Record<string, Point>;

/** A point of the tilted front: so far forward of the lens's back and down along it, mm. */
export function onFront(forward: number, down: number): Point {
  return turned([PROFILE.lensBack[0] + forward, PROFILE.lensBack[1] + down], PROFILE.lensBack, FRONT_TILT);
}

/** Where the side is jointed to the front, in the plane of the front. */
export const JOINT: Point = onFront(0, -10.5);

const OUTLINE: readonly Point[] = [
  [5, -72],
  [11, -52],
  [13.6, -36],
  [14, -25],
  [11.2, -14],
  [9.6, -8],
  PROFILE.crest,
  [15, 8],
  [21, 19],
  [27.6, 29],
  [32.6, 35.4],
  [33.4, 40],
  [29.6, 43.6],
  [24, 45],
  [20.4, 47.4],
  [21, 53],
  [24.2, 59],
  [24.8, 62.6],
  [21.4, 66.4],
  [24, 70],
  [23.2, 75.4],
  [18.4, 80.4],
  [17, 86],
  [19.4, 93],
  [18.8, 101],
  [13, 108.6],
  [2, 112],
  [-16, 111.4],
  [-32, 112.6],
  [-40, 119],
  [-42, 140],
];

const BACK_OF_NECK: readonly Point[] = [
  [-146, 140],
  [-142, 100],
  [-148, 68],
  [-158, 48],
  [-174, 22],
  [-182, -14],
  [-178, -50],
  [-160, -86],
  [-128, -110],
  [-90, -121],
  [-54, -119],
  [-22, -106],
  [-3, -88],
];

const HAIR: readonly Point[] = [
  [5, -72],
  [-3, -92],
  [-24, -112],
  [-55, -125],
  [-90, -127],
  [-130, -116],
  [-164, -90],
  [-183, -52],
  [-187, -14],
  [-178, 24],
  [-162, 50],
  [-149, 66],
  [-132, 58],
  [-120, 40],
  [-113.5, 16],
  [-113, -10],
  [-104, -23],
  [-90, -22],
  [-80, -10],
  [-74, 12],
  [-68, 14],
  [-65, -12],
  [-58, -30],
  [-42, -40],
  [-26, -50],
  [-10, -64],
];

const EAR: readonly Point[] = [
  [-80.4, 16],
  [-79.4, 4],
  [-81, -9],
  [-88, -18],
  [-99, -20.4],
  [-108, -14],
  [-110.4, -1],
  [-107, 14],
  [-100.6, 27],
  [-95.6, 38],
  [-89, 44],
  [-83, 41.6],
  [-80.6, 33],
];
const EAR_INSIDE: Figure = [
  curve('fine', [-84.6, 6], [-86.4, -7], [-93, -13.4], [-101, -11.6], [-104.4, -2], [-102, 10], [-96.6, 21]),
  curve('fine', [-80.4, 16], [-84.4, 19], [-82.6, 25], [-86.4, 29], [-93, 27], [-96, 17], [-94.6, 5], [-88.6, 0]),
];

const OPENING: readonly Point[] = [
  [-16.6, 1.4],
  [-10.6, -3],
  [-5, -4.9],
  [-0.9, -4.6],
  [0, 0],
  [-1.4, 5.4],
  [-7, 4.8],
];

const EYE: Figure = [
  area('white', ...OPENING),
  ellipse('iris', [-3.1, 0.2], [1.7, 5.7], OPENING),
  ellipse('pupil', [-2.7, 0.1], [0.65, 2.1], OPENING),
  // eyeball with the cornea before it
  curve('fine', [-0.9, -4.6], [-0.25, -2.4], PROFILE.cornea, [-0.3, 2.6], [-1.4, 5.4]),
  curve('outline', [-17.6, 2], [-10.6, -3], [-5, -4.9], [-0.6, -4.8]),
  curve('fine', [-0.6, -4.8], [0.5, -6], [0.4, -7.6]),
  curve('fine', [-16.6, 1.6], [-7, 4.9], [-1.2, 5.5], [-0.6, 6.4], [-1.2, 8]),
  curve('fine', [-19, -2.6], [-11, -8.4], [-4, -9.6], [0.8, -7.6]),
  curve('fine', [-0.4, -5.2], [2.6, -5.2], PROFILE.lashTip),
  curve('fine', [-1.6, -5], [1.6, -5], [5.2, -7.6]),
  curve('fine', [-3.4, -5], [-0.6, -5.4], [2.6, -8.2]),
  curve('fine', [-1, 5.8], [1, 6.4], [2.6, 8]),
  curve('fine', [-2.6, 5.8], [-1, 6.6], [0.4, 8.4]),
  area('hair', [10, -19.4], [8, -22.6], [-2, -26], [-14, -25.6], [-26, -19], [-14, -22], [-2, -21.6]),
];

/** The head from the wearer's right. */
export const FACE_PROFILE: Figure = [
  area('skin', ...OUTLINE, ...BACK_OF_NECK),
  area('hair', ...HAIR),
  curve('fine', [-80, 40], [-78, 58], [-67, 82], [-42, 99], [-12, 107]),
  ...EYE,
  curve('fine', [18.6, 32], [14, 33.4], [11.4, 38.4], [13.6, 43.4], [19, 44]),
  curve('fine', [19.6, 43.2], [23, 41.6], [26.6, 42.8]),
  curve('outline', [21.4, 66.4], [12, 66.6], [3, 68.6]),
  area('skin', ...EAR),
  ...EAR_INSIDE,
];

/** Middle and half of the height of the lens in the cut, mm down the front. */
const [LENS_MIDDLE, LENS_HALF] = [2.5, 18.5];
const LENS_THICKNESS = 2.2;

/** How far the edges of the lens stand behind its middle, mm. */
const LENS_SAG = 1.6;

const LENS_BACK: readonly Point[] = [-1, -0.5, 0, 0.5, 1].map((place) => [
  -LENS_SAG * place ** 2,
  LENS_MIDDLE + place * LENS_HALF,
]);

/** The front of the drawn frame cut through the middle of the right lens, tilted. */
export const FRONT_FROM_SIDE: Figure = [
  area(
    'lens',
    ...LENS_BACK.map(([forward, down]) => onFront(forward, down)),
    ...[...LENS_BACK].reverse().map(([forward, down]) => onFront(forward + LENS_THICKNESS, down)),
  ),
  ...[-1, 1].map((end) =>
    circle('rim-cut', onFront(LENS_THICKNESS / 2 - LENS_SAG, LENS_MIDDLE + end * (LENS_HALF + 0.8)), 1.7),
  ),
];

/** How the drop of the drawn side turns down from its line, degrees. */
export const DOWNWARD_ANGLE = 54;
/** mm */
const DROP_LENGTH = 42;

/** The tip of the drawn side. */
export const SIDE_TIP: Point = (() => {
  const [x, y] = PROFILE.earPoint;
  const [jointX, jointY] = JOINT;
  const reach = Math.hypot(x - jointX, y - jointY);
  const straightOn: Point = [x + ((x - jointX) * DROP_LENGTH) / reach, y + ((y - jointY) * DROP_LENGTH) / reach];
  // Seen from the right the side runs to the left: down is counter-clockwise.
  return turned(straightOn, PROFILE.earPoint, -DOWNWARD_ANGLE);
})();

/** So much of the drop, from its tip, is seen behind the ear. */
const SEEN_OF_DROP = 0.2;

const EMERGING: Point = [
  SIDE_TIP[0] + SEEN_OF_DROP * (PROFILE.earPoint[0] - SIDE_TIP[0]),
  SIDE_TIP[1] + SEEN_OF_DROP * (PROFILE.earPoint[1] - SIDE_TIP[1]),
];

/** The right side: over the temple, hidden by the ear, and the end of the drop behind it. */
export const SIDE_FROM_SIDE: Figure = [
  straight('side', JOINT, PROFILE.tangentPoint),
  straight('side-hidden', PROFILE.tangentPoint, PROFILE.earPoint, EMERGING),
  straight('side', EMERGING, SIDE_TIP),
];
