import { mkdir, mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliCompressSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startStaticServer } from './static-server.js';
import type { RunningServer } from './static-server.js';

let folder: string;
let server: RunningServer;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'glabella-server-'));
  await writeFile(join(folder, 'secret.txt'), 'outside of the build');
  const build = join(folder, 'build');
  await mkdir(join(build, 'assets'), { recursive: true });
  await writeFile(join(build, 'index.html'), '<!doctype html>');
  await writeFile(join(build, 'assets', 'index-0123abcd.js'), 'void 0');
  await writeFile(join(build, 'assets', 'card.worker-0123abcd.js'), 'void 0');
  await writeFile(join(build, 'runtime.wasm'), new Uint8Array(100_000));
  await writeFile(join(build, 'with space.task'), 'x');
  server = await startStaticServer(build, 0, false);
});

afterAll(async () => {
  await server.close();
  await rm(folder, { recursive: true });
});

/** What a client gets that, unlike fetch, does not tidy up the path it asks for. */
function rawAnswer(path: string): Promise<string> {
  return new Promise((done, failed) => {
    const socket = connect(Number(new URL(server.address).port), '127.0.0.1');
    let text = '';
    socket.on('data', (chunk) => (text += chunk.toString()));
    socket.on('end', () => done(text));
    socket.on('error', failed);
    socket.write(`GET ${path} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`);
  });
}

describe('the static server', () => {
  it('serves the page at the root with its policy', async () => {
    const answer = await fetch(server.address);
    expect(answer.status).toBe(200);
    expect(await answer.text()).toBe('<!doctype html>');
    expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(answer.headers.get('content-security-policy')).toContain("connect-src 'self'");
    expect(answer.headers.get('content-security-policy')).not.toContain("'unsafe-eval'");
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
  });

  it('sends the card worker its own policy, also with a query', async () => {
    for (const query of ['', '?v=1']) {
      const answer = await fetch(`${server.address}assets/card.worker-0123abcd.js${query}`);
      expect(answer.headers.get('content-security-policy')).toContain("'unsafe-eval'");
    }
  });

  it('does not loosen the policy of a page whose query names the card worker', async () => {
    const answer = await fetch(`${server.address}?x=/assets/card.worker-0123abcd.js`);
    expect(answer.headers.get('content-security-policy')).not.toContain("'unsafe-eval'");
  });

  it('serves whole WebAssembly files under their type', async () => {
    const answer = await fetch(`${server.address}runtime.wasm`);
    expect(answer.headers.get('content-type')).toBe('application/wasm');
    expect((await answer.arrayBuffer()).byteLength).toBe(100_000);
  });

  it('decodes paths', async () => {
    expect((await fetch(`${server.address}with%20space.task`)).status).toBe(200);
  });

  it('answers that nothing changed where the tag still fits', async () => {
    const first = await fetch(`${server.address}runtime.wasm`);
    await first.arrayBuffer();
    const tag = first.headers.get('etag') ?? '';
    const second = await fetch(`${server.address}runtime.wasm`, { headers: { 'If-None-Match': tag } });
    expect(second.status).toBe(304);
    const other = await fetch(`${server.address}runtime.wasm`, { headers: { 'If-None-Match': '"other"' } });
    expect(other.status).toBe(200);
    await other.arrayBuffer();
  });

  it('compresses texts as the browser wishes, and says that it depends on that', async () => {
    const address = `${server.address}assets/index-0123abcd.js`;
    const tags = new Set<string | null>();
    for (const encoding of ['br', 'gzip', 'identity']) {
      const answer = await fetch(address, { headers: { 'Accept-Encoding': encoding } });
      expect(await answer.text()).toBe('void 0');
      expect(answer.headers.get('content-encoding')).toBe(encoding === 'identity' ? null : encoding);
      expect(answer.headers.get('vary')).toBe('Accept-Encoding');
      expect(answer.headers.get('content-security-policy')).not.toBeNull();
      tags.add(answer.headers.get('etag'));
      const known = { 'Accept-Encoding': encoding, 'If-None-Match': answer.headers.get('etag') ?? '' };
      expect((await fetch(address, { headers: known })).status).toBe(304);
    }
    expect(tags.size).toBe(3);
  });

  it('sends what the build has compressed, unless that is older than the file', async () => {
    const path = join(folder, 'build', 'built.txt');
    await writeFile(path, 'the text');
    await writeFile(`${path}.br`, brotliCompressSync('as the build has it'));
    const ask = async () =>
      (await fetch(`${server.address}built.txt`, { headers: { 'Accept-Encoding': 'br' } })).text();
    expect(await ask()).toBe('as the build has it');
    await utimes(`${path}.br`, 1_000, 1_000);
    await writeFile(path, 'a newer text');
    expect(await ask()).toBe('a newer text');
  });

  it('compresses a file anew after it changed', async () => {
    const path = join(folder, 'build', 'changing.txt');
    for (const text of ['before', 'afterwards']) {
      await writeFile(path, text);
      expect(await (await fetch(`${server.address}changing.txt`)).text()).toBe(text);
    }
  });

  it('sends WebAssembly as it is, so that its loading can be told in shares', async () => {
    const answer = await fetch(`${server.address}runtime.wasm`, { headers: { 'Accept-Encoding': 'br, gzip' } });
    expect(answer.headers.get('content-encoding')).toBeNull();
    expect(answer.headers.get('content-length')).toBe('100000');
    await answer.arrayBuffer();
  });

  it('answers HEAD without a body', async () => {
    const answer = await fetch(`${server.address}runtime.wasm`, { method: 'HEAD' });
    expect(answer.headers.get('content-length')).toBe('100000');
    expect((await answer.arrayBuffer()).byteLength).toBe(0);
  });

  it.each(['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/assets/../../secret.txt', '//../secret.txt'])(
    'gives nothing outside of the build: %s',
    async (path) => {
      const answer = await rawAnswer(path);
      expect(answer).toMatch(/^HTTP\/1\.1 404 /);
      expect(answer).not.toContain('outside of the build');
    },
  );

  it.each(['/%', '/%00', '/assets', '/nowhere.js'])('answers "not found" for %s', async (path) => {
    expect(await rawAnswer(path)).toMatch(/^HTTP\/1\.1 404 /);
  });

  it('refuses what would change something', async () => {
    const answer = await fetch(server.address, { method: 'POST', body: 'x' });
    expect(answer.status).toBe(405);
    expect(answer.headers.get('allow')).toBe('GET, HEAD');
  });

  it('goes up to a free port where that is wished', async () => {
    const taken = Number(new URL(server.address).port);
    const second = await startStaticServer(folder, taken, true);
    const port = Number(new URL(second.address).port);
    await second.close();
    expect(port).toBeGreaterThan(taken);
  });

  it('rejects at a busy port that was asked for', async () => {
    const taken = Number(new URL(server.address).port);
    await expect(startStaticServer(folder, taken, false)).rejects.toThrow(/EADDRINUSE/);
  });
});
