import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeSessionFile } from '../../src/core/record/session-file.js';
import { appInBrowser } from '../support/app-in-browser.js';
import { driftingSessions } from '../support/drifting-sessions.js';
import { SheetPage } from '../support/sheet-page.js';

// What is drawn of one session and of many, as who looks at it and who hears it meets it. The visits are invented: see their file.

const app = appInBrowser();
let page: Page;
let sheet: SheetPage;

const VISITS = driftingSessions(80);
const LAST = VISITS.at(-1)!;

beforeAll(async () => {
  ({ page } = await app.keepOpen());
  sheet = new SheetPage(page);
  await sheet.button('Sessions').click();
  await sheet.button('Bring in a file').click();
  await page.locator('dialog input[type=file]').setInputFiles({
    name: 'visits.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeSessionFile(VISITS, { writtenAt: '2026-11-25T12:00:00.000Z' })),
  });
  await page.getByRole('dialog').getByText('80 added').waitFor();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
});

/** What axe-core says of a part of the page at a width, and that nothing scrolls sideways. */
async function expectAccessibleAt(width: number, part: string): Promise<void> {
  await page.setViewportSize({ width, height: 900 });
  const { violations, passes } = await new AxeBuilder({ page }).include(part).analyze();
  expect(passes.length, 'axe-core looked at the page').toBeGreaterThan(5);
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join()).join('; ')}`)).toEqual(
    [],
  );
  expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
}

describe('many sessions', () => {
  it('say of each gauge what it does, in a drawing and in sentences', async () => {
    await sheet.button('Gauges and readers').click();
    await page.getByText('80 readings from 80 sessions.').waitFor();
    const rule = page.getByRole('region', { name: 'Long rule' });
    await rule.getByText(/^Over \d+ visits this gauge reads \d\.\d+ mm more than the camera/).waitFor();
    await rule.getByText(/^It reads \d\.\d+ mm more than Steel rule/).waitFor();
    await rule.getByText(/^19 of 20 differences lie between/).waitFor();
    await page.getByRole('img', { name: /^Steel rule: mean \+\d\.\d+ mm/ }).waitFor();
    expect(await rule.locator('.plot-dots').first().getAttribute('d')).toMatch(/^(M[\d.]+ [\d.]+h0){10,}$/);
    await expectAccessibleAt(1280, 'main');
  });

  it('are told apart by reader, side by side for right and left', async () => {
    await page.getByRole('radio', { name: 'reader', exact: true }).check();
    await page.getByLabel('Measurement', { exact: true }).selectOption({ label: 'PD of each eye (80 sessions)' });
    await page.getByText('160 readings from 80 sessions.').waitFor();
    const reader = page.getByRole('region', { name: 'Mara' });
    await reader.getByText(/^Over \d+ visits this reader reads/).waitFor();
    expect(await reader.locator('.plot-left').first().getAttribute('d')).toMatch(/^M/);
    await page.getByText('The same as a table', { exact: true }).click();
    const cells = await page.getByRole('row', { name: /^Mara/ }).getByRole('cell').allTextContents();
    expect(Number(cells[1])).toBe(2 * Number(cells[0]));
    await expectAccessibleAt(390, 'main');
    await page.setViewportSize({ width: 1280, height: 900 });
  });

  it('are gone through by keyboard, up to the session behind a point', async () => {
    await page.getByLabel('Measurement', { exact: true }).selectOption({ label: 'PD, distance (80 sessions)' });
    await page.getByText('80 readings from 80 sessions.').waitFor();
    const points = page.getByRole('slider', { name: `Differences of ${LAST.sheet.readers.first.reader}` });
    await points.focus();
    await page.keyboard.press('End');
    const { wearer } = LAST.sheet.notes;
    await expect
      .poll(() => points.getAttribute('aria-valuetext'))
      .toMatch(
        new RegExp(`${wearer}: hand ${LAST.sheet.readers.first.readings.pdFar}, camera \\d\\d\\.\\d, difference`),
      );
    await page.keyboard.press('Enter');
    await expect.poll(() => page.getByLabel('Wearer', { exact: true }).inputValue()).toBe(wearer);
  });
});

describe('one session', () => {
  it('is drawn against the camera, without what is still covered', async () => {
    // a row of which one eye is not read any more is covered again
    await sheet.enter('monoPdL', '');
    await sheet.enter('pdFar', '70 70.5 70');
    await sheet.button('Draw hand against camera').click();
    const dialog = page.getByRole('dialog', { name: 'Hand against camera' });
    await dialog.getByText(/^\d rows are left out: their camera values are covered/).waitFor();
    await dialog
      .getByRole('img', {
        name: /^PD, distance: hand minus camera .* tolerance plus or minus 2 mm: disagrees\. Repeats: 70, 70\.5, 70\.$/,
      })
      .waitFor();
    expect(await dialog.getByRole('img', { name: /^PD of each eye/ }).count()).toBe(0);
    await dialog.getByRole('img', { name: /: 70, 70\.5, 70; range 0\.5 mm/ }).waitFor();
    await dialog.getByText('The same as a table', { exact: true }).first().click();
    expect(
      await dialog
        .getByRole('row', { name: /^PD, distance/ })
        .first()
        .innerText(),
    ).toContain('disagrees');
    await expectAccessibleAt(390, 'dialog');
    await page.setViewportSize({ width: 1280, height: 900 });
  });

  it('leads from the drawing back to the row', async () => {
    await page.getByRole('button', { name: 'PD, distance: go to its row' }).click();
    await expect.poll(() => sheet.field('pdFar').evaluate((field) => field === document.activeElement)).toBe(true);
  });
});
