import { fail } from '../result.js';
import type { MeasureFace } from './face-estimates.js';

/** What one picture says of a face. */
export const measureFace: MeasureFace = () => fail({ kind: 'no-card' });
