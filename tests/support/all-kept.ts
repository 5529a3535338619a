import type { Page } from 'playwright-core';

/** Resolves once nothing was written to the disk for a while: whatever was typed before stands there. */
export async function allKept(page: Page, quietMs = 400): Promise<void> {
  await page.evaluate(
    (ms) =>
      new Promise<void>((resolve) => {
        let timer = setTimeout(resolve, ms);
        window.addEventListener('glabella-saved', () => {
          clearTimeout(timer);
          timer = setTimeout(resolve, ms);
        });
      }),
    quietMs,
  );
}
