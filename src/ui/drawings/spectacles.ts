import type { Figure, Point } from './figure.js';
import { area, boxed, curve, mirroredPart, moved, straight, turned } from './figure.js';

// A frame: from the front, with 0, 0 midway between the lenses on their centre line; from above; and one side alone.

/** Boxed sizes of the drawn frame, mm. */
export const BOX = { width: 50, height: 36, between: 18 } as const;

const MIDDLE: Point = [(BOX.width + BOX.between) / 2, 0];

/** The shape of the wearer's left lens. */
export const LENS: readonly Point[] = boxed(
  [
    [-25, -5],
    [-22.6, -13.4],
    [-13, -17.6],
    [4, -18],
    [18, -16],
    [24.6, -8.6],
    [23.4, 4.6],
    [16.4, 14.4],
    [3, 18],
    [-11.6, 16],
    [-21.4, 8],
  ],
  BOX.width,
  BOX.height,
).map((point) => moved(point, MIDDLE));

/** The lens's boxes: inner, outer, upper and lower side of the wearer's left. */
export const BOX_SIDES = {
  inner: BOX.between / 2,
  outer: BOX.between / 2 + BOX.width,
  upper: -BOX.height / 2,
  lower: BOX.height / 2,
} as const;

/** The frame from the front. */
export const FRAME_FRONT: Figure = [
  area('rim', ...LENS),
  area('lens', ...LENS),
  curve('rim', [BOX_SIDES.outer - 0.4, -8.4], [BOX_SIDES.outer + 3.4, -10], [BOX_SIDES.outer + 6, -9.6]),
].flatMap((part) => [part, mirroredPart(part)]);

/** The bridge of the frame from the front. */
export const FRAME_BRIDGE: Figure = [curve('rim', [-9.8, -6.4], [-6.4, -9.4], [0, -10.8], [6.4, -9.4], [9.8, -6.4])];

/** How the drawn lenses turn back, degrees. */
export const FACE_FORM = 11;

/** Nasal and temporal edge of the wearer's left lens from above; y grows forward. */
export const LENS_ABOVE: { readonly nasal: Point; readonly temporal: Point } = {
  nasal: [BOX_SIDES.inner, 0],
  temporal: turned([BOX_SIDES.outer, 0], [BOX_SIDES.inner, 0], -FACE_FORM),
};

const lensPoint = (along: number, forward: number): Point =>
  turned([BOX_SIDES.inner + along, forward], LENS_ABOVE.nasal, -FACE_FORM);

/** The frame from above, its sides cut short. */
export const FRAME_ABOVE: Figure = [
  ...[
    area(
      'lens',
      ...([0, 12, 25, 38, 50] as const).map((along) => lensPoint(along, sag(along))),
      ...([50, 38, 25, 12, 0] as const).map((along) => lensPoint(along, sag(along) + 2.2)),
    ),
    curve('side', lensPoint(51, 0.6), lensPoint(54, -1.4), [65, -18], [66.6, -60]),
  ].flatMap((part) => [part, mirroredPart(part)]),
  curve('rim', [-9.4, 1], [-4, 3.4], [0, 4], [4, 3.4], [9.4, 1]),
];

/** How far a lens bulges before its chord. */
function sag(along: number): number {
  return 3.6 * (1 - ((along - 25) / 25) ** 2);
}

/** The drawn side: joint, bend and tip; the front is at the right of the picture. */
export const SIDE = {
  joint: [0, 0],
  bend: [-96, 0],
  /** mm behind the bend */
  drop: 44,
  /** degrees */
  downward: 48,
} as const;

/** The tip of the drawn side as it is worn, and with the drop straightened. */
export const SIDE_END = {
  worn: turned([SIDE.bend[0] - SIDE.drop, 0], SIDE.bend, -SIDE.downward),
  straightened: [SIDE.bend[0] - SIDE.drop, 0],
} as const satisfies Record<string, Point>;

/** The side alone, with a piece of the front. */
export const SIDE_ALONE: Figure = [
  curve('rim', [7, -5], [8.4, 6], [6, 26]),
  straight('rim', [7, -3.4], [0, 0]),
  curve(
    'side',
    SIDE.joint,
    [-30, 0],
    [-60, 0],
    [-78, 0],
    [-88, 0],
    ...[8, 18, 30].map((behind) => turned([SIDE.bend[0] - behind, 0], SIDE.bend, -SIDE.downward)),
    SIDE_END.worn,
  ),
];
