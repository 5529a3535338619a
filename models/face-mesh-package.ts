import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

import { fail, succeed, type Result } from '../src/core/result.js';

/** The files of the installed face mesh package that the assembly reads. */
export interface FaceMeshPackage {
  readonly version: string;
  /** Text of the script whose table of files says where each part lies in `data`. */
  readonly loaderScript: string;
  readonly data: Uint8Array;
}

export type FaceMeshPackageFailure = { readonly kind: 'package-not-installed'; readonly packageName: string };

/** Reads the package from node_modules. Fails when it, or one of its files, is not there. */
export function readFaceMeshPackage(
  packageName: string,
  loaderFile: string,
  dataFile: string,
): Result<FaceMeshPackage, FaceMeshPackageFailure> {
  try {
    const descriptionPath = createRequire(import.meta.url).resolve(`${packageName}/package.json`);
    const folder = dirname(descriptionPath);
    const description = JSON.parse(readFileSync(descriptionPath, 'utf8')) as { readonly version?: unknown };
    return succeed({
      version: String(description.version),
      loaderScript: readFileSync(join(folder, loaderFile), 'utf8'),
      data: new Uint8Array(readFileSync(join(folder, dataFile))),
    });
  } catch {
    return fail({ kind: 'package-not-installed', packageName });
  }
}

/** SHA-256 in lower-case hexadecimal digits. */
export function sha256Hex(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
