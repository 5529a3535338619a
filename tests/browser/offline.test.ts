import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { firstFiles } from '../../src/server/first-files.js';
import { startStaticServer } from '../../src/server/static-server.js';
import type { RunningServer } from '../../src/server/static-server.js';
import { BUILD_FOLDER, startBuiltApp, workerScript } from '../support/built-app.js';
import { launchChromium } from '../support/chromium.js';
import { fixturePicture } from '../support/fixture-pictures.js';
import { PageGuard } from '../support/page-guard.js';
import { SheetPage } from '../support/sheet-page.js';

// A copy of the build, below a path of a host, on a server that can be stopped and given a newer build. The tests follow one another.

const picture = fixturePicture('light-card-forehead');
/** bytes that the first screen may cost on the line */
const SHELL_LIMIT = 150_000;

let folder: string;
let build: string;
let server: RunningServer;
let browser: Browser;
let context: BrowserContext;
let guard: PageGuard;
let page: Page;
let sheet: SheetPage;

const appAddress = (): string => `${server.address}below/a/path/`;
const line = () => page.getByRole('complementary', { name: 'Use without a network' });

beforeAll(async () => {
  await (await startBuiltApp()).close();
  folder = await mkdtemp(join(tmpdir(), 'glabella-offline-'));
  build = join(folder, 'below', 'a', 'path');
  await cp(BUILD_FOLDER, build, { recursive: true, preserveTimestamps: true });
  server = await startStaticServer(folder, 0, false);
  browser = await launchChromium();
  context = await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 900 } });
  guard = PageGuard.watch(context, server.address);
  page = await context.newPage();
  sheet = new SheetPage(page);
});

afterAll(async () => {
  await browser.close();
  await server.close();
  await rm(folder, { recursive: true });
});

describe('the first visit', () => {
  it('shows a sheet that can be used with no more than the first files, below 150 kB on the line', async () => {
    const first = firstFiles((address) => textOf(address));
    const later = await browser.newContext({ locale: 'en-GB', serviceWorkers: 'block' });
    await later.route('**/*', async (route) => {
      const address = route.request().url().slice(appAddress().length);
      // all else is on its way, and never comes
      if (address === '' || first.includes(address)) await route.continue();
    });
    const bare = await later.newPage();
    await bare.goto(appAddress());
    await new SheetPage(bare).enter('pdFar', '63');
    const sizes = await bare.evaluate(() =>
      [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]
        .filter((entry): entry is PerformanceResourceTiming => entry instanceof PerformanceResourceTiming)
        .map(({ encodedBodySize }) => encodedBodySize),
    );
    await later.close();
    const sum = sizes.reduce((all, one) => all + one, 0);
    expect(sum).toBeGreaterThan(SHELL_LIMIT / 3);
    expect(sum).toBeLessThan(SHELL_LIMIT);
  });

  it('keeps all files, says so, and can be installed', async () => {
    await page.goto(appAddress());
    await line().getByText('Ready for use without a network.', { exact: true }).waitFor({ timeout: 60_000 });
    const devTools = await context.newCDPSession(page);
    const { installabilityErrors } = await devTools.send('Page.getInstallabilityErrors');
    // what Playwright opens is a private window
    expect(installabilityErrors.map(({ errorId }) => errorId)).toEqual(['in-incognito']);
    expect(guard.offences()).toEqual([]);
  });
});

describe('without a network', () => {
  it('opens again, keeps what is typed, and measures a picture', async () => {
    await server.close();
    await page.reload();
    await sheet.enter('pdFar', '63');
    await sheet.uncoverAll();
    await sheet.choosePicture(picture.file);
    const { valueMm } = await sheet.estimate('pdFar');
    expect(Math.abs(valueMm - picture.pdFarMm)).toBeLessThan(2);
    expect(guard.offences()).toEqual([]);
  });

  it('keeps the policy of every answer, that of the card worker included', async () => {
    const policies = await page.evaluate(
      async (addresses) =>
        Promise.all(addresses.map(async (one) => (await fetch(one)).headers.get('content-security-policy') ?? 'none')),
      ['./', workerScript('card')],
    );
    expect(policies[0]).not.toContain("'unsafe-eval'");
    expect(policies[0]).toContain("default-src 'none'");
    expect(policies[1]).toContain("'unsafe-eval'");
    expect(await page.evaluate(() => crossOriginIsolated)).toBe(true);
  });
});

describe('a newer build', () => {
  it('waits until it is taken, and leaves what is typed', async () => {
    server = await startStaticServer(folder, Number(new URL(server.address).port), false);
    await putNewerBuild();
    await page.reload();
    await page.getByText('A newer Glabella is here').waitFor({ timeout: 60_000 });
    expect(await page.locator('meta[name=newer]').count()).toBe(0);
    await sheet.enter('headWidth', '154');
    await sheet.button('Take it now').click();
    await page.locator('meta[name=newer]').waitFor({ state: 'attached' });
    await page.getByText('A newer Glabella is here').waitFor({ state: 'detached' });
    expect(await sheet.field('pdFar').inputValue()).toBe('63');
    expect(await sheet.field('headWidth').inputValue()).toBe('154');
    await line().getByText('Ready for use without a network.', { exact: true }).waitFor();
    expect(await page.evaluate(pagesKept)).toBe(1);
    expect(guard.offences()).toEqual([]);
  });
});

/** The text of a file of the build; null where there is none. */
function textOf(address: string): string | null {
  const path = join(build, address);
  return existsSync(path) ? readFileSync(path, 'utf8') : null;
}

/** Another page in the build on the server, with a service worker that knows it. */
async function putNewerBuild(): Promise<void> {
  const old = await readFile(join(build, 'index.html'), 'utf8');
  const newer = old.replace('</head>', '<meta name="newer"></head>');
  const worker = await readFile(join(build, 'service-worker.js'), 'utf8');
  const newerWorker = worker
    .replaceAll(sha256(old), sha256(newer))
    .replaceAll(`bytes:${old.length},`, `bytes:${newer.length},`);
  expect(newerWorker).not.toBe(worker);
  await writeFile(join(build, 'index.html'), newer);
  await writeFile(join(build, 'service-worker.js'), newerWorker);
}

function sha256(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** Runs in the page: how many states of the page are kept, of old and new builds together. */
async function pagesKept(): Promise<number> {
  const requests = await Promise.all((await caches.keys()).map(async (name) => (await caches.open(name)).keys()));
  return requests.flat().filter(({ url }) => new URL(url).pathname.endsWith('/index.html')).length;
}
