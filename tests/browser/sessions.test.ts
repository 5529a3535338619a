import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Download, Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeSessionFile } from '../../src/core/record/session-file.js';
import { EMPTY_READER_SHEET } from '../../src/core/record/reader-sheet.js';
import { EMPTY_TYPED_SHEET } from '../../src/core/record/typed-sheet.js';
import { appInBrowser } from '../support/app-in-browser.js';
import { exampleSession } from '../support/memory-session-store.js';
import { SheetPage } from '../support/sheet-page.js';

// Kept sessions as their reader meets them: found, sorted, opened by the keyboard, handed on, brought in, deleted, locked.

const app = appInBrowser();
let page: Page;
let sheet: SheetPage;

beforeAll(async () => {
  ({ page } = await app.keepOpen());
  sheet = new SheetPage(page);
  await page.getByLabel('Wearer', { exact: true }).fill('Zoë Müller');
  await sheet.field('pdFar').fill('62.5');
  await page.keyboard.press('Enter');
  await sheet.button('Next wearer').click();
  // the next one's sheet is there
  await sheet.button('Back to it').waitFor();
  await page.getByLabel('Wearer', { exact: true }).fill('Paul');
  await sheet.button('Sessions').click();
  await row('Paul').waitFor();
});

function row(wearer: string): Locator {
  return page.getByRole('row').filter({ has: page.getByRole('button', { name: wearer, exact: true }) });
}

async function listed(): Promise<readonly string[]> {
  return page.locator('.session-open').allTextContents();
}

/** The name of what has the focus. */
function focused(): Promise<string | null> {
  return page.evaluate(() => document.activeElement?.textContent ?? null);
}

async function expectAccessible(): Promise<void> {
  const { violations, passes } = await new AxeBuilder({ page }).analyze();
  expect(passes.length, 'axe-core looked at the page').toBeGreaterThan(5);
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join()).join('; ')}`)).toEqual(
    [],
  );
}

async function expectNoSidewaysScrolling(): Promise<void> {
  const beyond = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(beyond).toBeLessThanOrEqual(0);
}

/** A thousand sessions as a file; each is called by its number. */
function thousandSessions(): string {
  const records = Array.from({ length: 1000 }, (_, place) => {
    const number = String(place).padStart(4, '0');
    const first = {
      ...EMPTY_READER_SHEET,
      readings: { ...EMPTY_READER_SHEET.readings, pdFar: String(55 + (place % 20)) },
    };
    return exampleSession(`00000000-0000-4000-8000-00000000${number}`, {
      sheet: {
        ...EMPTY_TYPED_SHEET,
        readers: { ...EMPTY_TYPED_SHEET.readers, first },
        notes: { ...EMPTY_TYPED_SHEET.notes, wearer: `Wearer ${number}` },
      },
    });
  });
  return writeSessionFile(records, { writtenAt: '2026-11-25T12:00:00.000Z' });
}

async function handOnAll(format: RegExp, passphrase: string | null): Promise<Download> {
  await sheet.button('Hand on all').click();
  await page.getByRole('radio', { name: format }).check();
  if (passphrase !== null) {
    await page.getByLabel('Passphrase', { exact: true }).fill(passphrase);
    await page.getByLabel('The same once more').fill(passphrase);
  }
  const [download] = await Promise.all([page.waitForEvent('download'), sheet.button('Make the file').click()]);
  await sheet.button('Close').click();
  return download;
}

async function bringIn(name: string, content: string | Buffer): Promise<void> {
  await sheet.button('Bring in a file').click();
  await page
    .getByRole('dialog')
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(content) });
}

async function deleteAllListed(): Promise<void> {
  await page.getByRole('checkbox', { name: /^Select (all|the)/ }).check();
  await sheet.button('Delete').click();
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /for good$/ })
    .click();
  await page.getByText('deleted.').waitFor();
}

describe('the list of sessions', () => {
  it('has the focus on the session that was open, and is accessible wide, and narrow in the dark', async () => {
    expect(await focused()).toBe('Paul');
    expect(await row('Zoë Müller').textContent()).toContain('62.5 mm');
    await expectAccessible();
    await page.setViewportSize({ width: 390, height: 844 });
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectAccessible();
    await expectNoSidewaysScrolling();
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.emulateMedia({ colorScheme: 'light' });
  });

  it('is searched as one types, sorted, and narrowed to what was found', async () => {
    const search = page.getByRole('searchbox');
    await search.fill('muller 62,5');
    expect(await listed()).toEqual(['Zoë Müller']);
    await page.getByText('1 of 2 sessions.').waitFor();
    await search.fill('');
    await page.getByRole('columnheader', { name: 'Wearer' }).getByRole('button').click();
    expect(await listed()).toEqual(['Paul', 'Zoë Müller']);
    await page.getByRole('columnheader', { name: 'Wearer' }).getByRole('button').click();
    expect(await listed()).toEqual(['Zoë Müller', 'Paul']);
    await page.getByRole('checkbox', { name: /^nothing is written/ }).check();
    expect(await listed()).toEqual(['Paul']);
    await page.getByRole('checkbox', { name: /^nothing is written/ }).uncheck();
  });

  it('is gone through and opened by the keyboard alone', async () => {
    await page.getByRole('searchbox').focus();
    await page.keyboard.press('ArrowDown');
    expect(await focused()).toBe('Zoë Müller');
    await page.keyboard.press('ArrowDown');
    expect(await focused()).toBe('Paul');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await expect.poll(() => sheet.field('pdFar').inputValue()).toBe('62.5');
    await sheet.button('Sessions').click();
    await expect.poll(focused).toBe('Zoë Müller');
    // sorted as it was left
    expect(await listed()).toEqual(['Zoë Müller', 'Paul']);
  });
});

describe('handing on and bringing in', () => {
  it('gives all back after all was deleted, through a backup that only its passphrase opens', async () => {
    const backup = await handOnAll(/Backup/, 'calm herons walk');
    expect(backup.suggestedFilename()).toMatch(/^glabella-sessions-.*\.json\.age$/);
    const sealed = readFileSync(await backup.path());
    expect(sealed.toString('latin1')).not.toContain('Paul');
    await deleteAllListed();
    await page.getByText('No session is kept yet.').waitFor();
    await bringIn('backup.age', sealed);
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Passphrase', { exact: true }).fill('loud herons walk');
    await page.keyboard.press('Enter');
    await dialog.getByText('The passphrase does not open this file.').waitFor();
    await expectAccessible();
    await dialog.getByLabel('Passphrase', { exact: true }).fill('calm herons walk');
    await page.keyboard.press('Enter');
    await dialog.getByText('2 added').waitFor();
    await sheet.button('Close').click();
    expect(await listed()).toEqual(['Zoë Müller', 'Paul']);
  });

  it('refuses what it cannot read, with a sentence, and brings in nothing of it', async () => {
    await bringIn('later.json', '{"format":"glabella-sessions","version":99}');
    await page.getByRole('alert').getByText('newer version').waitFor();
    await sheet.button('Close').click();
    expect(await listed()).toHaveLength(2);
  });

  it('lists a thousand sessions, and searches them, without a wait', async () => {
    await bringIn('thousand.json', thousandSessions());
    await page.getByRole('dialog').getByText('1000 added').waitFor();
    await sheet.button('Close').click();
    await page.getByText('1002 sessions.').waitFor();
    expect((await listed()).length).toBeLessThan(200);
    const search = page.getByRole('searchbox');
    const before = await rendererTimeMs();
    await search.pressSequentially('0999');
    await page.getByText('1 of 1002 sessions.').waitFor();
    // Four keys, each far below the 200 ms in which nobody notices a wait; of the processor's time, since this computer is busy.
    expect((await rendererTimeMs()) - before).toBeLessThan(4 * 200);
    expect(await listed()).toEqual(['Wearer 0999']);
    await search.fill('wearer');
    await deleteAllListed();
    await search.fill('');
    expect(await listed()).toHaveLength(2);
  });
});

describe('the lock', () => {
  it('hides all that is kept until the passphrase is typed', async () => {
    await sheet.button('Lock').click();
    await sheet.button('Set a passphrase').click();
    await page.getByLabel('Passphrase', { exact: true }).fill('slow rivers bend');
    await page.getByLabel('The same once more').fill('slow rivers bend');
    await sheet.button('Lock with this passphrase').click();
    await page.getByText('is sealed now').waitFor();
    await expectAccessible();
    await sheet.button('Lock now').click();
    await page.getByRole('heading', { name: 'Locked' }).waitFor();
    expect(await page.textContent('body')).not.toContain('Paul');
    await expectAccessible();
    await page.getByLabel('Passphrase', { exact: true }).fill('slow rivers stop');
    await page.keyboard.press('Enter');
    await page.getByText('The passphrase does not open the lock.').waitFor();
    await page.getByLabel('Passphrase', { exact: true }).fill('slow rivers bend');
    await page.keyboard.press('Enter');
    await sheet.button('Sessions').click();
    await row('Paul').waitFor();
    await sheet.button('Lock').click();
    await sheet.button('Remove the lock').click();
    await sheet.button('Remove the lock now').click();
    await page.getByText('The lock was removed.').waitFor();
  });
});

/** What the page has used of the processor so far. */
async function rendererTimeMs(): Promise<number> {
  const session = await app.browser().newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  const times = processInfo.filter(({ type }) => type === 'renderer').map(({ cpuTime }) => cpuTime * 1000);
  return times.reduce((sum, time) => sum + time, 0);
}
