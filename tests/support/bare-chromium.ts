import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable, Writable } from 'node:stream';
import { setTimeout as pause } from 'node:timers/promises';
import { PLAIN_SWITCHES } from './chromium.js';
import { chromiumExecutable } from './chromium-executable.js';

/**
 * Chromium with one page that nobody watches. Where developer tools watch a page, as Playwright does, every error that a script
 * makes up collects where it stands in the source, which reads all of a script once more: no user's browser does that.
 */
export interface BareChromium {
  readonly open: (address: string) => Promise<void>;
  /** The value of an expression in the page, of a promise once it is settled; it must be plain data. */
  readonly evaluate: <Value>(expression: string) => Promise<Value>;
  /** Waits until an expression is true in the page. */
  readonly waitFor: (expression: string, limitMs?: number) => Promise<void>;
  readonly close: () => Promise<void>;
}

interface Answer {
  readonly id?: number;
  readonly result?: Readonly<Record<string, unknown>>;
  readonly error?: { readonly message: string };
}

/** Starts it with a profile of its own. Throws where there is none. */
export async function startBareChromium(): Promise<BareChromium> {
  const executable = chromiumExecutable();
  if (executable === null) throw new Error('No Chromium found; name its executable with CHROMIUM=…');
  const profile = mkdtempSync(join(tmpdir(), 'bare-chromium-'));
  const child = spawn(
    executable,
    [
      ...PLAIN_SWITCHES,
      '--remote-debugging-pipe',
      `--user-data-dir=${profile}`,
      '--window-size=1280,900',
      'about:blank',
    ],
    { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] },
  );
  const gone = new Promise<void>((resolve) => {
    child.once('exit', () => {
      resolve();
    });
  });
  const commands = child.stdio[3] as Writable;
  const answers = child.stdio[4] as Readable;
  const waiting = new Map<number, (answer: Answer) => void>();
  let unread = '';
  answers.setEncoding('utf8').on('data', (text: string) => {
    const parts = (unread + text).split('\0');
    unread = parts.pop() ?? '';
    for (const part of parts) {
      const answer = JSON.parse(part) as Answer;
      if (answer.id === undefined) continue;
      waiting.get(answer.id)?.(answer);
      waiting.delete(answer.id);
    }
  });
  let lastId = 0;
  const send = (method: string, params: object, sessionId?: string): Promise<Readonly<Record<string, unknown>>> =>
    new Promise((resolve, reject) => {
      const id = (lastId += 1);
      waiting.set(id, ({ result, error }) => {
        if (error === undefined) resolve(result ?? {});
        else reject(new Error(`${method}: ${error.message}`));
      });
      commands.write(`${JSON.stringify({ id, method, params, sessionId })}\0`);
    });
  const { targetId } = await send('Target.createTarget', { url: 'about:blank' });
  const { sessionId } = await send('Target.attachToTarget', { targetId, flatten: true });
  const page = String(sessionId);
  const evaluate = async <Value>(expression: string): Promise<Value> => {
    const { result, exceptionDetails } = await send(
      'Runtime.evaluate',
      { expression, awaitPromise: true, returnByValue: true },
      page,
    );
    if (exceptionDetails !== undefined) throw new Error(`${expression}: ${JSON.stringify(exceptionDetails)}`);
    return (result as { readonly value: Value }).value;
  };
  return {
    open: async (address) => {
      await send('Page.navigate', { url: address }, page);
    },
    evaluate,
    waitFor: async (expression, limitMs = 60_000) => {
      for (const startedMs = Date.now(); Date.now() - startedMs < limitMs; await pause(200)) {
        // while a page goes and another comes there is nothing to evaluate in
        if (await evaluate<boolean>(`Boolean(${expression})`).catch(() => false)) return;
      }
      throw new Error(`This did not become true: ${expression}`);
    },
    close: async () => {
      child.kill();
      await gone;
      rmSync(profile, { recursive: true, force: true });
    },
  };
}
