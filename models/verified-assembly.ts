import { fail, succeed, type Result } from '../src/core/result.js';
import { sha256Hex, type FaceMeshPackage } from './face-mesh-package.js';
import { assembleLandmarkBundle } from './landmark-bundle.js';
import type { Manifest } from './manifest.js';
import { extractPackedAsset, parsePackedAssetTable, type PackedAssetFailure } from './packed-assets.js';
import type { ModelFailure } from './tensor-graph.js';

export type AssemblyFailure =
  | {
      readonly kind: 'version-unexpected';
      readonly packageName: string;
      readonly expected: string;
      readonly found: string;
    }
  /** The package's file, or a part of it, does not have the content that the manifest names. */
  | { readonly kind: 'input-altered'; readonly name: string; readonly expected: string; readonly found: string }
  | { readonly kind: 'packed-assets'; readonly failure: PackedAssetFailure }
  | { readonly kind: 'model'; readonly failure: ModelFailure }
  /** The inputs are right, but the bundle is not: the assembly or a library that it uses has changed. */
  | { readonly kind: 'output-differs'; readonly name: string; readonly expected: string; readonly found: string };

/** The landmark bundle from the installed package, if both are what the manifest says to the byte. */
export function assembleVerified(
  installed: FaceMeshPackage,
  { faceLandmarks }: Manifest,
): Result<Uint8Array, AssemblyFailure> {
  const { source, parts, bundle } = faceLandmarks;
  if (installed.version !== source.version) {
    return fail({
      kind: 'version-unexpected',
      packageName: source.package,
      expected: source.version,
      found: installed.version,
    });
  }
  const dataHash = sha256Hex(installed.data);
  if (dataHash !== source.dataSha256) {
    return fail({ kind: 'input-altered', name: source.dataFile, expected: source.dataSha256, found: dataHash });
  }
  const table = parsePackedAssetTable(installed.loaderScript);
  if (!table.ok) return fail({ kind: 'packed-assets', failure: table.failure });

  const extract = (part: { readonly name: string; readonly sha256: string }): Result<Uint8Array, AssemblyFailure> => {
    const asset = extractPackedAsset(table.value, installed.data, part.name);
    if (!asset.ok) return fail({ kind: 'packed-assets', failure: asset.failure });
    const found = sha256Hex(asset.value);
    if (found !== part.sha256) return fail({ kind: 'input-altered', name: part.name, expected: part.sha256, found });
    return asset;
  };
  const detector = extract(parts.detector);
  if (!detector.ok) return detector;
  const landmarks = extract(parts.landmarks);
  if (!landmarks.ok) return landmarks;
  const canonicalFace = extract(parts.canonicalFace);
  if (!canonicalFace.ok) return canonicalFace;

  const assembled = assembleLandmarkBundle({
    detector: detector.value,
    landmarks: landmarks.value,
    canonicalFace: canonicalFace.value,
  });
  if (!assembled.ok) return fail({ kind: 'model', failure: assembled.failure });
  const found = sha256Hex(assembled.value);
  if (found !== bundle.sha256) {
    return fail({ kind: 'output-differs', name: bundle.file, expected: bundle.sha256, found });
  }
  return succeed(assembled.value);
}
