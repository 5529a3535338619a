import type { EyesSeed } from '../../core/camera/face-landmarks.js';
import type {
  FourCorners,
  Landmark,
  MeasuredPoint,
  PictureFeatures,
  PupilObservation,
} from '../../core/camera/features.js';
import type { ImagePoint } from '../../core/geometry/vector.js';

/**
 * The part of a picture that is looked at, and its scale: working pixels = (picture pixels - origin) * scale. Both count from
 * the outer corner of the top-left pixel, so the mapping has no half pixel in it.
 */
export interface WorkingFrame {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly scale: number;
}

/** Chosen: how far around the face a card can be held, as a share of the face's larger side, on each side. */
const MARGIN_SHARE = 1;

/**
 * Chosen: the face's larger side in working pixels, at most. 1600 px on some 190 mm are 8 px/mm: far finer than any edge of a
 * real picture, and a limit to the time a portrait of many megapixels takes.
 */
const MOST_FACE_PX = 1600;

/** The frame around the face in a picture of this size. Without landmarks it is the whole picture. */
export function workingFrame(widthPx: number, heightPx: number, landmarks: readonly Landmark[]): WorkingFrame {
  const first = landmarks[0];
  if (first === undefined) return { xPx: 0, yPx: 0, widthPx, heightPx, scale: 1 };
  let [left, right, top, bottom] = [first.xPx, first.xPx, first.yPx, first.yPx];
  for (const { xPx, yPx } of landmarks) {
    left = Math.min(left, xPx);
    right = Math.max(right, xPx);
    top = Math.min(top, yPx);
    bottom = Math.max(bottom, yPx);
  }
  const facePx = Math.max(right - left, bottom - top);
  const margin = MARGIN_SHARE * facePx;
  const xPx = clamp(Math.floor(left - margin), 0, widthPx - 1);
  const yPx = clamp(Math.floor(top - margin), 0, heightPx - 1);
  return {
    xPx,
    yPx,
    widthPx: clamp(Math.ceil(right + margin), xPx + 1, widthPx) - xPx,
    heightPx: clamp(Math.ceil(bottom + margin), yPx + 1, heightPx) - yPx,
    scale: Math.min(1, MOST_FACE_PX / facePx),
  };
}

/** How far around the eyes a card is searched, in distances between them: to each side, above and below. Chosen as `searchCard` reaches. */
const SEARCH = { aside: 2.4, above: 2.9, below: 4 } as const;

/** Distance between the eyes in working pixels, at most, while a card is only searched: it is then some 135 pixels wide. Chosen. */
const SEARCH_SPAN_PX = 100;

/** The frame around the eyes in which a card is searched. */
export function searchFrame(widthPx: number, heightPx: number, { middle, spanPx }: EyesSeed): WorkingFrame {
  const xPx = clamp(Math.floor(middle.xPx - SEARCH.aside * spanPx), 0, widthPx - 1);
  const yPx = clamp(Math.floor(middle.yPx - SEARCH.above * spanPx), 0, heightPx - 1);
  return {
    xPx,
    yPx,
    widthPx: clamp(Math.ceil(middle.xPx + SEARCH.aside * spanPx), xPx + 1, widthPx) - xPx,
    heightPx: clamp(Math.ceil(middle.yPx + SEARCH.below * spanPx), yPx + 1, heightPx) - yPx,
    scale: Math.min(1, SEARCH_SPAN_PX / spanPx),
  };
}

/** The eyes of the picture in working pixels. */
export function eyesInFrame(eyes: EyesSeed, frame: WorkingFrame): EyesSeed {
  const point = ({ xPx, yPx }: ImagePoint): ImagePoint => ({
    xPx: (xPx - frame.xPx) * frame.scale,
    yPx: (yPx - frame.yPx) * frame.scale,
  });
  return {
    irisCentre: { R: point(eyes.irisCentre.R), L: point(eyes.irisCentre.L) },
    irisRadiusPx: { R: eyes.irisRadiusPx.R * frame.scale, L: eyes.irisRadiusPx.L * frame.scale },
    middle: point(eyes.middle),
    spanPx: eyes.spanPx * frame.scale,
    rollRad: eyes.rollRad,
  };
}

/** Corners found in working pixels as corners in the picture. */
export function cornersInPicture(corners: FourCorners<ImagePoint>, frame: WorkingFrame): FourCorners<ImagePoint> {
  const [a, b, c, d] = corners;
  const point = ({ xPx, yPx }: ImagePoint): ImagePoint => ({
    xPx: frame.xPx + xPx / frame.scale,
    yPx: frame.yPx + yPx / frame.scale,
  });
  return [point(a), point(b), point(c), point(d)];
}

/** Landmarks of the picture in working pixels. */
export function landmarksInFrame(landmarks: readonly Landmark[], frame: WorkingFrame): readonly Landmark[] {
  return landmarks.map((landmark) => ({
    xPx: (landmark.xPx - frame.xPx) * frame.scale,
    yPx: (landmark.yPx - frame.yPx) * frame.scale,
    depthPx: landmark.depthPx * frame.scale,
  }));
}

/** Features found in working pixels as features of the picture, with its landmarks. */
export function featuresInPicture(
  found: PictureFeatures,
  frame: WorkingFrame,
  picture: Pick<PictureFeatures, 'widthPx' | 'heightPx' | 'landmarks'>,
): PictureFeatures {
  const length = (px: number) => px / frame.scale;
  const point = ({ xPx, yPx }: ImagePoint): ImagePoint => ({
    xPx: frame.xPx + length(xPx),
    yPx: frame.yPx + length(yPx),
  });
  const measured = ({ covariance, ...place }: MeasuredPoint): MeasuredPoint => ({
    ...point(place),
    covariance: {
      xx: length(length(covariance.xx)),
      xy: length(length(covariance.xy)),
      yy: length(length(covariance.yy)),
    },
  });
  const [topLeft, topRight, bottomRight, bottomLeft] = found.card.corners;
  const iris = (side: 'R' | 'L') => ({
    ...found.iris[side],
    centre: measured(found.iris[side].centre),
    radiusPx: length(found.iris[side].radiusPx),
    radiusUncertaintyPx: length(found.iris[side].radiusUncertaintyPx),
  });
  const lids = (side: 'R' | 'L') => ({
    ...found.lids[side],
    upper: point(found.lids[side].upper),
    lower: point(found.lids[side].lower),
    uncertaintyPx: length(found.lids[side].uncertaintyPx),
  });
  const pupil = (seen: PupilObservation | null) =>
    seen && {
      centre: measured(seen.centre),
      radiusPx: length(seen.radiusPx),
      radiusUncertaintyPx: length(seen.radiusUncertaintyPx),
    };
  const { midline, outline } = found;
  return {
    widthPx: picture.widthPx,
    heightPx: picture.heightPx,
    landmarks: picture.landmarks,
    card: {
      ...found.card,
      corners: [measured(topLeft), measured(topRight), measured(bottomRight), measured(bottomLeft)],
    },
    iris: { R: iris('R'), L: iris('L') },
    pupil: { R: pupil(found.pupil.R), L: pupil(found.pupil.L) },
    lids: { R: lids('R'), L: lids('L') },
    midline: {
      ...midline,
      point: point(midline.point),
      betweenPupils: midline.betweenPupils && point(midline.betweenPupils),
      uncertaintyPx: length(midline.uncertaintyPx),
    },
    outline: {
      head: { R: point(outline.head.R), L: point(outline.head.L) },
      temple: { R: point(outline.temple.R), L: point(outline.temple.L) },
      uncertaintyPx: length(outline.uncertaintyPx),
      skinEdge: outline.skinEdge && {
        R: point(outline.skinEdge.R),
        L: point(outline.skinEdge.L),
        uncertaintyPx: length(outline.skinEdge.uncertaintyPx),
      },
    },
    bridge: found.bridge.map(({ belowCrestMm, R, L, uncertaintyPx }) => ({
      belowCrestMm,
      R: point(R),
      L: point(L),
      uncertaintyPx: length(uncertaintyPx),
    })),
  };
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}
