import type { Browser, Page } from 'playwright-core';

/** What is used here of an event of Chromium's trace; times in microseconds. */
interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** of the processor, as against the time that went by */
  readonly tdur?: number;
  readonly args?: { readonly name?: unknown };
}

/**
 * The processor time of each task of the page's main thread while something runs, in ms. It is the same on a computer that does other
 * work, where the long tasks that a page sees are mostly those of others.
 */
export async function taskTimesMs(
  browser: Browser,
  page: Page,
  run: () => Promise<unknown>,
): Promise<readonly number[]> {
  await browser.startTracing(page, { categories: ['toplevel', 'disabled-by-default-devtools.timeline'] });
  await run();
  const trace = JSON.parse((await browser.stopTracing()).toString('utf8')) as { readonly traceEvents: TraceEvent[] };
  const threadOf = ({ pid, tid }: TraceEvent): string => `${pid}/${tid}`;
  const mains = new Set(
    trace.traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(threadOf),
  );
  return trace.traceEvents.flatMap((event) =>
    event.name.endsWith('RunTask') && event.tdur !== undefined && mains.has(threadOf(event)) ? [event.tdur / 1000] : [],
  );
}
