import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromBase64, fromBase64Url, toBase64, toBase64Url } from './sealing-base64.js';

const anyBytes = fc.uint8Array({ maxLength: 200 });

describe('base64', () => {
  it('is written and read as Node does it', () => {
    fc.assert(
      fc.property(anyBytes, (bytes) => {
        expect(toBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
        expect(toBase64Url(bytes)).toBe(Buffer.from(bytes).toString('base64url'));
        expect(fromBase64(toBase64(bytes))).toEqual(bytes);
        expect(fromBase64Url(toBase64Url(bytes))).toEqual(bytes);
      }),
    );
  });

  it('takes bytes of any number', () => {
    const many = Uint8Array.from({ length: 300_000 }, (_, place) => place % 256);
    expect(toBase64(many)).toBe(Buffer.from(many).toString('base64'));
  });

  it.each(['A', 'AAA', 'A===', 'AA=A', 'AAAA=', 'AB==', 'AAB=', 'A A=', 'AAAä'])('does not read %s', (text) => {
    expect(fromBase64(text)).toBeNull();
  });

  it.each(['A', 'AB', 'AAB', 'AA==', 'A+AA', 'AA A'])('does not read %s for an address', (text) => {
    expect(fromBase64Url(text)).toBeNull();
  });
});
