import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { startBuiltApp } from '../support/built-app.js';
import { launchChromium } from '../support/chromium.js';
import { sweepVideo } from '../support/sweep-frames.js';

// The live view in the real app, before a camera that plays a sweep.

/** What the page was seen to do. Times on the clock of the page, which begins with its loading. */
export interface LiveCounts {
  readonly framesDrawn: number;
  /** null before the first estimate */
  readonly firstEstimateMs: number | null;
  readonly longTasks: readonly { readonly startMs: number; readonly durationMs: number }[];
}

declare global {
  interface Window {
    liveCounts?: {
      framesDrawn: number;
      firstEstimateMs: number | null;
      longTasks: { startMs: number; durationMs: number }[];
    };
  }
}

/** Runs in the page before the app: counts what is drawn, without the app's help. */
function countFrames(): void {
  const counts: NonNullable<Window['liveCounts']> = { framesDrawn: 0, firstEstimateMs: null, longTasks: [] };
  window.liveCounts = counts;
  const { prototype } = ImageBitmapRenderingContext;
  // eslint-disable-next-line @typescript-eslint/unbound-method -- called with its own receiver below
  const draw = prototype.transferFromImageBitmap;
  prototype.transferFromImageBitmap = function (bitmap) {
    draw.call(this, bitmap);
    counts.framesDrawn += 1;
    const sureness = document.querySelectorAll('.live-readout dd')[1]?.textContent ?? '';
    if (counts.firstEstimateMs === null && /\d/.test(sureness)) counts.firstEstimateMs = performance.now();
  };
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) {
      counts.longTasks.push({ startMs: startTime, durationMs: duration });
    }
  }).observe({ type: 'longtask', buffered: true });
  // whoever measures presses the shutter never
  localStorage.setItem('glabella.shutter', 'by-hand');
}

export function countsOf(page: Page): Promise<LiveCounts> {
  return page.evaluate(() => {
    if (window.liveCounts === undefined) throw new Error('Nothing is counted on this page.');
    return window.liveCounts;
  });
}

/** Opens the app at its sheet and at once the camera. */
export async function openLiveView(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  await page.addInitScript(countFrames);
  await page.goto(address);
  await page.getByRole('button', { name: 'Take a picture' }).click();
  return page;
}

export async function untilFirstEstimate(page: Page): Promise<number> {
  await page.waitForFunction(() => window.liveCounts?.firstEstimateMs != null, null, { timeout: 120_000, polling: 50 });
  return (await countsOf(page)).firstEstimateMs ?? NaN;
}

/** Runs work with a browser whose camera plays a sweep, and the address of the built app. */
export async function withLiveCamera<Value>(
  work: (browser: Browser, address: string) => Promise<Value>,
): Promise<Value> {
  const folder = mkdtempSync(join(tmpdir(), 'glabella-speed-'));
  const videoPath = join(folder, 'sweep.mjpeg');
  // Chromium plays it at 30 frames a second
  writeFileSync(videoPath, sweepVideo(6));
  const server = await startBuiltApp();
  try {
    const browser = await launchChromium({ camera: { videoPath } });
    try {
      return await work(browser, server.address);
    } finally {
      await browser.close();
    }
  } finally {
    await server.close();
    rmSync(folder, { recursive: true });
  }
}
