import { readFile } from 'node:fs/promises';
import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { readPdfText } from '../support/pdf-text.js';
import { SheetPage } from '../support/sheet-page.js';

// The order: only what a person confirmed and nothing speaks against, printed alone.

const app = appInBrowser();
let page: Page;
let sheet: SheetPage;
let dialog: Locator;
/** what goes to the workshop, as it stands in the dialog */
let order: Locator;

beforeAll(async () => {
  ({ page } = await app.keepOpen());
  sheet = new SheetPage(page);
  dialog = page.getByRole('dialog', { name: 'Order sheet' });
  order = dialog.getByRole('article');
  await sheet.field('pdFar').waitFor();
});

async function openOrder(): Promise<void> {
  await sheet.button('Order sheet').click();
  await dialog.waitFor();
}

async function closeOrder(): Promise<void> {
  await dialog.getByRole('button', { name: 'Close' }).click();
  await dialog.waitFor({ state: 'hidden' });
}

/** The numbers of a measurement in the order, R above L; empty where it is not ordered. */
async function ordered(measurement: string): Promise<readonly string[]> {
  const rows = order.locator('tbody').filter({ has: page.locator('th', { hasText: new RegExp(`^${measurement}$`) }) });
  return rows.locator('.order-value').allInnerTexts();
}

describe('the order', () => {
  it('says what is missing as long as there is nothing', async () => {
    await openOrder();
    expect(await order.innerText()).toContain('No measurement is ordered yet.');
    expect(await order.innerText()).toContain('No prescription was entered.');
    expect(await order.innerText()).toContain('No reading is in.');
    await closeOrder();
  });

  it('has what was confirmed, R above L, and leaves out what does not fit', async () => {
    // two digits swapped: the eyes' distances make 63.5
    await sheet.enter('pdFar', '36.5');
    await sheet.enter('monoPdR', '31.5');
    await sheet.enter('monoPdL', '32');
    await sheet.enter('headWidth', '150');
    await openOrder();
    expect(await ordered('PD of each eye')).toEqual([]);
    expect(await order.innerText()).toContain('In, but not confirmed and so not ordered:');
    await dialog.getByRole('textbox', { name: 'Confirmed by' }).fill('Ottilie Marsh');
    await dialog.getByRole('button', { name: /^Confirm all without an open doubt \(\d\)$/ }).click();
    expect(await ordered('Head width')).toEqual(['150 mm']);
    expect(await order.innerText()).toContain('Ottilie Marsh');
    expect(await ordered('PD, distance')).toEqual([]);

    // whoever confirms it all the same does not get it ordered either
    await dialog.getByRole('button', { name: 'Confirm PD, distance', exact: true }).click();
    await dialog.getByText('Confirmed, but left out of the order while it does not fit.').waitFor();
    expect(await ordered('PD, distance')).toEqual([]);
    expect(await order.innerText()).toMatch(/Open[\s\S]*Not ordered before it is settled: .*PD, distance/);

    await dialog.getByRole('button', { name: 'Go to the field of PD, distance' }).click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('reading-pdFar');
    await sheet.enter('pdFar', '63.5');
    await openOrder();
    // it is another number now, and nobody confirmed that
    expect(await ordered('PD, distance')).toEqual([]);
    await dialog.getByRole('button', { name: /^Confirm all without an open doubt/ }).click();
    expect(await ordered('PD, distance')).toEqual(['63.5 mm']);
    expect(await ordered('PD of each eye')).toEqual(['31.5 mm', '32.0 mm']);
    expect(await order.innerText()).toContain('Nothing is open.');
    await closeOrder();
  });

  it('lets go of a number that is changed or no longer confirmed', async () => {
    await sheet.enter('headWidth', '152');
    await openOrder();
    expect(await ordered('Head width')).toEqual([]);
    await dialog.getByRole('button', { name: 'Confirm Head width', exact: true }).click();
    expect(await ordered('Head width')).toEqual(['152 mm']);
    await dialog.getByRole('button', { name: 'Withdraw the confirmation of Head width' }).click();
    expect(await ordered('Head width')).toEqual([]);
    await closeOrder();
  });
});

describe('the printed order', () => {
  it('stands alone on one page, black on white, also at night', async () => {
    await page.emulateMedia({ colorScheme: 'dark' });
    await openOrder();
    await page.emulateMedia({ colorScheme: 'dark', media: 'print' });
    const paper = page.locator('.order-paper');
    expect(await paper.isVisible()).toBe(true);
    expect(await paper.innerText()).toContain('63.5 mm');
    expect(await paper.innerText()).toContain('no clinical measurement');
    const [others, ink, ground] = await page.evaluate(() => [
      [...document.body.children].filter((child) => getComputedStyle(child).display !== 'none').length,
      getComputedStyle(document.querySelector('.order-paper .order-value')!).color,
      getComputedStyle(document.body).backgroundColor,
    ]);
    expect([others, ink, ground]).toEqual([1, 'rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
    for (const format of ['A4', 'Letter']) {
      const pdf = (await page.pdf({ format })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g), format).toHaveLength(1);
    }
    await page.emulateMedia({ colorScheme: 'light', media: 'screen' });
    expect(await paper.isVisible()).toBe(false);
    await closeOrder();
    // then it is the sheet that is printed again
    await page.emulateMedia({ media: 'print' });
    expect(await sheet.field('pdFar').isVisible()).toBe(true);
    await page.emulateMedia({ media: 'screen' });
  });
});

describe('the order as a file', () => {
  /** What the browser saves when the button is pressed. */
  async function saved(button: string): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      dialog.getByRole('button', { name: button }).click(),
    ]);
    return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
  }

  it('is a PDF of the paper that was chosen, and says what the sheet says', async () => {
    await openOrder();
    await dialog.getByLabel('Paper').selectOption('Letter');
    const { name, bytes } = await saved('Save as PDF');
    expect(name).toMatch(/^glabella-order-\d{4}-\d{2}-\d{2}-letter\.pdf$/);
    const { pages, text } = await readPdfText(bytes);
    // 8.5 x 11 inches of 72 points
    expect(pages).toEqual([{ widthPt: 612, heightPt: 792 }]);
    for (const said of ['PD, distance', '63.5 mm', 'Ottilie Marsh', 'no clinical measurement']) {
      expect(text).toContain(said);
    }
    await dialog.getByText(`${name} was made.`).waitFor();
  });

  it('is numbers with names for a workshop’s program', async () => {
    const { name, bytes } = await saved('Save the numbers for the workshop (JSON)');
    expect(name).toMatch(/\.json$/);
    const file = JSON.parse(Buffer.from(bytes).toString('utf8')) as Record<string, unknown>;
    expect(file).toMatchObject({ format: 'glabella-order', dicom: { '00460060': { vr: 'FD', Value: [63.5] } } });
    await closeOrder();
  });
});

it('the dialog keeps to what axe-core can see, on a phone at night', async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.emulateMedia({ colorScheme: 'dark' });
  await openOrder();
  const { violations } = await new AxeBuilder({ page }).include('dialog').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual(
    [],
  );
  expect(await dialog.evaluate((element) => element.scrollWidth - element.clientWidth)).toBeLessThanOrEqual(0);
});
