import type { Vector3 } from '../geometry/vector.js';
import type { FourCorners } from './features.js';

/**
 * The reference card as ISO/IEC 7810 defines ID-1 (values as reported by secondary texts; the limits of the width and height of
 * an unused card from memory): 85.60 mm x 53.98 mm, 0.76 mm thick, corners of radius 3.18 mm.
 */
export const REFERENCE_CARD = {
  widthMm: 85.6,
  heightMm: 53.98,
  thicknessMm: 0.76,
  cornerRadiusMm: 3.18,
  /** half the range between the size limits of an unused card, over the width, with a rectangular distribution (GUM 4.3.7) */
  relativeSizeUncertainty: 0.125 / 85.6 / Math.sqrt(3),
} as const;

/** The marker card: the same outline, with four square markers whose corners are known. */
export const MARKER_CARD = {
  markerSideMm: 16,
  marginMm: 4,
} as const;

/** The sharp corners of the card in its own frame: origin in the middle, x to the right and y down as seen, z into the card, mm. */
export const CARD_CORNERS_MM: FourCorners<Vector3> = [
  [-REFERENCE_CARD.widthMm / 2, -REFERENCE_CARD.heightMm / 2, 0],
  [REFERENCE_CARD.widthMm / 2, -REFERENCE_CARD.heightMm / 2, 0],
  [REFERENCE_CARD.widthMm / 2, REFERENCE_CARD.heightMm / 2, 0],
  [-REFERENCE_CARD.widthMm / 2, REFERENCE_CARD.heightMm / 2, 0],
];
