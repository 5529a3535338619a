import { existsSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { installDebianPackage } from './debian-package.js';

/** A program that tests start. */
export interface TestProgram {
  /** of the environment: names its executable, and then no other is taken */
  readonly variable: string;
  /** where its executable lies on most systems, the likeliest first */
  readonly candidates: readonly string[];
  /** the package of Debian that brings it */
  readonly debianPackage: string;
  /** what to say where it is missing and cannot be installed */
  readonly missing: string;
}

/** Path of the program's executable; null where there is none. */
export function executableOf(
  { variable, candidates }: TestProgram,
  environment: NodeJS.ProcessEnv = process.env,
  exists: (path: string) => boolean = existsSync,
): string | null {
  const chosen = environment[variable] ?? '';
  if (chosen !== '') return exists(chosen) ? chosen : null;
  return candidates.find((path) => exists(path)) ?? null;
}

/**
 * Where the module at this address is run as a command: makes sure that the program is there. Installs it where that can be
 * done without asking; says what to do where not.
 */
export function provideAsCommand(moduleAddress: string, program: TestProgram): void {
  if (process.argv[1] === undefined || moduleAddress !== pathToFileURL(process.argv[1]).href) return;
  process.exitCode = executableOf(program) !== null || install(program) ? 0 : 1;
}

function install(program: TestProgram): boolean {
  const chosen = process.env[program.variable] ?? '';
  if (chosen !== '') {
    console.error(`${program.variable} names ${chosen}, which does not exist.`);
    return false;
  }
  installDebianPackage(program.debianPackage);
  if (executableOf(program) !== null) return true;
  console.error(program.missing);
  return false;
}
