import type { MeasurementId } from '../../core/catalogue/measurement.js';
import {
  BEARING,
  BEARING_CENTRE,
  BEARING_CONTOUR,
  faceFront,
  flankBelowCrest,
  FLANK_START,
  FRONT,
  IRIS_RADIUS,
  PUPIL_RADIUS,
} from './face-front.js';
import {
  DOWNWARD_ANGLE,
  FACE_PROFILE,
  FRONT_FROM_SIDE,
  FRONT_TILT,
  JOINT,
  onFront,
  PROFILE,
  SIDE_FROM_SIDE,
  SIDE_TIP,
} from './face-profile.js';
import type { Figure, Point } from './figure.js';
import { mirrored, movedFigure, turned } from './figure.js';
import {
  ABOVE,
  alongFlank,
  BACK_PLANE,
  eyeballs,
  FACE_SECTION,
  HEAD_ABOVE,
  pupilFromAbove,
  SECTION,
  SECTION_CONTOUR,
  SPLAY_START,
} from './head-above.js';
import { DROPS_BEHIND, EAR_POINT_BEHIND, HEAD_BEHIND, INWARD_ANGLE, TIP_BEHIND } from './head-behind.js';
import type { Frame, LabelMark, Mark } from './marks.js';
import {
  BOX_SIDES,
  FACE_FORM,
  FRAME_ABOVE,
  FRAME_BRIDGE,
  FRAME_FRONT,
  LENS_ABOVE,
  SIDE,
  SIDE_ALONE,
  SIDE_END,
} from './spectacles.js';

/** From where a drawing is seen; the words name it. */
export type View =
  'front' | 'eye' | 'nose' | 'side' | 'above' | 'section' | 'behind' | 'frame-front' | 'frame-above' | 'frame-side';

/** Where a measurement is taken: what is seen, and what is drawn over it. */
export interface MeasurementDrawing {
  readonly view: View;
  readonly frame: Frame;
  readonly figure: Figure;
  readonly marks: readonly Mark[];
}

/** A mark on the wearer's left, and the same on the right. */
function onBoth(...marks: readonly Mark[]): readonly Mark[] {
  return marks.flatMap((mark) => [mark, mirroredMark(mark)]);
}

function mirroredMark(mark: Mark): Mark {
  switch (mark.kind) {
    case 'distance': {
      // What lies to the right of a line lies to the left of its mirror image.
      const at = mark.along === 'x' ? mark.at : -mark.at;
      return { ...mark, from: mirrored(mark.from), to: mirrored(mark.to), at };
    }
    case 'angle':
      return { ...mark, vertex: mirrored(mark.vertex), from: mirrored(mark.from), to: mirrored(mark.to) };
    case 'radius':
      return { ...mark, centre: mirrored(mark.centre), to: mirrored(mark.to) };
    case 'reference':
    case 'bold':
      return { ...mark, through: mark.through.map(mirrored) };
    case 'point':
    case 'label':
      return { ...mark, at: mirrored(mark.at) };
  }
}

/** R at the left of the picture, L at the right: the wearer is seen from the front, or from above with the face down. */
function sidesFacing(x: number, y: number): readonly LabelMark[] {
  return [
    { kind: 'label', at: [-x, y], text: 'R' },
    { kind: 'label', at: [x, y], text: 'L' },
  ];
}

const distance = (from: Point, to: Point, along: 'x' | 'y' | 'line', at: number, text: string | null = null): Mark => ({
  kind: 'distance',
  from,
  to,
  along,
  at,
  text,
});
const angle = (vertex: Point, from: Point, to: Point, radius: number, degrees: number): Mark => ({
  kind: 'angle',
  ...{ vertex, from, to, radius, degrees },
});
const reference = (...through: readonly Point[]): Mark => ({ kind: 'reference', through });
const bold = (...through: readonly Point[]): Mark => ({ kind: 'bold', through });
const point = (at: Point): Mark => ({ kind: 'point', at });
const label = (text: LabelMark['text'], at: Point): Mark => ({ kind: 'label', at, text });

const UPPER_FACE: Frame = { x: -100, y: -76, width: 200, height: 134 };
const BOTH_EYES: Frame = { x: -66, y: -36, width: 132, height: 66 };
const RIGHT_EYE: Frame = { x: -61, y: -30, width: 62, height: 56 };
const NOSE: Frame = { x: -52, y: -32, width: 104, height: 76 };
const HEAD_FROM_ABOVE: Frame = { x: -110, y: -198, width: 220, height: 266 };
const EYES_FROM_ABOVE: Frame = { x: -82, y: -44, width: 164, height: 144 };
const SIDE_OF_HEAD: Frame = { x: -132, y: -62, width: 188, height: 132 };
const EAR: Frame = { x: -156, y: -46, width: 130, height: 104 };
const SPECTACLES: Frame = { x: -80, y: -42, width: 160, height: 84 };

const NO_BRIDGE = faceFront({ hasBridge: false });
const CREST: Point = BEARING.crest;
const CONTOUR = bold(...BEARING_CONTOUR);

const NEAR_POINT: Point = [0, 90];
const CONVERGENCE = (Math.atan(ABOVE.rotation[0] / (NEAR_POINT[1] - ABOVE.rotation[1])) * 180) / Math.PI;
/** Where the wearer's left line of sight goes through the spectacle plane. */
const NEAR_CENTRE: Point = [
  (ABOVE.rotation[0] * (NEAR_POINT[1] - BACK_PLANE)) / (NEAR_POINT[1] - ABOVE.rotation[1]),
  BACK_PLANE,
];
const NEAR_FIGURE: Figure = [...FACE_SECTION, ...eyeballs(CONVERGENCE)];
const NEAR_LINES: readonly Mark[] = [
  reference([-74, BACK_PLANE], [74, BACK_PLANE]),
  ...onBoth(reference(pupilFromAbove(CONVERGENCE), NEAR_POINT), point(NEAR_CENTRE)),
  point(NEAR_POINT),
  ...sidesFacing(68, 24),
];

const RIGHT_PUPIL = mirrored(FRONT.pupil);
const besidePupil = (by: number): Point => [RIGHT_PUPIL[0] + by, RIGHT_PUPIL[1]];

const SIDE_VIEW: Figure = [...FACE_PROFILE, ...FRONT_FROM_SIDE, ...SIDE_FROM_SIDE];
const FRONT_PLANE = reference(onFront(0, -40), onFront(0, 34));

/** So far behind the joint along the normal to the lens, or along the side, mm. */
const behindJoint = (by: number): Point => turned([JOINT[0] - by, JOINT[1]], JOINT, FRONT_TILT);
const SIDE_SLOPE = (Math.atan2(PROFILE.earPoint[1] - JOINT[1], JOINT[0] - PROFILE.earPoint[0]) * 180) / Math.PI;
const onSideLine = (by: number): Point =>
  turned([PROFILE.earPoint[0] - by, PROFILE.earPoint[1]], PROFILE.earPoint, -SIDE_SLOPE);

const FRAME_VIEW: Figure = [...FRAME_FRONT, ...FRAME_BRIDGE];
const LENS_BOX = reference(
  [BOX_SIDES.inner, BOX_SIDES.upper],
  [BOX_SIDES.outer, BOX_SIDES.upper],
  [BOX_SIDES.outer, BOX_SIDES.lower],
  [BOX_SIDES.inner, BOX_SIDES.lower],
  [BOX_SIDES.inner, BOX_SIDES.upper],
);
const RIGHT_BOX = {
  upperOuter: [-BOX_SIDES.outer, BOX_SIDES.upper],
  lowerOuter: [-BOX_SIDES.outer, BOX_SIDES.lower],
  lowerInner: [-BOX_SIDES.inner, BOX_SIDES.lower],
} as const satisfies Record<string, Point>;
const LENS_LABELS = sidesFacing((BOX_SIDES.inner + BOX_SIDES.outer) / 2, 0);

/** How far below the pupils the drawn frame's centre line sits, mm. */
const FRAME_DOWN = 3.5;
const LOWER_SIDE = BOX_SIDES.lower + FRAME_DOWN;

function rims(below: 10 | 15): MeasurementDrawing {
  const flank = flankBelowCrest(below);
  return {
    view: 'nose',
    frame: NOSE,
    figure: NO_BRIDGE,
    marks: [
      CONTOUR,
      distance(mirrored(flank), flank, 'x', flank[1]),
      distance(CREST, [-2, flank[1]], 'y', -2, `${below}`),
      point(flank),
      point(mirrored(flank)),
      point(CREST),
      ...sidesFacing(31, 26),
    ],
  };
}

/** Where each measurement is taken. */
export const MEASUREMENT_DRAWINGS: Readonly<Record<MeasurementId, MeasurementDrawing>> = {
  binocularPd: {
    view: 'front',
    frame: UPPER_FACE,
    figure: faceFront(),
    marks: [
      distance(mirrored(FRONT.pupil), FRONT.pupil, 'x', -44),
      ...onBoth(point(FRONT.pupil)),
      ...sidesFacing(31.5, 22),
    ],
  },
  monocularPd: {
    view: 'front',
    frame: UPPER_FACE,
    figure: faceFront(),
    marks: [
      reference([0, -62], [0, 32]),
      ...onBoth(distance(FRONT.pupil, [0, -44], 'x', -44), point(FRONT.pupil)),
      ...sidesFacing(31.5, 22),
    ],
  },
  nearPd: {
    view: 'section',
    frame: EYES_FROM_ABOVE,
    figure: NEAR_FIGURE,
    marks: [...NEAR_LINES, distance(mirrored(NEAR_CENTRE), NEAR_CENTRE, 'x', 40)],
  },
  monocularNearPd: {
    view: 'section',
    frame: EYES_FROM_ABOVE,
    figure: NEAR_FIGURE,
    marks: [reference([0, -40], NEAR_POINT), ...NEAR_LINES, ...onBoth(distance(NEAR_CENTRE, [0, 40], 'x', 40))],
  },
  lidAperture: {
    view: 'eye',
    frame: BOTH_EYES,
    figure: faceFront(),
    marks: [
      ...onBoth(
        reference([FRONT.pupil[0], -14], [FRONT.pupil[0], 15]),
        distance(FRONT.upperLid, FRONT.lowerLid, 'y', 55),
        point(FRONT.upperLid),
        point(FRONT.lowerLid),
      ),
      ...sidesFacing(31.5, 21),
    ],
  },
  pupilDiameter: {
    view: 'eye',
    frame: RIGHT_EYE,
    figure: faceFront(),
    marks: [distance(besidePupil(-PUPIL_RADIUS), besidePupil(PUPIL_RADIUS), 'x', 14), label('R', [-31.5, 21])],
  },
  irisDiameter: {
    view: 'eye',
    frame: RIGHT_EYE,
    figure: faceFront(),
    marks: [distance(besidePupil(-IRIS_RADIUS), besidePupil(IRIS_RADIUS), 'x', 14), label('R', [-31.5, 21])],
  },
  headWidth: {
    view: 'above',
    frame: HEAD_FROM_ABOVE,
    figure: HEAD_ABOVE,
    marks: [
      distance(mirrored(ABOVE.earPoint), ABOVE.earPoint, 'x', 52),
      ...onBoth(point(ABOVE.earPoint)),
      ...sidesFacing(98, -70),
    ],
  },
  templeWidth: {
    view: 'above',
    frame: HEAD_FROM_ABOVE,
    figure: HEAD_ABOVE,
    marks: [
      reference([-90, BACK_PLANE], [90, BACK_PLANE]),
      distance(mirrored(ABOVE.temple), ABOVE.temple, 'x', 52),
      ...onBoth(point(ABOVE.temple)),
      distance([84, BACK_PLANE], ABOVE.temple, 'y', 84, '25'),
      ...sidesFacing(98, -70),
    ],
  },
  apicalRadius: {
    view: 'nose',
    frame: NOSE,
    figure: NO_BRIDGE,
    marks: [
      CONTOUR,
      reference(...Array.from({ length: 49 }, (_, i) => turned([CREST[0], CREST[1]], BEARING_CENTRE, (i * 360) / 48))),
      point(BEARING_CENTRE),
      { kind: 'radius', centre: BEARING_CENTRE, to: turned(CREST, BEARING_CENTRE, 40) },
      ...sidesFacing(31, 26),
    ],
  },
  distanceBetweenRims10: rims(10),
  distanceBetweenRims15: rims(15),
  frontalAngle: {
    view: 'nose',
    frame: NOSE,
    figure: NO_BRIDGE,
    marks: [
      CONTOUR,
      ...onBoth(
        reference([FLANK_START[0], -14], [FLANK_START[0], 36]),
        reference(flankBelowCrest(24), flankBelowCrest(37)),
        angle(FLANK_START, [FLANK_START[0], 36], flankBelowCrest(30), 27, BEARING.frontalAngle),
      ),
      ...sidesFacing(36, 26),
    ],
  },
  splayAngle: {
    view: 'section',
    frame: { x: -52, y: -46, width: 104, height: 76 },
    figure: [...FACE_SECTION, ...eyeballs(0)],
    marks: [
      bold(...SECTION_CONTOUR),
      ...onBoth(
        reference([SPLAY_START[0], 24], [SPLAY_START[0], -34]),
        reference(alongFlank(14), alongFlank(34)),
        angle(SPLAY_START, [SPLAY_START[0], -34], alongFlank(30), 31, SECTION.splayAngle),
      ),
      ...sidesFacing(36, 16),
    ],
  },
  crestHeight: {
    view: 'nose',
    frame: { x: -60, y: -34, width: 120, height: 76 },
    figure: NO_BRIDGE,
    marks: [
      CONTOUR,
      reference([-52, CREST[1]], [52, CREST[1]]),
      ...onBoth(distance([50, CREST[1]], FRONT.lowerLid, 'y', 50), point(FRONT.lowerLid)),
      point(CREST),
      ...sidesFacing(31.5, 22),
    ],
  },
  bridgeProjection: {
    view: 'side',
    frame: { x: -40, y: -34, width: 92, height: 72 },
    figure: FACE_PROFILE,
    marks: [
      reference([PROFILE.lashTip[0], -24], PROFILE.lashTip),
      distance(PROFILE.lashTip, PROFILE.crest, 'x', 24),
      point(PROFILE.lashTip),
      point(PROFILE.crest),
      label('R', [-30, 28]),
    ],
  },
  lengthToBend: {
    view: 'side',
    frame: SIDE_OF_HEAD,
    figure: SIDE_VIEW,
    marks: [FRONT_PLANE, distance(JOINT, PROFILE.earPoint, 'line', 36), point(PROFILE.earPoint), label('R', [-30, 44])],
  },
  lengthToTangent: {
    view: 'side',
    frame: SIDE_OF_HEAD,
    figure: SIDE_VIEW,
    marks: [
      FRONT_PLANE,
      distance(JOINT, PROFILE.tangentPoint, 'line', 36),
      point(PROFILE.tangentPoint),
      label('R', [-30, 44]),
    ],
  },
  lengthOfDrop: {
    view: 'side',
    frame: EAR,
    figure: SIDE_VIEW,
    marks: [
      distance(PROFILE.earPoint, SIDE_TIP, 'line', 30),
      point(PROFILE.earPoint),
      point(SIDE_TIP),
      label('R', [-46, 40]),
    ],
  },
  angleOfSide: {
    view: 'side',
    frame: SIDE_OF_HEAD,
    figure: SIDE_VIEW,
    marks: [
      FRONT_PLANE,
      bold(JOINT, PROFILE.earPoint),
      reference(JOINT, behindJoint(112)),
      angle(JOINT, PROFILE.earPoint, behindJoint(112), 84, FRONT_TILT + SIDE_SLOPE),
      label('R', [-30, 44]),
    ],
  },
  downwardAngleOfDrop: {
    view: 'side',
    frame: EAR,
    figure: SIDE_VIEW,
    marks: [
      reference(PROFILE.earPoint, onSideLine(58)),
      bold(PROFILE.earPoint, SIDE_TIP),
      angle(PROFILE.earPoint, onSideLine(58), SIDE_TIP, 34, DOWNWARD_ANGLE),
      point(PROFILE.earPoint),
      label('R', [-46, 40]),
    ],
  },
  inwardAngleOfDrop: {
    view: 'behind',
    frame: { x: -112, y: -62, width: 224, height: 138 },
    figure: [...HEAD_BEHIND, ...DROPS_BEHIND],
    marks: [
      ...onBoth(
        reference([EAR_POINT_BEHIND[0], -24], [EAR_POINT_BEHIND[0], 66]),
        bold(EAR_POINT_BEHIND, TIP_BEHIND),
        reference(TIP_BEHIND, turned([EAR_POINT_BEHIND[0], 66], EAR_POINT_BEHIND, INWARD_ANGLE)),
        angle(EAR_POINT_BEHIND, [EAR_POINT_BEHIND[0], 66], TIP_BEHIND, 58, INWARD_ANGLE),
        point(EAR_POINT_BEHIND),
      ),
      // From behind the wearer's right stands at the right of the picture.
      label('R', [100, 40]),
      label('L', [-100, 40]),
    ],
  },
  earPointDifference: {
    view: 'front',
    frame: { x: -112, y: -90, width: 228, height: 150 },
    figure: faceFront({ rightEarUp: 8, leftEarUp: -6 }),
    marks: [
      reference([-73.4, -11], [108, -11]),
      distance([108, -11], [FRONT.earPoint[0], 3], 'y', 102),
      point([-73.4, -11]),
      point([73.4, 3]),
      ...sidesFacing(98, 46),
    ],
  },
  boxLensWidth: {
    view: 'frame-front',
    frame: SPECTACLES,
    figure: FRAME_VIEW,
    marks: [mirroredMark(LENS_BOX), distance(RIGHT_BOX.lowerOuter, RIGHT_BOX.lowerInner, 'x', 31), ...LENS_LABELS],
  },
  boxLensHeight: {
    view: 'frame-front',
    frame: SPECTACLES,
    figure: FRAME_VIEW,
    marks: [mirroredMark(LENS_BOX), distance(RIGHT_BOX.upperOuter, RIGHT_BOX.lowerOuter, 'y', -71), ...LENS_LABELS],
  },
  distanceBetweenLenses: {
    view: 'frame-front',
    frame: SPECTACLES,
    figure: FRAME_VIEW,
    marks: [
      ...onBoth(LENS_BOX),
      distance(RIGHT_BOX.lowerInner, mirrored(RIGHT_BOX.lowerInner), 'x', 31),
      ...LENS_LABELS,
    ],
  },
  overallSideLength: {
    view: 'frame-side',
    frame: { x: -154, y: -42, width: 176, height: 92 },
    figure: SIDE_ALONE,
    marks: [
      reference(SIDE.bend, SIDE_END.straightened),
      reference(...Array.from({ length: 13 }, (_, i) => turned(SIDE_END.worn, SIDE.bend, (i * SIDE.downward) / 12))),
      distance(SIDE.joint, SIDE_END.straightened, 'line', 24),
      point(SIDE.joint),
      point(SIDE_END.straightened),
    ],
  },
  fittingHeight: {
    view: 'front',
    frame: { x: -90, y: -48, width: 180, height: 104 },
    figure: [...faceFront(), ...movedFigure(FRAME_VIEW, [0, FRAME_DOWN])],
    marks: [
      ...onBoth(
        reference([BOX_SIDES.inner, LOWER_SIDE], [78, LOWER_SIDE]),
        distance(FRONT.pupil, [70, LOWER_SIDE], 'y', 70),
        point(FRONT.pupil),
      ),
      ...sidesFacing(34, 36),
    ],
  },
  backVertexDistance: {
    view: 'side',
    frame: { x: -40, y: -34, width: 92, height: 72 },
    figure: [...FACE_PROFILE, ...FRONT_FROM_SIDE],
    marks: [
      reference([-12, 0], [46, 0]),
      distance(PROFILE.cornea, PROFILE.lensBack, 'x', 29),
      point(PROFILE.cornea),
      point(PROFILE.lensBack),
      label('R', [-30, 28]),
    ],
  },
  pantoscopicAngle: {
    view: 'side',
    frame: { x: -48, y: -50, width: 130, height: 98 },
    figure: [...FACE_PROFILE, ...FRONT_FROM_SIDE],
    marks: [
      reference(onFront(0, -38), onFront(0, 34)),
      reference(PROFILE.cornea, [76, 0]),
      reference(PROFILE.lensBack, onFront(64, 0)),
      reference(onFront(5, 0), onFront(5, 5), onFront(0, 5)),
      angle(PROFILE.lensBack, [76, 0], onFront(64, 0), 52, FRONT_TILT),
      label('R', [-36, 36]),
    ],
  },
  faceFormAngle: {
    view: 'frame-above',
    frame: { x: -88, y: -66, width: 176, height: 92 },
    figure: FRAME_ABOVE,
    marks: [
      reference([-80, 0], [80, 0]),
      ...onBoth(
        bold(LENS_ABOVE.nasal, LENS_ABOVE.temporal),
        reference(LENS_ABOVE.temporal, turned([82, 0], LENS_ABOVE.nasal, -FACE_FORM)),
        angle(LENS_ABOVE.nasal, [80, 0], LENS_ABOVE.temporal, 66, FACE_FORM),
      ),
      ...sidesFacing(34, -30),
    ],
  },
};
