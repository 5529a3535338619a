import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { SheetPage } from '../support/sheet-page.js';

// The prescription is typed with the keyboard, and what a difference means through it is said beside the sheet.

const app = appInBrowser();

async function openSheet(width = 1280): Promise<SheetPage> {
  const { page } = await app.open({ viewport: { width, height: 900 } });
  await page.getByRole('heading', { name: 'Glabella' }).waitFor();
  return new SheetPage(page);
}

const prescriptionOf = (page: Page) => page.getByRole('region', { name: 'Prescription' });
const costsOf = (page: Page) => page.getByRole('region', { name: 'What it costs this wearer' });
const field = (page: Page, name: string) => prescriptionOf(page).getByLabel(name, { exact: true });

function focusedLabel(page: Page): Promise<string> {
  return page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.id ?? '');
}

/** Types into the field in hand and goes on. */
async function type(page: Page, ...texts: readonly string[]): Promise<void> {
  for (const text of texts) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
}

describe('the prescription', () => {
  it('is typed with Enter from field to field, and passes over what is not needed', async () => {
    const { page } = await openSheet();
    await field(page, 'Sphere, right').focus();
    await type(page, '-6.00', '-1.00');
    expect(await focusedLabel(page)).toBe('Axis, right');
    await type(page, '90', '', '', '');
    // no prism, no base
    expect(await focusedLabel(page)).toBe('Sphere, left');
    await type(page, '-5.50', '');
    // no cylinder, no axis
    expect(await focusedLabel(page)).toBe('Add, left');
    await page.keyboard.press('Shift+Enter');
    expect(await focusedLabel(page)).toBe('Cylinder, left');
    // the same lens with the other sign of cylinder
    await prescriptionOf(page).getByText('−7.00 / +1.00 × 180').waitFor();
    await prescriptionOf(page)
      .getByText(/the distance at which it was tested counts/)
      .waitFor();
    await page.reload();
    expect(await field(page, 'Cylinder, right').inputValue()).toBe('-1.00');
  });

  it('follows the last reading of the sheet, with Enter there and with Shift and Enter back', async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    await sheet.field('faceFormAngle').focus();
    await type(page, '5');
    expect(await focusedLabel(page)).toBe('Sphere, right');
    await page.keyboard.press('Shift+Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe(
      await sheet.field('faceFormAngle').getAttribute('id'),
    );
    // only from the last one
    await sheet.field('pantoscopicAngle').focus();
    await type(page, '8');
    expect(await focusedLabel(page)).toContain('Face');
  });

  it('says beside the field what is wrong with it, once it was left', async () => {
    const { page } = await openSheet();
    const sphere = field(page, 'Sphere, right');
    await sphere.focus();
    await page.keyboard.type('4.25');
    expect(await sphere.getAttribute('aria-invalid')).toBe('false');
    await page.keyboard.press('Enter');
    expect(await sphere.getAttribute('aria-invalid')).toBe('true');
    const message = await sphere.getAttribute('aria-describedby');
    expect(await page.locator(`#${message}`).innerText()).toContain('Plus or minus? Type +4.25 or −4.25.');
    await sphere.fill('-4.25');
    await field(page, 'Sphere, left').fill('+4.00');
    await prescriptionOf(page)
      .getByText(/was a sign lost\?/)
      .waitFor();
    await field(page, 'Prism in or out, left').fill('2');
    await prescriptionOf(page)
      .getByText(/Still to be typed: base in or out, left/)
      .waitFor();
    await field(page, 'Base in or out, left').selectOption('out');
    await prescriptionOf(page)
      .getByText(/Still to be typed/)
      .waitFor({ state: 'detached' });
  });

  it('fits on a narrow screen', async () => {
    const { page } = await openSheet(390);
    await field(page, 'Sphere, right').fill('-2.00');
    await field(page, 'Sphere, left').fill('-2.00');
    await costsOf(page).getByText('How far each reading may be off').waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });
});

describe('what it costs this wearer', () => {
  it('asks for the prescription first, then says what a difference between two readers means', async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    const costs = costsOf(page);
    await costs.getByText(/^Type the prescription/).waitFor();
    await sheet.enter('pdFar', '61');
    await page.getByRole('radio', { name: /second/i }).check();
    await sheet.enter('pdFar', '64');
    await field(page, 'Sphere, right').fill('-6.00');
    await field(page, 'Sphere, left').fill('-6.00');
    // 3 mm at 6 D are 1.8 prism dioptres (Prentice); ANSI Z80.1-2015 allows 2.5 mm there
    const item = costs.getByRole('listitem').filter({ hasText: 'PD, distance' });
    await item.waitFor();
    expect((await item.innerText()).replaceAll('\u00a0', ' ')).toMatch(
      /this reader less the other.*\+3\.0 ± \d\.\d mm: 1\.8 .*\(\d\.\d to \d\.\d\) against 1\.5 .*allowed \(2\.5 mm at 6\.00 D\)/s,
    );
    // what is heard in place of the sign
    expect(await item.textContent()).toContain('prism dioptres');

    await field(page, 'Sphere, right').fill('plano');
    await field(page, 'Sphere, left').fill('-0.25');
    await item.getByText('does not matter').waitFor();

    await costs.getByLabel('Held against').selectOption('iso-21987');
    await costs.getByText(/From memory: look it up/).waitFor();
  });

  it('works out decentration and blank for the chosen frame', async () => {
    const sheet = await openSheet();
    const { page } = sheet;
    await field(page, 'Sphere, right').fill('-2.00');
    await field(page, 'Sphere, left').fill('-2.00');
    await sheet.enter('monoPdR', '33');
    await sheet.enter('monoPdL', '31');
    await sheet.enter('boxLensWidth', '52');
    await sheet.enter('distanceBetweenLenses', '18');
    await costsOf(page).getByLabel('Effective diameter of the lens shape').fill('56');
    // 70 less twice 33 and 31: 2 and 4 mm in; 56 + 2 * 2 + 2 and 56 + 2 * 4 + 2 (five trade texts)
    const table = costsOf(page).getByRole('table');
    expect(await table.getByRole('row').nth(1).innerText()).toMatch(/2\.0 mm\s+62 mm/);
    expect(await table.getByRole('row').nth(2).innerText()).toMatch(/4\.0 mm\s+66 mm/);
  });
});
