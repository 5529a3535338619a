import type { Page, Worker } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { workerScript } from '../support/built-app.js';

// What the headers are is tested beside security-headers.ts; here, what a browser makes of them on the real build.

const app = appInBrowser();

/** Chromium's words where a policy refuses something, and for a foreign address that was refused. */
const REFUSED_BY_POLICY = [/Content Security Policy/, /Refused to connect/];

async function startWorker(page: Page, script: string): Promise<Worker> {
  const [worker] = await Promise.all([
    // the app starts workers of its own
    page.waitForEvent('worker', (worker) => worker.url().endsWith(script)),
    page.evaluate((address) => void new Worker(address, { type: 'module' }), script),
  ]);
  return worker;
}

/** Runs in page or worker: what becomes of a function made from a string. Later, as the debugger's own call may. */
function buildFunction(): Promise<string> {
  return new Promise((done) => {
    setTimeout(() => {
      try {
        // eslint-disable-next-line @typescript-eslint/no-implied-eval, @typescript-eslint/no-unsafe-call -- what is asked
        done(new Function('return "built"')() as string);
      } catch (error) {
        done((error as Error).name);
      }
    });
  });
}

/** Runs in page or worker: whether WebAssembly may be compiled; the bytes are the smallest module there is. */
async function compileWebAssembly(): Promise<boolean> {
  return (await WebAssembly.compile(new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0]))) instanceof WebAssembly.Module;
}

/** Runs in page or worker: which directive of the policy refuses a request to an address that it does not name. */
async function askAbroad(): Promise<string> {
  const refused = new Promise<string>((done) => {
    addEventListener('securitypolicyviolation', (event) => done(event.effectiveDirective));
  });
  const outcome = await fetch('http://127.0.0.1:9/').then(
    () => 'answered',
    (error: Error) => error.name,
  );
  return outcome === 'TypeError' ? refused : outcome;
}

describe('the policy of the page', () => {
  it('lets it build no functions from strings, but compile WebAssembly', async () => {
    const { page, guard } = await app.open();
    guard.allow(...REFUSED_BY_POLICY);
    expect(await page.evaluate(buildFunction)).toBe('EvalError');
    expect(await page.evaluate(compileWebAssembly)).toBe(true);
  });

  it('runs no inline script and obeys no inline style', async () => {
    const { page, guard } = await app.open();
    guard.allow(...REFUSED_BY_POLICY);
    const seen = await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'document.title = "taken over"';
      const styled = document.createElement('p');
      styled.setAttribute('style', 'color: rgb(1, 2, 3)');
      document.body.append(script, styled);
      return { title: document.title, colour: getComputedStyle(styled).color };
    });
    expect(seen.title).not.toBe('taken over');
    expect(seen.colour).not.toBe('rgb(1, 2, 3)');
  });

  it('lets nothing be fetched from elsewhere', async () => {
    const { page, guard } = await app.open();
    guard.allow(...REFUSED_BY_POLICY);
    expect(await page.evaluate(askAbroad)).toBe('connect-src');
  });

  it('does not let another page frame it', async () => {
    const answer = await fetch(app.address());
    expect(answer.headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
  });
});

describe('the policy of the landmarks worker', () => {
  it('lets it build no functions from strings, but compile WebAssembly', async () => {
    const { page, guard } = await app.open();
    guard.allow(...REFUSED_BY_POLICY);
    const worker = await startWorker(page, workerScript('landmarks'));
    expect(await worker.evaluate(buildFunction)).toBe('EvalError');
    expect(await worker.evaluate(compileWebAssembly)).toBe(true);
  });
});

describe('the policy of the card worker', () => {
  it('lets it, alone, build functions from strings', async () => {
    const { page } = await app.open();
    const worker = await startWorker(page, workerScript('card'));
    expect(await worker.evaluate(buildFunction)).toBe('built');
    expect(await worker.evaluate(compileWebAssembly)).toBe(true);
  });
});

describe.each(['landmarks', 'card'] as const)('the %s worker', (name) => {
  it('can fetch nothing from elsewhere', async () => {
    const { page, guard } = await app.open();
    guard.allow(...REFUSED_BY_POLICY);
    const worker = await startWorker(page, workerScript(name));
    expect(await worker.evaluate(askAbroad)).toBe('connect-src');
  });
});
