import canonicalFace from '../../calibration/canonical-face.json' with { type: 'json' };
import type {
  CardPosition,
  CardSource,
  Landmark,
  MeasuredPoint,
  PictureFeatures,
} from '../../src/core/camera/features.js';
import type { ImagePoint, Vector3 } from '../../src/core/geometry/vector.js';
import type { BothSides } from '../../src/core/units/side.js';

/** A camera with square pixels and a lens of one coefficient. */
export interface SyntheticCamera {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly focalPx: number;
  readonly centre: ImagePoint;
  readonly k1: number;
}

/**
 * A face with a card before a camera, all of it known. Camera frame: x right, y down, z forward, mm; head frame: x to the wearer's
 * left, y up, z forward out of the face, origin midway between the pupils.
 */
export interface SyntheticScene {
  readonly camera: SyntheticCamera;
  /** midway between the pupils, in the camera frame */
  readonly eyesMm: Vector3;
  /** positive: face to picture right */
  readonly yawRad: number;
  /** positive: face down */
  readonly pitchRad: number;
  /** positive: anticlockwise as seen */
  readonly rollRad: number;
  readonly pdFarMm: number;
  /** the bridge's midline lies this far to the wearer's left of the middle of the pupils at straight gaze */
  readonly bridgeLeftMm: number;
  /** and this far before them */
  readonly bridgeForwardMm: number;
  readonly irisMm: number;
  /** how far the left pupil lies before the right one */
  readonly leftEyeForwardMm: number;
  readonly rotationToPupilMm: number;
  /** distance of the fixated point from the eyes' centres of rotation; infinite for far gaze */
  readonly fixationMm: number;
  /** upper and lower lid margin above and below the pupil */
  readonly lidsMm: BothSides<{ readonly upper: number; readonly lower: number }>;
  readonly headWidthMm: number;
  /** head width over the span of the landmarks before the ears */
  readonly headOverSpan: number;
  readonly templeWidthMm: number;
  readonly templeOverSpan: number;
  readonly card: SyntheticCard;
}

export interface SyntheticCard {
  readonly source: CardSource;
  readonly position: CardPosition;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly thicknessMm: number;
  /** middle of the card's back in the head frame; z is how far it lies before the eyes */
  readonly backMm: Vector3;
  /** positive: turned to the wearer's left */
  readonly turnRad: number;
  /** positive: facing up */
  readonly leanRad: number;
  /** positive: anticlockwise as seen */
  readonly rollRad: number;
}

/** What is seen of the scene beside the truth, in standard uncertainties and in what the landmark model adds. */
export interface SyntheticSeeing {
  readonly cornerPx: number;
  /** across and down, as share of the iris radius */
  readonly irisShare: number;
  readonly irisRadiusShare: number;
  readonly lidPx: number;
  readonly midlinePx: number;
  readonly outlinePx: number;
  /** angles that are drawn into the landmarks instead of the head's own */
  readonly landmarkYawRad: number;
  readonly landmarkPitchRad: number;
  readonly landmarkRollRad: number;
  /** added to how far the landmark model sees the eyes behind the card */
  readonly landmarkGapMm: number;
  /** a deviation for each call, in standard uncertainties; 0 for perfect seeing */
  readonly deviate: () => number;
}

const HEAD_BEHIND_MM = 60;
const TEMPLE_BEHIND_MM = 38;

/** The midline is seen twice as badly at this turn of the head, as the measuring says. */
const MIDLINE_TURN_RAD = (12 * Math.PI) / 180;

/**
 * What the landmark model makes of a head's angles, by the tuning on rendered heads that the measuring undoes: yaw a tenth too
 * much, nodding too much by what the place of the card decides.
 */
export const LANDMARK_YAW_GAIN = 1 / 0.9;
export const LANDMARK_PITCH_BIAS_RAD: Readonly<Record<CardPosition, number>> = {
  forehead: (7.8 * Math.PI) / 180,
  'upper-lip': (10.8 * Math.PI) / 180,
  chin: (8.5 * Math.PI) / 180,
};

const plus = (a: Vector3, b: Vector3): Vector3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (a: Vector3, k: number): Vector3 => [a[0] * k, a[1] * k, a[2] * k];
const inner = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** A frame by its axes in another one. */
interface Axes {
  readonly x: Vector3;
  readonly y: Vector3;
  readonly z: Vector3;
}

const toOuter = ({ x, y, z }: Axes, v: Vector3): Vector3 => plus(plus(times(x, v[0]), times(y, v[1])), times(z, v[2]));

/**
 * Axes of a head in the camera frame, by turning them one after the other: first the roll in the plane of the face, then the nod, then
 * the turn about the vertical.
 */
export function axesOfSyntheticHead(yawRad: number, pitchRad: number, rollRad: number): Axes {
  const turned = ([x0, y0, z0]: Vector3): Vector3 => {
    // In the viewer's axes: x right, y up, z towards the viewer.
    const x1 = x0 * Math.cos(rollRad) - y0 * Math.sin(rollRad);
    const y1 = x0 * Math.sin(rollRad) + y0 * Math.cos(rollRad);
    const y2 = y1 * Math.cos(pitchRad) - z0 * Math.sin(pitchRad);
    const z2 = y1 * Math.sin(pitchRad) + z0 * Math.cos(pitchRad);
    const x3 = x1 * Math.cos(yawRad) + z2 * Math.sin(yawRad);
    const z3 = -x1 * Math.sin(yawRad) + z2 * Math.cos(yawRad);
    return [x3, -y2, -z3];
  };
  return { x: turned([1, 0, 0]), y: turned([0, 1, 0]), z: turned([0, 0, 1]) };
}

/** Where the synthetic camera shows a point of the camera frame. */
export function photograph({ focalPx, centre, k1 }: SyntheticCamera, [x, y, z]: Vector3): ImagePoint {
  const [u, v] = [x / z, y / z];
  const stretch = 1 + k1 * (u * u + v * v);
  return { xPx: centre.xPx + focalPx * u * stretch, yPx: centre.yPx + focalPx * v * stretch };
}

/** Distance between the pupils of the scene as they stand: each is turned inwards by the angle under which it sees the fixated point. */
export function pdShownOfScene(scene: SyntheticScene): number {
  const inward = Math.sin(Math.atan(scene.pdFarMm / 2 / scene.fixationMm));
  return scene.pdFarMm - 2 * scene.rotationToPupilMm * inward;
}

/**
 * How far both pupils of eyes on the camera stand beside their place at straight gaze, to the wearer's left: they swing about their centres of
 * rotation as the head turns. Far gaze is straight.
 */
function versionMm(scene: SyntheticScene): number {
  if (!Number.isFinite(scene.fixationMm)) return 0;
  const left = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad).x;
  return (-scene.rotationToPupilMm * inner(scene.eyesMm, left)) / Math.hypot(...scene.eyesMm);
}

/** Pupils in the camera frame. */
export function pupilsOfScene(scene: SyntheticScene): BothSides<Vector3> {
  const axes = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
  const forward = scene.leftEyeForwardMm / 2;
  const across = Math.sqrt((pdShownOfScene(scene) / 2) ** 2 - forward ** 2);
  return {
    R: plus(scene.eyesMm, toOuter(axes, [-across, 0, -forward])),
    L: plus(scene.eyesMm, toOuter(axes, [across, 0, forward])),
  };
}

/** Axes of the card in the camera frame: x to picture right, y down, z into the face. */
function axesOfCard(scene: SyntheticScene): Axes {
  const head = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
  const { turnRad, leanRad, rollRad } = scene.card;
  // Out of the card, with the two angles as seen from above and from the side of the head.
  const out: Vector3 = [Math.tan(turnRad), Math.tan(leanRad), 1];
  const z = times(toOuter(head, out), -1 / Math.hypot(...out));
  const hint = toOuter(head, [Math.cos(rollRad), Math.sin(rollRad), 0]);
  const level = plus(hint, times(z, -inner(hint, z)));
  const x = times(level, 1 / Math.hypot(...level));
  const y: Vector3 = [z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2], z[0] * x[1] - z[1] * x[0]];
  return { x, y, z };
}

/** Corners of the card's front in the camera frame, from the top left clockwise as seen. */
export function cardCornersOfScene(scene: SyntheticScene): readonly [Vector3, Vector3, Vector3, Vector3] {
  const axes = axesOfCard(scene);
  const head = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
  const { backMm, thicknessMm, widthMm, heightMm } = scene.card;
  const front = plus(plus(scene.eyesMm, toOuter(head, backMm)), times(axes.z, -thicknessMm));
  const corner = (sx: number, sy: number): Vector3 =>
    plus(front, toOuter(axes, [(sx * widthMm) / 2, (sy * heightMm) / 2, 0]));
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** Where the mean face's own origin lies from the middle of its eyes: its lids at the height of the pupils. */
const MESH_EYES_MM: Vector3 = [0, 26.3, 31];

const IRIS_CENTRES = { R: 468, L: 473 } as const;
const CHIN_LANDMARKS = [152, 175, 199, 148, 377];

/** All 478 landmarks of the scene as the model would draw them, with depths that place the card as the scene does. */
export function landmarksOfScene(scene: SyntheticScene, seeing: SyntheticSeeing): Landmark[] {
  const { camera, eyesMm } = scene;
  const axes = axesOfSyntheticHead(seeing.landmarkYawRad, seeing.landmarkPitchRad, seeing.landmarkRollRad);
  const scalePx = camera.focalPx / eyesMm[2];
  const place = (point: Vector3): Landmark => ({
    ...photograph(camera, point),
    depthPx: (point[2] - eyesMm[2]) * scalePx,
  });
  const landmarks = canonicalFace.verticesMm.map(([x, y, z]) =>
    place(plus(eyesMm, toOuter(axes, [x! - MESH_EYES_MM[0], y! - MESH_EYES_MM[1], z! - MESH_EYES_MM[2]]))),
  );
  const pupils = pupilsOfScene(scene);
  const head = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
  const irises: Landmark[] = [];
  for (const side of ['R', 'L'] as const) {
    irises.push(place(pupils[side]));
    for (const [sx, sy] of [
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
    ] as const) {
      irises.push(place(plus(pupils[side], toOuter(head, [(sx * scene.irisMm) / 2, (sy * scene.irisMm) / 2, 0]))));
    }
  }
  const all = [...landmarks, ...irises];
  return pressUnderCard(scene, seeing, all);
}

/** Lays the landmarks that the card covers onto its back, seen through the landmark model's doubt of depth. */
function pressUnderCard(scene: SyntheticScene, seeing: SyntheticSeeing, landmarks: readonly Landmark[]): Landmark[] {
  const { camera, card } = scene;
  const corners = cardCornersOfScene(scene).map((corner) => photograph(camera, corner));
  const axes = axesOfCard(scene);
  const head = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
  const gapMm = -toOuter(head, card.backMm)[2] + seeing.landmarkGapMm;
  const gapPx = (gapMm * camera.focalPx) / scene.eyesMm[2];
  const lids = [159, 145, 386, 374].map((index) => landmarks[index]!.depthPx);
  const eyesPx = lids.reduce((sum, depth) => sum + depth, 0) / lids.length;
  const centre = {
    xPx: corners.reduce((sum, corner) => sum + corner.xPx, 0) / 4,
    yPx: corners.reduce((sum, corner) => sum + corner.yPx, 0) / 4,
  };
  return landmarks.map((landmark, index) => {
    const chin = card.position === 'chin' && CHIN_LANDMARKS.includes(index);
    if (index >= IRIS_CENTRES.R || !(chin || isBetween(corners, landmark))) return landmark;
    // A plane with the normal of the card rises by minus the tangent of its lean.
    const across = (landmark.xPx - centre.xPx) * axes.z[0] + (landmark.yPx - centre.yPx) * axes.z[1];
    return { ...landmark, depthPx: eyesPx - gapPx - across / axes.z[2] };
  });
}

/** Whether a point lies on the same side of all four sides. */
function isBetween(corners: readonly ImagePoint[], point: ImagePoint): boolean {
  return corners.every((corner, i) => {
    const next = corners[(i + 1) % corners.length]!;
    return (next.xPx - corner.xPx) * (point.yPx - corner.yPx) - (next.yPx - corner.yPx) * (point.xPx - corner.xPx) > 0;
  });
}

/** Everything that is found in a picture of the scene, with the deviations that `seeing` deals out. */
export function featuresOfScene(scene: SyntheticScene, seeing: SyntheticSeeing): PictureFeatures {
  const { camera, card } = scene;
  const pupils = pupilsOfScene(scene);
  const head = axesOfSyntheticHead(scene.yawRad, scene.pitchRad, scene.rollRad);
  const measured = (point: ImagePoint, acrossPx: number, downPx: number): MeasuredPoint => ({
    xPx: point.xPx + acrossPx * seeing.deviate(),
    yPx: point.yPx + downPx * seeing.deviate(),
    covariance: { xx: acrossPx ** 2, xy: 0, yy: downPx ** 2 },
  });
  const [a, b, c, d] = cardCornersOfScene(scene).map((corner) =>
    measured(photograph(camera, corner), seeing.cornerPx, seeing.cornerPx),
  );
  const irisOf = (side: 'R' | 'L') => {
    const radiusPx = ((scene.irisMm / 2) * camera.focalPx) / pupils[side][2];
    const irisPx = seeing.irisShare * radiusPx;
    return {
      centre: measured(photograph(camera, pupils[side]), irisPx, irisPx),
      radiusPx: radiusPx * (1 + seeing.irisRadiusShare * seeing.deviate()),
      radiusUncertaintyPx: seeing.irisRadiusShare * radiusPx,
      support: 0.8,
      source: 'edges' as const,
    };
  };
  const lidsOf = (side: 'R' | 'L') => {
    const { upper, lower } = scene.lidsMm[side];
    const at = (upMm: number): ImagePoint => {
      const point = photograph(camera, plus(pupils[side], toOuter(head, [0, upMm, 0])));
      return { xPx: point.xPx, yPx: point.yPx + seeing.lidPx * seeing.deviate() };
    };
    return { upper: at(upper), lower: at(-lower), uncertaintyPx: seeing.lidPx, source: 'edges' as const };
  };
  const onMidline = (forwardMm: number): ImagePoint =>
    photograph(camera, plus(scene.eyesMm, toOuter(head, [scene.bridgeLeftMm - versionMm(scene), 0, forwardMm])));
  const asidePx = seeing.midlinePx * (1 + (scene.yawRad / MIDLINE_TURN_RAD) ** 2) * seeing.deviate();
  const beside = ({ xPx, yPx }: ImagePoint): ImagePoint => ({ xPx: xPx + asidePx, yPx });
  const ears = (widthMm: number, behindMm: number): BothSides<ImagePoint> => {
    const at = (sign: number): ImagePoint => {
      const point = photograph(camera, plus(scene.eyesMm, toOuter(head, [(sign * widthMm) / 2, 0, -behindMm])));
      return { xPx: point.xPx + (seeing.outlinePx / Math.SQRT2) * seeing.deviate(), yPx: point.yPx };
    };
    return { R: at(-1), L: at(1) };
  };
  return {
    widthPx: camera.widthPx,
    heightPx: camera.heightPx,
    landmarks: landmarksOfScene(scene, seeing),
    card: {
      source: card.source,
      corners: [a!, b!, c!, d!],
      edgeSupport: [0.9, 0.9, 0.9, 0.9],
      position: card.position,
    },
    iris: { R: irisOf('R'), L: irisOf('L') },
    lids: { R: lidsOf('R'), L: lidsOf('L') },
    midline: {
      point: beside(onMidline(scene.bridgeForwardMm)),
      betweenPupils: beside(onMidline(0)),
      uncertaintyPx: seeing.midlinePx,
      source: 'landmarks',
    },
    pupil: { R: null, L: null },
    bridge: [],
    outline: {
      head: ears(scene.headWidthMm / scene.headOverSpan, HEAD_BEHIND_MM),
      temple: ears(scene.templeWidthMm / scene.templeOverSpan, TEMPLE_BEHIND_MM),
      uncertaintyPx: seeing.outlinePx,
      skinEdge: null,
    },
  };
}

/** A picture of the scene without any deviation, and landmarks that are wrong only as the landmark model always is. */
export function perfectSeeing(scene: SyntheticScene): SyntheticSeeing {
  return {
    cornerPx: 0.15,
    irisShare: 0.015,
    irisRadiusShare: 0.02,
    lidPx: 1,
    midlinePx: 1.5,
    outlinePx: 3,
    landmarkYawRad: scene.yawRad * LANDMARK_YAW_GAIN,
    landmarkPitchRad: scene.pitchRad + LANDMARK_PITCH_BIAS_RAD[scene.card.position],
    landmarkRollRad: scene.rollRad,
    landmarkGapMm: 0,
    deviate: () => 0,
  };
}

/**
 * The scene of a worked example of the whole chain (own geometry): pupils at 500 mm, the card 15 mm before them, four pixels per
 * millimetre at the card: the card 342.4 px wide, the pupils 240 px apart, 61.8557 mm in truth, 63.1521 mm at far gaze. The head
 * stands square to the camera and the eyes look into it. The card is taken as printed markers, which have no thickness.
 */
export function chainScene(): SyntheticScene {
  return {
    camera: { widthPx: 1920, heightPx: 1440, focalPx: 1940, centre: { xPx: 960, yPx: 720 }, k1: 0 },
    eyesMm: [0, 0, 500],
    yawRad: 0,
    pitchRad: 0,
    rollRad: 0,
    pdFarMm: 63.1521,
    bridgeLeftMm: 0,
    bridgeForwardMm: 13,
    irisMm: 11.71,
    leftEyeForwardMm: 0,
    rotationToPupilMm: 10.5,
    fixationMm: 510.5,
    lidsMm: { R: { upper: 4, lower: 5.5 }, L: { upper: 4, lower: 5.5 } },
    headWidthMm: 155,
    headOverSpan: 1.022,
    templeWidthMm: 125,
    templeOverSpan: 0.82,
    card: {
      source: 'markers',
      position: 'forehead',
      widthMm: 85.6,
      heightMm: 53.98,
      thicknessMm: 0,
      backMm: [0, 55, 15],
      turnRad: 0,
      leanRad: 0,
      rollRad: 0,
    },
  };
}
