import canonicalFace from '../../calibration/canonical-face.json';
import contactDepth from '../../calibration/contact-depth.json';
import { createMeasureFace } from '../../src/core/estimate/measure-face.js';
import { createMeasureSweep } from '../../src/core/estimate/measure-sweep.js';
import { createPictures } from '../../src/devices/pictures.js';
import { createVision } from '../../src/devices/vision.js';
import type { FoundPicture, Given } from './measure-found.js';
import { measurePicture, measureSweepOf } from './measure-found.js';
import type { MeasuredPicture, MeasuredSweep } from './measured-picture.js';

/** What the bench asks of its page. */
export interface Bench {
  /** Loads both workers; returns the milliseconds it took. Throws where one cannot be loaded. */
  warmUp(): Promise<number>;
  /** Finds the features in the file that was put into the page's input, as the app does. */
  find(): Promise<FoundPicture>;
  measure(found: FoundPicture, given: Given): Omit<MeasuredPicture, 'file'>;
  measureSweep(
    frames: readonly { readonly frame: number; readonly found: FoundPicture }[],
    given: Given,
  ): Omit<MeasuredSweep, 'sweep'>;
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
const known = { canonicalFace, contactDepth };
const measureFace = createMeasureFace(known);
const measureSweep = createMeasureSweep(known);
const now = (): number => performance.now();

window.bench = {
  warmUp: async () => {
    const startMs = now();
    const warm = await vision.warmUp(() => undefined);
    if (!warm.ok) throw new Error(`The workers did not start: ${JSON.stringify(warm.failure)}`);
    return now() - startMs;
  },
  find: async () => {
    const file = document.querySelector('input')?.files?.[0];
    if (file === undefined) throw new Error('No file was put into the input.');
    const startMs = now();
    const opened = await pictures.open(file, file.name);
    if (!opened.ok) return { ok: false, reason: opened.failure.kind, ms: now() - startMs };
    try {
      const found = await vision.findFeatures(opened.value, () => undefined, new AbortController().signal);
      const ms = now() - startMs;
      return found.ok ? { ok: true, features: found.value, ms } : { ok: false, reason: found.failure.failure.kind, ms };
    } finally {
      opened.value.bitmap.close();
    }
  },
  measure: (found, given) => measurePicture(found, given, measureFace, now),
  measureSweep: (frames, given) => measureSweepOf(frames, given, measureSweep, now),
};
