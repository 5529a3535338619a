import type { Page } from 'playwright-core';

/**
 * Keeps the vision workers, which the app warms up when the page is idle, from starting: where there is no picture, all is faster
 * without them. Counts for what is opened from now on.
 */
export async function withoutVision(page: Page): Promise<void> {
  await page.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
}
