import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import type { RunningServer } from '../../src/server/static-server.js';
import { startBuiltApp } from './built-app.js';
import { launchChromium } from './chromium.js';
import type { ChromiumOptions } from './chromium.js';
import { PageGuard } from './page-guard.js';
import { withoutWarmUp } from './without-warm-up.js';

/** A page of the app with its guard. */
export interface OpenedApp {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly guard: PageGuard;
}

/** How the app is opened: viewport, locale and so on, as Playwright has them, and what only some tests need. */
export interface OpeningOptions extends BrowserContextOptions {
  /**
   * The app warms up its vision workers when it is idle, as it does for its users. Without it they are loaded by the first picture,
   * so that a test that needs none does not pay for them.
   */
  readonly warmsUp?: boolean;
}

/** The real build in a real browser, for the tests of one file. */
export interface AppInBrowser {
  /** address of the app, with a slash at its end */
  address(): string;
  browser(): Browser;
  /** Opens the app in a context of its own (viewport, locale, … as wished); closed after the test. */
  open(options?: OpeningOptions): Promise<OpenedApp>;
  /** The same without going to any address yet, for routes and init scripts. */
  prepare(options?: OpeningOptions): Promise<OpenedApp>;
  /** Opens the app for all tests of the file, so that its workers are loaded once at most; to be called in a `beforeAll`. */
  keepOpen(options?: OpeningOptions): Promise<OpenedApp>;
}

/**
 * Serves the build and starts Chromium once for the tests of a file; to be called at the top of the file or of a
 * `describe`. After each test its pages are closed, and the test fails if a guard saw a request to another origin or an
 * error that the test did not allow.
 */
export function appInBrowser(options: ChromiumOptions = {}): AppInBrowser {
  let server: RunningServer | undefined;
  let browser: Browser | undefined;
  let opened: OpenedApp[] = [];
  const kept: OpenedApp[] = [];

  beforeAll(async () => {
    server = await startBuiltApp();
    browser = await launchChromium(options);
  });

  afterEach(async () => {
    const seen = [...opened, ...kept].flatMap(({ guard }) => guard.offences());
    for (const { context } of opened) await context.close();
    opened = [];
    expect(seen, 'no foreign requests and no errors in the browser').toEqual([]);
  });

  afterAll(async () => {
    for (const { context } of kept) await context.close();
    await browser?.close();
    await server?.close();
  });

  function started<Thing>(thing: Thing | undefined): Thing {
    if (thing === undefined) throw new Error('The browser and the server only run while the tests of the file do.');
    return thing;
  }

  async function openContext({ warmsUp = false, ...contextOptions }: OpeningOptions = {}): Promise<OpenedApp> {
    const context = await started(browser).newContext({
      baseURL: started(server).address,
      locale: 'en-GB',
      viewport: { width: 1280, height: 900 },
      // one that keeps all files for use without a network would fetch the whole build each time
      serviceWorkers: 'block',
      ...contextOptions,
    });
    // for what hangs: a busy computer was seen to take half a minute until its vision workers are loaded
    context.setDefaultTimeout(60_000);
    const guard = PageGuard.watch(context, started(server).address);
    if (!warmsUp) await withoutWarmUp(context);
    return { page: await context.newPage(), context, guard };
  }

  async function prepare(contextOptions?: OpeningOptions): Promise<OpenedApp> {
    const app = await openContext(contextOptions);
    opened.push(app);
    return app;
  }

  return {
    address: () => started(server).address,
    browser: () => started(browser),
    prepare,
    async open(contextOptions) {
      const app = await prepare(contextOptions);
      await app.page.goto('./');
      return app;
    },
    async keepOpen(contextOptions) {
      const app = await openContext(contextOptions);
      kept.push(app);
      await app.page.goto('./');
      return app;
    },
  };
}
