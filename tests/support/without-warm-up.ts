import type { BrowserContext } from 'playwright-core';

/**
 * Keeps the pages of a context from warming up the vision workers when they are idle, which costs three seconds of the processor
 * each time: a picture still loads them. Counts for what is opened from now on.
 */
export async function withoutWarmUp(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
}
