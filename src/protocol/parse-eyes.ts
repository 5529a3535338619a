import type { EyesSeed } from '../core/camera/face-landmarks.js';
import type { FourCorners } from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { isFiniteNumber, isRecord } from './message.js';

/** A point in a picture. */
export function isPoint(value: unknown): value is ImagePoint {
  return isRecord(value) && isFiniteNumber(value['xPx']) && isFiniteNumber(value['yPx']);
}

/** Four corners of an outline. */
export function areCorners(value: unknown): value is FourCorners<ImagePoint> {
  return Array.isArray(value) && value.length === 4 && value.every(isPoint);
}

/** What there is of each of both sides. */
export function isOfBothSides(value: unknown, isOne: (one: unknown) => boolean): boolean {
  return isRecord(value) && isOne(value['R']) && isOne(value['L']);
}

/** The eyes as landmarks show them. */
export function isEyes(value: unknown): value is EyesSeed {
  if (!isRecord(value)) return false;
  const { irisCentre, irisRadiusPx, middle, spanPx, rollRad } = value;
  return (
    isOfBothSides(irisCentre, isPoint) &&
    isOfBothSides(irisRadiusPx, isFiniteNumber) &&
    isPoint(middle) &&
    isFiniteNumber(spanPx) &&
    isFiniteNumber(rollRad)
  );
}
