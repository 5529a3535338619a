import type { CameraProfile } from '../../src/core/camera/camera-profile.js';
import type { PictureFeatures } from '../../src/core/camera/features.js';
import type { FaceEstimates } from '../../src/core/estimate/estimate.js';
import type { MeasureFace, MeasuringSettings } from '../../src/core/estimate/face-estimates.js';
import { DEFAULT_MEASURING_SETTINGS } from '../../src/core/estimate/face-estimates.js';
import type { MeasureSweep } from '../../src/core/estimate/sweep.js';
import type { MeasuredEstimates, MeasuredPicture, MeasuredSweep, WrittenEstimate } from './measured-picture.js';
import type { ComparedEstimate } from './truth.js';
import { COMPARED_ESTIMATES } from './truth.js';

/** All that the app is told of a picture or a sweep besides its files. */
export interface Given {
  readonly gaze: 'camera' | 'far';
  readonly profile: CameraProfile | null;
}

/** What was found in one file, or the kind of what kept it from being found. */
export type FoundPicture =
  | { readonly ok: true; readonly features: PictureFeatures; readonly ms: number }
  | { readonly ok: false; readonly reason: string; readonly ms: number };

/** One picture's outcome from what was found in it. `now` reads a clock, in ms. */
export function measurePicture(
  found: FoundPicture,
  given: Given,
  measureFace: MeasureFace,
  now: () => number,
): Omit<MeasuredPicture, 'file'> {
  if (!found.ok) return notMeasured(found.reason, found.ms);
  const startMs = now();
  const measured = measureFace(found.features, settingsOf(given));
  const ms = found.ms + now() - startMs;
  if (!measured.ok) return notMeasured(measured.failure.kind, ms);
  const { iris, card } = found.features;
  return {
    ok: true,
    reason: null,
    ms,
    estimates: writtenEstimates(measured.value.estimates),
    irisPx: { R: [iris.R.centre.xPx, iris.R.centre.yPx], L: [iris.L.centre.xPx, iris.L.centre.yPx] },
    cardPx: card.corners.map(({ xPx, yPx }) => [xPx, yPx] as const),
  };
}

/** Frames without features are left out, as the app leaves them out. The frames stand in the order in which they were taken. */
export function measureSweepOf(
  frames: readonly { readonly frame: number; readonly found: FoundPicture }[],
  given: Given,
  measureSweep: MeasureSweep,
  now: () => number,
): Omit<MeasuredSweep, 'sweep'> {
  const usable = frames.flatMap(({ frame, found }) => (found.ok ? [{ frame, features: found.features }] : []));
  const findingMs = frames.reduce((sum, { found }) => sum + found.ms, 0);
  const startMs = now();
  const measured = measureSweep(
    usable.map(({ features }) => features),
    settingsOf(given),
    () => undefined,
  );
  const adjustmentMs = now() - startMs;
  const taken = { ms: findingMs + adjustmentMs, adjustmentMs, framesGiven: usable.length };
  if (!measured.ok) {
    const reason = measured.failure.kind;
    return { ok: false, reason, ...taken, framesUsed: 0, slippedFromFrame: null, estimates: {} };
  }
  const { framesUsed, slippedFromFrame, estimates } = measured.value;
  return {
    ok: true,
    reason: null,
    ...taken,
    framesUsed,
    slippedFromFrame: slippedFromFrame === null ? null : (usable[slippedFromFrame]?.frame ?? null),
    estimates: writtenEstimates(estimates),
  };
}

function settingsOf({ gaze, profile }: Given): MeasuringSettings {
  return { ...DEFAULT_MEASURING_SETTINGS, gaze, profile };
}

function writtenEstimates(estimates: FaceEstimates): MeasuredEstimates {
  const written: Partial<Record<ComparedEstimate, WrittenEstimate>> = {};
  for (const name of COMPARED_ESTIMATES) {
    const estimate = estimates[name];
    if (estimate === undefined) continue;
    const { value, standardUncertainty, low, high } = estimate;
    written[name] = { valueMm: value, uMm: standardUncertainty, lowMm: low, highMm: high };
  }
  return written;
}

function notMeasured(reason: string, ms: number): Omit<MeasuredPicture, 'file'> {
  return { ok: false, reason, ms, estimates: {}, irisPx: null, cardPx: null };
}
