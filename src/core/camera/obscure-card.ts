import type { Result } from '../result.js';
import { fail, succeed } from '../result.js';
import { applyHomography, homographyFromFourPoints } from '../geometry/homography.js';
import type { ImagePoint } from '../geometry/vector.js';
import { distancePx } from '../geometry/vector.js';
import type { FourCorners } from './features.js';
import type { PixelRectangle, RgbaImage } from './pixel-plane.js';
import { REFERENCE_CARD } from './reference-card.js';

/**
 * What stays of the card inside its edges, so that these can still be seen as they were: enough for their blur, and less than
 * the smallest print is high. Chosen.
 */
const RIM_MM = 0.5;
const RIM_PX = 1.5;

/** The corners are those of no card: in a line, or in no order around it. Nothing is covered then; do not keep the picture. */
export interface NoCardOutline {
  readonly kind: 'no-card-outline';
}

/**
 * The picture with the face of the card covered by its mean colour: nothing that is printed, embossed or mirrored on it is left,
 * while its edges and round corners stay. A copy; the picture itself is not touched.
 *
 * @param corners the sharp corners of the card, in order around it, beginning at its top left
 */
export function obscureCard(image: RgbaImage, corners: FourCorners<ImagePoint>): Result<RgbaImage, NoCardOutline> {
  const face = cardFace(image, corners);
  if (face === null) return fail({ kind: 'no-card-outline' });
  const data = new Uint8ClampedArray(image.data);
  const sums: [number, number, number] = [0, 0, 0];
  for (const from of face) {
    sums[0] += data[from]!;
    sums[1] += data[from + 1]!;
    sums[2] += data[from + 2]!;
  }
  const mean = sums.map((sum) => sum / face.length);
  for (const to of face) data.set(mean, to);
  return succeed({ ...image, data });
}

/**
 * Where the pixels of the card's face begin in the data: those whose centres lie within its outline, less the rim. Null where
 * the corners are those of no card.
 */
function cardFace(image: RgbaImage, corners: FourCorners<ImagePoint>): readonly number[] | null {
  const { widthMm, heightMm, cornerRadiusMm } = REFERENCE_CARD;
  const [topLeft, topRight, bottomRight, bottomLeft] = corners;
  if (!isConvex(corners)) return null;
  const onCard = homographyFromFourPoints(
    corners.map(({ xPx, yPx }) => ({ x: xPx, y: yPx })),
    [
      { x: -widthMm / 2, y: -heightMm / 2 },
      { x: widthMm / 2, y: -heightMm / 2 },
      { x: widthMm / 2, y: heightMm / 2 },
      { x: -widthMm / 2, y: heightMm / 2 },
    ],
  );
  if (!onCard.ok) return null;
  const leastPxPerMm = Math.min(
    distancePx(topLeft, topRight) / widthMm,
    distancePx(bottomLeft, bottomRight) / widthMm,
    distancePx(topLeft, bottomLeft) / heightMm,
    distancePx(topRight, bottomRight) / heightMm,
  );
  const rimMm = Math.max(RIM_MM, RIM_PX / leastPxPerMm);
  const xs = corners.map(({ xPx }) => xPx);
  const ys = corners.map(({ yPx }) => yPx);
  const left = Math.max(0, Math.floor(Math.min(...xs)));
  const right = Math.min(image.widthPx, Math.ceil(Math.max(...xs)));
  const top = Math.max(0, Math.floor(Math.min(...ys)));
  const bottom = Math.min(image.heightPx, Math.ceil(Math.max(...ys)));
  const face: number[] = [];
  for (let row = top; row < bottom; row++) {
    for (let column = left; column < right; column++) {
      const { x, y } = applyHomography(onCard.value, { x: column + 0.5, y: row + 0.5 });
      // how far outside of the rectangle that the centres of the round corners span; inside of it below zero
      const beyondX = Math.abs(x) - (widthMm / 2 - cornerRadiusMm);
      const beyondY = Math.abs(y) - (heightMm / 2 - cornerRadiusMm);
      const beyond = Math.hypot(Math.max(beyondX, 0), Math.max(beyondY, 0)) + Math.min(Math.max(beyondX, beyondY), 0);
      if (beyond <= cornerRadiusMm - rimMm) face.push((row * image.widthPx + column) * 4);
    }
  }
  return face;
}

/** Whether one goes around the corners with a turn to the same side at each. */
function isConvex(corners: FourCorners<ImagePoint>): boolean {
  const turns = corners.map((at, index) => {
    const before = corners[(index + 3) % 4]!;
    const after = corners[(index + 1) % 4]!;
    return (at.xPx - before.xPx) * (after.yPx - at.yPx) - (at.yPx - before.yPx) * (after.xPx - at.xPx);
  });
  return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0);
}

/** A rectangle of the picture as a picture of its own. */
export function cropImage(image: RgbaImage, region: PixelRectangle): RgbaImage {
  const { leftPx, topPx, widthPx, heightPx } = region;
  const data = new Uint8ClampedArray(widthPx * heightPx * 4);
  for (let row = 0; row < heightPx; row++) {
    const from = ((topPx + row) * image.widthPx + leftPx) * 4;
    data.set(image.data.subarray(from, from + widthPx * 4), row * widthPx * 4);
  }
  return { widthPx, heightPx, data };
}
