import type {
  CardObservation,
  FourCorners,
  IrisObservation,
  LidObservation,
  MeasuredPoint,
  PictureFeatures,
} from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { distancePx } from '../core/geometry/vector.js';
import { unreachable } from '../core/result.js';
import type { Side } from '../core/units/side.js';

/** A point of the picture's overlay that a person can move. */
export type Handle =
  | { readonly kind: 'card-corner'; readonly corner: 0 | 1 | 2 | 3 }
  | { readonly kind: 'iris-centre'; readonly side: Side }
  /** a point on the iris edge, level with its centre, towards the right of the picture: sets the radius */
  | { readonly kind: 'iris-edge'; readonly side: Side }
  | { readonly kind: 'lid-upper'; readonly side: Side }
  | { readonly kind: 'lid-lower'; readonly side: Side }
  | { readonly kind: 'midline' };

export const CARD_HANDLES: readonly Handle[] = [
  { kind: 'card-corner', corner: 0 },
  { kind: 'card-corner', corner: 1 },
  { kind: 'card-corner', corner: 2 },
  { kind: 'card-corner', corner: 3 },
];

export const MIDLINE_HANDLE: Handle = { kind: 'midline' };

/** The handles of one eye. */
export function eyeHandles(side: Side): readonly Handle[] {
  return [
    { kind: 'iris-centre', side },
    { kind: 'iris-edge', side },
    { kind: 'lid-upper', side },
    { kind: 'lid-lower', side },
  ];
}

/** A name of the handle that differs from every other's. */
export function handleKey(handle: Handle): string {
  switch (handle.kind) {
    case 'card-corner':
      return `card-corner-${handle.corner}`;
    case 'iris-centre':
    case 'iris-edge':
    case 'lid-upper':
    case 'lid-lower':
      return `${handle.kind}-${handle.side}`;
    case 'midline':
      return 'midline';
    default:
      return unreachable(handle);
  }
}

/**
 * Standard uncertainties of what a person places under the loupe, in px of the picture. Chosen: half a pixel is what a
 * sharp edge allows, the rest is the hand; under the loupe a lid margin is placed as surely as an iris edge.
 */
export const HAND_CORNER_PX = 0.6;
export const HAND_IRIS_PX = 0.5;
export const HAND_LID_PX = 0.5;
/** The midline is a judgement: by eye half a millimetre of a distance between the eyes of about 63 mm. Chosen. */
export const HAND_MIDLINE_SHARE = 0.5 / 63;

const MIN_RADIUS_PX = 1;

/** Where a handle stands in the picture. */
export function handlePoint(features: PictureFeatures, handle: Handle): ImagePoint {
  switch (handle.kind) {
    case 'card-corner':
      return features.card.corners[handle.corner];
    case 'iris-centre':
      return features.iris[handle.side].centre;
    case 'iris-edge': {
      const iris = features.iris[handle.side];
      return { xPx: iris.centre.xPx + iris.radiusPx, yPx: iris.centre.yPx };
    }
    case 'lid-upper':
      return features.lids[handle.side].upper;
    case 'lid-lower':
      return features.lids[handle.side].lower;
    case 'midline':
      return features.midline.point;
    default:
      return unreachable(handle);
  }
}

/**
 * The features after a person moved a handle to `target` (px of the picture; kept inside it). Lids stay on the head's vertical
 * through the pupil, the midline on the line of the eyes; what was moved is marked as placed by hand and takes a hand's doubt.
 */
export function moveHandle(features: PictureFeatures, handle: Handle, target: ImagePoint): PictureFeatures {
  const point: ImagePoint = {
    xPx: clamp(target.xPx, 0, features.widthPx),
    yPx: clamp(target.yPx, 0, features.heightPx),
  };
  switch (handle.kind) {
    case 'card-corner':
      return { ...features, card: cardWithCorner(features.card, handle.corner, point) };
    case 'iris-centre': {
      const iris: IrisObservation = {
        ...features.iris[handle.side],
        centre: placedByHand(point, HAND_IRIS_PX),
        source: 'hand',
      };
      const moved = { ...features, iris: { ...features.iris, [handle.side]: iris } };
      return { ...moved, lids: { ...moved.lids, [handle.side]: lidsOnPupil(moved, handle.side) } };
    }
    case 'iris-edge': {
      const iris = features.iris[handle.side];
      const resized: IrisObservation = {
        ...iris,
        radiusPx: Math.max(MIN_RADIUS_PX, distancePx(iris.centre, point)),
        radiusUncertaintyPx: HAND_IRIS_PX,
        source: 'hand',
      };
      return { ...features, iris: { ...features.iris, [handle.side]: resized } };
    }
    case 'lid-upper':
    case 'lid-lower': {
      const end = handle.kind === 'lid-upper' ? 'upper' : 'lower';
      const placed = projectOn(point, features.iris[handle.side].centre, headVertical(features));
      const lids: LidObservation = {
        ...features.lids[handle.side],
        [end]: placed,
        uncertaintyPx: HAND_LID_PX,
        source: 'hand',
      };
      return { ...features, lids: { ...features.lids, [handle.side]: lids } };
    }
    case 'midline': {
      const placed = projectOn(point, features.midline.point, eyeLine(features));
      return {
        ...features,
        midline: {
          point: placed,
          betweenPupils: null,
          uncertaintyPx: handMidlinePx(features),
          source: 'hand',
        },
      };
    }
    default:
      return unreachable(handle);
  }
}

/** The features with a card whose four corners a person vouches for as they stand. */
export function vouchForCorners(features: PictureFeatures): PictureFeatures {
  const [a, b, c, d] = features.card.corners;
  const corners: FourCorners<MeasuredPoint> = [vouched(a), vouched(b), vouched(c), vouched(d)];
  return { ...features, card: { ...features.card, corners, source: 'hand', edgeSupport: FULL_SUPPORT } };
}

/** Unit direction of the head's vertical in the picture: square to the line through both irises, pointing down. */
export function headVertical(features: PictureFeatures): ImagePoint {
  const along = eyeLine(features);
  return { xPx: -along.yPx, yPx: along.xPx };
}

// The person says where the corner is; how far an edge was seen by the computer no longer matters.
const FULL_SUPPORT: FourCorners<number> = [1, 1, 1, 1];

function cardWithCorner(card: CardObservation, corner: 0 | 1 | 2 | 3, point: ImagePoint): CardObservation {
  const placed = placedByHand(point, HAND_CORNER_PX);
  const at = (index: 0 | 1 | 2 | 3): MeasuredPoint => (index === corner ? placed : card.corners[index]);
  return { ...card, corners: [at(0), at(1), at(2), at(3)], source: 'hand', edgeSupport: FULL_SUPPORT };
}

function vouched(point: MeasuredPoint): MeasuredPoint {
  return placedByHand(point, HAND_CORNER_PX);
}

function placedByHand(point: ImagePoint, standardUncertaintyPx: number): MeasuredPoint {
  const variance = standardUncertaintyPx ** 2;
  return { xPx: point.xPx, yPx: point.yPx, covariance: { xx: variance, xy: 0, yy: variance } };
}

function lidsOnPupil(features: PictureFeatures, side: Side): LidObservation {
  const lids = features.lids[side];
  const centre = features.iris[side].centre;
  const down = headVertical(features);
  return { ...lids, upper: projectOn(lids.upper, centre, down), lower: projectOn(lids.lower, centre, down) };
}

/** Unit direction from the wearer's right iris to the left one. */
function eyeLine(features: PictureFeatures): ImagePoint {
  const { R, L } = features.iris;
  const length = distancePx(R.centre, L.centre);
  if (length === 0) return { xPx: 1, yPx: 0 };
  return { xPx: (L.centre.xPx - R.centre.xPx) / length, yPx: (L.centre.yPx - R.centre.yPx) / length };
}

/** The foot of `point` on the line through `origin` along the unit `direction`. */
function projectOn(point: ImagePoint, origin: ImagePoint, direction: ImagePoint): ImagePoint {
  const along = (point.xPx - origin.xPx) * direction.xPx + (point.yPx - origin.yPx) * direction.yPx;
  return { xPx: origin.xPx + along * direction.xPx, yPx: origin.yPx + along * direction.yPx };
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

/** Standard uncertainty of a midline that was placed by hand, px of the picture. */
export function handMidlinePx({ iris }: PictureFeatures): number {
  return HAND_MIDLINE_SHARE * distancePx(iris.R.centre, iris.L.centre);
}
