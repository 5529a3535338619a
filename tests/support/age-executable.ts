import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { installDebianPackage } from './debian-package.js';

const CANDIDATES = ['/usr/bin/age', '/usr/local/bin/age', '/opt/homebrew/bin/age'];

/** Path of the program `age` that the tests compare with: the environment's AGE, or one of the usual places; null where none is. */
export function ageExecutable(
  environment: NodeJS.ProcessEnv = process.env,
  exists: (path: string) => boolean = existsSync,
): string | null {
  const chosen = environment['AGE'] ?? '';
  if (chosen !== '') return exists(chosen) ? chosen : null;
  return CANDIDATES.find((path) => exists(path)) ?? null;
}

/** Installs the program where that can be done without asking; says what to do where not. */
function install(): boolean {
  if (process.env['AGE']) {
    console.error(`AGE names ${process.env['AGE']}, which does not exist.`);
    return false;
  }
  installDebianPackage('age');
  if (ageExecutable() !== null) return true;
  console.error('The tests of sealed files need the program age: install it, or name its executable with AGE=…');
  return false;
}

// Run as a command it makes sure that there is one.
if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  process.exitCode = ageExecutable() !== null || install() ? 0 : 1;
}
