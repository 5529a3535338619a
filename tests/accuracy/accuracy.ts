import { existsSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { CameraProfile } from '../../src/core/camera/camera-profile.js';
import { plotAccuracy } from './accuracy-plot.js';
import type { Bench } from './bench-page.js';
import type { ComparedPicture, ComparedRun, ComparedSweep } from './compared.js';
import type { FoundPicture, Given } from './measure-found.js';
import { writeOutcomes } from './measured-picture.js';
import { onBenchPage } from '../support/on-bench-page.js';
import type { Asked } from './parse-arguments.js';
import { parseArguments, plotFileOf, USAGE } from './parse-arguments.js';
import { writeReport } from './report.js';
import type { CameraTruth, PictureTruth, SweepTruth } from './truth.js';
import { gatherSweeps, parseTruth } from './truth.js';

// How well the app measures the pictures and sweeps that DIR/truth.json names. The app is given each picture as a file, the gaze, and
// with --profile the camera's intrinsics; all else is compared here. Features are found once per file, since that takes longest.

/** Chosen: what a careful calibration leaves; the intrinsics of a truth are exact, but the app must not be told so. */
const PROFILE_FOCAL_RELATIVE_UNCERTAINTY = 0.002;

const TITLES = { 'no-profile': 'Without a camera profile', profile: 'With a camera profile' } as const;

async function readTruth(folder: string): Promise<readonly PictureTruth[]> {
  const path = join(folder, 'truth.json');
  if (!existsSync(path)) throw new Error(`${path} does not exist.`);
  return parseTruth(JSON.parse(await readFile(path, 'utf8')));
}

/** The bench's page. */
interface BenchPage {
  /** What `work` gives, or null where it threw: the reason is printed. */
  attempt<Value>(what: string, work: (page: Page) => Promise<Value>): Promise<Value | null>;
}

/** The page is opened anew whenever work on it threw, so that one file cannot spoil the others. */
function createBenchPage(openPage: () => Promise<Page>): BenchPage {
  let current: Page | null = null;
  return {
    attempt: async (what, work) => {
      const page = (current ??= await openBench(openPage));
      try {
        return await work(page);
      } catch (error) {
        console.error(`${what}: ${error instanceof Error ? error.message : String(error)}`);
        current = null;
        await page.close().catch(() => undefined);
        return null;
      }
    },
  };
}

/** The app's own devices, workers and core on a page without screens, warm. */
async function openBench(openPage: () => Promise<Page>): Promise<Page> {
  const page = await openPage();
  const loadMs = await page.evaluate(() => (window as { bench?: Bench }).bench?.warmUp());
  if (loadMs === undefined) throw new Error('The bench page did not start.');
  console.log(`Workers loaded in ${loadMs.toFixed(0)} ms`);
  return page;
}

/** The reason of a file or sweep on which the bench itself came to grief; what it was is printed. */
const BENCH_FAILED = 'bench-failed';

async function findAll(
  bench: BenchPage,
  folder: string,
  truths: readonly PictureTruth[],
): Promise<ReadonlyMap<PictureTruth, FoundPicture>> {
  const found = new Map<PictureTruth, FoundPicture>();
  for (const truth of truths) {
    const path = join(folder, truth.file);
    if (!existsSync(path)) {
      console.error(`${path} is named in truth.json but does not exist.`);
      found.set(truth, { ok: false, reason: 'file-missing', ms: 0 });
      continue;
    }
    const outcome = await bench.attempt(truth.file, async (page) => {
      await page.setInputFiles('input', path);
      return page.evaluate(() => (window as { bench?: Bench }).bench?.find());
    });
    found.set(truth, outcome ?? { ok: false, reason: BENCH_FAILED, ms: 0 });
    if (found.size % 50 === 0) console.log(`Looked at ${found.size} of ${truths.length} files`);
  }
  return found;
}

async function measureRun(
  bench: BenchPage,
  run: 'no-profile' | 'profile',
  found: ReadonlyMap<PictureTruth, FoundPicture>,
  sweepTruths: readonly SweepTruth[],
): Promise<ComparedRun> {
  const givenOf = ({ gaze, camera }: PictureTruth | SweepTruth): Given => ({
    gaze,
    profile: run === 'profile' ? profileOf(camera) : null,
  });
  const pictures: ComparedPicture[] = [];
  for (const [truth, foundPicture] of found) {
    const measured = await bench.attempt(truth.file, (page) =>
      page.evaluate(({ picture, given }) => (window as { bench?: Bench }).bench?.measure(picture, given), {
        picture: foundPicture,
        given: givenOf(truth),
      }),
    );
    const failed = { ok: false, reason: BENCH_FAILED, ms: foundPicture.ms, estimates: {}, irisPx: null, cardPx: null };
    pictures.push({ truth, measured: { ...(measured ?? failed), file: truth.file } });
  }
  const sweeps: ComparedSweep[] = [];
  for (const truth of sweepTruths) {
    const frames = truth.frames.flatMap(({ frame, truth: picture }) => {
      const foundPicture = found.get(picture);
      return foundPicture === undefined ? [] : [{ frame, found: foundPicture }];
    });
    const measured = await bench.attempt(truth.sweep, (page) =>
      page.evaluate(
        ({ framesOfSweep, given }) => (window as { bench?: Bench }).bench?.measureSweep(framesOfSweep, given),
        { framesOfSweep: frames, given: givenOf(truth) },
      ),
    );
    const failed = {
      ok: false,
      reason: BENCH_FAILED,
      ms: frames.reduce((sum, frame) => sum + frame.found.ms, 0),
      adjustmentMs: 0,
      framesGiven: frames.filter((frame) => frame.found.ok).length,
      framesUsed: 0,
      slippedFromFrame: null,
      estimates: {},
    };
    sweeps.push({ truth, measured: { ...(measured ?? failed), sweep: truth.sweep } });
  }
  return { title: TITLES[run], pictures, sweeps };
}

function profileOf(camera: CameraTruth | null): CameraProfile | null {
  if (camera === null) return null;
  const { k1, ...intrinsics } = camera;
  return {
    ...intrinsics,
    distortion: [k1, 0, 0, 0, 0],
    uncertainty: {
      fx: PROFILE_FOCAL_RELATIVE_UNCERTAINTY * camera.fx,
      fy: PROFILE_FOCAL_RELATIVE_UNCERTAINTY * camera.fy,
      cx: 1,
      cy: 1,
      distortion: [0.002, 0, 0, 0, 0],
    },
    rmsPx: 0.2,
    viewCount: 12,
  };
}

function measureAll(asked: Asked, truths: readonly PictureTruth[]): Promise<readonly ComparedRun[]> {
  return onBenchPage({ folder: 'accuracy', name: 'bench' }, async (openPage) => {
    const bench = createBenchPage(openPage);
    const sweeps = gatherSweeps(truths);
    const found = await findAll(bench, asked.folder, truths);
    const compared: ComparedRun[] = [];
    for (const way of asked.runs) compared.push(await measureRun(bench, way, found, sweeps));
    return compared;
  });
}

async function run(asked: Asked): Promise<void> {
  const truths = await readTruth(asked.folder);
  const compared = await measureAll(asked, truths);
  console.log(compared.map(writeReport).join('\n\n\n'));
  const first = compared[0];
  if (asked.jsonFile !== null && first !== undefined) {
    const outcomes = writeOutcomes(
      first.pictures.map(({ measured }) => measured),
      first.sweeps.map(({ measured }) => measured),
    );
    await writeFile(asked.jsonFile, `${JSON.stringify(outcomes, null, 1)}\n`);
  }
  if (asked.plotFile === null) return;
  for (const [index, way] of asked.runs.entries()) {
    const comparedRun = compared[index];
    if (comparedRun !== undefined)
      await writeFile(plotFileOf(asked.plotFile, way, index === 0), plotAccuracy(comparedRun));
  }
}

const asked = parseArguments(process.argv.slice(2));
if (asked === null) {
  console.error(USAGE);
  process.exit(2);
}
try {
  await run(asked);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exit(1);
}
