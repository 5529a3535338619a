/**
 * Pictures of the main screens for the README: `npm run screens`. Needs a build; writes PNG files beside this script.
 */
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { startBuiltApp } from '../support/built-app.js';
import { launchChromium } from '../support/chromium.js';

const app = await startBuiltApp();
const browser = await launchChromium();
const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });

async function take(name: string, of: Page): Promise<void> {
  await of.screenshot({ path: fileURLToPath(new URL(`./${name}.png`, import.meta.url)) });
}

await page.goto(app.address);
await page.getByRole('button', { name: 'Show the invented wearer' }).click();
await page.getByRole('region', { name: 'Picture' }).getByText('midline found').waitFor({ timeout: 120_000 });
await page.getByText('disagrees').first().waitFor();
await take('sheet', page);
await page.emulateMedia({ colorScheme: 'dark' });
await take('sheet-dark', page);
await page.emulateMedia({ colorScheme: 'light' });
await page.getByRole('button', { name: 'Order sheet' }).click();
await page.getByRole('dialog', { name: 'Order sheet' }).waitFor();
await take('order', page);
await page.getByRole('button', { name: 'Close', exact: true }).click();
await page.setViewportSize({ width: 390, height: 844 });
await take('phone', page);
await browser.close();
await app.close();
