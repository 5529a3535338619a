import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { writeProfileFile } from '../../src/session/profile-file.js';
import { appInBrowser } from '../support/app-in-browser.js';
import { EXAMPLE_CAMERA_PROFILE, exampleProfile } from '../support/example-profile.js';
import { BOARD_CAMERA, fixtureBoards } from '../support/fixture-boards.js';
import { fixturePicture } from '../support/fixture-pictures.js';
import { motionJpeg } from '../support/picture-file.js';
import { SheetPage } from '../support/sheet-page.js';

// Camera profiles: made from pictures and with a camera, kept, exchanged, chosen, and what may go wrong with them.

const boards = fixtureBoards();
const folder = mkdtempSync(join(tmpdir(), 'glabella-profiles-'));
const videoPath = join(folder, 'boards.mjpeg');
// Chromium plays 30 frames a second: each picture of the sheet stands still for two seconds.
writeFileSync(videoPath, Buffer.concat(boards.map((board) => motionJpeg(board, 60))));
afterAll(() => rmSync(folder, { recursive: true }));

/** 2 atan(640 / 876.54), by hand: the principal point of the rendering camera is in the middle */
const TRUE_FIELD_OF_VIEW_DEG = 72.27;

const app = appInBrowser({ camera: { videoPath } });

async function openSettings(page: Page): Promise<Locator> {
  await new SheetPage(page).button('Settings').click();
  return page.getByRole('dialog', { name: 'Settings' });
}

async function openMaking(page: Page): Promise<Locator> {
  const settings = await openSettings(page);
  await settings.getByRole('button', { name: 'Make a camera profile' }).click();
  const making = page.getByRole('dialog', { name: 'Make a camera profile' });
  await making.waitFor();
  return making;
}

/** Hands a profile file over to the settings, which are open. */
async function importFile(settings: Locator, text: string): Promise<void> {
  await settings
    .locator('input[type=file][accept*=json]')
    .setInputFiles({ name: 'profile.json', mimeType: 'application/json', buffer: Buffer.from(text) });
}

async function expectFocus(on: Locator): Promise<void> {
  await expect.poll(() => on.evaluate((element) => element === document.activeElement)).toBe(true);
}

/** The numbers of the line of the result with this name. */
async function resultNumbers(making: Locator, name: string): Promise<readonly number[]> {
  const entry = making.locator('dl > div').filter({ has: making.page().getByText(name, { exact: true }) });
  const text = (await entry.locator('dd').innerText()).replaceAll('−', '-');
  return (text.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
}

/** Looks at the dialogs that are open; the sheet behind them is looked at in accessibility.test.ts. */
async function expectAccessible(page: Page): Promise<void> {
  const offences: string[] = [];
  for (const [width, height, colorScheme] of [
    [1280, 900, 'light'],
    [390, 844, 'dark'],
  ] as const) {
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    const { violations, passes } = await new AxeBuilder({ page }).include('dialog[open]').analyze();
    expect(passes.length, 'axe-core looked at the dialog').toBeGreaterThan(10);
    offences.push(
      ...violations.map(({ id, nodes }) => `${width} px, ${colorScheme}: ${id} ${nodes[0]?.target.join(' ') ?? ''}`),
    );
    const dialog = page.getByRole('dialog').last();
    const beyondPx = await dialog.evaluate((element) => element.scrollWidth - element.clientWidth);
    if (beyondPx > 0) offences.push(`${width} px: the dialog scrolls sideways by ${beyondPx} px`);
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.emulateMedia({ colorScheme: 'light' });
  expect(offences).toEqual([]);
}

describe('a profile from pictures of the sheet', () => {
  it('has the field of view of the camera, is named, kept over a reload, and counts', async () => {
    const { page } = await app.open();
    const making = await openMaking(page);
    await expectAccessible(page);
    const other = fixturePicture('marker-card-forehead').file;
    await making.locator('input[type=file]').setInputFiles([...boards, other]);
    const make = making.getByRole('button', { name: `Make the profile from these ${boards.length} views` });
    await make.waitFor();
    const pictures = making.locator('.profile-pictures li');
    expect(await pictures.filter({ hasText: 'corners found' }).count()).toBe(boards.length);
    expect(await pictures.filter({ hasText: other.name }).innerText()).toMatch(/left out: the sheet was not found/);
    await expectAccessible(page);

    await make.click();
    await making.getByRole('heading', { name: 'The profile', exact: true }).waitFor();
    await expectAccessible(page);
    const [fieldOfViewDeg = NaN, doubtDeg = NaN] = await resultNumbers(making, 'Field of view, across');
    expect(Math.abs(fieldOfViewDeg - TRUE_FIELD_OF_VIEW_DEG)).toBeLessThan(Math.max(1.5 * doubtDeg, 0.02));
    const [fx = NaN] = await resultNumbers(making, 'Focal length');
    // the goal for profiles from eight views: half a percent
    expect(Math.abs(fx / BOARD_CAMERA.fx - 1)).toBeLessThan(0.005);
    const [k1 = NaN] = await resultNumbers(making, 'Distortion, radial k1, k2, k3');
    expect(Math.abs(k1 - BOARD_CAMERA.k1)).toBeLessThan(0.01);
    expect(await making.getByRole('img').getAttribute('aria-labelledby')).not.toBeNull();
    await making.getByText(/^\d+\s% of the frame covered$/).waitFor();

    await making.getByRole('textbox', { name: 'Name of the profile' }).fill('Front desk');
    await making.getByRole('button', { name: 'Keep the profile' }).click();
    await making.waitFor({ state: 'hidden' });
    await page.getByText('Front desk is kept and counts for pictures from files from now on.').waitFor();

    await page.reload();
    const settings = await openSettings(page);
    const choice = settings.getByRole('combobox', { name: 'Profile for pictures from files' });
    expect(await choice.locator('option:checked').innerText()).toBe('Front desk');
    await settings.getByRole('button', { name: 'Close' }).click();
    const sheet = new SheetPage(page);
    await sheet.choosePicture(other);
    await sheet.facts.getByText('Front desk').waitFor();
  });

  it('lets go of the pictures that were left out, and leads to the sheet to print', async () => {
    const { page } = await app.open();
    const making = await openMaking(page);
    await making.getByRole('button', { name: 'Print the camera sheet' }).click();
    const printing = page.getByRole('dialog', { name: 'Card to print' });
    await printing.getByRole('link', { name: 'Camera sheet (PDF)' }).waitFor();
    await page.keyboard.press('Escape');
    await expectFocus(making.getByRole('button', { name: 'Print the camera sheet' }));
    const other = fixturePicture('marker-card-forehead').file;
    await making.locator('input[type=file]').setInputFiles([boards[0]!, other, boards[1]!]);
    await making.getByText('2 of 3 pictures can be used.').waitFor();
    await making.getByRole('button', { name: 'Clear the pictures left out' }).click();
    await making.getByText('2 of 2 pictures can be used.').waitFor();
    await making.locator('input[type=file]').setInputFiles([boards[2]!]);
    await making.getByText('3 of 3 pictures can be used.').waitFor();
    expect(await making.locator('.profile-pictures li').count()).toBe(3);
  });

  it('is not made of too few of them', async () => {
    const { page } = await app.open();
    const making = await openMaking(page);
    await making.locator('input[type=file]').setInputFiles(boards.slice(0, 2));
    await making.getByText('2 of 2 pictures can be used.').waitFor();
    expect(await making.getByText('At least 4 more views.').isVisible()).toBe(true);
    expect(await making.getByRole('button', { name: /^Make the profile/ }).count()).toBe(0);
  });
});

describe('a profile made with the camera', () => {
  it('takes its views by itself, asks for positions, and makes a profile that does not count for files', async () => {
    const { page } = await app.open();
    const making = await openMaking(page);
    await making.getByRole('button', { name: 'Use the camera' }).click();
    const asked = making.locator('.profile-asked');
    await asked.waitFor();
    const first = await asked.innerText();
    expect(first).toMatch(/Hold the sheet in the middle/);
    const make = making.getByRole('button', { name: /^Make the profile from these \d+ views$/ });
    await make.waitFor();
    // the pictures of the sheet come one after the other: the positions that they show are not asked for any more
    expect(await asked.innerText()).not.toBe(first);
    await making.getByText('What is weak').waitFor();
    await expectAccessible(page);
    await make.click();
    await making.getByRole('heading', { name: 'The profile', exact: true }).waitFor();
    const [fx = NaN] = await resultNumbers(making, 'Focal length');
    expect(Math.abs(fx / BOARD_CAMERA.fx - 1)).toBeLessThan(0.01);
    await making.getByRole('textbox', { name: 'Name of the profile' }).fill('This webcam');
    await making.getByRole('button', { name: 'Keep the profile' }).click();

    await page.getByText('This webcam is kept and counts for pictures by its own camera from now on.').waitFor();
    const settings = page.getByRole('dialog', { name: 'Settings' });
    const choice = settings.getByRole('combobox', { name: 'Profile for pictures from files' });
    expect(await choice.locator('option:checked').innerText()).toBe('None');
    await settings.getByRole('button', { name: 'Close' }).click();
    const sheet = new SheetPage(page);
    // a picture from a file is none of this camera's
    await sheet.choosePicture(fixturePicture('marker-card-forehead').file);
    await sheet.facts.getByText('Camera distance').waitFor();
    expect(await sheet.facts.getByText('This webcam').count()).toBe(0);
  });

  it('lets a position be left out, and a view be taken back; Escape closes only the upper dialog', async () => {
    const { page } = await app.open();
    const making = await openMaking(page);
    await making.getByRole('button', { name: 'Use the camera' }).click();
    const asked = making.locator('.profile-asked');
    await asked.waitFor();
    const before = await asked.locator('strong').innerText();
    await making.getByRole('button', { name: 'Leave this position out' }).click();
    await expect.poll(() => asked.locator('strong').innerText()).not.toBe(before);
    await making.getByRole('button', { name: 'Take the last view back' }).waitFor();
    await page.keyboard.press('Escape');
    await making.waitFor({ state: 'hidden' });
    expect(await page.getByRole('dialog', { name: 'Settings' }).isVisible()).toBe(true);
  });
});

describe('a picture by a camera', () => {
  const facePath = join(folder, 'face.mjpeg');
  writeFileSync(facePath, motionJpeg(fixturePicture('marker-card-forehead').file, 30));
  const webcam = appInBrowser({ camera: { videoPath: facePath } });

  it('counts a profile of that camera alone, whatever was chosen for files, and says where there is none', async () => {
    const { page } = await webcam.open();
    const settings = await openSettings(page);
    await importFile(settings, writeProfileFile(exampleProfile()));
    await settings.getByRole('combobox', { name: 'Profile for pictures from files' }).selectOption('Desk camera');
    await settings.getByRole('button', { name: 'Close' }).click();
    const sheet = new SheetPage(page);
    await sheet.button('Take a picture').click();
    await sheet.button('Take the picture in 3 seconds').click();
    await page.getByRole('dialog', { name: 'Take a picture' }).waitFor({ state: 'hidden' });
    const fact = sheet.facts.locator('.profile-fact');
    await fact.getByText('No profile of this camera').waitFor();
    expect(await sheet.facts.getByText('Desk camera').count()).toBe(0);

    const cameraLabel = await fact.locator('small').innerText();
    await openSettings(page);
    await importFile(settings, writeProfileFile(exampleProfile({ name: 'Its own', cameraLabel })));
    await settings.getByRole('button', { name: 'Close' }).click();
    await fact.getByText('Its own').waitFor();
  });
});

describe('the shelf of profiles', () => {
  const file = writeProfileFile(exampleProfile());

  it('imports, renames, exports, deletes and brings back', async () => {
    const { page } = await app.open();
    const settings = await openSettings(page);
    await settings.getByText('No profile was made yet.').waitFor();
    await importFile(settings, file);
    await settings.getByText(/^Desk camera was imported\. It counts .* once it is chosen/).waitFor();
    const shelf = settings.getByRole('list', { name: 'Kept profiles' });
    expect(await shelf.innerText()).toMatch(
      // 1.4 / 1180.4 is 0.119 %
      /1280 × 720, made on 4 March 2026; focal length ± 0\.12\s%, fit 0\.21 px, 79\s% of the frame covered/,
    );
    await expectAccessible(page);

    await shelf.getByRole('button', { name: 'Rename Desk camera' }).click();
    const field = shelf.getByRole('textbox', { name: 'New name' });
    await field.fill('Nobody');
    await field.press('Escape');
    expect(await settings.isVisible()).toBe(true);
    await shelf.getByRole('button', { name: 'Rename Desk camera' }).click();
    await field.fill('Window seat');
    await field.press('Enter');
    await shelf.getByText('Window seat').waitFor();
    await settings.getByText('The profile is now called Window seat.').waitFor();
    await expectFocus(shelf.getByRole('button', { name: 'Rename Window seat' }));

    const downloading = page.waitForEvent('download');
    await shelf.getByRole('button', { name: 'Export Window seat' }).click();
    const download = await downloading;
    expect(download.suggestedFilename()).toBe('glabella-camera-profile-window-seat.json');
    const exported = readFileSync(await download.path(), 'utf8');
    expect(exported).toBe(file.replace('Desk camera', 'Window seat'));

    await shelf.getByRole('button', { name: 'Delete Window seat' }).click();
    await settings.getByText('No profile was made yet.').waitFor();
    const bringBack = settings.getByRole('button', { name: 'Bring it back' });
    await expectFocus(bringBack);
    await bringBack.press('Enter');
    await settings.getByText('Window seat is back.').waitFor();
    await expectFocus(shelf.getByRole('button', { name: 'Rename Window seat' }));
    await page.reload();
    await (await openSettings(page)).getByRole('list', { name: 'Kept profiles' }).getByText('Window seat').waitFor();
  });

  it('shows long names without overflow, cuts them at 60 letters, and refuses an empty one in words', async () => {
    const { page } = await app.open();
    const settings = await openSettings(page);
    const long = 'Webcam'.repeat(14).slice(0, 80);
    await importFile(settings, file.replace('Desk camera', long).replace('Invented Cam 720', 'Cam'.repeat(60)));
    const shelf = settings.getByRole('list', { name: 'Kept profiles' });
    await shelf.getByText(long.slice(0, 60), { exact: true }).waitFor();
    await shelf.getByRole('button', { name: /^Rename/ }).click();
    await expectAccessible(page);
    const field = shelf.getByRole('textbox', { name: 'New name' });
    expect(await field.getAttribute('maxlength')).toBe('60');
    await field.fill('  ');
    await field.press('Enter');
    await shelf.getByText('A profile needs a name: type one, or cancel.').waitFor();
    await expectFocus(field);
    await field.press('Escape');
    await expectFocus(shelf.getByRole('button', { name: /^Rename/ }));
    await settings.getByRole('combobox', { name: 'Profile for pictures from files' }).selectOption(long.slice(0, 60));
    await settings.getByRole('button', { name: 'Close' }).click();
    await expectFocus(new SheetPage(page).button('Settings'));
    const sheet = new SheetPage(page);
    await sheet.choosePicture(fixturePicture('marker-card-forehead').file);
    await sheet.facts.getByText(long.slice(0, 60)).waitFor();
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await openSettings(page);
    expect(await settings.evaluate((element) => element.scrollWidth - element.clientWidth)).toBeLessThanOrEqual(0);
  });

  it('refuses damaged and foreign files in words, and keeps what it has', async () => {
    const { page } = await app.open();
    const settings = await openSettings(page);
    await importFile(settings, file);
    await importFile(settings, file.slice(0, 200));
    await settings.getByText(/This profile file is damaged: it ends too early/).waitFor();
    await importFile(settings, file.replace('1180.4', '-1'));
    await settings.getByText(/a number in it cannot be right/).waitFor();
    await importFile(settings, '{"readings":[]}');
    await settings.getByText(/This file is no camera profile/).waitFor();
    await importFile(settings, file.replace('"version": 1', '"version": 9'));
    await settings.getByText(/written by a later Glabella/).waitFor();
    expect(await settings.getByRole('list', { name: 'Kept profiles' }).getByRole('listitem').count()).toBe(1);
  });

  it('says when the browser cannot store a profile, and loses nothing', async () => {
    const { page } = await app.open();
    await page.evaluate(() => {
      // Storage of browsers ends at some five million letters of two bytes: filled up to the last half kilobyte.
      for (const letters of [1_000_000, 100_000, 10_000, 1_000, 250]) {
        try {
          for (let index = 0; ; index++) localStorage.setItem(`full-${letters}-${index}`, 'x'.repeat(letters));
        } catch {
          // full for pieces of this size
        }
      }
    });
    const settings = await openSettings(page);
    await importFile(settings, file);
    await settings.getByText(/could not store the profiles: its storage is full/).waitFor();
    await settings.getByRole('list', { name: 'Kept profiles' }).getByText('Desk camera').waitFor();
    const downloading = page.waitForEvent('download');
    await settings.getByRole('button', { name: 'Export Desk camera' }).click();
    expect(readFileSync(await (await downloading).path(), 'utf8')).toBe(file);

    await page.evaluate(() => {
      for (const key of Object.keys(localStorage)) if (key.startsWith('full-')) localStorage.removeItem(key);
    });
    await importFile(settings, file);
    await expect.poll(() => settings.getByText(/could not store the profiles/).count()).toBe(0);
    await page.reload();
    const again = await openSettings(page);
    expect(await again.getByRole('list', { name: 'Kept profiles' }).getByRole('listitem').count()).toBe(2);
  });

  it('changes what a picture says where it fits, and says where it does not', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    await sheet.uncoverAll();
    await sheet.choosePicture(fixturePicture('marker-card-forehead').file);
    const distance = sheet.facts.locator('div').filter({ hasText: 'Camera distance' });
    const without = { pd: await sheet.estimate('pdFar'), distance: await distance.innerText() };
    const settings = await openSettings(page);
    const choice = settings.getByRole('combobox', { name: 'Profile for pictures from files' });
    // invented: four by three, as the picture is not
    const fourByThree = { ...EXAMPLE_CAMERA_PROFILE, widthPx: 640, heightPx: 480, fx: 440, fy: 440, cx: 320, cy: 240 };
    await importFile(settings, writeProfileFile(exampleProfile({ name: 'Old camera', profile: fourByThree })));
    await settings.getByText(/^Old camera was imported\./).waitFor();
    await importFile(settings, file);
    await settings.getByText(/^Desk camera was imported\. It counts .* once it is chosen/).waitFor();
    await choice.selectOption('Old camera');
    await settings.getByRole('button', { name: 'Close' }).click();
    await sheet.facts.getByText(/does not count here: it was made for pictures of 640 × 480/).waitFor();
    expect({ pd: await sheet.estimate('pdFar'), distance: await distance.innerText() }).toEqual(without);

    await openSettings(page);
    await choice.selectOption('Desk camera');
    await settings.getByRole('button', { name: 'Close' }).click();
    await sheet.facts.getByText('Desk camera').waitFor();
    expect(await sheet.facts.getByText(/does not count here/).count()).toBe(0);
    // Its field of view is much narrower than that of the usual webcam: the same card then stands farther away.
    await expect.poll(() => distance.innerText()).not.toBe(without.distance);
  });
});
