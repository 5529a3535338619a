import canonicalFace from '../../calibration/canonical-face.json';
import contactDepth from '../../calibration/contact-depth.json';
import type { CameraProfile } from '../../src/core/camera/camera-profile.js';
import { DEFAULT_MEASURING_SETTINGS } from '../../src/core/estimate/face-estimates.js';
import { createMeasureFace } from '../../src/core/estimate/measure-face.js';
import { createPictures } from '../../src/devices/pictures.js';
import { createVision } from '../../src/devices/vision.js';
import type { MeasuredPicture, WrittenEstimate } from './measured-picture.js';
import type { ComparedEstimate } from './truth.js';
import { COMPARED_ESTIMATES } from './truth.js';

/** What the bench asks of its page. */
export interface Bench {
  /** Loads both workers; returns the milliseconds it took. Throws where one cannot be loaded. */
  warmUp(): Promise<number>;
  /** Measures the file that was put into the page's input, as the app does. */
  measure(gaze: 'camera' | 'far', profile: CameraProfile | null): Promise<MeasuredPicture>;
}

declare global {
  interface Window {
    bench?: Bench;
  }
}

// this page lies two folders below the one that the app would have in its place
const vision = createVision({ pageAddress: new URL('../../', document.baseURI).href });
const pictures = createPictures();
// composed as src/app does
const measureFace = createMeasureFace({ canonicalFace, contactDepth });

window.bench = {
  warmUp: async () => {
    const startMs = performance.now();
    const warm = await vision.warmUp(() => undefined);
    if (!warm.ok) throw new Error(`The workers did not start: ${JSON.stringify(warm.failure)}`);
    return performance.now() - startMs;
  },
  measure: async (gaze, profile) => {
    const file = document.querySelector('input')?.files?.[0];
    if (file === undefined) throw new Error('No file was put into the input.');
    const startMs = performance.now();
    const outcome = await measureFile(file, gaze, profile);
    return { file: file.name, ...outcome, ms: performance.now() - startMs };
  },
};

type Outcome = Omit<MeasuredPicture, 'file' | 'ms'>;

async function measureFile(file: File, gaze: 'camera' | 'far', profile: CameraProfile | null): Promise<Outcome> {
  const opened = await pictures.open(file, file.name);
  if (!opened.ok) return notDetected(opened.failure.kind);
  const found = await vision.findFeatures(opened.value, () => undefined, new AbortController().signal);
  opened.value.bitmap.close();
  if (!found.ok) return notDetected(found.failure.failure.kind);
  const measured = measureFace(found.value, { ...DEFAULT_MEASURING_SETTINGS, gaze, profile });
  if (!measured.ok) return notDetected(measured.failure.kind);
  const estimates: Partial<Record<ComparedEstimate, WrittenEstimate>> = {};
  for (const name of COMPARED_ESTIMATES) {
    const { value, standardUncertainty, low, high } = measured.value.estimates[name];
    estimates[name] = { valueMm: value, uMm: standardUncertainty, lowMm: low, highMm: high };
  }
  const { iris, card } = found.value;
  return {
    ok: true,
    reason: null,
    estimates,
    irisPx: { R: [iris.R.centre.xPx, iris.R.centre.yPx], L: [iris.L.centre.xPx, iris.L.centre.yPx] },
    cardPx: card.corners.map(({ xPx, yPx }) => [xPx, yPx] as const),
  };
}

function notDetected(reason: string): Outcome {
  return { ok: false, reason, estimates: {}, irisPx: null, cardPx: null };
}
