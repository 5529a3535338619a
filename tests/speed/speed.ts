import { readdirSync } from 'node:fs';
import { cpus } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onBenchPage } from '../support/on-bench-page.js';
import type { FrameCost } from './speed-page.js';

// `npm run speed`: what the live view costs beside the landmark model alone, on the same frames in the same run.

const PICTURES = fileURLToPath(new URL('../fixtures/pictures/', import.meta.url));
const ROUNDS = 2;
/** Frames at the beginning that are left out: the engines still compile. */
const WARMING = 40;

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
