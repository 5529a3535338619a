import { describe, expect, it } from 'vitest';
import type { ToCardWorker } from '../../src/protocol/card-messages.js';
import type { ToLandmarksWorker } from '../../src/protocol/landmarks-messages.js';
import { PROTOCOL_VERSION } from '../../src/protocol/message.js';
import { appInBrowser } from '../support/app-in-browser.js';
import type { OpenedApp } from '../support/app-in-browser.js';
import { workerScript } from '../support/built-app.js';

// Nothing leaves the device. The guard of appInBrowser fails each of these tests on any request to another origin.

const app = appInBrowser();

/** Starts a worker of the build, sends it one message, and gives its reply, or the error that it died of. */
function askWorker({ page }: OpenedApp, name: 'landmarks' | 'card', message: ToCardWorker | ToLandmarksWorker) {
  return page.evaluate(
    ({ script, message }) =>
      new Promise<{ kind: string }>((done) => {
        const worker = new Worker(script, { type: 'module' });
        worker.onerror = (event) => done({ kind: `error: ${event.message}` });
        worker.onmessage = (event: MessageEvent<{ kind: string }>) => {
          if (event.data.kind !== 'progress') done(event.data);
        };
        worker.postMessage(message);
      }),
    { script: workerScript(name), message },
  );
}

describe('privacy', () => {
  it('asks nobody but its own origin while the page loads', async () => {
    const { page, guard } = await app.open({ warmsUp: true });
    await page.waitForLoadState('networkidle');
    // by then it has begun to warm up its workers
    for (const name of ['landmarks', 'card'] as const) {
      await expect.poll(() => guard.requests, { timeout: 30_000 }).toContain(`${app.address()}${workerScript(name)}`);
    }
  });

  it('asks nobody but its own origin while the landmarks worker warms up', async () => {
    const opened = await app.open();
    const reply = await askWorker(opened, 'landmarks', {
      v: PROTOCOL_VERSION,
      id: 1,
      kind: 'load-landmarks',
      runtimeAddress: `${app.address()}vision/`,
      bundle: { kind: 'address', address: `${app.address()}models/face-landmarks.task` },
    });
    expect(reply, JSON.stringify(reply)).toMatchObject({ kind: 'landmarks-loaded' });
    expect(opened.guard.requests).toContain(`${app.address()}models/face-landmarks.task`);
    expect(opened.guard.requests).toContainEqual(expect.stringMatching(/\/vision\/vision_wasm_\w+\.wasm$/));
  });

  it('asks nobody but its own origin while the card worker warms up', async () => {
    const opened = await app.open();
    const reply = await askWorker(opened, 'card', { v: PROTOCOL_VERSION, id: 1, kind: 'load-card' });
    expect(reply, JSON.stringify(reply)).toMatchObject({ kind: 'card-loaded' });
  });
});
