import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

import { parseCanonicalMesh } from '../models/canonical-mesh.js';
import { readFaceMeshPackage, sha256Hex } from '../models/face-mesh-package.js';
import { readManifest } from '../models/manifest.js';
import { extractPackedAsset, parsePackedAssetTable } from '../models/packed-assets.js';
import type { Result } from '../src/core/result.js';

/**
 * Writes `canonical-face.json`: the vertices of the face mesh package's canonical face, from centimetres to millimetres.
 * Run it with `npx tsx calibration/derive-canonical-face.ts` after the package's version has changed.
 */

const outputPath = fileURLToPath(new URL('canonical-face.json', import.meta.url));

/** The text of `canonical-face.json`, derived anew from the installed package. Throws where the package is not ours. */
export function deriveCanonicalFace(): string {
  const { source, parts } = readManifest().faceLandmarks;
  const installed = valueOf(readFaceMeshPackage(source.package, source.loaderFile, source.dataFile));
  const table = valueOf(parsePackedAssetTable(installed.loaderScript));
  const metadata = valueOf(extractPackedAsset(table, installed.data, parts.canonicalFace.name));
  if (sha256Hex(metadata) !== parts.canonicalFace.sha256) {
    throw new Error(
      `${parts.canonicalFace.name} in ${source.package} ${installed.version} is not the part that models/manifest.json ` +
        `names; install ${source.package} ${source.version} with npm ci`,
    );
  }
  const { verticesCm } = valueOf(parseCanonicalMesh(metadata));
  return formatCanonicalFace({
    source:
      `Canonical face of MediaPipe: ${parts.canonicalFace.name} in the npm package ${source.package} ` +
      `${source.version}, SHA-256 ${parts.canonicalFace.sha256}`,
    licence: source.licence,
    derivation: 'calibration/derive-canonical-face.ts: centimetres times ten, rounded to 0.0001 mm',
    frame:
      "millimetres; x to the wearer's left, y up, z forward out of the face, as in the head frame; the origin is the " +
      'mesh’s own (inside the head, x = 0 is its plane of symmetry), not the head frame’s',
    verticesMm: verticesCm.map((vertex) => vertex.map(millimetresFromCentimetres)),
  });
}

/** Rounded to 1e-4 mm, so that the single precision of the source (9.999999 for 10) does not show. */
function millimetresFromCentimetres(cm: number): number {
  const mm = Math.round(cm * 1e5) / 1e4;
  return mm === 0 ? 0 : mm; // JSON would write minus zero as 0 too; keep the values in memory the same.
}

function formatCanonicalFace(face: { readonly verticesMm: readonly (readonly number[])[] } & Record<string, unknown>) {
  const { verticesMm, ...facts } = face;
  const head = Object.entries(facts).map(([key, value]) => `  ${JSON.stringify(key)}: ${JSON.stringify(value)},\n`);
  const rows = verticesMm.map((vertex) => `    [${vertex.join(', ')}]`);
  return `{\n${head.join('')}  "verticesMm": [\n${rows.join(',\n')}\n  ]\n}\n`;
}

function valueOf<Value, Failure>(result: Result<Value, Failure>): Value {
  if (!result.ok) throw new Error(`The canonical face cannot be derived: ${JSON.stringify(result.failure)}`);
  return result.value;
}

/** The text of `canonical-face.json` as it stands in the repository. */
export function readCanonicalFaceFile(): string {
  return readFileSync(outputPath, 'utf8');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(outputPath, deriveCanonicalFace());
  console.log('calibration/canonical-face.json written');
}
