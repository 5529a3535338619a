import { appendFile, mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { readFileSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../../src/core/catalogue/catalogue.js';
import { onBenchPage } from '../support/on-bench-page.js';
import type { AuditFigures } from './audit-page.js';
import { PART_RECORDS, simulateTablePart, SLIP_SHARE } from './audit-table.js';

// `npm run audit-speed`: how long the audit of 100,000 and of 200,000 simulated records takes in the worker of the built app, whether
// the page stays free meanwhile, and what memory it takes.

const SEED = 1;
const RECORDS = 100_000;
const MEGABYTE = 2 ** 20;

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const folder = await mkdtemp(join(tmpdir(), 'audit-speed-'));

interface Table {
  readonly path: string;
  readonly slipped: readonly boolean[];
}

/** Two tables: the first is the beginning of the second, which has twice as many records. */
async function makeTables(): Promise<readonly [Table, Table]> {
  const [once, twice] = [join(folder, 'once.csv'), join(folder, 'twice.csv')];
  const slipped: boolean[] = [];
  let header = '';
  for (let part = 0; part < (2 * RECORDS) / PART_RECORDS; part += 1) {
    const made = simulateTablePart(SEED, part, catalogue);
    const begin = made.text.indexOf('\n') + 1;
    if (part === 0) {
      header = made.text.slice(0, begin);
      await Promise.all([once, twice].map((path) => writeFile(path, header)));
    }
    if (made.text.slice(0, begin) !== header) throw new Error(`Part ${part} has other columns.`);
    const rows = made.text.slice(begin);
    await appendFile(twice, rows);
    if (part < RECORDS / PART_RECORDS) await appendFile(once, rows);
    slipped.push(...made.slipped);
  }
  return [
    { path: once, slipped: slipped.slice(0, RECORDS) },
    { path: twice, slipped },
  ];
}

/** What the page's process takes, which its workers belong to. */
interface Taken {
  /** time of all its threads on some core: how long they waited for one beside other programs is no part of it */
  readonly computingS: number;
  /** the most memory that it had for itself */
  readonly ownMb: number;
  /** the same with the files that are mapped into it: Chromium's own code, mostly shared with its other processes */
  readonly wholeMb: number;
}

/** Ticks of the clock by which Linux counts computing time. */
const TICKS_PER_S = 100;

function computingSeconds(pid: number): number {
  // behind the name, which may hold spaces: proc(5), utime and stime
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
    .replace(/^.*\) /, '')
    .split(' ');
  return (Number(fields[11]) + Number(fields[12])) / TICKS_PER_S;
}

/** What is taken while work goes on. */
async function watchProcess<Value>(page: Page, work: () => Promise<Value>): Promise<readonly [Value, Taken]> {
  const pids = await renderersOf(page);
  const allSeconds = (): number => pids.reduce((sum, pid) => sum + computingSeconds(pid), 0);
  const beforeS = allSeconds();
  let [ownMb, wholeMb] = [0, 0];
  const timer = setInterval(() => {
    for (const pid of pids) {
      const status = readFileSync(`/proc/${pid}/status`, 'utf8');
      const mbOf = (line: string): number =>
        Number(new RegExp(`^${line}:\\s+(\\d+)`, 'm').exec(status)?.[1] ?? 0) / 1024;
      ownMb = Math.max(ownMb, mbOf('RssAnon'));
      wholeMb = Math.max(wholeMb, mbOf('VmRSS'));
    }
  }, 50);
  try {
    const value = await work();
    return [value, { computingS: allSeconds() - beforeS, ownMb, wholeMb }];
  } finally {
    clearInterval(timer);
  }
}

async function renderersOf(page: Page): Promise<readonly number[]> {
  const session = await page.context().browser()!.newBrowserCDPSession();
  const { processInfo } = (await session.send('SystemInfo.getProcessInfo')) as {
    processInfo: readonly { readonly type: string; readonly id: number }[];
  };
  await session.detach();
  return processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id);
}

function percent(part: number, whole: number): string {
  return `${((100 * part) / whole).toFixed(2)} %`;
}

function report(figures: AuditFigures, slipped: readonly boolean[], { computingS, ownMb, wholeMb }: Taken): void {
  const suspected = new Set(figures.suspected);
  const wrong = slipped.flatMap((isSlipped, place) => (isSlipped ? [place] : []));
  const right = slipped.length - wrong.length;
  const found = wrong.filter((place) => suspected.has(place)).length;
  console.log(`\n${figures.totals.recordCount} records, ${figures.totals.readingCount} readings`);
  console.log(
    `  looked through in ${(figures.ms / 1000).toFixed(1)} s; asked of 100,000: 8 s. ` +
      `All threads together computed for ${computingS.toFixed(1)} s`,
  );
  console.log(
    `  progress told ${figures.progressCount} times, longest silence ${figures.longestSilenceMs.toFixed(0)} ms; ` +
      `longest task of the page ${Math.max(0, ...figures.longTasksMs).toFixed(0)} ms (${figures.longTasksMs.length} over 50 ms)`,
  );
  console.log(
    `  memory of page and workers at most ${ownMb.toFixed(0)} MB (RssAnon of their process), ${wholeMb.toFixed(0)} MB with what ` +
      'Chromium maps into it (VmRSS); asked: 600 MB',
  );
  console.log(
    `  something does not fit in ${figures.totals.withFindings}; a reading is suspected, or cannot be, in ${suspected.size}: ` +
      `of ${wrong.length} with a slip in ${percent(found, wrong.length)}, of ${right} right ones in ${percent(suspected.size - found, right)}`,
  );
}

try {
  console.log(
    `${cpus().length} cores, ${cpus()[0]?.model ?? ''}; load before: ${loadavg()[0]!.toFixed(1)} ` +
      `(all times mean little above the number of cores). Simulated records with seed ${SEED}, ${percent(SLIP_SHARE, 1)} with a slip.`,
  );
  const tables = await makeTables();
  const times: number[] = [];
  await onBenchPage({ folder: 'speed', name: 'audit-page' }, async (openPage) => {
    for (const { path, slipped } of tables) {
      const page = await openPage();
      await page.waitForFunction(() => window.auditBench !== undefined);
      await page.setInputFiles('input', path);
      console.log(`\n${((await stat(path)).size / MEGABYTE).toFixed(1)} MB of CSV, load ${loadavg()[0]!.toFixed(1)}`);
      const [figures, taken] = await watchProcess(page, () => page.evaluate(() => window.auditBench!.run()));
      report(figures, slipped, taken);
      times.push(figures.ms);
      await page.close();
    }
  });
  console.log(`\ntwice the records take ${(times[1]! / times[0]!).toFixed(2)} times as long; asked: 2`);
} finally {
  await rm(folder, { recursive: true, force: true });
}
