import type { FileChooser, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { ReadingField } from '../../src/session/typed-sheet.js';
import { READING_FIELDS } from '../../src/session/typed-sheet.js';
import { appInBrowser } from '../support/app-in-browser.js';
import { fixturePicture } from '../support/fixture-pictures.js';
import { SheetPage } from '../support/sheet-page.js';

// The main job: hand readings, a picture, findings; with the keyboard alone.

const app = appInBrowser();

/** The hand readings of a wearer, as an optician writes them. */
const READINGS: Readonly<Record<ReadingField, string>> = {
  pdFar: '63.5',
  monoPdR: '31.5',
  monoPdL: '32',
  apertureR: '10',
  apertureL: '10.5',
  headWidth: '150',
  templeWidth: '140',
};

/** The app without its vision workers, which are not needed as long as there is no picture: it opens faster. */
async function openWithoutVision(): Promise<SheetPage> {
  const { page } = await app.prepare();
  await page.addInitScript(() => {
    // the app warms its workers up when the page is idle
    window.requestIdleCallback = () => 0;
  });
  await page.goto('./');
  await page.getByRole('heading', { name: 'Glabella' }).waitFor();
  return new SheetPage(page);
}

/** Goes on with Tab until the focus is on what is wanted; fails where the keyboard does not reach it. */
async function tabTo(page: Page, isThere: () => Promise<boolean>): Promise<void> {
  for (let presses = 0; presses < 60; presses++) {
    if (await isThere()) return;
    await page.keyboard.press('Tab');
  }
  throw new Error('The keyboard does not reach it.');
}

function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const { activeElement } = document;
    return activeElement?.getAttribute('aria-label') ?? activeElement?.textContent ?? '';
  });
}

async function focusedField(page: Page): Promise<string> {
  return page.evaluate(() => document.activeElement?.id.replace('reading-', '') ?? '');
}

describe('the demo', () => {
  it('shows with one click a measured face, findings, and the slip in the readings', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    await sheet.button('Show the invented wearer').click();
    await sheet.facts.waitFor();

    // The rendered head has a PD of 71.0 mm; 61 was written: that is one ten of the rule.
    const { valueMm, halfWidthMm } = await sheet.estimate('pdFar');
    expect(Math.abs(valueMm - 71)).toBeLessThan(1.6);
    expect(halfWidthMm).toBeLessThan(5);
    await sheet.row('pdFar').getByText('disagrees', { exact: true }).waitFor();
    for (const field of READING_FIELDS) expect(await sheet.camera(field).innerText()).toMatch(/^\d+\.\d\s±\s\d+\.\d$/);

    const misfits = page.getByRole('region', { name: 'What does not fit' });
    expect(await misfits.innerText()).toContain('PD, distance was probably read at the wrong ten: 61 instead of 71 mm');
    await misfits.getByRole('button', { name: 'Read PD, distance again', exact: true }).click();
    expect(await focusedField(page)).toBe('pdFar');

    // put right, it agrees
    await sheet.enter('pdFar', '71');
    await sheet.row('pdFar').getByText('agrees', { exact: true }).waitFor();
    expect(await misfits.getByText(/wrong ten/).count()).toBe(0);
  });

  it('leaves the reader’s own readings as they were', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    await sheet.enter('pdFar', '63.5');
    await sheet.button('Show the invented wearer').click();
    await page.getByText('Invented wearer:').waitFor();
    expect(await sheet.field('pdFar').inputValue()).toBe('61');
    await sheet.button('Back to my own sheet').click();
    expect(await sheet.field('pdFar').inputValue()).toBe('63.5');
    expect(await sheet.field('headWidth').inputValue()).toBe('');
  });
});

describe('the keyboard alone', () => {
  it('brings in a picture, types all readings, and sees each row uncovered with its finding', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    const { keyboard } = page;

    await tabTo(
      page,
      async () => (await sheet.fileInput.evaluate((input) => input === document.activeElement)) === true,
    );
    // On a busy machine the browser was seen to miss a first key: it is pressed again, with the focus where it was.
    let chooser: FileChooser | null = null;
    for (let tries = 0; tries < 4 && chooser === null; tries++) {
      expect(await sheet.fileInput.evaluate((input) => input === document.activeElement)).toBe(true);
      const opened = page.waitForEvent('filechooser', { timeout: 5000 }).catch(() => null);
      await keyboard.press('Enter');
      chooser = await opened;
    }
    expect(chooser).not.toBeNull();
    await chooser!.setFiles(fixturePicture('light-card-forehead').file);
    await sheet.facts.waitFor();
    for (const field of READING_FIELDS) expect(await sheet.camera(field).count(), `${field} is covered`).toBe(0);
    expect(await sheet.row('pdFar').innerText()).toContain('covered until your reading is in');
    expect(await sheet.row('monoPdR').innerText()).toContain('covered until R and L are in');

    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await tabTo(page, async () => (await focusedField(page)) === 'pdFar');
    for (const [index, field] of READING_FIELDS.entries()) {
      expect(await focusedField(page)).toBe(field);
      await keyboard.type(READINGS[field]);
      expect(await sheet.camera(field).count(), `${field} is covered while it is typed`).toBe(0);
      await keyboard.press('Enter');
      const isRight = field === 'monoPdR' || field === 'apertureR';
      if (isRight) expect(await sheet.camera(field).count(), 'R stays covered until L is in').toBe(0);
      else await sheet.camera(field).waitFor();
      const after = READING_FIELDS[index + 1];
      if (after !== undefined) expect(await sheet.camera(after).count(), `${after} is still covered`).toBe(0);
    }
    for (const field of READING_FIELDS) {
      expect(await sheet.field(field).inputValue()).toBe(READINGS[field]);
      expect(await sheet.row(field).innerText()).toMatch(/agrees?|disagrees?|cannot tell/);
    }
    // 63.5 was written, and the rendered head has 71.0
    const row = sheet.row('pdFar');
    expect(await row.innerText()).toContain('disagrees');
    await row
      .getByRole('img', { name: /^hand minus camera −\d\.\d mm, 95 % interval .* tolerance plus or minus \d/ })
      .waitFor();

    // back with Shift
    await sheet.field('templeWidth').focus();
    await keyboard.press('Shift+Enter');
    expect(await focusedField(page)).toBe('headWidth');
  });

  it('skips to the readings at once', async () => {
    const sheet = await openWithoutVision();
    const { page } = sheet;
    await page.keyboard.press('Tab');
    expect(await focusedName(page)).toBe('Go to the readings');
    await page.keyboard.press('Enter');
    expect(await focusedField(page)).toBe('pdFar');
  });

  it('opens and closes a dialog, and comes back to where it was', async () => {
    const sheet = await openWithoutVision();
    const { page } = sheet;
    await tabTo(page, async () => (await focusedName(page)) === 'Settings');
    await page.keyboard.press('Enter');
    const dialog = page.getByRole('dialog', { name: 'Settings' });
    await dialog.waitFor();
    expect(await page.evaluate(() => document.activeElement?.closest('dialog, [role=dialog]') !== null)).toBe(true);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    expect(await focusedName(page)).toBe('Settings');
  });

  it('opens the details of a row: definition, doubt and tolerance with its source', async () => {
    const sheet = await openWithoutVision();
    const { page } = sheet;
    const details = page.getByRole('button', { name: 'Details of PD, distance: definition, doubt and tolerance' });
    await details.focus();
    await page.keyboard.press('Enter');
    expect(await details.getAttribute('aria-expanded')).toBe('true');
    await page.getByRole('heading', { name: 'Tolerance and its source' }).waitFor();
  });
});

describe('R and L', () => {
  it('are the wearer’s, R first', async () => {
    const sheet = await openWithoutVision();
    const { page } = sheet;
    for (const [right, left] of [
      ['monoPdR', 'monoPdL'],
      ['apertureR', 'apertureL'],
    ] as const) {
      const [r, l] = [await sheet.field(right).boundingBox(), await sheet.field(left).boundingBox()];
      expect(r?.x ?? NaN).toBeLessThan(l?.x ?? NaN);
    }
    await page.getByText('R and L are the wearer’s').first().waitFor();
  });
});

describe('what is typed', () => {
  it('is refused with a sentence where it is no such reading, and stays', async () => {
    const sheet = await openWithoutVision();
    const { page } = sheet;
    await sheet.enter('pdFar', '6,3.5');
    expect(await sheet.field('pdFar').getAttribute('aria-invalid')).toBe('true');
    expect(await page.locator('#reading-pdFar-message').innerText()).toContain('“6,3.5” is not a number');
    await sheet.enter('pdFar', '635');
    expect(await page.locator('#reading-pdFar-message').innerText()).toContain('635 mm cannot be');
    // a comma is a decimal point as well
    await sheet.enter('pdFar', '63,5');
    expect(await page.locator('#reading-pdFar-message').count()).toBe(0);
    expect(await sheet.field('pdFar').inputValue()).toBe('63,5');
  });

  it('is still there after the page was loaded again', async () => {
    const sheet = await openWithoutVision();
    const { page } = sheet;
    for (const field of READING_FIELDS) await sheet.enter(field, READINGS[field]);
    await page.reload();
    for (const field of READING_FIELDS) expect(await sheet.field(field).inputValue()).toBe(READINGS[field]);
  });

  it('can be cleared and brought back', async () => {
    const sheet = await openWithoutVision();
    await sheet.enter('pdFar', '63.5');
    await sheet.button('Clear sheet').click();
    expect(await sheet.field('pdFar').inputValue()).toBe('');
    await sheet.button('Bring the readings back').click();
    expect(await sheet.field('pdFar').inputValue()).toBe('63.5');
  });
});

describe('no hand readings yet', () => {
  it('the estimates alone are shown, marked as pre-fitting estimates', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    await sheet.choosePicture(fixturePicture('marker-card-forehead').file);
    expect(await sheet.camera('pdFar').count()).toBe(0);
    await sheet.button('Show the estimates alone').click();
    const readings = page.getByRole('region', { name: 'Readings' });
    await readings.getByText('Pre-fitting estimates').waitFor();
    for (const field of READING_FIELDS) {
      expect((await sheet.estimate(field)).valueMm).toBeGreaterThan(0);
      expect(await sheet.row(field).innerText()).toContain('pre-fitting estimate');
    }
    expect(await readings.getByText(/^(agrees?|disagrees?|cannot tell)$/).count()).toBe(0);

    // readings that are typed now are not independent, and that is said
    await sheet.enter('pdFar', '69');
    await readings.getByText(/taken after the estimates were shown/).waitFor();
    expect(await readings.getByText('Pre-fitting estimates').count()).toBe(0);
    await sheet.button('Cover them again').click();
    expect(await sheet.camera('headWidth').count()).toBe(0);
  });

  it('the cautions and the promise that nothing leaves the device are on the page', async () => {
    const sheet = await openWithoutVision();
    const { page } = sheet;
    const footer = await page.locator('footer').innerText();
    expect(footer).toContain('not a clinical measurement');
    expect(footer).toContain('Local rules come first');
    expect(footer).toMatch(/Children:/);
    expect(footer).toMatch(/Squint:/);
    expect(footer).toContain('Nothing leaves this device');
    const picture = await page.getByRole('region', { name: 'Picture' }).innerText();
    expect(picture).toMatch(/must not look into lamps/);
    expect(picture).toMatch(/edges of a card are sharp/);
  });
});
