import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { BrowserContext, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { PLAIN_SWITCHES } from '../support/chromium.js';
import { chromiumExecutable } from '../support/chromium-executable.js';
import { withoutWarmUp } from '../support/without-warm-up.js';

/** Chosen: a busy computer was seen to take this long for a start. */
const START_LIMIT_MS = 60_000;

/** Chromium with a profile on the disk, in a process group of its own. */
export interface KillableBrowser {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Ends all its processes at once, as a power cut would, and waits until they are gone. */
  readonly kill: () => Promise<void>;
}

export async function startKillableBrowser(profileFolder: string): Promise<KillableBrowser> {
  const executable = chromiumExecutable();
  if (executable === null) throw new Error('No Chromium found; name its executable with CHROMIUM=…');
  const portFile = join(profileFolder, 'DevToolsActivePort');
  rmSync(portFile, { force: true });
  // of the one that was killed: it would be taken for one that still runs
  for (const name of ['SingletonLock', 'SingletonSocket', 'SingletonCookie']) {
    rmSync(join(profileFolder, name), { force: true });
  }
  const child = spawn(
    executable,
    [...PLAIN_SWITCHES, '--remote-debugging-port=0', `--user-data-dir=${profileFolder}`, 'about:blank'],
    { detached: true, stdio: 'ignore' },
  );
  const gone = once(child, 'exit');
  const kill = async (): Promise<void> => {
    const { pid } = child;
    if (pid !== undefined && child.exitCode === null && child.signalCode === null) process.kill(-pid, 'SIGKILL');
    await gone;
  };
  try {
    const port = await portIn(portFile, () => child.exitCode !== null);
    const browser = await chromium.connectOverCDP(`http://127.0.0.1:${port}`);
    const context = browser.contexts()[0];
    if (context === undefined) throw new Error('Chromium has no window.');
    await withoutWarmUp(context);
    // The worker that keeps all files for use without a network has nothing to do with what is typed.
    await context.addInitScript(() => {
      if ('serviceWorker' in navigator) navigator.serviceWorker.register = () => new Promise(() => undefined);
    });
    return { context, page: context.pages()[0] ?? (await context.newPage()), kill };
  } catch (error) {
    await kill();
    throw error;
  }
}

async function portIn(file: string, hasEnded: () => boolean): Promise<string> {
  for (const startedMs = Date.now(); Date.now() - startedMs < START_LIMIT_MS; await pause(50)) {
    const [port = ''] = existsSync(file) ? readFileSync(file, 'utf8').split('\n') : [];
    if (port !== '') return port;
    if (hasEnded()) throw new Error('Chromium ended before it had started.');
  }
  throw new Error('Chromium does not start.');
}
