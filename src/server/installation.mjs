// What `npm start` and `npm test` both need on a fresh clone. Plain Node: nothing is installed yet when it runs.
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder of the project. */
export const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

const STAMP = join(PROJECT, 'node_modules', '.glabella-installed');
const LOCK = join(PROJECT, 'package-lock.json');

/** Written by `npm run models` from its pinned sources; not a source of its own. */
const MADE_FOLDERS = new Set(['assembled']);

/** Null where this Node will do, otherwise a sentence. Vite needs `import.meta.dirname` and `require` of modules. */
export function nodeComplaint(version = process.versions.node) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const enough = major > 22 || (major === 22 && minor >= 12) || (major === 20 && minor >= 19);
  return enough ? null : `Glabella needs Node 20.19 or newer (22.12 or newer of 22); this is Node ${version}.`;
}

/** Whether the installed packages are those of package-lock.json, as far as the times of the files tell. */
export function isInstalled() {
  if (!existsSync(join(PROJECT, 'node_modules'))) return false;
  // npm writes this file last, so that an installation made by hand counts as well.
  const marks = [STAMP, join(PROJECT, 'node_modules', '.package-lock.json')].filter((path) => existsSync(path));
  return marks.some((path) => statSync(path).mtimeMs >= statSync(LOCK).mtimeMs);
}

/** Runs a command in the project with its output shown; resolves with the exit code, 1 where a signal ended it. */
export function run(command, args, options = {}) {
  return new Promise((done) => {
    const child = spawn(command, args, {
      cwd: PROJECT,
      stdio: 'inherit',
      shell: process.platform === 'win32',
      ...options,
    });
    child.on('error', (error) => {
      console.error(`${command} could not be run: ${error.message}`);
      done(1);
    });
    child.on('exit', (code) => done(code ?? 1));
  });
}

/** Installs the packages where that is needed; resolves with npm's exit code. */
export async function install() {
  if (isInstalled()) return 0;
  console.log('Installing packages …');
  const code = await run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  if (code === 0) writeFileSync(STAMP, '');
  return code;
}

/** Time of the last change among files and folders (all that lies in them), in ms since 1970; 0 where none exists. */
export function newestChangeMs(paths) {
  let newest = 0;
  for (const path of paths) {
    const found = statSync(path, { throwIfNoEntry: false });
    if (found === undefined) continue;
    newest = Math.max(newest, found.mtimeMs);
    if (!found.isDirectory()) continue;
    const entries = readdirSync(path).filter((name) => !MADE_FOLDERS.has(name));
    newest = Math.max(newest, newestChangeMs(entries.map((name) => join(path, name))));
  }
  return newest;
}

/** Whether the build is missing or older than anything it is made of. */
export function isBuildStale() {
  const page = statSync(join(PROJECT, 'dist', 'index.html'), { throwIfNoEntry: false });
  if (page === undefined) return true;
  const sources = ['src', 'models', 'calibration', 'index.html', 'vite.config.ts', 'package-lock.json'];
  return newestChangeMs(sources.map((name) => join(PROJECT, name))) > page.mtimeMs;
}
