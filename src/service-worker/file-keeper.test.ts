import { createHash } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import type { OfflineFile } from '../protocol/offline-files.js';
import { createFileKeeper } from './file-keeper.js';
import type { FileKeeper } from './file-keeper.js';

const APP = 'https://host.example/below/a/path/';

function file(address: string, text: string, when: OfflineFile['when'] = 'first'): OfflineFile {
  return { address, sha256: createHash('sha256').update(text).digest('hex'), bytes: text.length, when };
}

/** The part of the browser's caches that is used. */
class FakeCaches {
  readonly kept = new Map<string, Map<string, Response>>();
  open(name: string): Promise<Cache> {
    const entries = this.kept.get(name) ?? new Map<string, Response>();
    this.kept.set(name, entries);
    const cache = {
      match: (key: string) => Promise.resolve(entries.get(key)?.clone()),
      put: (key: string, response: Response) => Promise.resolve(void entries.set(key, response)),
      delete: (key: string) => Promise.resolve(entries.delete(key)),
      keys: () => Promise.resolve([...entries.keys()].map((url) => ({ url }))),
    };
    return Promise.resolve(cache as unknown as Cache);
  }
}

let caches: FakeCaches;
let server: Map<string, string>;
let asked: string[];

function keeperOf(...files: OfflineFile[]): FileKeeper {
  return createFileKeeper({
    appAddress: APP,
    files,
    caches: caches as unknown as CacheStorage,
    fetch: (request) => {
      asked.push(request.url);
      const text = server.get(request.url);
      const headers = {
        'Content-Security-Policy': "default-src 'none'",
        'Content-Encoding': 'br',
        'Content-Length': '3',
      };
      return Promise.resolve(new Response(text ?? 'none', { status: text === undefined ? 404 : 200, headers }));
    },
  });
}

const get = (address: string): Request => new Request(`${APP}${address}`);

beforeEach(() => {
  caches = new FakeCaches();
  asked = [];
  server = new Map([
    [`${APP}index.html`, 'the page'],
    [`${APP}assets/index-1.js`, 'the script'],
    [`${APP}vision/large.wasm`, 'the vision'],
  ]);
});

describe('the keeper of files', () => {
  const page = file('index.html', 'the page');
  const script = file('assets/index-1.js', 'the script');
  const vision = file('vision/large.wasm', 'the vision', 'later');

  it('keeps what the page needs to open, and leaves the rest for later', async () => {
    const keeper = keeperOf(page, script, vision);
    await keeper.keepFirst();
    expect(asked.toSorted()).toEqual([`${APP}assets/index-1.js`, `${APP}index.html`]);
    expect(await (await keeper.answer(get('assets/index-1.js')))?.text()).toBe('the script');
    expect(await keeper.answer(get('vision/large.wasm'))).toBeNull();
    expect(keeper.knows(get('vision/large.wasm'))).toBe(true);
  });

  it('opens the page at the address of its folder too, whatever query or fragment stands behind', async () => {
    const keeper = keeperOf(page);
    await keeper.keepFirst();
    for (const address of ['', 'index.html', '?source=home', '#invitation']) {
      expect(await (await keeper.answer(get(address)))?.text(), address).toBe('the page');
    }
  });

  it('keeps policies, and drops what was said of the line', async () => {
    const keeper = keeperOf(page);
    await keeper.keepFirst();
    const headers = (await keeper.answer(get('')))?.headers;
    expect(headers?.get('content-security-policy')).toBe("default-src 'none'");
    expect(headers?.get('content-encoding')).toBeNull();
    expect(headers?.get('content-length')).toBe('8');
  });

  it('leaves alone what is not of the build', () => {
    const keeper = keeperOf(page);
    expect(keeper.knows(get('elsewhere.html'))).toBe(false);
    expect(keeper.knows(new Request('https://host.example/index.html'))).toBe(false);
    expect(keeper.knows(new Request(`${APP}index.html`, { method: 'POST' }))).toBe(false);
  });

  it('is not installed with a file of another build, or with one missing', async () => {
    server.set(`${APP}index.html`, 'a newer page');
    await expect(keeperOf(page).keepFirst()).rejects.toThrow(/another build/);
    server.delete(`${APP}index.html`);
    await expect(keeperOf(page).keepFirst()).rejects.toThrow(/404/);
  });

  it('fetches of a new build what changed, serves the old one meanwhile, and removes it at the end', async () => {
    const old = keeperOf(page, script);
    await old.keepFirst();
    asked = [];
    server.set(`${APP}index.html`, 'a newer page');
    const next = keeperOf(file('index.html', 'a newer page'), script);
    await next.keepFirst();
    expect(asked).toEqual([`${APP}index.html`]);
    expect(await (await old.answer(get('')))?.text()).toBe('the page');
    expect(await (await next.answer(get('')))?.text()).toBe('a newer page');
    await next.removeOthers();
    expect(await old.answer(get(''))).toBeNull();
    expect(await (await next.answer(get('')))?.text()).toBe('a newer page');
    expect(await (await next.answer(get('assets/index-1.js')))?.text()).toBe('the script');
  });
});
