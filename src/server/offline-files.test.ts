import { describe, expect, it } from 'vitest';
import { offlineFiles } from './offline-files.js';

const text = (content: string): Uint8Array => new TextEncoder().encode(content);

describe('offlineFiles', () => {
  const files = offlineFiles(
    new Map([
      ['vision/runtime.wasm', new Uint8Array(200_000)],
      ['assets/dialog-1.js', text('void 0')],
      ['assets/index-1.js', text(`/*${'x'.repeat(150_000)}*/`)],
      ['assets/index-1.js.map', text('{}')],
      ['index.html', text('<script type="module" src="./assets/index-1.js"></script>')],
      ['abc.txt', text('abc')],
    ]),
  );

  it('lists every file but the maps for developers, small ones first', () => {
    expect(files.map(({ address }) => address)).toEqual([
      'abc.txt',
      'assets/dialog-1.js',
      'index.html',
      'assets/index-1.js',
      'vision/runtime.wasm',
    ]);
  });

  it('has the first screen and all that is small kept at once, the rest later', () => {
    expect(files.filter(({ when }) => when === 'later').map(({ address }) => address)).toEqual(['vision/runtime.wasm']);
  });

  it('tells contents by their SHA-256', () => {
    // of "abc": FIPS 180-2, appendix B.1
    expect(files[0]).toEqual({
      address: 'abc.txt',
      sha256: 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
      bytes: 3,
      when: 'first',
    });
  });
});
