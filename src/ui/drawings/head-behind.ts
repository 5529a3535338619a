import type { Figure, Point } from './figure.js';
import { area, curve, mirroredPart, onBothSides, straight, turned, wholeOutline } from './figure.js';

// From behind: the wearer's right stands at the right of the picture. 0, 0 is level with the pupils, on the midline.

/** How the drawn drops turn in, degrees. */
export const INWARD_ANGLE = 14;
/** What is seen from behind of a drop that also runs backward, mm. */
const SEEN_DROP = 36;

/** The ear point of the wearer's right; `mirrored` is the left. */
export const EAR_POINT_BEHIND: Point = [73, -3];

/** The tip of the wearer's right drop. */
export const TIP_BEHIND: Point = turned(
  [EAR_POINT_BEHIND[0], EAR_POINT_BEHIND[1] + SEEN_DROP],
  EAR_POINT_BEHIND,
  INWARD_ANGLE,
);

const EAR: readonly Point[] = [
  [71.6, -2],
  [77, -13],
  [85, -16],
  [91, -9],
  [91, 6],
  [87, 22],
  [81, 38],
  [75, 44],
  [69, 38],
];

/** The head from behind. */
export const HEAD_BEHIND: Figure = [
  ...onBothSides(
    curve('outline', [56, 44], [51, 66], [48, 92], [52, 116], [66, 134]),
    area('skin', ...EAR),
    curve('fine', [75, 0], [82, -6], [84.6, 4], [82, 20], [76, 33]),
  ),
  wholeOutline(
    'skin',
    [0, -120],
    [30, -116],
    [54, -100],
    [71, -70],
    [76, -36],
    [74, -10],
    [71, 6],
    [67.4, 22],
    [62, 40],
    [54, 60],
    [49, 82],
    [0, 88],
  ),
  wholeOutline(
    'hair',
    [0, -126],
    [33, -122],
    [58, -105],
    [75, -74],
    [80, -38],
    [76.4, -12],
    [69, -6],
    [64.4, 8],
    [60, 26],
    [50, 40],
    [40, 56],
    [20, 64],
    [0, 66],
  ),
  ...onBothSides(curve('fine', [14, 74], [15, 96], [18, 116])),
];

/** Both drops from behind. */
export const DROPS_BEHIND: Figure = ((): Figure => {
  const drop = straight('side', EAR_POINT_BEHIND, TIP_BEHIND);
  return [drop, mirroredPart(drop)];
})();
