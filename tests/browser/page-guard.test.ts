import { createServer } from 'node:http';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Browser } from 'playwright-core';
import { launchChromium } from '../support/chromium.js';
import { PageGuard } from '../support/page-guard.js';

// The guard is what all other browser tests rely on, so that it is itself shown what it has to see.

let server: Server;
let browser: Browser;
let address: string;

const FOREIGN = 'http://127.0.0.2:9/picture';

beforeAll(async () => {
  server = createServer((request, response) => {
    const worker = request.url === '/worker.js';
    response.setHeader('Content-Type', worker ? 'text/javascript' : 'text/html');
    if (request.url === '/strict') response.setHeader('Content-Security-Policy', "script-src 'self'");
    response.end(
      worker ? `fetch('${FOREIGN}').catch(() => postMessage('done'))` : '<!doctype html><title>page</title>',
    );
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  browser = await launchChromium();
});

afterAll(async () => {
  await browser.close();
  server.close();
  server.closeAllConnections();
});

async function guardedPage(path = '') {
  const context = await browser.newContext();
  const guard = PageGuard.watch(context, address);
  const page = await context.newPage();
  await page.goto(address + path);
  return { context, guard, page };
}

describe('PageGuard', () => {
  it('has nothing to say about a page that keeps to its origin', async () => {
    const { context, guard, page } = await guardedPage();
    await page.evaluate(() => fetch('/own').then((answer) => answer.text()));
    expect(guard.offences()).toEqual([]);
    expect(guard.requests).toContain(`${address}own`);
    await context.close();
  });

  it('sees a foreign request of the page, and lets nobody allow it', async () => {
    const { context, guard, page } = await guardedPage();
    await page.evaluate((url) => fetch(url).catch(() => null), FOREIGN);
    guard.allow(/./);
    expect(guard.offences()).toEqual([`foreign request: ${FOREIGN}`]);
    await context.close();
  });

  it('sees a foreign request of a worker', async () => {
    const { context, guard, page } = await guardedPage();
    await page.evaluate(() => new Promise((done) => (new Worker('/worker.js').onmessage = () => done(null))));
    guard.allow(/./);
    expect(guard.offences()).toEqual([`foreign request: ${FOREIGN}`]);
    await context.close();
  });

  it('sees a foreign web socket', async () => {
    const { context, guard, page } = await guardedPage();
    await page.evaluate(() => new Promise((done) => (new WebSocket('ws://127.0.0.2:9/').onerror = () => done(null))));
    guard.allow(/./);
    expect(guard.offences()).toEqual(['foreign request: ws://127.0.0.2:9/']);
    await context.close();
  });

  it('sees console errors and exceptions unless they are allowed', async () => {
    const { context, guard, page } = await guardedPage();
    await page.evaluate(() => {
      console.error('broken card');
      setTimeout(() => {
        throw new Error('broken iris');
      });
    });
    await expect.poll(() => guard.offences().length).toBe(2);
    guard.allow(/broken card/);
    expect(guard.offences()).toEqual([expect.stringContaining('broken iris')]);
    await context.close();
  });

  it('sees what the content security policy refuses', async () => {
    const { context, guard, page } = await guardedPage('strict');
    await page.evaluate(() => {
      const script = document.createElement('script');
      script.textContent = 'void 0';
      document.head.append(script);
    });
    await expect.poll(() => guard.offences().join()).toMatch(/^console: .*Content Security Policy/);
    await context.close();
  });
});
