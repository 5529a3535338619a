import { describe, expect, it } from 'vitest';

import { fail, succeed } from '../src/core/result.js';
import { extractPackedAsset, parsePackedAssetTable } from './packed-assets.js';

const loaderScript = `
  loadPackage({"files": [{"filename": "/a/first.bin", "start": 0, "end": 3}, {"filename": "/b/second.bin", "start": 3, "end": 5}],
    "remote_package_size": 5});`;
const table = [
  { filename: '/a/first.bin', start: 0, end: 3 },
  { filename: '/b/second.bin', start: 3, end: 5 },
];
const data = new Uint8Array([10, 11, 12, 13, 14]);

describe('packed assets', () => {
  it('reads the table out of the loader script', () => {
    expect(parsePackedAssetTable(loaderScript)).toEqual(succeed(table));
  });

  it.each([
    ['there is none', 'loadPackage({});'],
    ['it is not JSON', '"files": [oops]'],
    ['an entry lacks its end', '"files": [{"filename": "/a", "start": 0}]'],
    ['an entry ends before its start', '"files": [{"filename": "/a", "start": 2, "end": 1}]'],
  ])('reports a missing table when %s', (_case, script) => {
    expect(parsePackedAssetTable(script)).toEqual(fail({ kind: 'table-not-found' }));
  });

  it('cuts out exactly the bytes of the asset', () => {
    expect(extractPackedAsset(table, data, 'first.bin')).toEqual(succeed(new Uint8Array([10, 11, 12])));
    expect(extractPackedAsset(table, data, 'second.bin')).toEqual(succeed(new Uint8Array([13, 14])));
  });

  it('takes only a whole file name, and only a single one', () => {
    expect(extractPackedAsset(table, data, 'irst.bin')).toEqual(
      fail({ kind: 'asset-not-found', name: 'irst.bin', found: 0 }),
    );
    const twice = [...table, { filename: '/c/first.bin', start: 0, end: 1 }];
    expect(extractPackedAsset(twice, data, 'first.bin')).toEqual(
      fail({ kind: 'asset-not-found', name: 'first.bin', found: 2 }),
    );
  });

  it('refuses data that is cut short', () => {
    expect(extractPackedAsset(table, data.subarray(0, 4), 'second.bin')).toEqual(
      fail({ kind: 'asset-out-of-range', name: 'second.bin', end: 5, sizeBytes: 4 }),
    );
  });
});
