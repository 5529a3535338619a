import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { fixturePicture } from '../support/fixture-pictures.js';
import { SheetPage } from '../support/sheet-page.js';

// Whatever was done to a session is taken back and done again, step by step, and the list of keys is one key away.

const app = appInBrowser();

const truth = fixturePicture('light-card-forehead');

function buttons(page: Page): { readonly undo: Locator; readonly redo: Locator } {
  const group = page.getByRole('group', { name: 'Undo and redo' });
  return { undo: group.getByRole('button', { name: /^Undo: / }), redo: group.getByRole('button', { name: /^Redo: / }) };
}

async function nameOf(button: Locator): Promise<string | null> {
  return button.getAttribute('aria-label');
}

describe('undo and redo', () => {
  it('go step by step by keys and buttons, and the focus goes where it shows', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    const { undo, redo } = buttons(page);
    await undo.waitFor();
    expect(await undo.getAttribute('aria-disabled')).toBe('true');

    await sheet.field('pdFar').fill('63.5');
    await sheet.field('pdFar').press('Enter');
    await page.getByRole('textbox', { name: 'Wearer', exact: true }).fill('Mo');
    await page.getByRole('checkbox', { name: /^Squint/ }).check();
    await page.getByRole('combobox', { name: /Light/ }).selectOption('dim');
    expect(await nameOf(undo)).toBe('Undo: light at the pupil reading');
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    expect(await page.getByRole('checkbox', { name: /^Squint/ }).isChecked()).toBe(false);
    expect(await nameOf(undo)).toBe('Undo: name or number of the wearer');
    await undo.click();
    await page.getByText('Undone: name or number of the wearer.').waitFor({ state: 'attached' });
    expect(await nameOf(undo)).toBe('Undo: PD, distance 63.5');
    await page.keyboard.press('Control+z');
    expect(await sheet.field('pdFar').inputValue()).toBe('');
    expect(await sheet.field('pdFar').evaluate((field) => field === document.activeElement)).toBe(true);

    await page.keyboard.press('Control+Shift+z');
    expect(await sheet.field('pdFar').inputValue()).toBe('63.5');
    await page.keyboard.press('Control+y');
    expect(await page.getByRole('textbox', { name: 'Wearer', exact: true }).inputValue()).toBe('Mo');
    expect(await nameOf(redo)).toBe('Redo: squint');
    // all entries are still there, what was undone among them
    await sheet.button('All entries').click();
    const lines = await page.getByRole('dialog').getByRole('row').count();
    expect(lines).toBeGreaterThanOrEqual(4);
  });

  it('take one field as one step, also while it is typed in, and leave the search to the browser', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    await buttons(page).undo.waitFor();
    await sheet.field('pdNear').pressSequentially('60.5');
    await page.keyboard.press('Control+z');
    expect(await sheet.field('pdNear').inputValue()).toBe('');
    await page.keyboard.press('Control+y');
    expect(await sheet.field('pdNear').inputValue()).toBe('60.5');
    const search = page.getByRole('combobox', { name: 'Go to a measurement' });
    await search.pressSequentially('pup');
    await page.keyboard.press('Control+z');
    expect(await search.inputValue()).not.toBe('pup');
    expect(await sheet.field('pdNear').inputValue()).toBe('60.5');
  });

  it('outlive the page as nothing but what stands there, with all entries', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    await buttons(page).undo.waitFor();
    await sheet.field('pdFar').fill('63.5');
    await sheet.field('pdNear').fill('60');
    await sheet.field('pdNear').press('Enter');
    await page.keyboard.press('Control+z');
    await expect.poll(() => sheet.field('pdNear').inputValue()).toBe('');
    await page.waitForTimeout(500);
    await page.reload();
    await buttons(page).undo.waitFor();
    expect(await sheet.field('pdFar').inputValue()).toBe('63.5');
    expect(await sheet.field('pdNear').inputValue()).toBe('');
    expect(await buttons(page).undo.getAttribute('aria-disabled')).toBe('true');
  });

  it('bring a picture back that was put away, with what was moved in it', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    const { undo } = buttons(page);
    await sheet.uncoverAll();
    await sheet.choosePicture(truth.file);
    const found = await sheet.camera('pdFar').innerText();
    await sheet.corner('top right').focus();
    for (let press = 0; press < 12; press++) await page.keyboard.press('ArrowRight');
    await expect.poll(() => sheet.camera('pdFar').innerText()).not.toBe(found);
    const moved = await sheet.camera('pdFar').innerText();
    await sheet.button('Put the picture away').click();
    await sheet.button('Take a picture').waitFor();
    expect(await nameOf(undo)).toBe('Undo: picture put away');
    await undo.click();
    await expect.poll(() => sheet.camera('pdFar').innerText()).toBe(moved);
    // the bitmap was not closed: it is drawn again
    expect(await page.locator('.stage canvas').first().isVisible()).toBe(true);
    await undo.click();
    await expect.poll(() => sheet.camera('pdFar').innerText()).toBe(found);
    const corner = sheet.corner('top right');
    expect(await corner.evaluate((handle) => handle === document.activeElement)).toBe(true);
  });
});

describe('the list of keys', () => {
  it('opens by ? and by F1, not while text is typed, and by a button', async () => {
    const { page } = await app.open();
    const sheet = new SheetPage(page);
    await buttons(page).undo.waitFor();
    const list = page.getByRole('dialog', { name: 'Keys' });
    await page.getByRole('textbox', { name: 'Remark' }).pressSequentially('well?');
    expect(await list.count()).toBe(0);
    await page.keyboard.press('F1');
    await list.waitFor();
    await list.getByText('Ctrl + Shift + Z').waitFor();
    await page.keyboard.press('Escape');
    await list.waitFor({ state: 'detached' });
    await sheet.button('Keys').focus();
    await page.keyboard.press('?');
    await list.waitFor();
    await list.getByRole('checkbox', { name: 'Let single characters be keys' }).uncheck();
    await list.getByRole('button', { name: 'Close' }).click();
    // switched off, and still off after the page was opened again
    await page.keyboard.press('?');
    await page.keyboard.press('/');
    expect(await list.count()).toBe(0);
    expect(
      await page
        .getByRole('combobox', { name: 'Go to a measurement' })
        .evaluate((one) => one === document.activeElement),
    ).toBe(false);
    await page.reload();
    await buttons(page).undo.waitFor();
    await page.keyboard.press('?');
    expect(await list.count()).toBe(0);
    await sheet.button('Keys').click();
    await list.getByRole('checkbox', { name: 'Let single characters be keys' }).check();
    await page.keyboard.press('Escape');
    await page.keyboard.press('/');
    expect(
      await page
        .getByRole('combobox', { name: 'Go to a measurement' })
        .evaluate((one) => one === document.activeElement),
    ).toBe(true);
  });
});
