import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { installDebianPackage } from './debian-package.js';

const CANDIDATES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
];

/** Path of the Chromium that the tests use: the environment's CHROMIUM, or one of the usual places; null where none is. */
export function chromiumExecutable(
  environment: NodeJS.ProcessEnv = process.env,
  exists: (path: string) => boolean = existsSync,
): string | null {
  const chosen = environment['CHROMIUM'] ?? '';
  if (chosen !== '') return exists(chosen) ? chosen : null;
  return CANDIDATES.find((path) => exists(path)) ?? null;
}

/** Installs Chromium with the package manager where that can be done without asking; says what to do where not. */
function install(): boolean {
  if (process.env['CHROMIUM']) {
    console.error(`CHROMIUM names ${process.env['CHROMIUM']}, which does not exist.`);
    return false;
  }
  installDebianPackage('chromium');
  if (chromiumExecutable() !== null) return true;
  console.error('The browser tests need Chromium: install it, or name its executable with CHROMIUM=…');
  return false;
}

// Run as a command it makes sure that there is a Chromium.
if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = chromiumExecutable() !== null || install() ? 0 : 1;
}
