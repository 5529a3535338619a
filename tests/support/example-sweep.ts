import type { FaceEstimates } from '../../src/core/estimate/estimate.js';
import type { FrameFate, SweepMeasurement } from '../../src/core/estimate/sweep.js';
import type { Picture } from '../../src/session/ports.js';
import type { FrameOutcome, SweepFrame } from '../../src/session/sweep-frames.js';
import { exampleFeatures } from './example-features.js';

/** A picture for what only hands it on; Node has no bitmaps. */
export function examplePicture(name: string): Picture {
  return { bitmap: {} as ImageBitmap, widthPx: 1280, heightPx: 720, name };
}

export const FOUND: FrameOutcome = { kind: 'found', features: exampleFeatures() };

export function missed(kind: 'no-card' | 'no-face'): FrameOutcome {
  return { kind: 'missed', failure: { kind }, view: null };
}

/** Frames with these outcomes, numbered from 0. */
export function exampleFrames(outcomes: readonly FrameOutcome[]): readonly SweepFrame[] {
  return outcomes.map((outcome, id) => ({
    id,
    outcome,
    thumbnail: examplePicture(`frame ${id}`),
    kept: null,
    isLeftOut: false,
  }));
}

/** A measurement with these fates, one for each frame that was given. It has no estimates: for what only hands them on. */
export function exampleMeasurement(fates: readonly FrameFate[], yawsDeg?: readonly number[]): SweepMeasurement {
  return {
    estimates: {} as FaceEstimates,
    pixelsPerMm: 2,
    advice: [],
    fates,
    framesUsed: fates.filter((fate) => fate === 'used').length,
    slippedFromFrame: null,
    yawsDeg: fates.map((_, place) => yawsDeg?.[place] ?? null),
    distancesMm: fates.map(() => 500),
  };
}
