import type { TestProgram } from './test-program.js';
import { executableOf, provideAsCommand } from './test-program.js';

const CHROMIUM: TestProgram = {
  variable: 'CHROMIUM',
  candidates: [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ],
  debianPackage: 'chromium',
  missing: 'The browser tests need Chromium: install it, or name its executable with CHROMIUM=…',
};

/** Path of the Chromium that the tests use: the environment's CHROMIUM, or one of the usual places; null where none is. */
export function chromiumExecutable(environment?: NodeJS.ProcessEnv, exists?: (path: string) => boolean): string | null {
  return executableOf(CHROMIUM, environment, exists);
}

provideAsCommand(import.meta.url, CHROMIUM);
