import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/**
 * A desk by day and by night, a phone held upright, and the width to which WCAG 2.2 (1.4.10) wants content to reflow. What does not
 * change between two views is not looked at again: colours do not change anything but contrast, and below a phone's width only
 * lines break anew.
 */
const VIEWS = [
  { width: 1280, height: 900, colorScheme: 'light', rules: 'all' },
  { width: 1280, height: 900, colorScheme: 'dark', rules: 'contrast' },
  { width: 390, height: 844, colorScheme: 'dark', rules: 'all' },
  { width: 320, height: 640, colorScheme: 'light', rules: 'none' },
] as const;

/**
 * Looks at the whole screen in all views, or only at what changed since it was looked at whole: what axe-core can see of it, and
 * that nothing scrolls sideways. Leaves the page at a desk by day.
 */
export async function expectAccessiblePage(page: Page, changed?: string): Promise<void> {
  const offences: string[] = [];
  for (const { width, height, colorScheme, rules } of VIEWS) {
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    if (rules !== 'none') {
      const axe = new AxeBuilder({ page });
      if (changed !== undefined) axe.include(changed);
      if (rules === 'contrast') axe.withRules('color-contrast');
      const { violations, passes } = await axe.analyze();
      expect(passes.length, 'axe-core looked at the page').toBeGreaterThan(
        rules === 'all' && changed === undefined ? 15 : 0,
      );
      for (const { id, nodes } of violations) {
        const where = nodes.map((node) => `${node.target.join(' ')}: ${node.failureSummary ?? ''}`).join('\n');
        offences.push(`${width} px, ${colorScheme}: ${id}\n${where}`);
      }
    }
    const beyond = await page.evaluate(() => {
      const { scrollWidth, clientWidth } = document.documentElement;
      if (scrollWidth <= clientWidth) return '';
      const wide = [...document.body.querySelectorAll('*')].filter(
        (element) => element.getBoundingClientRect().right > clientWidth + 0.5,
      );
      return `${scrollWidth} px wide: ${wide.map((each) => `${each.tagName}.${each.className.toString()}`).join(', ')}`;
    });
    if (beyond !== '') offences.push(`${width} px: scrolls sideways, ${beyond}`);
  }
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.emulateMedia({ colorScheme: 'light' });
  expect(offences).toEqual([]);
}
