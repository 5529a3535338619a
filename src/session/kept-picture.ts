import type { PictureFeatures } from '../core/camera/features.js';
import type { PixelRectangle } from '../core/camera/pixel-plane.js';
import { clipRectangle } from '../core/camera/pixel-plane.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { SIDES } from '../core/units/side.js';
import { isoDay } from './iso-day.js';

/** For how many days a picture may be kept; the first is what is proposed. */
export const KEEPING_DAYS = [30, 90, 365] as const;

export type KeepingDays = (typeof KEEPING_DAYS)[number];

/** Around what is marked, in radii of an iris: some 6 mm, so that each edge is seen from both sides. */
const MARGIN_RADII = 1;

/** From the middle of an iris to the corners of the eye, in its radii: an eye is some 30 mm wide, an iris 11.8 mm. */
const EYE_RADII = 2.6;

/**
 * The part of a picture without which its marks could not be judged again: the card, both eyes, the bridge, and the sides of the
 * head. Mouth and hair are only in it where the card is. Null where none of it lies in the picture.
 */
export function neededRegion(features: PictureFeatures): PixelRectangle | null {
  const { card, iris, lids, midline, outline, bridge } = features;
  const points: ImagePoint[] = [...card.corners, midline.point];
  for (const side of SIDES) {
    const { centre, radiusPx } = iris[side];
    const reach = EYE_RADII * radiusPx;
    points.push({ xPx: centre.xPx - reach, yPx: centre.yPx - radiusPx });
    points.push({ xPx: centre.xPx + reach, yPx: centre.yPx + radiusPx });
    points.push(lids[side].upper, lids[side].lower, outline.head[side], outline.temple[side]);
    points.push(...bridge.map((level) => level[side]));
  }
  const margin = MARGIN_RADII * Math.max(iris.R.radiusPx, iris.L.radiusPx);
  const xs = points.map(({ xPx }) => xPx);
  const ys = points.map(({ yPx }) => yPx);
  const leftPx = Math.min(...xs) - margin;
  const topPx = Math.min(...ys) - margin;
  return clipRectangle(features, {
    leftPx,
    topPx,
    widthPx: Math.max(...xs) + margin - leftPx,
    heightPx: Math.max(...ys) + margin - topPx,
  });
}

/** The last day, ISO 8601, on which a picture is kept that is kept for so many days from today on. */
export function lastDay(now: Date, days: number): string {
  return isoDay(new Date(now.getFullYear(), now.getMonth(), now.getDate() + days));
}

/** How many days a picture is still kept: zero on its last day, below zero after that. */
export function daysLeft(keptUntil: string, now: Date): number {
  return Math.round((Date.parse(`${keptUntil}T00:00:00Z`) - Date.parse(`${isoDay(now)}T00:00:00Z`)) / 86_400_000);
}
