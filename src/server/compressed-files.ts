import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { encodeFirmly, isCompressible } from './content-encoding.js';
import { mimeType } from './mime-type.js';

/** Writes every text of a build beside itself once more, compressed as far as it goes: the server sends that where a browser takes it. */
export function compressedFiles(): Plugin {
  return {
    name: 'glabella-compressed-files',
    apply: 'build',
    writeBundle: {
      order: 'post',
      async handler({ dir = 'dist' }, bundle) {
        for (const address of Object.keys(bundle)) {
          const path = join(dir, address);
          const bytes = await readFile(path);
          if (isCompressible(mimeType(path), bytes.length)) await writeFile(`${path}.br`, await encodeFirmly(bytes));
        }
      },
    },
  };
}
