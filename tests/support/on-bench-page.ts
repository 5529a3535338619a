import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { build } from 'vite';
import { startStaticServer } from '../../src/server/static-server.js';
import { launchChromium } from './chromium.js';
import type { ChromiumOptions } from './chromium.js';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Builds a page of a folder of tests as the app is built, and hands to `work` what opens it in Chromium. What the page throws or
 * complains of goes to the standard error. Server and browser are ended afterwards, whatever happened.
 *
 * @param page folder below `tests` and name of the page's file, without `.html`
 * @param browserOptions how Chromium is started
 */
export async function onBenchPage<Value>(
  { folder, name }: { readonly folder: string; readonly name: string },
  work: (openPage: () => Promise<Page>) => Promise<Value>,
  browserOptions: ChromiumOptions = {},
): Promise<Value> {
  const outDir = join(PROJECT, 'node_modules', '.cache', name);
  await build({
    root: PROJECT,
    configFile: join(PROJECT, 'vite.config.ts'),
    logLevel: 'warn',
    build: {
      outDir,
      emptyOutDir: true,
      rolldownOptions: { input: join(PROJECT, 'tests', folder, `${name}.html`) },
    },
  });
  const server = await startStaticServer(outDir, 0, false);
  try {
    const browser = await launchChromium(browserOptions);
    try {
      return await work(async () => {
        const page = await browser.newPage();
        page.on('pageerror', (error) => console.error(`The page threw: ${error.message}`));
        page.on('console', (message) => {
          // TensorFlow Lite writes what it runs on as an error
          if (message.type() === 'error' && !message.text().startsWith('INFO:'))
            console.error(`The page says: ${message.text()}`);
        });
        await page.goto(`${server.address}tests/${folder}/${name}.html`);
        return page;
      });
    } finally {
      await browser.close();
    }
  } finally {
    await server.close();
  }
}
