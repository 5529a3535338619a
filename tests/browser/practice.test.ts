import { AxeBuilder } from '@axe-core/playwright';
import type { Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { SheetPage } from '../support/sheet-page.js';

// What the practice measures and how: rows, tolerances, gauges, and the order of the blocks.

const app = appInBrowser();
let page: Page;
let sheet: SheetPage;
let dialog: Locator;

beforeAll(async () => {
  ({ page } = await app.keepOpen());
  sheet = new SheetPage(page);
  dialog = page.getByRole('dialog', { name: 'Practice' });
  await sheet.field('pdFar').waitFor();
});

/** Does something in the practice's dialog, and closes it. */
async function inPractice(block: string | null, work: () => Promise<void>): Promise<void> {
  await sheet.button('Practice').click();
  await dialog.waitFor();
  if (block !== null) await dialog.locator('summary').filter({ hasText: block }).click();
  await work();
  await dialog.getByRole('button', { name: 'Close' }).click();
  await dialog.waitFor({ state: 'hidden' });
}

describe('the rows of the sheet', () => {
  it('can be hidden, and keep what was typed into them', async () => {
    await sheet.enter('irisDiameter', '11.7');
    await inPractice('Eyes', () => dialog.getByRole('checkbox', { name: 'Show Iris diameter' }).uncheck());
    expect(await sheet.field('irisDiameter').count()).toBe(0);
    await page.reload();
    await sheet.field('pdFar').waitFor();
    expect(await sheet.field('irisDiameter').count()).toBe(0);
    await inPractice('Eyes', () => dialog.getByRole('checkbox', { name: 'Show Iris diameter' }).check());
    expect(await sheet.field('irisDiameter').inputValue()).toBe('11.7');
    await sheet.enter('irisDiameter', '');
  });

  it('are held to a tolerance of one’s own, and what is none is refused beside its field', async () => {
    await inPractice('Head', async () => {
      const field = dialog.getByRole('textbox', { name: 'Own tolerance of Head width, mm' });
      const note = page.locator(`[id="${await field.getAttribute('aria-describedby')}"]`);
      expect(await note.innerText()).toMatch(/^Catalogue: ± 5 mm \(/);
      await field.fill('3,5');
      expect(await note.innerText()).toMatch(/^Own: ± 3\.5 mm\./);
      await field.fill('wide');
      expect(await note.innerText()).toMatch(/“wide” is no tolerance.* ± 3\.5 mm counts\.$/);
      expect(await field.inputValue()).toBe('wide');
      expect(await field.getAttribute('aria-invalid')).toBe('true');
    });
    const details = sheet.button('Details of Head width: definition, doubt and tolerance');
    await details.click();
    await page.getByText(/± 3\.5 mm .*set by the practice/).waitFor();
    await details.click();
  });

  it('come in the order of the blocks that the practice chooses', async () => {
    await inPractice(null, async () => {
      await dialog.getByRole('button', { name: 'Move Head up' }).click();
      // at the top it goes no further: the focus is on the other button
      expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Move Head down');
    });
    await sheet.field('templeWidth').focus();
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('reading-pdFar');
  });
});

describe('a gauge', () => {
  it('is refused field by field, is not lost, and then adds its amount to what its scale shows', async () => {
    await inPractice(null, async () => {
      await dialog.getByRole('button', { name: 'Add a gauge' }).click();
      await dialog.getByRole('textbox', { name: 'Name', exact: true }).fill('Long rule');
      await dialog.getByRole('checkbox', { name: 'PD of each eye', exact: true }).check();
      await dialog.getByRole('textbox', { name: 'Step of its scale, mm' }).fill('half');
      await dialog.getByRole('textbox', { name: 'To be added to each reading, mm' }).fill('10');
      await dialog.getByRole('button', { name: 'Keep this gauge' }).click();
      await dialog.getByText('“half” is not a number').waitFor();
      // neither closes over it
      await page.keyboard.press('Escape');
      await dialog.getByText('This gauge is not kept yet: keep it, or cancel.').waitFor();
      await dialog.getByRole('textbox', { name: 'Step of its scale, mm' }).fill('0,5');
      await dialog.getByText(/^Example: the scale shows \d+(\.5)?: \d+(\.5)? \+ 10 = \d+(\.5)? mm\.$/).waitFor();
      await dialog.getByRole('button', { name: 'Keep this gauge' }).click();
      await dialog.getByText('No check noted').waitFor();
    });
    await sheet.enter('monoPdR', '27');
    await sheet.row('monoPdR').getByText('27 + 10 = 37').waitFor();
  });

  it('can be deleted and brought back into use', async () => {
    await inPractice(null, async () => {
      await dialog.getByRole('button', { name: 'Delete Long rule' }).click();
      await dialog.getByText('No gauge yet').waitFor();
      await dialog.getByRole('button', { name: 'Bring it back' }).click();
      await dialog.getByText('In use for PD of each eye.').waitFor();
    });
  });

  it('can be taken over from the examples', async () => {
    await inPractice('Examples to take over', async () => {
      await dialog.getByText('Invented examples: check against your own gauges.').waitFor();
      await dialog.getByRole('button', { name: 'Take over Head calipers' }).click();
      await dialog.getByText('In use for Head width, Temple width.').waitFor();
    });
    await sheet.enter('headWidth', '140');
    await sheet.row('headWidth').getByText('140 + 10 = 150').waitFor();
  });
});

it('the dialog keeps to what axe-core can see, on a phone at night', async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.emulateMedia({ colorScheme: 'dark' });
  await inPractice('Nose', async () => {
    await dialog.getByRole('button', { name: 'Edit Long rule' }).click();
    const { violations } = await new AxeBuilder({ page }).include('dialog').analyze();
    expect(
      violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`),
    ).toEqual([]);
    expect(await dialog.evaluate((element) => element.scrollWidth - element.clientWidth)).toBeLessThanOrEqual(0);
    await dialog.getByRole('button', { name: 'Cancel' }).click();
  });
});
