/**
 * Pictures of the main screens for the README: `npm run screens`. Needs a build; writes PNG files beside this script, with few colours where
 * ImageMagick's `convert` is installed, so that they stay small.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import { writeSessionFile } from '../../src/core/record/session-file.js';
import type { SessionRecord } from '../../src/core/record/session-record.js';
import { startBuiltApp } from '../support/built-app.js';
import { launchChromium } from '../support/chromium.js';
import { driftingSessions } from '../support/drifting-sessions.js';
import { fixturePicture } from '../support/fixture-pictures.js';
import { motionJpeg } from '../support/picture-file.js';
import { simulateTablePart } from '../speed/audit-table.js';

const DESK = { width: 1280, height: 800 };
const PHONE = { width: 390, height: 844 };

const folder = mkdtempSync(join(tmpdir(), 'glabella-screens-'));
const videoPath = join(folder, 'face.mjpeg');
writeFileSync(videoPath, motionJpeg(fixturePicture('light-card-forehead').file, 30));

const app = await startBuiltApp();
const browser = await launchChromium({ camera: { videoPath } });

async function openPage(language = 'en-GB'): Promise<Page> {
  const context = await browser.newContext({ locale: language, viewport: DESK, baseURL: app.address });
  context.setDefaultTimeout(120_000);
  const page = await context.newPage();
  // nobody takes the picture before its screen is taken
  await page.addInitScript(() => {
    localStorage.setItem('glabella.shutter', 'by-hand');
  });
  await page.goto('./');
  return page;
}

const hasConvert = spawnSync('convert', ['-version']).status === 0;

async function take(name: string, page: Page): Promise<void> {
  // whatever was pressed before: its ring belongs to no picture
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  });
  const path = fileURLToPath(new URL(`./${name}.png`, import.meta.url));
  await page.screenshot({ path });
  if (hasConvert) execFileSync('convert', [path, '-dither', 'None', '-colors', '128', `PNG8:${path}`]);
  console.log(name);
}

async function takeInTheDark(name: string, page: Page): Promise<void> {
  await page.emulateMedia({ colorScheme: 'dark' });
  await take(name, page);
  await page.emulateMedia({ colorScheme: 'light' });
}

async function showInventedWearer(page: Page, button: string): Promise<void> {
  await page.getByRole('button', { name: button }).click();
  await page.locator('.facts, .picture-facts').first().waitFor();
  await page.locator('.misfits li').first().waitFor();
}

/** Goes to the list of sessions, and brings these in. */
async function bringIn(page: Page, sessions: readonly SessionRecord[]): Promise<void> {
  await page.getByRole('button', { name: 'Sessions', exact: true }).click();
  await page.getByRole('button', { name: 'Bring in a file' }).click();
  await page.locator('dialog input[type=file]').setInputFiles({
    name: 'visits.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeSessionFile(sessions, { writtenAt: '2026-11-25T12:00:00.000Z' })),
  });
  await page.getByRole('dialog').getByText(`${sessions.length} added`).waitFor();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
}

try {
  const page = await openPage();
  await showInventedWearer(page, 'Show the invented wearer');
  await take('sheet', page);
  await takeInTheDark('sheet-dark', page);
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 794, height: 1123 });
  await take('print', page);
  await page.emulateMedia({ media: 'screen' });
  await page.setViewportSize(PHONE);
  await take('phone', page);
  await page.setViewportSize(DESK);
  await page.getByRole('button', { name: 'Order sheet' }).click();
  await page.getByRole('dialog', { name: 'Order sheet' }).waitFor();
  await take('order', page);
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await page.getByRole('button', { name: 'Draw hand against camera' }).click();
  await page.getByRole('img').first().waitFor();
  await take('drawing', page);
  await page.context().close();

  const live = await openPage();
  await live.getByRole('button', { name: 'Take a picture' }).click();
  await live.getByText('All is right: take the picture.').first().waitFor();
  // the fake camera is called by the path of its file
  await live.locator('option', { hasText: videoPath }).evaluate((option) => {
    option.textContent = 'Webcam';
  });
  await take('live', live);
  await live.setViewportSize(PHONE);
  await take('live-phone', live);
  await live.context().close();

  const many = await openPage();
  await bringIn(many, driftingSessions(90));
  await take('sessions', many);
  await many.getByRole('button', { name: 'Gauges and readers' }).click();
  await many.getByRole('img').first().waitFor();
  await take('gauges', many);
  await takeInTheDark('gauges-dark', many);
  await many.context().close();

  const audit = await openPage();
  await audit.getByRole('button', { name: 'Sessions', exact: true }).click();
  await audit.getByRole('button', { name: 'Look through records' }).click();
  await audit.locator('input[type=file]').setInputFiles({
    name: 'fittings.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from(simulateTablePart(1, 0, assembleCatalogue(OUTSIDE_TABLES)).text),
  });
  await audit.getByRole('table').waitFor();
  await take('audit', audit);
  await audit.context().close();

  const german = await openPage('de');
  await showInventedWearer(german, 'Erfundene Person zeigen');
  await take('sheet-german', german);
  await german.context().close();
} finally {
  await browser.close();
  await app.close();
  rmSync(folder, { recursive: true });
}
