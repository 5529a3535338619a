import type { PictureFailure } from '../core/camera/failure.js';
import { isOneOfShapes, oneOf } from './checks.js';
import { isFiniteNumber } from './message.js';

const isSide = oneOf('R', 'L', 'both');

/** Whether the value is a failure with all its facts. A new kind does not compile until it stands here. */
export const isPictureFailure = isOneOfShapes<PictureFailure>({
  'no-face': {},
  'several-faces': { count: isFiniteNumber },
  'no-card': {},
  'several-cards': {},
  'card-not-flat': { residualPx: isFiniteNumber },
  'card-tilted': { tiltDeg: isFiniteNumber, limitDeg: isFiniteNumber },
  'head-turned': { turnDeg: isFiniteNumber, limitDeg: isFiniteNumber },
  'eyes-closed': { side: isSide },
  'iris-not-found': { side: isSide },
  blurred: { edgeWidthPx: isFiniteNumber, limitPx: isFiniteNumber },
  'too-dark': { meanLevel: isFiniteNumber, limitLevel: isFiniteNumber },
  implausible: { irisMm: isFiniteNumber },
  'too-far': { pixelsPerMm: isFiniteNumber, limitPixelsPerMm: isFiniteNumber },
});

/** The failure; null where it is of no known kind, or one of its facts is missing. */
export function parsePictureFailure(value: unknown): PictureFailure | null {
  return isPictureFailure(value) ? value : null;
}
