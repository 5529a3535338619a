import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { workerScript } from '../support/built-app.js';

// The assembled model in the built worker, on a portrait whose iris centres are known.

const app = appInBrowser();
const PORTRAIT = new URL('../fixtures/pictures/portrait-astronaut.png', import.meta.url);
/** The publisher's own bundle, where a session has it beside the project; it is no part of it. */
const PUBLISHERS_BUNDLE = fileURLToPath(new URL('../../../shared/models/face_landmarker.task', import.meta.url));

interface Found {
  readonly kind: string;
  readonly faceCount: number;
  readonly landmarks: readonly { readonly xPx: number; readonly yPx: number }[];
}

async function landmarksOfPortrait(bundle: object): Promise<Found> {
  const { page } = await app.open();
  const address = app.address();
  return page.evaluate(
    ({ script, bundle, runtimeAddress, portrait }) =>
      new Promise<Found>((done, failed) => {
        const worker = new Worker(script, { type: 'module' });
        worker.onerror = (event) => failed(new Error(event.message));
        worker.onmessage = (event: MessageEvent<Found & { readonly id: number }>) => {
          if (event.data.kind === 'fault') failed(new Error(JSON.stringify(event.data)));
          if (event.data.kind === 'landmarks-found') {
            worker.terminate();
            done(event.data);
          }
        };
        const bytes = (base64: string): Uint8Array => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
        const given = 'base64' in bundle ? { kind: 'bytes', bytes: bytes(bundle.base64 as string).buffer } : bundle;
        worker.postMessage({ v: 1, id: 1, kind: 'load-landmarks', runtimeAddress, bundle: given });
        void createImageBitmap(new Blob([bytes(portrait) as BlobPart], { type: 'image/png' })).then((bitmap) =>
          worker.postMessage({ v: 1, id: 2, kind: 'find-landmarks', bitmap }, [bitmap]),
        );
      }),
    {
      script: workerScript('landmarks'),
      bundle,
      runtimeAddress: `${address}vision/`,
      portrait: readFileSync(PORTRAIT).toString('base64'),
    },
  );
}

describe('the landmark model', () => {
  it('finds the iris centres of a known portrait', async () => {
    const found = await landmarksOfPortrait({
      kind: 'address',
      address: `${app.address()}models/face-landmarks.task`,
    });
    expect(found.faceCount).toBe(1);
    expect(found.landmarks).toHaveLength(478);
    // Portrait: NASA, public domain. Centres as two bundles of the model, the publisher's and one assembled by hand, gave them to about half a pixel.
    expect(found.landmarks[468]!.xPx).toBeCloseTo(203.5, 0);
    expect(found.landmarks[468]!.yPx).toBeCloseTo(101.1, 0);
    expect(found.landmarks[473]!.xPx).toBeCloseTo(246.6, 0);
    expect(found.landmarks[473]!.yPx).toBeCloseTo(103.5, 0);
  });

  it.runIf(existsSync(PUBLISHERS_BUNDLE))(
    'can be the publisher’s own bundle (skipped where it is not at hand)',
    async () => {
      const found = await landmarksOfPortrait({ base64: readFileSync(PUBLISHERS_BUNDLE).toString('base64') });
      expect(found.landmarks).toHaveLength(478);
      expect(Math.abs(found.landmarks[468]!.xPx - 203.5)).toBeLessThan(1);
      expect(Math.abs(found.landmarks[473]!.xPx - 246.6)).toBeLessThan(1);
    },
  );
});
