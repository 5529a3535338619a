import { crc32 as crc32OfNode } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crc32 } from './invitation-check.js';

describe('crc32', () => {
  it('gives the check value of the catalogues of such codes', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });

  it('is that of zlib', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => crc32(bytes) === crc32OfNode(bytes)));
  });
});
