import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { expectAccessiblePage } from '../support/accessible-page.js';
import { fixturePicture, fixturePixels } from '../support/fixture-pictures.js';
import { insideOf, paintedOver } from '../support/painted-picture.js';
import { heicFile, motionJpeg, pngFile } from '../support/picture-file.js';
import { SheetPage } from '../support/sheet-page.js';

// What axe-core can see of each state of the screen, light and dark, wide and narrow; and no sideways scrolling.

const folder = mkdtempSync(join(tmpdir(), 'glabella-axe-'));
const videoPath = join(folder, 'still.mjpeg');
writeFileSync(videoPath, motionJpeg(fixturePicture('marker-card-forehead').file, 5));
afterAll(() => rmSync(folder, { recursive: true }));

const app = appInBrowser({ camera: { videoPath } });
let page: Page;
let sheet: SheetPage;

beforeAll(async () => {
  ({ page } = await app.keepOpen());
  sheet = new SheetPage(page);
  await sheet.button('Show the invented wearer').waitFor();
});

const expectAccessible = (changed?: string): Promise<void> => expectAccessiblePage(page, changed);

describe('the screen', () => {
  it('with a reading that is none, repeats, an earlier entry, a folded block and the search open', async () => {
    await sheet.enter('headWidth', 'wide');
    await page.locator('#reading-headWidth-message').waitFor();
    await sheet.enter('pdFar', '63 63.5 69 63');
    await sheet.enter('pdFar', '6 3');
    await page.getByRole('checkbox', { name: /^Squint/ }).check();
    await page.getByRole('button', { name: /^Sides/ }).click();
    await page.getByRole('combobox', { name: 'Go to a measurement' }).fill('angle');
    await expectAccessible();
    await sheet.button('Next wearer').click();
    await page.getByText('The session before is kept in the list.').waitFor();
  });

  it('with the demo measured, and the details of a row open', async () => {
    await sheet.button('Show the invented wearer').click();
    await sheet.facts.waitFor();
    await sheet.button('Details of PD of each eye: definition, doubt and tolerance').click();
    await expectAccessible();
  });

  it('with the estimates alone', async () => {
    await sheet.button('Back to my own session').click();
    await sheet.choosePicture(fixturePicture('marker-card-forehead').file);
    await sheet.button('Show the estimates alone').click();
    await page.getByText('Pre-fitting estimates').waitFor();
    await expectAccessible('.alone');
  });

  it('with a picture that was refused', async () => {
    await sheet.choosePicture(heicFile('phone.heic'));
    await expectAccessible('.picture-panel');
  });

  it('with corners to be placed by hand', async () => {
    const { cardCornersPx } = fixturePicture('light-card-forehead');
    const hidden = paintedOver(fixturePixels('light-card-forehead'), insideOf(cardCornersPx, 14));
    await sheet.choosePicture(pngFile('hidden-card.png', hidden));
    await sheet.button('Place the corners by hand').click();
    await sheet.button('The corners are in place').waitFor();
    await expectAccessible('.picture-panel');
    await sheet.button('Put the picture away').click();
  });

  it('with the camera open', async () => {
    await sheet.button('Take a picture').click();
    await sheet.button('Take the picture in 3 seconds').waitFor();
    // or the picture would be taken while it is looked at
    await page.getByRole('checkbox', { name: 'Take it by itself once all is right' }).uncheck();
    await expectAccessible('dialog[open]');
    await sheet.button('Close').click();
  });

  it.each(['Settings', 'Card to print'])('with the dialog “%s” open', async (name) => {
    await sheet.button(name).click();
    await page.getByRole('dialog', { name }).waitFor();
    if (name === 'Settings') await page.getByText('Advanced: another landmark bundle').click();
    else await page.getByRole('link', { name: 'Marker card (PDF)' }).waitFor();
    // once with the whole sheet behind it
    await expectAccessible(name === 'Settings' ? undefined : 'dialog[open]');
    await sheet.button('Close').click();
  });
});

describe('the help', () => {
  it('opens at a row, goes on from there by keyboard, and gives the focus back', async () => {
    const mark = sheet.button('Help for PD, distance: how and where it is taken');
    await mark.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('img', { name: 'Pupil distance, binocular' }).waitFor();
    await expectAccessible('.help-page');
    await page.getByRole('searchbox', { name: 'Find a measurement' }).fill('BVD');
    await page.keyboard.press('Enter');
    await page.getByRole('img', { name: 'Back vertex distance' }).waitFor();
    const heading = page.getByRole('heading', { name: 'Back vertex distance' });
    expect(await heading.evaluate((element) => element === document.activeElement)).toBe(true);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await mark.evaluate((element) => element === document.activeElement)).toBe(true);
  });
});

describe('a phone', () => {
  it('shows the picture, the fields and the findings below each other, and large enough to be touched', async () => {
    await page.setViewportSize({ width: 390, height: 844 });
    await sheet.enter('pdFar', '69.5');
    await sheet.choosePicture(fixturePicture('marker-card-forehead').file);
    await sheet.row('pdFar').getByText('agrees', { exact: true }).waitFor();
    // WCAG 2.2, 2.5.8: targets are at least 24 by 24 CSS px
    for (const target of [
      sheet.field('pdFar'),
      sheet.button('Take another picture'),
      sheet.button('Undo'),
      sheet.corner('top left'),
      sheet.button('Details of PD, distance: definition, doubt and tolerance'),
    ]) {
      const box = await target.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(24);
      expect(box?.x ?? -1).toBeGreaterThanOrEqual(0);
      expect((box?.x ?? 0) + (box?.width ?? Infinity)).toBeLessThanOrEqual(390);
    }
    await page.setViewportSize({ width: 1280, height: 900 });
  });
});
