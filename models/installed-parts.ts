import { readFaceMeshPackage, type FaceMeshPackage } from './face-mesh-package.js';
import type { LandmarkBundleParts } from './landmark-bundle.js';
import { readManifest } from './manifest.js';
import { extractPackedAsset, parsePackedAssetTable } from './packed-assets.js';

/** The face mesh package that is installed. Throws when it is not. For tests. */
export function installedPackage(): FaceMeshPackage {
  const { source } = readManifest().faceLandmarks;
  const installed = readFaceMeshPackage(source.package, source.loaderFile, source.dataFile);
  if (!installed.ok) throw new Error(`${source.package} is not installed: run npm ci`);
  return installed.value;
}

/** The three parts out of the installed package, not checked by their hashes. Throws when one is missing. For tests. */
export function installedParts(): LandmarkBundleParts {
  const { parts } = readManifest().faceLandmarks;
  const { loaderScript, data } = installedPackage();
  const table = parsePackedAssetTable(loaderScript);
  const extract = (name: string): Uint8Array => {
    const asset = table.ok ? extractPackedAsset(table.value, data, name) : table;
    if (!asset.ok) throw new Error(`${name}: ${JSON.stringify(asset.failure)}`);
    return asset.value;
  };
  return {
    detector: extract(parts.detector.name),
    landmarks: extract(parts.landmarks.name),
    canonicalFace: extract(parts.canonicalFace.name),
  };
}
