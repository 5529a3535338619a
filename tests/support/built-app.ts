import { spawn } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { startStaticServer } from '../../src/server/static-server.js';
import type { RunningServer } from '../../src/server/static-server.js';

const PROJECT = fileURLToPath(new URL('../..', import.meta.url));

/** The folder of the build that the browser tests drive; GLABELLA_DIST names another one than `dist`. */
export const BUILD_FOLDER = process.env['GLABELLA_DIST'] ?? join(PROJECT, 'dist');

/** Serves the build at a free port of this computer, as `npm start` does; builds it first where it is missing. */
export async function startBuiltApp(): Promise<RunningServer> {
  if (!existsSync(join(BUILD_FOLDER, 'index.html'))) {
    await runInProject(['--import', 'tsx', 'models/assemble.ts']);
    await runInProject(['node_modules/vite/bin/vite.js', 'build', '--logLevel', 'warn', '--outDir', BUILD_FOLDER]);
  }
  return startStaticServer(BUILD_FOLDER, 0, false);
}

/** Address, relative to the app's, of the one script in the build of this worker; throws where there is none or several. */
export function workerScript(name: 'landmarks' | 'card' | 'sweep'): string {
  const found = readdirSync(join(BUILD_FOLDER, 'assets')).filter(
    (file) => file.startsWith(`${name}.worker-`) && file.endsWith('.js'),
  );
  if (found.length !== 1) throw new Error(`The build has ${found.length} scripts of the ${name} worker.`);
  return `assets/${found[0]}`;
}

function runInProject(words: readonly string[]): Promise<void> {
  return new Promise((done, failed) => {
    // Vitest sets NODE_ENV and VITEST; a build made under them would not be the one that ships.
    const environment = { ...process.env, NODE_ENV: 'production', VITEST: '' };
    const child = spawn(process.execPath, words, { cwd: PROJECT, stdio: 'inherit', env: environment });
    child.on('error', failed);
    child.on('exit', (code) =>
      code === 0 ? done() : failed(new Error(`node ${words.join(' ')} ended with ${code ?? 'a signal'}`)),
    );
  });
}
