import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { acceptedEncoding, COMPRESSED_UP_TO_BYTES, encode, isCompressible } from './content-encoding.js';

describe('acceptedEncoding', () => {
  // The forms of the header are those of RFC 9110, 12.5.3.
  it.each([
    ['gzip, deflate, br, zstd', 'br'],
    ['gzip, deflate', 'gzip'],
    ['GZIP', 'gzip'],
    ['br;q=0, gzip;q=0.5', 'gzip'],
    ['*', 'br'],
    ['br;q=0, *', 'gzip'],
    ['gzip;q=0, *;q=0', null],
    ['identity', null],
    ['', null],
    [undefined, null],
    ['br;q=nonsense', null],
  ])('%s: %s', (header, expected) => {
    expect(acceptedEncoding(header)).toBe(expected);
  });
});

describe('isCompressible', () => {
  it('takes texts, and leaves what is compressed already or too large', () => {
    expect(isCompressible('text/javascript; charset=utf-8', 700_000)).toBe(true);
    expect(isCompressible('application/manifest+json; charset=utf-8', 700)).toBe(true);
    expect(isCompressible('image/svg+xml', 700)).toBe(true);
    expect(isCompressible('image/png', 700)).toBe(false);
    expect(isCompressible('application/wasm', 700)).toBe(false);
    expect(isCompressible('text/javascript; charset=utf-8', COMPRESSED_UP_TO_BYTES + 1)).toBe(false);
  });
});

describe('encode', () => {
  it('is undone by what a browser does', async () => {
    const bytes = new TextEncoder().encode('the same words over and over. '.repeat(200));
    const [brotli, gzip] = [await encode(bytes, 'br'), await encode(bytes, 'gzip')];
    expect(new Uint8Array(brotliDecompressSync(brotli))).toEqual(bytes);
    expect(new Uint8Array(gunzipSync(gzip))).toEqual(bytes);
    expect(Math.max(brotli.length, gzip.length)).toBeLessThan(bytes.length / 10);
  });
});
