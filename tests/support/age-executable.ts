import type { TestProgram } from './test-program.js';
import { executableOf, provideAsCommand } from './test-program.js';

const AGE: TestProgram = {
  variable: 'AGE',
  candidates: ['/usr/bin/age', '/usr/local/bin/age', '/opt/homebrew/bin/age'],
  debianPackage: 'age',
  missing: 'The tests of sealed files need the program age: install it, or name its executable with AGE=…',
};

/** Path of the program `age` that the tests compare with: the environment's AGE, or one of the usual places; null where none is. */
export function ageExecutable(environment?: NodeJS.ProcessEnv, exists?: (path: string) => boolean): string | null {
  return executableOf(AGE, environment, exists);
}

provideAsCommand(import.meta.url, AGE);
