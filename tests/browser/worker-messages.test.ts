import { describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { workerScript } from '../support/built-app.js';

// The workers of the build, spoken to without the app between: each request gets exactly one reply, whatever it is.

const app = appInBrowser();

interface Reply {
  readonly v: number;
  readonly id: number;
  readonly kind: string;
  readonly code?: string;
}

/** What one worker says to all of the messages, without its progress, until it said nothing for a moment after as many replies. */
async function replies(name: 'landmarks' | 'card', messages: readonly object[]): Promise<readonly Reply[]> {
  const { page } = await app.open();
  return page.evaluate(
    ({ script, messages }) =>
      new Promise<Reply[]>((done, failed) => {
        const worker = new Worker(script, { type: 'module' });
        const heard: Reply[] = [];
        worker.onerror = (event) => failed(new Error(event.message));
        worker.onmessage = (event: MessageEvent<Reply>) => {
          if (event.data.kind === 'progress') return;
          heard.push(event.data);
          if (heard.length === messages.length) {
            // one reply too many would come in this time
            setTimeout(() => {
              worker.terminate();
              done(heard);
            }, 200);
          }
        };
        const withPicture = async (message: object) => {
          if (!('picture' in message)) return message;
          const canvas = new OffscreenCanvas(64, 48);
          canvas.getContext('2d')?.fillRect(0, 0, 64, 48);
          return { ...message, bitmap: await createImageBitmap(canvas) };
        };
        void (async () => {
          for (const message of messages) worker.postMessage(await withPicture(message));
        })();
      }),
    { script: workerScript(name), messages },
  );
}

/** Loads the landmark worker with a bundle of the test's own, or a runtime address of its own. */
function loading(id: number, overrides: object): object {
  const address = app.address();
  return {
    v: 1,
    id,
    kind: 'load-landmarks',
    runtimeAddress: `${address}vision/`,
    bundle: { kind: 'address', address: `${address}models/face-landmarks.task` },
    ...overrides,
  };
}

describe('both workers', () => {
  it.each(['landmarks', 'card'] as const)('answer what they do not understand with a fault: %s', async (name) => {
    const heard = await replies(name, [
      { v: 1, id: 4, kind: 'dance' },
      { v: 2, id: 5, kind: 'load-card' },
      { kind: 'load-card' },
    ]);
    expect(heard.map(({ v, id, kind, code }) => [v, id, kind, code])).toEqual([
      [1, 4, 'fault', 'not-understood'],
      [1, 5, 'fault', 'not-understood'],
      [1, -1, 'fault', 'not-understood'],
    ]);
  });

  it('answer a picture before they were loaded with a fault', async () => {
    expect(await replies('landmarks', [{ v: 1, id: 1, kind: 'find-landmarks', picture: true }])).toMatchObject([
      { id: 1, kind: 'fault', code: 'not-loaded' },
    ]);
    expect(await replies('card', [{ v: 1, id: 1, kind: 'find-features', picture: true, landmarks: [] }])).toMatchObject(
      [{ id: 1, kind: 'fault', code: 'not-loaded' }],
    );
  });
});

describe('the landmark worker', () => {
  it('finds no face in an empty picture', async () => {
    const heard = await replies('landmarks', [loading(1, {}), { v: 1, id: 2, kind: 'find-landmarks', picture: true }]);
    expect(heard).toMatchObject([
      { id: 1, kind: 'landmarks-loaded' },
      { id: 2, kind: 'landmarks-found', faceCount: 0, landmarks: [] },
    ]);
  });

  it('gives up a request that is cancelled before it came to it', async () => {
    const { page } = await app.open();
    const heard = await page.evaluate(
      ({ script, load }) =>
        new Promise<Reply[]>((done) => {
          const worker = new Worker(script, { type: 'module' });
          const replied: Reply[] = [];
          worker.onmessage = (event: MessageEvent<Reply>) => {
            if (event.data.kind !== 'progress') replied.push(event.data);
            if (replied.length === 2) done(replied);
          };
          worker.postMessage(load);
          void createImageBitmap(new ImageData(8, 8)).then((bitmap) => {
            worker.postMessage({ v: 1, id: 2, kind: 'find-landmarks', bitmap });
            worker.postMessage({ v: 1, id: 2, kind: 'cancel' });
          });
        }),
      { script: workerScript('landmarks'), load: loading(1, {}) },
    );
    expect(heard).toMatchObject([
      { id: 1, kind: 'landmarks-loaded' },
      { id: 2, kind: 'cancelled' },
    ]);
  });
});

describe('the landmark worker without its files', () => {
  it.each([
    ['model-not-loadable', 'a bundle that is not there', { bundle: { kind: 'address', address: 'models/none.task' } }],
    ['runtime-not-loadable', 'a runtime that is not there', { runtimeAddress: 'nowhere/' }],
  ])('says %s of %s', async (code, _, overrides) => {
    const { page, guard } = await app.prepare();
    guard.allow(/404/);
    await page.goto(app.address());
    const heard = await page.evaluate(
      ({ script, load }) =>
        new Promise<Reply>((done) => {
          const worker = new Worker(script, { type: 'module' });
          worker.onmessage = (event: MessageEvent<Reply>) => {
            if (event.data.kind !== 'progress') done(event.data);
          };
          worker.postMessage(load);
        }),
      { script: workerScript('landmarks'), load: loading(1, overrides) },
    );
    expect(heard).toMatchObject({ kind: 'fault', code });
  });

  it('says model-not-loadable of bytes that are no bundle', async () => {
    const { page, guard } = await app.prepare();
    // MediaPipe writes its own account of it to the console
    guard.allow(/./);
    await page.goto(app.address());
    const heard = await page.evaluate(
      ({ script, load }) =>
        new Promise<Reply>((done) => {
          const worker = new Worker(script, { type: 'module' });
          worker.onmessage = (event: MessageEvent<Reply>) => {
            if (event.data.kind !== 'progress') done(event.data);
          };
          worker.postMessage({ ...load, bundle: { kind: 'bytes', bytes: new ArrayBuffer(5000) } });
        }),
      { script: workerScript('landmarks'), load: loading(1, {}) },
    );
    expect(heard).toMatchObject({ kind: 'fault', code: 'model-not-loadable' });
  });
});
