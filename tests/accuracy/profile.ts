import { existsSync } from 'node:fs';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import type { Camera } from '../../src/core/camera/pinhole.js';
import { onBenchPage } from '../support/on-bench-page.js';
import type { ProfileBench } from './profile-page.js';
import type { AskedProfile, NamedView } from './profile-report.js';
import {
  parseCameraTruth,
  parseProfileArguments,
  partBySize,
  PROFILE_USAGE,
  profileFailureSentence,
  writeProfileReport,
  writtenProfile,
} from './profile-report.js';

// A camera profile from the pictures of the printed sheet in DIR, made by the app's own devices and workers. A truth.json beside
// them is compared with the outcome, and never used for it.

const PICTURE = /\.(jpe?g|png)$/i;

async function picturesIn(folder: string): Promise<readonly string[]> {
  if (!existsSync(folder)) throw new Error(`${folder} does not exist.`);
  return (await readdir(folder)).filter((name) => PICTURE.test(name)).sort();
}

async function truthIn(folder: string): Promise<Camera | null> {
  const path = join(folder, 'truth.json');
  return existsSync(path) ? parseCameraTruth(JSON.parse(await readFile(path, 'utf8'))) : null;
}

async function viewsIn(page: Page, folder: string, files: readonly string[]): Promise<readonly NamedView[]> {
  const views: NamedView[] = [];
  for (const file of files) {
    await page.setInputFiles('input', join(folder, file));
    const found = await page.evaluate(() => (window as { profileBench?: ProfileBench }).profileBench?.findBoard());
    if (found === undefined) throw new Error('The page did not start.');
    if (found.ok) views.push({ file, view: found.value });
    else console.log(`${file} is left out: ${profileFailureSentence(found.failure)}`);
  }
  const { kept, others } = partBySize(views);
  for (const { file, view } of others) {
    console.log(`${file} is left out: ${view.widthPx} x ${view.heightPx} is not the size of most pictures`);
  }
  return kept;
}

/** Whether a profile could be made. */
async function run({ folder, jsonFile }: AskedProfile): Promise<boolean> {
  const files = await picturesIn(folder);
  return onBenchPage({ folder: 'accuracy', name: 'profile-page' }, async (openPage) => {
    const page = await openPage();
    const views = (await viewsIn(page, folder, files)).map(({ view }) => view);
    const made = await page.evaluate(
      (given) => (window as { profileBench?: ProfileBench }).profileBench?.makeProfile(given),
      views,
    );
    if (made === undefined) throw new Error('The page did not start.');
    if (!made.ok) {
      console.error(profileFailureSentence(made.failure));
      return false;
    }
    console.log(writeProfileReport(made.value, views, await truthIn(folder)));
    if (jsonFile !== null) await writeFile(jsonFile, `${JSON.stringify(writtenProfile(made.value), null, 1)}\n`);
    return true;
  });
}

const asked = parseProfileArguments(process.argv.slice(2));
if (asked === null) {
  console.error(PROFILE_USAGE);
  process.exit(2);
}
try {
  if (!(await run(asked))) process.exitCode = 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = 1;
}
