import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { build } from 'vite';

const ADDRESS = 'assets/device-of-test.js';

/**
 * Bundles one module of src/devices, so that a test can speak to it in the browser without the screens between.
 *
 * @param name name of the module's file, without its ending
 */
export function deviceScript(name: string): Promise<string> {
  return bundledScript(new URL(`../../src/devices/${name}.ts`, import.meta.url));
}

/** A module and all that it imports as one classic script, which leaves its exports in `deviceOfTest`. */
export async function bundledScript(module: URL): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      write: false,
      minify: false,
      target: 'es2023',
      lib: { entry: fileURLToPath(module), formats: ['iife'], name: 'deviceOfTest', fileName: 'device-of-test' },
    },
  });
  const [bundle] = Array.isArray(built) ? built : [built];
  if (bundle === undefined || !('output' in bundle)) throw new Error(`${module.href} was not bundled.`);
  return bundle.output[0].code;
}

/**
 * Runs the script in a page that shows the app, and obeys its content security policy, as if the app had served it. What the
 * module exports is then to be found in the page's `deviceOfTest`.
 */
export async function addDevice(page: Page, script: string): Promise<void> {
  await page.route(`**/${ADDRESS}`, (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: script,
      headers: { 'Cross-Origin-Resource-Policy': 'same-origin' },
    }),
  );
  await page.addScriptTag({ url: ADDRESS });
}
