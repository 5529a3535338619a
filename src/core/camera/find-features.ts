import { adjust, type Knowledge } from '../fitting/adjustment.js';
import { applyHomography, homographyFromFourPoints, type Homography, type PlanePoint } from '../geometry/homography.js';
import { perpendicularDown, pointAlong } from '../geometry/image-direction.js';
import { distancePx, type ImagePoint } from '../geometry/vector.js';
import { fail, succeed, type Result } from '../result.js';
import { SIDES, type BothSides, type Side } from '../units/side.js';
import { bridgeBesideCard, bridgeFromLandmarks } from './bridge-flanks.js';
import { fitCardEdges } from './card-edges.js';
import { eyesFromLandmarks, LANDMARK, landmarkAt, type EyesSeed } from './face-landmarks.js';
import type { PictureFailure } from './failure.js';
import type {
  CardObservation,
  FourCorners,
  IrisObservation,
  Landmark,
  LidObservation,
  MeasuredPoint,
  OutlineObservation,
  PictureFeatures,
} from './features.js';
import { findCardByEdges, positionOfCard, shapeOfCard, softestEdgePx, TILT_LIMIT_DEG } from './find-card.js';
import { findSkinEdge } from './head-outline.js';
import { fitIrisEdges, irisEdgeWidthPx } from './iris-edge.js';
import { midlineFromLandmarks } from './midline.js';
import { fitLidEdges } from './lid-edges.js';
import { CLOSED_SHARE, DARKEST_WHITE, LEAST_PIXELS_PER_MM, softestIrisPx, TYPICAL_IRIS_MM } from './picture-limits.js';
import type { RgbaImage } from './pixel-plane.js';
import { fitPupilEdge } from './pupil-edge.js';
import { CARD_CORNERS_MM, MARKER_CARD, REFERENCE_CARD } from './reference-card.js';
import { whiteLevelOfEyes } from './white-level.js';

export type { RgbaImage } from './pixel-plane.js';

/** One marker of the marker card; its corners clockwise from the one that the dictionary calls the first. */
export interface FoundMarker {
  readonly id: number;
  readonly cornersPx: FourCorners<ImagePoint>;
}

/** Looks for the markers of the marker card; an empty list where there are none. */
export type MarkerFinder = (image: RgbaImage) => readonly FoundMarker[];

/** Largest residual of a flat card with sharp corners, as a share of its width: beyond it the card is bent or misread. Chosen. */
const BENT_SHARE = 0.012;
/** Doubt of a corner that follows from the markers, px: their corners scatter by 0.09 px, and it lies a little beyond them. */
const MARKER_CORNER_PX = 0.14;

/** Why a picture did not give all its features, and what it gave nevertheless. */
export interface MissingFeatures {
  readonly failure: PictureFailure;
  /**
   * all but the card, where only that is wrong: a guessed one stands where it is mostly held, to be put in its place by hand; null
   * where more is missing
   */
  readonly partial: PictureFeatures | null;
}

/** Finds card, irises, pupils, lids, midline, outline and bridge in a picture whose landmarks are known. */
export function findFeatures(
  image: RgbaImage,
  landmarks: readonly Landmark[],
  findMarkers: MarkerFinder,
): Result<PictureFeatures, MissingFeatures> {
  const eyes = eyesFromLandmarks(landmarks);
  const face = findFace(image, landmarks, eyes);
  if (!face.ok) return fail({ failure: face.failure, partial: null });
  const card = findCard(image, eyes, findMarkers);
  if (!card.ok) {
    if (!isOfCard(card.failure)) return fail({ failure: card.failure, partial: null });
    const midline = midlineFromLandmarks(landmarks, face.value.iris, eyes, null);
    return fail({ failure: card.failure, partial: { ...face.value, midline, card: guessCard(image, eyes) } });
  }
  const midline = midlineFromLandmarks(landmarks, face.value.iris, eyes, card.value.corners);
  const bridge = bridgeBesideCard(face.value.bridge, card.value.corners, eyes.spanPx);
  return succeed({ ...face.value, midline, bridge, card: card.value });
}

/** Whether only the card is wrong, so that a person can help by placing its corners. */
function isOfCard({ kind }: PictureFailure): boolean {
  return kind === 'no-card' || kind === 'several-cards' || kind === 'card-not-flat' || kind === 'card-tilted';
}

type FaceFeatures = Omit<PictureFeatures, 'card' | 'midline'>;

function findFace(
  image: RgbaImage,
  landmarks: readonly Landmark[],
  eyes: EyesSeed,
): Result<FaceFeatures, PictureFailure> {
  const whiteLevel = whiteLevelOfEyes(image, (index) => landmarkAt(landmarks, index));
  if (whiteLevel < DARKEST_WHITE) return fail({ kind: 'too-dark', meanLevel: whiteLevel, limitLevel: DARKEST_WHITE });
  const closed = SIDES.filter((side) => openingShare(landmarks, side, eyes) < CLOSED_SHARE);
  if (closed.length > 0) return fail({ kind: 'eyes-closed', side: closed.length === 2 ? 'both' : closed[0]! });
  const pixelsPerMm = (eyes.irisRadiusPx.R + eyes.irisRadiusPx.L) / TYPICAL_IRIS_MM;
  if (pixelsPerMm < LEAST_PIXELS_PER_MM) {
    return fail({ kind: 'too-far', pixelsPerMm, limitPixelsPerMm: LEAST_PIXELS_PER_MM });
  }
  const fits = fitIrisEdges(image, eyes, irisRatio(landmarks, eyes));
  // A blurred picture often hides the edge of one iris altogether: the other one tells why.
  const found = SIDES.flatMap((side) => (fits[side].ok ? [fits[side].value] : []));
  const meanRadiusPx = found.reduce((sum, { radiusPx }) => sum + radiusPx, 0) / found.length;
  const edgeWidthPx = Math.max(...found.map((one) => irisEdgeWidthPx(image, one, eyes.rollRad)));
  const limitPx = softestIrisPx(meanRadiusPx);
  if (edgeWidthPx > limitPx) return fail({ kind: 'blurred', edgeWidthPx, limitPx });
  if (!fits.R.ok || !fits.L.ok) {
    const missing = SIDES.filter((side) => !fits[side].ok);
    return fail({ kind: 'iris-not-found', side: missing.length === 2 ? 'both' : missing[0]! });
  }
  const iris: BothSides<IrisObservation> = { R: fits.R.value, L: fits.L.value };
  const lidsOf = (side: Side): LidObservation => fitLidEdges(image, landmarks, iris[side], side, eyes.rollRad);
  return succeed({
    widthPx: image.widthPx,
    heightPx: image.heightPx,
    landmarks,
    iris,
    pupil: { R: fitPupilEdge(image, iris.R), L: fitPupilEdge(image, iris.L) },
    lids: { R: lidsOf('R'), L: lidsOf('L') },
    outline: findOutline(image, landmarks, eyes),
    bridge: bridgeFromLandmarks(landmarks),
  });
}

/** Distances at which the camera is taken to be, and the eyes from one another, to tell the ratio of the irises; a fifth is little. */
const TYPICAL_DISTANCE_MM = 480;
const TYPICAL_PD_MM = 62;

/**
 * Ratio of the radii of the irises in the picture, left over right, from how much further one eye is: the depths of the eye
 * corners in the landmarks. On rendered heads turned by up to 15 degrees it errs by 0.6 % (standard deviation).
 */
function irisRatio(landmarks: readonly Landmark[], eyes: EyesSeed): number {
  const depth = (side: Side): number =>
    (landmarkAt(landmarks, LANDMARK.outerEyeCorner[side]).depthPx +
      landmarkAt(landmarks, LANDMARK.innerEyeCorner[side]).depthPx) /
    2;
  return Math.exp(((depth('R') - depth('L')) / eyes.spanPx) * (TYPICAL_PD_MM / TYPICAL_DISTANCE_MM));
}

function openingShare(landmarks: readonly Landmark[], side: Side, eyes: EyesSeed): number {
  const upper = landmarkAt(landmarks, LANDMARK.upperLid[side]);
  const lower = landmarkAt(landmarks, LANDMARK.lowerLid[side]);
  return distancePx(upper, lower) / (2 * eyes.irisRadiusPx[side]);
}

function findCard(
  image: RgbaImage,
  eyes: EyesSeed,
  findMarkers: MarkerFinder,
): Result<CardObservation, PictureFailure> {
  const markers = findMarkers(image).filter((marker) => marker.id < MARKER_PLACES.length);
  const ids = new Set(markers.map((marker) => marker.id));
  if (ids.size < markers.length) return fail({ kind: 'several-cards' });
  if (markers.length >= 2) return cardFromMarkers(image, markers, eyes);
  const found = findCardByEdges(image, eyes);
  if (!found.ok) return found;
  const { fitted, residualPx, tiltDeg } = found.value;
  return checkCard(fitted.corners, {
    observation: {
      source: 'edges',
      corners: fitted.corners,
      edgeSupport: fitted.support,
      position: positionOfCard(fitted.corners, eyes),
    },
    residualPx,
    tiltDeg,
    edgeWidthPx: fitted.edgeWidthPx,
  });
}

/** Where the markers lie on the card: the corner of each that is the card's own corner, mm; ids 0 to 3 from the top left. */
const MARKER_PLACES: readonly PlanePoint[] = CARD_CORNERS_MM.map(([x, y]) => {
  const inset = MARKER_CARD.marginMm + MARKER_CARD.markerSideMm / 2;
  return { x: x - Math.sign(x) * inset, y: y - Math.sign(y) * inset };
});

const HALF_MARKER = MARKER_CARD.markerSideMm / 2;
const MARKER_CORNERS: readonly PlanePoint[] = [
  { x: -HALF_MARKER, y: -HALF_MARKER },
  { x: HALF_MARKER, y: -HALF_MARKER },
  { x: HALF_MARKER, y: HALF_MARKER },
  { x: -HALF_MARKER, y: HALF_MARKER },
];

function cardFromMarkers(
  image: RgbaImage,
  markers: readonly FoundMarker[],
  eyes: EyesSeed,
): Result<CardObservation, PictureFailure> {
  const pairs = markers.flatMap((marker) =>
    marker.cornersPx.map((px, i) => {
      const place = MARKER_PLACES[marker.id]!;
      const corner = MARKER_CORNERS[i]!;
      return { plane: { x: place.x + corner.x, y: place.y + corner.y }, px };
    }),
  );
  const homography = fitHomography(pairs);
  if (homography === null) return fail({ kind: 'no-card' });
  const variance = MARKER_CORNER_PX ** 2 * (4 / markers.length);
  const corners = CARD_CORNERS_MM.map(([x, y]) => {
    const seen = applyHomography(homography, { x, y });
    return { xPx: seen.x, yPx: seen.y, covariance: { xx: variance, xy: 0, yy: variance } };
  }) as unknown as FourCorners<MeasuredPoint>;
  const shape = shapeOfCard(image, corners);
  if (shape === null) return fail({ kind: 'no-card' });
  // Whoever holds the card upside down sees the markers turned: the corners are given as the picture shows them.
  const upright = asSeen(corners, eyes);
  const rim = fitCardEdges(image, upright, [0.02]);
  return checkCard(upright, {
    observation: {
      source: 'markers',
      corners: upright,
      edgeSupport: rim?.support ?? [0, 0, 0, 0],
      position: positionOfCard(upright, eyes),
    },
    ...shape,
    edgeWidthPx: rim?.edgeWidthPx ?? 0,
  });
}

/** Turns the order of the corners so that the first is at the top left of an upright face. */
function asSeen(corners: FourCorners<MeasuredPoint>, eyes: EyesSeed): FourCorners<MeasuredPoint> {
  const right = (a: ImagePoint, b: ImagePoint): number =>
    (b.xPx - a.xPx) * Math.cos(eyes.rollRad) + (b.yPx - a.yPx) * Math.sin(eyes.rollRad);
  const [a, b, c, d] = corners;
  return right(a, b) > 0 ? corners : [c, d, a, b];
}

/** Homography by least squares over more than four points, from the exact one through four of them that lie far apart. */
function fitHomography(pairs: readonly { readonly plane: PlanePoint; readonly px: ImagePoint }[]): Homography | null {
  const extreme = (score: (point: PlanePoint) => number) =>
    pairs.reduce((best, pair) => (score(pair.plane) > score(best.plane) ? pair : best));
  const spread = [
    extreme(({ x, y }) => -x - y),
    extreme(({ x, y }) => x - y),
    extreme(({ x, y }) => x + y),
    extreme(({ x, y }) => y - x),
  ];
  const start = homographyFromFourPoints(
    spread.map((pair) => pair.plane),
    spread.map((pair) => ({ x: pair.px.xPx, y: pair.px.yPx })),
  );
  if (!start.ok) return null;
  const asHomography = (x: readonly number[]): Homography => [
    x[0]!,
    x[1]!,
    x[2]!,
    x[3]!,
    x[4]!,
    x[5]!,
    x[6]!,
    x[7]!,
    1,
  ];
  const knowledge: Knowledge<'marker'> = {
    sources: new Array<'marker'>(2 * pairs.length).fill('marker'),
    robust: () => true,
    residuals: (x) =>
      pairs.flatMap(({ plane, px }) => {
        const seen = applyHomography(asHomography(x), plane);
        return [(seen.x - px.xPx) / MARKER_CORNER_PX, (seen.y - px.yPx) / MARKER_CORNER_PX];
      }),
  };
  const outcome = adjust(knowledge, start.value.slice(0, 8), [1e-5, 1e-5, 1e-3, 1e-5, 1e-5, 1e-3, 1e-7, 1e-7]);
  return outcome.ok ? asHomography(outcome.value.parameters) : null;
}

function checkCard(
  corners: FourCorners<ImagePoint>,
  card: {
    readonly observation: CardObservation;
    readonly residualPx: number;
    readonly tiltDeg: number;
    readonly edgeWidthPx: number;
  },
): Result<CardObservation, PictureFailure> {
  const widthPx = distancePx(corners[0], corners[1]);
  if (card.tiltDeg > TILT_LIMIT_DEG) {
    return fail({ kind: 'card-tilted', tiltDeg: card.tiltDeg, limitDeg: TILT_LIMIT_DEG });
  }
  const softest = softestEdgePx(corners);
  if (card.edgeWidthPx > softest) {
    return fail({ kind: 'blurred', edgeWidthPx: card.edgeWidthPx, limitPx: softest });
  }
  if (card.residualPx > Math.max(1, BENT_SHARE * widthPx)) {
    return fail({ kind: 'card-not-flat', residualPx: card.residualPx });
  }
  return succeed(card.observation);
}

/** A card on the forehead in the size that the eyes suggest. */
function guessCard(image: RgbaImage, eyes: EyesSeed): CardObservation {
  const widthPx = (REFERENCE_CARD.widthMm / 61.5) * eyes.spanPx;
  const heightPx = (widthPx * REFERENCE_CARD.heightMm) / REFERENCE_CARD.widthMm;
  const across = { xPx: Math.cos(eyes.rollRad), yPx: Math.sin(eyes.rollRad) };
  const down = perpendicularDown(eyes.rollRad);
  const centre = pointAlong(eyes.middle, down, -1.05 * eyes.spanPx);
  const corner = (x: number, y: number): MeasuredPoint => {
    const point = pointAlong(pointAlong(centre, across, (x * widthPx) / 2), down, (y * heightPx) / 2);
    return {
      xPx: Math.min(Math.max(point.xPx, 1), image.widthPx - 1),
      yPx: Math.min(Math.max(point.yPx, 1), image.heightPx - 1),
      covariance: { xx: 25, xy: 0, yy: 25 },
    };
  };
  return {
    source: 'hand',
    corners: [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)],
    edgeSupport: [0, 0, 0, 0],
    position: 'forehead',
  };
}

/** Landmarks on the outline of the face: before the ears, and on the temples. */
const HEAD_SIDE = { R: 127, L: 356 } as const;
const TEMPLE_SIDE = { R: 34, L: 264 } as const;

function findOutline(image: RgbaImage, landmarks: readonly Landmark[], eyes: EyesSeed): OutlineObservation {
  const point = (index: number): ImagePoint => {
    const { xPx, yPx } = landmarkAt(landmarks, index);
    return { xPx, yPx };
  };
  const head = { R: point(HEAD_SIDE.R), L: point(HEAD_SIDE.L) };
  return {
    head,
    temple: { R: point(TEMPLE_SIDE.R), L: point(TEMPLE_SIDE.L) },
    uncertaintyPx: (1.5 / 63) * eyes.spanPx,
    skinEdge: findSkinEdge(image, { head, rollRad: eyes.rollRad }),
  };
}
