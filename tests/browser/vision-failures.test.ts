import { describe, expect, it } from 'vitest';
import type { BrowserContext } from 'playwright-core';
import type { OpeningOptions } from '../support/app-in-browser.js';
import { appInBrowser } from '../support/app-in-browser.js';
import { fixturePicture } from '../support/fixture-pictures.js';
import { SheetPage } from '../support/sheet-page.js';

// Parts that cannot be loaded, and workers that die: a sentence, a way out, and the readings stay.

const app = appInBrowser();
const picture = fixturePicture('marker-card-forehead').file;

/** What the browser and the vision runtime write to the console about a file that did not come. */
const FILE_MISSING = [/Failed to load resource/, /net::ERR_FAILED/, /Failed to fetch/, /dynamically imported module/];

async function openWithout(
  file: string | RegExp,
  options: OpeningOptions = {},
): Promise<{ sheet: SheetPage; context: BrowserContext }> {
  const { page, context, guard } = await app.prepare(options);
  guard.allow(...FILE_MISSING);
  await context.route(file, (route) => route.abort());
  await page.goto('./');
  const sheet = new SheetPage(page);
  await sheet.enter('pdFar', '69.5');
  await sheet.choosePicture(picture);
  return { sheet, context };
}

describe('a part that cannot be loaded', () => {
  it.each([
    ['the landmark model', /\.task$/, /landmark model could not be loaded/, /Reload the page/],
    [
      'WebAssembly of the landmarks',
      /\.wasm$/,
      /face landmarks could not be loaded; WebAssembly/,
      /WebAssembly allowed/,
    ],
    ['the script of the landmark worker', /landmarks\.worker/, /face landmarks could not be loaded/, /Reload the page/],
    ['OpenCV', /load-open-cv/, /card finder could not be loaded/, /Hand readings work without it/],
    ['the script of the card worker', /card\.worker/, /card finder could not be loaded/, /Reload the page/],
  ])('%s', async (_, file, what, wayOut) => {
    const { sheet } = await openWithout(file);
    const sentence = await sheet.failure.innerText();
    expect(sentence).toMatch(what);
    expect(sentence).toMatch(wayOut);
    expect(await sheet.field('pdFar').inputValue()).toBe('69.5');
  });

  it.each([
    ['the landmark model', /\.task$/],
    ['the script of the card worker', /card\.worker/],
  ])('and can after all (%s): the same picture is measured without a reload', async (_, file) => {
    const { sheet, context } = await openWithout(file, { warmsUp: true });
    await context.unrouteAll();
    await sheet.choosePicture(picture);
    expect(await sheet.failure.allInnerTexts()).toEqual([]);
    await sheet.camera('pdFar').waitFor();
  });
});

describe('a browser without WebAssembly', () => {
  // V8 offers no WebAssembly where it may not compile at run time, as in browsers that are set to be extra careful
  const withoutWebAssembly = appInBrowser({ switches: ['--js-flags=--jitless'] });

  it('says so', async () => {
    const { page, guard } = await withoutWebAssembly.open({ warmsUp: true });
    guard.allow(/WebAssembly/);
    const sheet = new SheetPage(page);
    await sheet.choosePicture(picture);
    expect(await sheet.failure.innerText()).toMatch(/could not be loaded; WebAssembly may be switched off/);
    expect(await sheet.failure.innerText()).toMatch(/Hand readings work without it/);
  });
});

describe('a worker that dies over a picture', () => {
  it.each([
    ['find-landmarks', /landmarks\.worker/, /face landmarks stopped while it worked/],
    ['find-features', /card\.worker/, /card finder stopped while it worked/],
  ] as const)('while it was asked to %s', async (kind, script, sentence) => {
    const { page, guard } = await app.prepare();
    guard.allow(/dies on purpose/);
    // The request never reaches the worker, so that it is certainly still open when the worker dies.
    await page.addInitScript((kind) => {
      // eslint-disable-next-line @typescript-eslint/unbound-method -- it is only called on workers, below
      const post = Worker.prototype.postMessage as (message: unknown, transfer: Transferable[]) => void;
      let isLost = false;
      Worker.prototype.postMessage = function (this: Worker, message: { kind: string }, transfer: Transferable[]) {
        if (message.kind === kind && !isLost) isLost = true;
        else post.call(this, message, transfer);
        Object.assign(window, { isLostForTest: isLost });
      } as Worker['postMessage'];
    }, kind);
    await page.goto('./');
    const sheet = new SheetPage(page);
    await sheet.enter('pdFar', '69.5');

    await sheet.bringPicture(async () => {
      await sheet.fileInput.setInputFiles(picture);
      await page.waitForFunction(() => (window as unknown as { isLostForTest?: boolean }).isLostForTest === true);
      const worker = page.workers().find((each) => script.test(each.url()));
      await worker?.evaluate(() => {
        setTimeout(() => {
          throw new Error('the worker dies on purpose');
        });
      });
    });
    expect(await sheet.failure.innerText()).toMatch(sentence);
    expect(await sheet.failure.innerText()).toMatch(/Try the picture again/);
    expect(await sheet.field('pdFar').inputValue()).toBe('69.5');

    await sheet.choosePicture(picture);
    expect(await sheet.failure.allInnerTexts()).toEqual([]);
    await sheet.camera('pdFar').waitFor();
  });
});

describe('the page', () => {
  it('shows progress while the parts are loaded, and does not block', async () => {
    const { page, context } = await app.prepare({ warmsUp: true });
    let letGo: () => void = () => undefined;
    const held = new Promise<void>((done) => (letGo = done));
    await context.route(/\.task$/, async (route) => {
      await held;
      await route.continue();
    });
    await page.goto('./');
    const sheet = new SheetPage(page);
    await sheet.fileInput.setInputFiles(picture);
    await page.getByRole('progressbar', { name: 'Loading the face landmarks' }).waitFor();
    // readings are typed meanwhile
    await sheet.enter('pdFar', '69.5');
    expect(await sheet.field('pdFar').inputValue()).toBe('69.5');
    letGo();
    await sheet.facts.waitFor();
    await sheet.camera('pdFar').waitFor();
  });
});
