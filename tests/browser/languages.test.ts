import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Words } from '../../src/ui/language.js';
import { words as german } from '../../src/ui/languages/de.js';
import { words as french } from '../../src/ui/languages/fr.js';
import { expectAccessiblePage } from '../support/accessible-page.js';
import { appInBrowser } from '../support/app-in-browser.js';

// The screen in its other languages: switched while something is typed, read back with its numbers, and as accessible as in English.

const app = appInBrowser();
let page: Page;

beforeAll(async () => {
  ({ page } = await app.keepOpen());
  await page.getByRole('button', { name: 'Sessions', exact: true }).waitFor();
});

const field = (name: string) => page.locator(`#reading-${name}`);

async function enter(name: string, text: string): Promise<void> {
  await field(name).fill(text);
  await field(name).press('Enter');
}

describe.each<[string, string, Words]>([
  ['Deutsch', 'de', german],
  ['Français', 'fr', french],
])('the screen in %s', (name, tag, words) => {
  const button = (label: string) => page.getByRole('button', { name: label, exact: true });

  it('comes without losing what is typed, and reads and writes numbers with a comma', async () => {
    await enter('monoPdR', '31.5');
    await page.locator('.language-choice select').selectOption({ label: name });
    await button(words.desk.sessions).waitFor();
    expect(await page.locator('html').getAttribute('lang')).toBe(tag);
    expect(await field('monoPdR').inputValue()).toBe('31.5');
    await enter('monoPdL', '32,25');
    await enter('pdFar', '36');
    // 31.5 and 32.25 make 63.75
    await page
      .getByText(/63,8|63,75/)
      .first()
      .waitFor();
    await expectAccessiblePage(page);
  });

  it('is as accessible in each dialog', async () => {
    for (const opener of [
      words.header.settings,
      words.header.practice,
      words.header.printCard,
      words.header.order,
      words.desk.help,
      words.desk.history,
    ]) {
      await button(opener).click();
      await page.locator('dialog[open] h2').first().waitFor();
      await expectAccessiblePage(page, 'dialog[open]');
      await page.keyboard.press('Escape');
      await page.locator('dialog[open]').waitFor({ state: 'detached' });
    }
  });

  it('is as accessible in the list of sessions', async () => {
    await button(words.desk.sessions).click();
    await page.getByRole('heading', { name: words.sessions.heading }).waitFor();
    await expectAccessiblePage(page);
    await button(words.sessions.backToSheet).click();
    await field('pdFar').waitFor();
  });
});
