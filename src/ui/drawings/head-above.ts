import { HALF_PD } from './face-front.js';
import type { Figure, Point } from './figure.js';
import { area, circle, curve, mirrored, onBothSides, straight, turned, wholeOutline } from './figure.js';

// Seen from above, the face to the bottom of the picture: the wearer's right stands at the left, as from the front. 0, 0 is midway
// between the fronts of both corneas; y grows forward out of the face.

/** Distance from the front of the cornea to the eye's centre of rotation, mm. */
const TO_ROTATION = 13.5;
const EYEBALL_RADIUS = 12;

/** The back of the spectacle front, mm before the corneas. */
export const BACK_PLANE = 13;

/** Places of the wearer's left; `mirrored` is the right. */
export const ABOVE = {
  earPoint: [74.6, -86],
  /** 25 mm behind the back plane of the front */
  temple: [61, -12],
  rotation: [HALF_PD, -TO_ROTATION],
} as const satisfies Record<string, Point>;

const HEAD: readonly Point[] = [
  [0, 13],
  [20, 11],
  [40, 5],
  [53, -3],
  ABOVE.temple,
  [68, -28],
  [72, -52],
  ABOVE.earPoint,
  [76, -108],
  [73, -136],
  [60, -163],
  [34, -181],
  [0, -187],
];

const NOSE: readonly Point[] = [
  [8, 6],
  [10, 13],
  [15, 18.4],
  [16.6, 22.6],
  [14.6, 27],
  [8.6, 30],
  [4.6, 33.6],
  [0, 35],
];

/** The head from above, with the nose before and the ears beside it. */
export const HEAD_ABOVE: Figure = [
  wholeOutline('skin', ...[...NOSE].reverse()),
  ...onBothSides(curve('fine', [4.4, 13], [3.4, 20], [4.4, 28]), curve('fine', [14.6, 27], [11, 25.6], [9.4, 28])),
  wholeOutline('skin', ...HEAD),
  wholeOutline(
    'hair',
    [0, -50],
    [28, -46],
    [50, -43],
    [66, -34],
    [72, -52],
    [75, -84],
    [77.4, -108],
    [74.6, -138],
    [62, -166],
    [35, -185],
    [0, -191],
  ),
  ...onBothSides(
    area('skin', [73.4, -78], [79, -82], [87, -93], [93.4, -106], [91.6, -111], [84, -108], [76, -97]),
    curve('fine', [77, -86], [83, -94], [89.4, -105.6]),
  ),
  curve('fine', [0, -186], [3, -150], [1, -110], [4, -74], [0, -52]),
];

/** Both eyeballs from above, turned in by so many degrees. */
export function eyeballs(turnedIn: number): Figure {
  const [x, y] = ABOVE.rotation;
  // The wearer's left eye stands at the right of the picture: in is clockwise, from straight down to the left.
  const at = (across: number, ahead: number): Point => turned([x + across, y + ahead], ABOVE.rotation, turnedIn);
  const cornea = [at(-6.2, 10.2), at(-3.6, 12.6), at(0, TO_ROTATION), at(3.6, 12.6), at(6.2, 10.2)];
  return onBothSides(
    circle('white', ABOVE.rotation, EYEBALL_RADIUS),
    area('iris', ...cornea),
    straight('outline', at(-6.2, 10.2), at(-PUPIL_HALF, 10.4)),
    straight('outline', at(PUPIL_HALF, 10.4), at(6.2, 10.2)),
    circle('pupil', ABOVE.rotation, 0.8),
  );
}

const PUPIL_HALF = 2;

/** Where a pupil is when the eyes turn in by so many degrees, the wearer's left. */
export function pupilFromAbove(turnedIn: number): Point {
  const [x, y] = ABOVE.rotation;
  return turned([x, y + 10.6], ABOVE.rotation, turnedIn);
}

/** Where the nose is cut at the height of the crest. */
export const SECTION = {
  crest: [0, 10.8],
  radius: 7,
  /** degrees from the line from front to back */
  splayAngle: 27,
} as const;

const [SIN, COS] = [SECTION.splayAngle, 90 - SECTION.splayAngle].map((degrees) =>
  Math.sin((degrees * Math.PI) / 180),
) as [number, number];

const SECTION_CENTRE: Point = [0, SECTION.crest[1] - SECTION.radius];

/** Where the arc goes over into the wearer's left flank. */
export const SPLAY_START: Point = [SECTION.radius * COS, SECTION_CENTRE[1] + SECTION.radius * SIN];

/** A point of the wearer's left flank, so far along it from where it starts, mm. */
export function alongFlank(by: number): Point {
  return [SPLAY_START[0] + by * SIN, SPLAY_START[1] - by * COS];
}

const ARC: readonly Point[] = Array.from({ length: 13 }, (_, i): Point => {
  const angle = ((90 - (i * (90 - SECTION.splayAngle)) / 12) * Math.PI) / 180;
  return [SECTION.radius * Math.cos(angle), SECTION_CENTRE[1] + SECTION.radius * Math.sin(angle)];
});

/** Face and eyes cut level with the crest of the nose. */
export const FACE_SECTION: Figure = [
  wholeOutline(
    'skin',
    ...ARC,
    alongFlank(5),
    alongFlank(10),
    alongFlank(14),
    [17.6, -8.2],
    [21, -7.4],
    // behind the eyeball
    [27, -10],
    [36, -10],
    [42.4, -8.6],
    [46.4, -10.4],
    [52, -10],
    [59, -14],
    [66, -26],
    [70, -44],
    [72, -62],
    [0, -62],
  ),
];

/** The bearing arc of the crest and both flanks, as far as a bridge lies on them. */
export const SECTION_CONTOUR: readonly Point[] = [
  ...[14, 10, 5].map(alongFlank),
  ...[...ARC].reverse(),
  ...ARC.slice(1).map(mirrored),
  ...[5, 10, 14].map((by) => mirrored(alongFlank(by))),
];
