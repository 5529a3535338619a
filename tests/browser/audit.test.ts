import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { expectAccessiblePage } from '../support/accessible-page.js';
import { appInBrowser } from '../support/app-in-browser.js';
import { SheetPage } from '../support/sheet-page.js';

// Many records looked through at once: a table that is chosen or dropped, one that is refused, and the sessions that are kept.

const app = appInBrowser();
let page: Page;
let sheet: SheetPage;

beforeAll(async () => {
  ({ page } = await app.keepOpen());
  sheet = new SheetPage(page);
  await page.getByLabel('Wearer', { exact: true }).fill('Zoë Müller');
  // R and L make 71
  await sheet.enter('pdFar', '61');
  await sheet.enter('monoPdR', '36');
  await sheet.enter('monoPdL', '35');
  await sheet.button('Next wearer').click();
  // the next one's sheet is there
  await sheet.button('Back to it').waitFor();
  await page.getByLabel('Wearer', { exact: true }).fill('Paul');
  await sheet.enter('headWidth', '152');
  await sheet.button('Sessions').click();
  await page.getByText('2 sessions.').waitFor();
  await sheet.button('Look through records').click();
  await page.getByRole('heading', { name: 'Many records at once' }).waitFor();
});

const HEADER = 'record,pd_far_mm,mono_pd_r_mm,mono_pd_l_mm,pd_near_mm,head_width_mm';
// 36.5 is 63.5 with two digits swapped; 635 lost its point; the last is as most people are
const TABLE = [HEADER, '=A,36.5,32,31.5,59.5,152', 'B,635,32,31.5,59.5,152', 'C,63,31.5,31.5,59,152', ''].join('\n');

async function choose(name: string, text: string): Promise<void> {
  await page.locator('main input[type=file]').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
}

/** Looks the three through, with the view as it is at first. */
async function lookThroughTable(): Promise<void> {
  await choose('three.csv', TABLE);
  await page.getByText('2 of 3 records have something that does not fit.').waitFor();
  await expect.poll(focused).toBe('2 of 3 records have something that does not fit.');
}

function outcome(): Locator {
  return page.locator('.audit-outcome');
}

async function listedNames(): Promise<readonly string[]> {
  return page.locator('.audit-row th :first-child').allTextContents();
}

function focused(): Promise<string> {
  return page.evaluate(() => document.activeElement?.textContent ?? '');
}

async function saved(button: string): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent('download'), sheet.button(button).click()]);
  return readFileSync(await download.path(), 'utf8');
}

describe('a table of records', () => {
  it('is explained', async () => {
    await choose('empty.csv', '');
    await page.getByText('The file is empty.').waitFor();
    await page.getByText('What the table has to look like').click();
    await page.getByRole('table', { name: 'Columns of a table of records' }).waitFor();
    await expectAccessiblePage(page);
  });

  it('is looked through, and its flagged records are listed, the surest first', async () => {
    await lookThroughTable();
    expect(await listedNames()).toEqual(['B', '=A']);
    const row = page.getByRole('row').filter({ has: page.getByText('=A', { exact: true }) });
    expect(await row.innerText()).toMatch(/PD, distance\s+36\.5 mm\s+63\.5 mm\s+two digits swapped/);
    await expectAccessiblePage(page);
  });

  it('is sorted, narrowed and searched', async () => {
    await lookThroughTable();
    await page.getByRole('columnheader', { name: 'Record' }).getByRole('button').click();
    await expect.poll(listedNames).toEqual(['=A', 'B']);
    await page.getByRole('checkbox', { name: /^cannot be/ }).check();
    await expect.poll(listedNames).toEqual(['B']);
    await page.getByRole('checkbox', { name: /^cannot be/ }).uncheck();
    await page.getByRole('searchbox').fill('digits');
    await expect.poll(listedNames).toEqual(['=A']);
    await page.getByText('1 of 2 flagged.').waitFor();
  });

  it('shows all that it found of a record, by the keyboard alone', async () => {
    await lookThroughTable();
    await page.getByRole('searchbox').fill('digits');
    await expect.poll(listedNames).toEqual(['=A']);
    await page.getByRole('searchbox').press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.getByText(/36\.5 instead of 63\.5 mm/).waitFor();
    await page.keyboard.press('Enter');
    await page.getByText(/36\.5 instead of 63\.5 mm/).waitFor({ state: 'detached' });
  });

  it('is saved as far as it is listed, for spreadsheets and for programs', async () => {
    await lookThroughTable();
    await page.getByRole('searchbox').fill('digits');
    await expect.poll(listedNames).toEqual(['=A']);
    const csv = await saved('As CSV');
    const [header, first, ...others] = csv.trim().split('\r\n');
    expect(header).toMatch(/^line,record,measurement,written,restored,probability,kind,sentence/);
    expect(first).toMatch(/^2,'=A,pd_far_mm,36\.5,63\.5,[01](\.\d+)?,suspected,/);
    expect(others).toEqual([]);
    expect(JSON.parse(await saved('As JSON'))).toMatchObject({
      summary: { recordCount: 3, withFindings: 2 },
      records: [{ record: '=A', line: 2, findings: [{ kind: 'suspected', columns: ['pd_far_mm'] }] }],
    });
  });

  it('is called unflagged where nothing was found, without calling it right', async () => {
    await choose('one.csv', `${HEADER}\nC,63,31.5,31.5,59,152\n`);
    await page.getByText('The one record was not flagged; that does not make it right.').waitFor();
  });

  it('is refused with all its problems, each with its place and what to do', async () => {
    await choose('bad.csv', 'record,pd_fra_mm,pd_far_mm\nA,1,6three\n');
    const problems = page.getByRole('table', { name: 'Problems of the table' });
    expect(await problems.getByRole('row').nth(1).innerText()).toMatch(
      /Line 1, column 2 \(pd_fra_mm\)\s+No column is called “pd_fra_mm”\. Is pd_far_mm meant\?/,
    );
    expect(await problems.getByRole('row').nth(2).innerText()).toMatch(/Line 2, column 3 .*is no number\./s);
    expect(await outcome().innerText()).toContain('The table is refused for 2 problems.');
  });

  it('can be dropped anywhere on the page', async () => {
    const data = await page.evaluateHandle((text) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], 'dropped.csv', { type: 'text/csv' }));
      return transfer;
    }, TABLE);
    await page.dispatchEvent('main.audit', 'drop', { dataTransfer: data });
    await page.getByText('dropped.csv, looked through at').waitFor();
  });
});

describe('kept sessions', () => {
  it('are looked through all at once, and open from the list, which stays as it was', async () => {
    await page.getByRole('button', { name: 'Look through the 2 sessions kept here' }).click();
    await page.getByText('All 2 sessions kept here').waitFor();
    expect(await listedNames()).toEqual(['Zoë Müller']);
    await page.getByRole('searchbox').fill('muller');
    await sheet.button('Zoë Müller').click();
    await sheet.field('pdFar').waitFor();
    expect(await sheet.field('pdFar').inputValue()).toBe('61');
    await sheet.button('Sessions').click();
    await expect.poll(focused).toBe('Zoë Müller');
    expect(await page.getByRole('searchbox').inputValue()).toBe('muller');
  });

  it('are looked through as they are selected in their list', async () => {
    const toSessions = page.getByRole('navigation', { name: 'Records' }).getByRole('button', { name: 'Sessions' });
    await toSessions.click();
    await sheet.button('Look through records').click();
    await page.getByText(/looked through at/).waitFor();
    // the session that is on the sheet
    expect(await focused()).toBe('Zoë Müller');
    await toSessions.click();
    await page.getByRole('checkbox', { name: /^Select Paul/ }).check();
    await sheet.button('Look through').click();
    await page.getByText('1 session that was selected, looked through at').waitFor();
    expect(await outcome().innerText()).toBe('The one record was not flagged; that does not make it right.');
  });
});
