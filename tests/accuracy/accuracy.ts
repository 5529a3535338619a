import { existsSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { CameraProfile } from '../../src/core/camera/camera-profile.js';
import { startStaticServer } from '../../src/server/static-server.js';
import { launchChromium } from '../support/chromium.js';
import type { Bench } from './bench-page.js';
import type { MeasuredPicture } from './measured-picture.js';
import type { ComparedPicture } from './report.js';
import { writeReport } from './report.js';
import type { CameraTruth, PictureTruth } from './truth.js';
import { parseTruth } from './truth.js';

// `npm run accuracy -- DIR [--profile] [--json FILE]`: how well the app measures the pictures that DIR/truth.json names.
// The app is given each picture as a file, the gaze, and with --profile the camera's intrinsics; all else is compared here.

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));
const BUILD = join(PROJECT, 'node_modules', '.cache', 'accuracy-bench');
const USAGE = 'npm run accuracy -- DIR [--profile] [--json FILE]';

/** Chosen: what a careful calibration leaves; the intrinsics of a truth are exact, but the app must not be told so. */
const PROFILE_FOCAL_RELATIVE_UNCERTAINTY = 0.002;

interface Asked {
  readonly folder: string;
  readonly withProfile: boolean;
  readonly jsonFile: string | null;
}

function parseArguments(words: readonly string[]): Asked | null {
  let folder: string | null = null;
  let withProfile = false;
  let jsonFile: string | null = null;
  for (let index = 0; index < words.length; index++) {
    const word = words[index] ?? '';
    if (word === '--profile') withProfile = true;
    else if (word === '--json') {
      index += 1;
      jsonFile = words[index] ?? null;
      if (jsonFile === null) return null;
    } else if (word.startsWith('--') || folder !== null) return null;
    else folder = word;
  }
  return folder === null ? null : { folder, withProfile, jsonFile };
}

async function readTruth(folder: string): Promise<readonly PictureTruth[]> {
  const path = join(folder, 'truth.json');
  if (!existsSync(path)) throw new Error(`${path} does not exist.`);
  return parseTruth(JSON.parse(await readFile(path, 'utf8')));
}

/** The app's own devices, workers and core on a page without screens, built like the app. */
async function buildBench(): Promise<void> {
  await build({
    root: PROJECT,
    configFile: join(PROJECT, 'vite.config.ts'),
    logLevel: 'warn',
    build: {
      outDir: BUILD,
      emptyOutDir: true,
      rolldownOptions: { input: join(PROJECT, 'tests', 'accuracy', 'bench.html') },
    },
  });
}

async function measureAll(asked: Asked, truths: readonly PictureTruth[]): Promise<readonly ComparedPicture[]> {
  const server = await startStaticServer(BUILD, 0, false);
  const browser = await launchChromium();
  try {
    const page = await browser.newPage();
    page.on('pageerror', (error) => console.error(`The page threw: ${error.message}`));
    page.on('console', (message) => {
      // TensorFlow Lite writes what it runs on as an error
      if (message.type() === 'error' && !message.text().startsWith('INFO:'))
        console.error(`The page says: ${message.text()}`);
    });
    await page.goto(`${server.address}tests/accuracy/bench.html`);
    const loadMs = await page.evaluate(() => (window as { bench?: Bench }).bench?.warmUp());
    if (loadMs === undefined) throw new Error('The bench page did not start.');
    console.log(`Workers loaded in ${loadMs.toFixed(0)} ms`);
    const compared: ComparedPicture[] = [];
    for (const truth of truths) {
      const path = join(asked.folder, truth.file);
      if (!existsSync(path)) throw new Error(`${path} is named in truth.json but does not exist.`);
      await page.setInputFiles('input', path);
      const given = { gaze: truth.gaze, profile: asked.withProfile ? profileOf(truth.camera) : null };
      const measured = await page.evaluate(
        ({ gaze, profile }) => (window as { bench?: Bench }).bench?.measure(gaze, profile),
        given,
      );
      if (measured === undefined) throw new Error('The bench page went away.');
      compared.push({ truth, measured: { ...measured, file: truth.file } });
    }
    return compared;
  } finally {
    await browser.close();
    await server.close();
  }
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

/** Exactly the members that the file promises, in their order. */
function written({ file, ok, reason, ms, estimates, irisPx, cardPx }: MeasuredPicture): MeasuredPicture {
  return { file, ok, reason, ms, estimates, irisPx, cardPx };
}

async function run(asked: Asked): Promise<void> {
  const truths = await readTruth(asked.folder);
  await buildBench();
  const compared = await measureAll(asked, truths);
  console.log(writeReport(compared));
  if (asked.jsonFile !== null) {
    const pictures = compared.map(({ measured }) => written(measured));
    await writeFile(asked.jsonFile, `${JSON.stringify({ pictures }, null, 1)}\n`);
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
