import { unreachable } from '../src/core/result.js';
import type { FaceMeshPackageFailure } from './face-mesh-package.js';
import type { AssemblyFailure } from './verified-assembly.js';

/** One line for the terminal: what failed, and what to do. */
export function assemblyMessage(failure: AssemblyFailure | FaceMeshPackageFailure): string {
  switch (failure.kind) {
    case 'package-not-installed':
      return `${failure.packageName} is not installed or lacks a file. Run npm ci.`;
    case 'version-unexpected':
      return (
        `${failure.packageName} is version ${failure.found}, but models/manifest.json asks for ${failure.expected}. ` +
        'Run npm ci; if the version was raised on purpose, enter the new version and hashes in the manifest.'
      );
    case 'input-altered':
      return (
        `${failure.name} is not the file that models/manifest.json names ` +
        `(SHA-256 is ${failure.found}, should be ${failure.expected}). ` +
        'Delete node_modules and run npm ci; if it stays so, do not use the file and tell the maintainers.'
      );
    case 'packed-assets':
    case 'model':
      return (
        `The weights have another layout than the assembly knows: ${JSON.stringify(failure.failure)}. ` +
        'Delete node_modules and run npm ci; if the package was changed on purpose, adapt the modules in models.'
      );
    case 'output-differs':
      return (
        `${failure.name} came out different (SHA-256 is ${failure.found}, should be ${failure.expected}) although its ` +
        'inputs are right, and was not written. Run npm ci, for flatbuffers and fflate must have the pinned versions; ' +
        'if the assembly was changed on purpose, check the landmarks in a browser and enter the new hash in the manifest.'
      );
    default:
      return unreachable(failure);
  }
}
