import type { OutlineObservation } from '../camera/features.js';
import type { ImagePoint } from '../geometry/vector.js';
import { degreesToRadians } from '../units/angle.js';
import type { BothSides } from '../units/side.js';
import {
  HEAD_BACK_MM,
  HEAD_RATIO,
  HEAD_RATIO_SD,
  SKIN_EDGE_BACK_SHARE,
  SKIN_EDGE_RATIO,
  SKIN_EDGE_RATIO_SD,
} from './prior-knowledge.js';

/** A head that is turned further than this out of the line of sight hides the skin before one of its ears (rendered heads). */
const SKIN_EDGE_TURN_RAD = degreesToRadians(6);

/** What the width of a head is measured between. */
export type HeadSidesKind = 'skin-edge' | 'landmarks';

export interface HeadSides {
  readonly kind: HeadSidesKind;
  readonly points: BothSides<ImagePoint>;
  /** standard uncertainty of each across the outline, in px */
  readonly uncertaintyPx: number;
}

/** Head width over the distance of such sides, and its spread from head to head. */
export const HEAD_SIDES_RATIO: Readonly<Record<HeadSidesKind, { readonly mean: number; readonly sd: number }>> = {
  'skin-edge': { mean: SKIN_EDGE_RATIO, sd: SKIN_EDGE_RATIO_SD },
  landmarks: { mean: HEAD_RATIO, sd: HEAD_RATIO_SD },
};

/**
 * The edge of the skin, if the picture shows it on both sides; null if not. `turnRad` is the angle between the direction that the head faces
 * and the line of sight, to either side.
 */
export function skinEdgeSides({ skinEdge }: OutlineObservation, turnRad: number): HeadSides | null {
  if (skinEdge === null || Math.abs(turnRad) > SKIN_EDGE_TURN_RAD) return null;
  return { kind: 'skin-edge', points: skinEdge, uncertaintyPx: skinEdge.uncertaintyPx };
}

/** The landmarks before the ears, which every picture has. */
export function landmarkSides({ head, uncertaintyPx }: OutlineObservation): HeadSides {
  return { kind: 'landmarks', points: head, uncertaintyPx };
}

/** Distance of such sides from one another, mm, where it appears as this tangent, seen with the eyes at a distance. */
export function sidesApartMm(kind: HeadSidesKind, tangent: number, eyesMm: number): number {
  return kind === 'landmarks'
    ? tangent * (eyesMm + HEAD_BACK_MM)
    : (tangent * eyesMm) / (1 - SKIN_EDGE_BACK_SHARE * tangent);
}

/** The tangent as which such sides appear: the inverse of the above. */
export function sidesTangent(kind: HeadSidesKind, apartMm: number, eyesMm: number): number {
  return apartMm / (eyesMm + (kind === 'landmarks' ? HEAD_BACK_MM : SKIN_EDGE_BACK_SHARE * apartMm));
}
