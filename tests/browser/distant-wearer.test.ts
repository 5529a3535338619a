import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { SheetPage } from '../support/sheet-page.js';
import { sweepTruth, sweepVideo } from '../support/sweep-frames.js';

// The way of an answer: the dispenser invites, the wearer is led through the pictures on a phone, with the keyboard alone, and the
// file that comes of it is dropped at the desk.

/** The 95th percentile that the project's goals ask of a sweep without a camera profile. */
const PD_LIMIT_MM = 0.7;

/** Looking at two dozen frames takes a busy computer some minutes. */
const LONG_MS = 300_000;

const PHONE = { width: 390, height: 844 };

const folder = mkdtempSync(join(tmpdir(), 'glabella-distant-'));
const videoPath = join(folder, 'sweep.mjpeg');
// Chromium plays it at 30 frames a second: each frame stands for a sixth of a second.
writeFileSync(videoPath, sweepVideo(5));
afterAll(() => rmSync(folder, { recursive: true }));

const app = appInBrowser({ camera: { videoPath } });

it(
  'invites a distant wearer, whose answer becomes a session that is marked as taken alone',
  async () => {
    const { page: desk } = await app.open();
    const link = await invite(desk);
    const fragment = new URL(link).hash;

    const { page: phone, guard } = await app.prepare({ viewport: PHONE });
    await phone.goto(link);
    const answer = await answerByKeyboard(phone);
    // The fragment is what only the two of them know.
    const secret = fragment.split('.')[2] ?? fragment;
    expect(secret.length).toBeGreaterThan(20);
    expect(guard.requests.filter((address) => address.includes(secret) || address.includes('invite.'))).toEqual([]);
    expect(await keptOn(phone)).toEqual({ databases: 0, entries: 0 });

    const sheet = new SheetPage(desk);
    await drop(desk, answer);
    await desk.getByText(/^Pre-fitting estimates: the wearer took the pictures alone/).waitFor();
    const { valueMm } = await sheet.estimate('pdFar');
    expect(Math.abs(valueMm - sweepTruth.pdFarMm)).toBeLessThan(PD_LIMIT_MM);
    await sheet.row('pdFar').getByText('alone', { exact: true }).waitFor();
    expect(await desk.getByRole('textbox', { name: 'Wearer', exact: true }).inputValue()).toBe('R. Sample');

    await drop(desk, answer);
    const dialog = desk.getByRole('dialog', { name: 'Answer of a distant wearer' });
    await dialog.getByRole('alert').getByText('This very answer was taken in before').waitFor();
    await expectAccessible(desk, 'the refusal');
  },
  LONG_MS,
);

it('shows a damaged link for what it is, and asks for the whole one', async () => {
  const { page } = await app.prepare({ viewport: PHONE });
  await page.goto('./#invite.1.nothing');
  await page.getByRole('alert').getByText('The link is not complete.').waitFor();
  await expectAccessible(page, 'a damaged link');
});

/** Makes an invitation at the desk, with the keyboard alone; the link. */
async function invite(desk: Page): Promise<string> {
  await desk.getByRole('button', { name: 'Sessions', exact: true }).press('Enter');
  await desk.getByRole('button', { name: 'Invite a distant wearer' }).press('Enter');
  const dialog = desk.getByRole('dialog', { name: 'Distant wearers' });
  await dialog.getByRole('textbox', { name: 'For whom' }).press('R');
  await desk.keyboard.type('. Sample');
  await desk.keyboard.press('Tab');
  await desk.keyboard.type('Sample Practice');
  const pictures = dialog.getByRole('checkbox', { name: /^Ask for two pictures/ });
  await pictures.press('Space');
  await expectAccessible(desk, 'inviting');
  await dialog.getByRole('button', { name: 'Make the invitation' }).press('Enter');
  await dialog.getByRole('img', { name: 'QR code with the link of this invitation' }).waitFor();
  await dialog.getByText('open until').waitFor();
  await expectAccessible(desk, 'an invitation');
  const link = await dialog.getByRole('textbox', { name: 'Link' }).inputValue();
  await expect.poll(() => dialog.getByRole('textbox', { name: 'Text to send' }).inputValue()).toContain(link);
  await desk.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });
  return link;
}

/** Goes the wearer's whole way by Tab, Space and Enter; the path of the file that comes of it. */
async function answerByKeyboard(phone: Page): Promise<string> {
  const heading = phone.getByRole('heading', { level: 1 });
  const main = phone.getByRole('contentinfo').getByRole('button').first();
  /** The next stop after the heading of a step is its main button. */
  const goOn = async (name: string): Promise<void> => {
    await phone.keyboard.press('Tab');
    expect(await phone.evaluate(() => document.activeElement?.textContent)).toBe(name);
    await phone.keyboard.press('Enter');
  };
  const arrives = async (text: string, timeout = 30_000): Promise<void> => {
    await phone.getByRole('heading', { level: 1, name: text }).waitFor({ timeout });
    expect(await heading.evaluate((element) => element === document.activeElement)).toBe(true);
    await expectAccessible(phone, text);
    await expectForOneHand(phone);
  };
  await arrives('Sample Practice asks for a first estimate');
  await goOn('Begin');
  const steps = [
    ['Find a card', 'I have a card'],
    ['Free your face', 'My glasses are off'],
    ['Find good light', 'The light is good'],
    ['Set up the phone', 'The phone is ready'],
    ['Hold the card to your forehead', 'It lies flat'],
    ['Look into the lens', 'Open the camera'],
  ] as const;
  for (const [text, name] of steps) {
    await arrives(text);
    await goOn(name);
  }
  await arrives('Take the pictures');
  await phone.getByRole('button', { name: 'Start', disabled: false }).waitFor();
  await goOn('Start');
  const taken = phone.getByRole('heading', { level: 1, name: 'The pictures are taken' });
  // The film does not follow the mark, so that a course may leave something out.
  const more = phone.getByRole('button', { name: 'Go on' });
  for (;;) {
    await more.or(taken).first().waitFor({ timeout: LONG_MS });
    if (await taken.isVisible()) break;
    await main.press('Enter');
    await more.waitFor({ state: 'hidden' });
  }
  await arrives('The pictures are taken');
  // Nothing goes along that was not ticked.
  await phone.keyboard.press('Tab');
  expect(await phone.getByRole('checkbox').isChecked()).toBe(false);
  await phone.keyboard.press('Space');
  await goOn('Make the file');
  await phone.getByText('The file is ready.').waitFor();
  await phone.getByText('2 pictures are in it.').waitFor();
  await arrives('Send the file');
  const download = phone.waitForEvent('download');
  await goOn('Save the file');
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/^glabella-answer-\d{4}-\d\d-\d\d\.age$/);
  await phone.getByText('You can close this page now.').waitFor();
  const path = join(folder, file.suggestedFilename());
  await file.saveAs(path);
  return path;
}

async function expectAccessible(page: Page, what: string): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(
    violations.map(({ id, nodes }) => `${what}: ${id} ${nodes.map(({ html }) => html).join()}`),
    what,
  ).toEqual([]);
}

/** Large type, nothing sideways, and large buttons in the lower part of the screen. */
async function expectForOneHand(phone: Page): Promise<void> {
  const seen = await phone.evaluate(() => ({
    beyondPx: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    typePx: parseFloat(getComputedStyle(document.querySelector('main') ?? document.body).fontSize),
    buttons: [...document.querySelectorAll('footer button')].map((button) => {
      const { top, height } = button.getBoundingClientRect();
      return { isLow: top > innerHeight / 2, height };
    }),
  }));
  expect(seen.beyondPx).toBeLessThanOrEqual(0);
  expect(seen.typePx).toBeGreaterThanOrEqual(20);
  for (const { isLow, height } of seen.buttons) {
    expect(isLow).toBe(true);
    expect(height).toBeGreaterThanOrEqual(56);
  }
}

/** What a page keeps on its device. */
function keptOn(page: Page): Promise<{ readonly databases: number; readonly entries: number }> {
  return page.evaluate(async () => ({
    databases: (await indexedDB.databases()).length,
    entries: localStorage.length + sessionStorage.length,
  }));
}

/** Drops a file on the page, as from a folder. */
async function drop(page: Page, path: string): Promise<void> {
  await page.evaluate(
    ({ base64, name }) => {
      const data = new DataTransfer();
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      data.items.add(new File([bytes], name));
      const target = document.querySelector('main') ?? document.body;
      for (const type of ['dragover', 'drop'])
        target.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }));
    },
    { base64: readFileSync(path).toString('base64'), name: path.slice(folder.length + 1) },
  );
}
