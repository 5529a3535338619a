import { readdirSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { countsOf, openLiveView, untilFirstEstimate, withLiveCamera } from './live-in-app.js';

// `npm run endurance`: a quarter of an hour of live view. What page and workers hold at its end, against minute two.

const MINUTES = Number(process.argv[2] ?? 15);
const BASE_MINUTE = 2;
const ASKED_GROWTH = 0.05;

interface Holding {
  /** JavaScript and WebAssembly of the page and its workers, MB, after collecting what is waste */
  readonly heapMb: number;
  /** resident memory of the process that runs page and workers, MB */
  readonly residentMb: number;
  readonly framesDrawn: number;
}

await withLiveCamera(async (browser, address) => {
  const context = await browser.newContext({ locale: 'en-GB', viewport: { width: 1280, height: 900 } });
  const page = await openLiveView(context, address);
  await untilFirstEstimate(page);
  console.log('minute   heap MB   resident MB   frames a second');
  let base: Holding | null = null;
  let before: Holding | null = null;
  for (let minute = 1; minute <= MINUTES; minute++) {
    await page.waitForTimeout(60_000);
    const now = await holdingOf(page);
    const rate = (now.framesDrawn - (before?.framesDrawn ?? 0)) / 60;
    console.log(
      `${String(minute).padStart(6)} ${now.heapMb.toFixed(1).padStart(9)} ${now.residentMb.toFixed(1).padStart(13)} ${rate.toFixed(1).padStart(17)}`,
    );
    if (minute === BASE_MINUTE) base = now;
    before = now;
  }
  if (base !== null && before !== null) {
    const growth = (is: number, was: number) => `${(100 * (is / was - 1)).toFixed(1)} %`;
    console.log(
      `against minute ${BASE_MINUTE}: heap ${growth(before.heapMb, base.heapMb)}, resident ${growth(before.residentMb, base.residentMb)}; ` +
        `asked: within ${100 * ASKED_GROWTH} %. The live view makes no object of OpenCV.`,
    );
  }
  await context.close();
});

async function holdingOf(page: Page): Promise<Holding> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const bytes = await page.evaluate(async () => {
    const measured = await (
      performance as unknown as { measureUserAgentSpecificMemory(): Promise<{ bytes: number }> }
    ).measureUserAgentSpecificMemory();
    return measured.bytes;
  });
  await session.detach();
  const { framesDrawn } = await countsOf(page);
  return { heapMb: bytes / 2 ** 20, residentMb: largestRendererMb(), framesDrawn };
}

/** Of the renderers of all browsers that this process started, the largest: the page's. Linux only; elsewhere not a number. */
function largestRendererMb(): number {
  try {
    const residents = readdirSync('/proc')
      .filter((name) => /^\d+$/.test(name))
      .flatMap((id) => {
        try {
          if (!readFileSync(`/proc/${id}/cmdline`, 'utf8').includes('--type=renderer')) return [];
          const [, kilobytes] = /VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8')) ?? [];
          return kilobytes === undefined ? [] : [Number(kilobytes) / 1024];
        } catch {
          // it ended meanwhile
          return [];
        }
      });
    return Math.max(...residents);
  } catch {
    return NaN;
  }
}
