import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onBenchPage } from '../support/on-bench-page.js';
import { countsOf, openLiveView, untilFirstEstimate, withLiveCamera } from './live-in-app.js';
import type { FrameCost } from './speed-page.js';

// `npm run speed`: what the live view costs beside the landmark model alone, on the same frames in the same run.

const PICTURES = fileURLToPath(new URL('../fixtures/pictures/', import.meta.url));
const ROUNDS = 2;
/** Frames at the beginning that are left out: the engines still compile. */
const WARMING = 40;
/** How long the page may go on loading, and how long its frames are counted. */
const SETTLING_MS = 8_000;
const COUNTING_MS = 10_000;

const files = readdirSync(PICTURES)
  .filter((file) => /^sweep-\d+\.jpg$/.test(file))
  .sort()
  .map((file) => join(PICTURES, file));

await onBenchPage({ folder: 'speed', name: 'speed-page' }, async (openPage) => {
  const page = await openPage();
  await page.waitForFunction(() => window.speedBench !== undefined);
  await page.setInputFiles('input', files);
  await page.evaluate(() => window.speedBench?.load());
  const costs = (await page.evaluate((rounds) => window.speedBench?.run(rounds), ROUNDS)) ?? [];
  const searches = (await page.evaluate(() => window.speedBench?.search())) ?? [];
  report(costs.slice(WARMING), searches);
});

await withLiveCamera(async (browser, address) => {
  const context = await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 900 } });
  try {
    const cold = await openLiveView(context, address);
    console.log(
      `\nfrom page load to the first live estimate: ${seconds(await untilFirstEstimate(cold))} cold; asked: 4 s`,
    );
    // all the rest is loaded now as well
    await cold.waitForTimeout(SETTLING_MS);
    const before = await countsOf(cold);
    await cold.waitForTimeout(COUNTING_MS);
    const after = await countsOf(cold);
    const rate = (1000 * (after.framesDrawn - before.framesDrawn)) / COUNTING_MS;
    console.log(`frames drawn a second: ${rate.toFixed(1)}; asked: 20`);
    const longest = Math.max(0, ...after.longTasks.map(({ durationMs }) => durationMs));
    const live = after.longTasks.filter(({ startMs }) => startMs > (after.firstEstimateMs ?? 0));
    console.log(
      `tasks over 50 ms on the page's thread: ${after.longTasks.length} (longest ${longest.toFixed(0)} ms), ` +
        `${live.length} of them after the first estimate; asked: none`,
    );
    await cold.close();
    const warm: number[] = [];
    for (let again = 0; again < 3; again++) {
      const page = await openLiveView(context, address);
      warm.push(await untilFirstEstimate(page));
      await page.close();
    }
    console.log(`from page load to the first live estimate: ${warm.map(seconds).join(', ')} warm; asked: 1.5 s`);
  } finally {
    await context.close();
  }
});

function seconds(ms: number): string {
  return `${(ms / 1000).toFixed(2)} s`;
}

function report(costs: readonly FrameCost[], searches: readonly number[]): void {
  const of = (part: (cost: FrameCost) => number, some = costs) => some.map(part).sort((a, b) => a - b);
  const median = (sorted: readonly number[]) => sorted[Math.floor(sorted.length / 2)] ?? NaN;
  const ninetieth = (sorted: readonly number[]) => sorted[Math.floor(0.9 * sorted.length)] ?? NaN;
  const whole = (cost: FrameCost) => cost.landmarksMs + cost.readingMs + cost.followingMs + cost.drawingMs;
  const followed = costs.filter(({ isCardFollowed }) => isCardFollowed);
  const line = (name: string, times: readonly number[]) =>
    console.log(
      `${name.padEnd(44)} ${median(times).toFixed(1).padStart(7)} ${ninetieth(times).toFixed(1).padStart(7)}`,
    );

  console.log(`${costs.length} frames of 1280 x 720; ${cpus().length} processors (${cpus()[0]?.model ?? 'unknown'})`);
  console.log(
    `card followed in ${followed.length}, estimated in ${costs.filter(({ isEstimated }) => isEstimated).length}`,
  );
  console.log(`${'ms a frame'.padEnd(44)} ${'median'.padStart(7)} ${'90 %'.padStart(7)}`);
  line(
    'landmark model alone',
    of(({ bareMs }) => bareMs),
  );
  line(
    'live: landmark model',
    of(({ landmarksMs }) => landmarksMs),
  );
  line(
    'live: reading pixels',
    of(({ readingMs }) => readingMs),
  );
  line(
    'live: card, irises, estimate',
    of(({ followingMs }) => followingMs, followed),
  );
  line(
    'live: drawing',
    of(({ drawingMs }) => drawingMs),
  );
  line('live: all', of(whole));
  line(
    'search of a card, beside the live loop',
    [...searches].sort((a, b) => a - b),
  );
  const ratio = of((cost) => whole(cost) / cost.bareMs);
  const sum = (part: (cost: FrameCost) => number) => costs.reduce((total, cost) => total + part(cost), 0);
  console.log(
    `live over landmark model alone: ${(median(of(whole)) / median(of(({ bareMs }) => bareMs))).toFixed(2)} (medians), ` +
      `${(sum(whole) / sum(({ bareMs }) => bareMs)).toFixed(2)} (sums), ${median(ratio).toFixed(2)} (frame by frame); asked: 1.35`,
  );
}
