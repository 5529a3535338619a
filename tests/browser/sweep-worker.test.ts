import { describe, expect, it } from 'vitest';
import canonicalFace from '../../calibration/canonical-face.json' with { type: 'json' };
import contactDepth from '../../calibration/contact-depth.json' with { type: 'json' };
import type { PictureFeatures } from '../../src/core/camera/features.js';
import { DEFAULT_MEASURING_SETTINGS } from '../../src/core/estimate/face-estimates.js';
import { createMeasureSweep } from '../../src/core/estimate/measure-sweep.js';
import { parseFromSweepWorker } from '../../src/protocol/sweep-messages.js';
import { appInBrowser } from '../support/app-in-browser.js';
import { workerScript } from '../support/built-app.js';
import { chainScene, featuresOfScene, perfectSeeing } from '../support/synthetic-face.js';

// The sweep worker of the build, spoken to without the app between.

const app = appInBrowser();

/** A synthetic face that turns from one side to the other and leans nearer. */
function frames(count: number): readonly PictureFeatures[] {
  return Array.from({ length: count }, (_, index) => {
    const share = count === 1 ? 0.5 : index / (count - 1);
    const base = chainScene();
    const distanceMm = 540 - 90 * share;
    const scene = {
      ...base,
      eyesMm: [0, 0, distanceMm] as const,
      yawRad: ((share - 0.5) * 24 * Math.PI) / 180,
      fixationMm: distanceMm + base.rotationToPupilMm,
    };
    return featuresOfScene(scene, perfectSeeing(scene));
  });
}

/** All that the worker says to these messages, until it has said as many replies, with its progress. */
async function heardOf(messages: readonly object[]): Promise<readonly unknown[]> {
  const { page } = await app.open();
  return page.evaluate(
    ({ script, messages }) =>
      new Promise<unknown[]>((done, failed) => {
        const worker = new Worker(script, { type: 'module' });
        const heard: { readonly kind: string }[] = [];
        worker.onerror = (event) => failed(new Error(event.message));
        worker.onmessage = (event: MessageEvent<{ readonly kind: string }>) => {
          heard.push(event.data);
          if (heard.filter(({ kind }) => kind !== 'progress').length === messages.length) {
            worker.terminate();
            done(heard);
          }
        };
        for (const message of messages) worker.postMessage(message);
      }),
    { script: workerScript('sweep'), messages },
  );
}

const settings = DEFAULT_MEASURING_SETTINGS;

describe('the sweep worker', () => {
  it('tells how far it has come, and then what the core says of the same frames', async () => {
    const sweep = frames(12);
    const heard = await heardOf([{ v: 1, id: 3, kind: 'measure-sweep', frames: sweep, settings }]);
    const shares = heard.slice(0, -1).map((message) => {
      const progress = parseFromSweepWorker(message);
      if (progress?.kind !== 'progress') throw new Error(JSON.stringify(message));
      return progress.share;
    });
    expect(shares.length).toBeGreaterThan(1);
    expect(shares, 'it never goes back').toEqual([...shares].sort((a, b) => a - b));

    const reply = parseFromSweepWorker(heard.at(-1));
    if (reply?.kind !== 'sweep-measured') throw new Error(JSON.stringify(heard.at(-1)));
    const inNode = createMeasureSweep({ canonicalFace, contactDepth })(sweep, settings, () => undefined);
    if (!inNode.ok) throw new Error(JSON.stringify(inNode.failure));
    expect(reply.measurement.fates).toEqual(inNode.value.fates);
    // two engines may round a function of the library differently
    expect(Math.abs(reply.measurement.estimates.pdFar.value - inNode.value.estimates.pdFar.value)).toBeLessThan(1e-6);
  });

  it('says why frames give nothing', async () => {
    const heard = await heardOf([{ v: 1, id: 3, kind: 'measure-sweep', frames: frames(2), settings }]);
    expect(parseFromSweepWorker(heard.at(-1))).toMatchObject({
      kind: 'sweep-failed',
      failure: { kind: 'too-few-frames', usable: 2 },
    });
  });

  it('does not begin what is cancelled right behind', async () => {
    const { page } = await app.open();
    const heard = await page.evaluate(
      ({ script, message }) =>
        new Promise<unknown>((done) => {
          const worker = new Worker(script, { type: 'module' });
          worker.onmessage = (event: MessageEvent<unknown>) => done(event.data);
          worker.postMessage(message);
          worker.postMessage({ v: 1, id: 3, kind: 'cancel' });
        }),
      {
        script: workerScript('sweep'),
        message: { v: 1, id: 3, kind: 'measure-sweep', frames: frames(12), settings },
      },
    );
    expect(heard).toEqual({ v: 1, id: 3, kind: 'cancelled' });
  });

  it('answers what it does not understand with a fault', async () => {
    const heard = await heardOf([
      { v: 1, id: 4, kind: 'measure-sweep', frames: [{}], settings },
      { v: 1, id: 5, kind: 'measure-sweep', frames: [], settings: { ...settings, gaze: 'inward' } },
    ]);
    expect(heard).toMatchObject([
      { id: 4, kind: 'fault', code: 'not-understood' },
      { id: 5, kind: 'fault', code: 'not-understood' },
    ]);
  });
});
