import { describe, expect, it } from 'vitest';

import packageJson from '../package.json' with { type: 'json' };
import { fail } from '../src/core/result.js';
import { assemblyMessage } from './assembly-message.js';
import { readFaceMeshPackage, sha256Hex } from './face-mesh-package.js';
import { installedPackage } from './installed-parts.js';
import { readManifest, type Manifest } from './manifest.js';
import { assembleVerified } from './verified-assembly.js';

const manifest = readManifest();
const { source, parts, bundle } = manifest.faceLandmarks;
const installed = installedPackage();

/** The manifest with other facts on the package or the bundle. */
function manifestWith(
  changes: { readonly source?: Partial<typeof source>; readonly bundle?: Partial<typeof bundle> } = {},
): Manifest {
  return {
    faceLandmarks: {
      ...manifest.faceLandmarks,
      source: { ...source, ...changes.source },
      bundle: { ...bundle, ...changes.bundle },
    },
  };
}

/** The failure's message; fails the test when the assembly succeeds. */
function refusal(...args: Parameters<typeof assembleVerified>): string {
  const assembled = assembleVerified(...args);
  if (assembled.ok) throw new Error('The assembly succeeded');
  return assemblyMessage(assembled.failure);
}

describe('verified assembly', () => {
  it('gives the bundle that the manifest names', () => {
    const assembled = assembleVerified(installed, manifest);
    expect(assembled.ok).toBe(true);
    if (!assembled.ok) return;
    expect(sha256Hex(assembled.value)).toBe(bundle.sha256);
    expect(assembled.value).toHaveLength(bundle.sizeBytes);
  });

  it('pins the version that package.json pins', () => {
    expect(packageJson.dependencies['@mediapipe/face_mesh']).toBe(source.version);
    expect(source.package).toBe('@mediapipe/face_mesh');
  });

  it('refuses another version of the package', () => {
    const other = { ...installed, version: '9.9.9' };
    expect(assembleVerified(other, manifest)).toEqual(
      fail({ kind: 'version-unexpected', packageName: source.package, expected: source.version, found: '9.9.9' }),
    );
    expect(refusal(other, manifest)).toContain(`is version 9.9.9, but models/manifest.json asks for ${source.version}`);
  });

  it('refuses data in which one bit has changed', () => {
    const data = installed.data.slice();
    data[1_000_000] = (data[1_000_000] ?? 0) ^ 1;
    const found = sha256Hex(data);
    expect(assembleVerified({ ...installed, data }, manifest)).toEqual(
      fail({ kind: 'input-altered', name: source.dataFile, expected: source.dataSha256, found }),
    );
    const message = refusal({ ...installed, data }, manifest);
    expect(message).toContain(`${source.dataFile} is not the file that models/manifest.json names`);
    expect(message).toContain(`SHA-256 is ${found}, should be ${source.dataSha256}`);
    expect(message).toContain('Delete node_modules and run npm ci');
  });

  it('refuses an altered part even where the whole file is expected to be so', () => {
    const data = installed.data.slice();
    data[1_000_000] = (data[1_000_000] ?? 0) ^ 1; // Inside the landmark model, the first and largest part.
    const trusting = manifestWith({ source: { dataSha256: sha256Hex(data) } });
    const assembled = assembleVerified({ ...installed, data }, trusting);
    expect(assembled).toMatchObject(fail({ kind: 'input-altered', name: parts.landmarks.name }));
  });

  it('says so when the package is laid out in another way', () => {
    const message = refusal({ ...installed, loaderScript: '' }, manifest);
    expect(message).toContain('another layout');
    expect(message).toContain('table-not-found');
  });

  it('refuses a bundle that differs from the manifest', () => {
    const sha256 = '0'.repeat(64);
    const other = manifestWith({ bundle: { sha256 } });
    expect(assembleVerified(installed, other)).toEqual(
      fail({ kind: 'output-differs', name: bundle.file, expected: sha256, found: bundle.sha256 }),
    );
    expect(refusal(installed, other)).toContain('face-landmarks.task came out different');
  });

  it('says which package to install when it is missing', () => {
    const missing = readFaceMeshPackage('@mediapipe/not-there', source.loaderFile, source.dataFile);
    expect(missing).toEqual(fail({ kind: 'package-not-installed', packageName: '@mediapipe/not-there' }));
    if (!missing.ok) expect(assemblyMessage(missing.failure)).toContain('Run npm ci');
  });

  it('explains a model that cannot be extended', () => {
    const message = assemblyMessage({ kind: 'model', failure: { kind: 'output-missing', tensorName: 'output_lips' } });
    expect(message).toContain('output_lips');
  });
});

describe('SHA-256', () => {
  it('gives the published digest of "abc"', () => {
    // FIPS 180-2, appendix B.1.
    expect(sha256Hex(new TextEncoder().encode('abc'))).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});
