import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { build } from 'vite';
import type { Plugin } from 'vite';
import { offlineFiles } from './offline-files.js';

/** The script of the service worker lies beside the page, since it serves what lies below its own address. */
export const SERVICE_WORKER_FILE = 'service-worker.js';

/** Writes the service worker at the end of a build, with the list of all files of it inside. `npm run dev` has none. */
export function serviceWorkerFile(): Plugin {
  return {
    name: 'glabella-service-worker',
    apply: 'build',
    // once all files are written, so that the list tells of nothing but what is there
    writeBundle: {
      order: 'post',
      sequential: true,
      async handler({ dir = 'dist' }, bundle) {
        // the page of a bench stands for itself
        if (!('index.html' in bundle)) return;
        const files = new Map<string, Uint8Array>();
        for (const address of Object.keys(bundle)) files.set(address, await readFile(join(dir, address)));
        const code = await serviceWorkerCode(this.environment.config.root, JSON.stringify(offlineFiles(files)));
        await writeFile(join(dir, SERVICE_WORKER_FILE), code);
      },
    },
  };
}

async function serviceWorkerCode(root: string, filesAsJson: string): Promise<string> {
  const built = await build({
    root,
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    define: { OFFLINE_FILES: filesAsJson },
    build: {
      write: false,
      target: 'es2023',
      rolldownOptions: {
        input: join(root, 'src/service-worker/service-worker.ts'),
        output: { format: 'iife', entryFileNames: SERVICE_WORKER_FILE },
      },
    },
  });
  const outputs = (Array.isArray(built) ? built : [built]).flatMap((one) => ('output' in one ? one.output : []));
  const [script] = outputs;
  if (outputs.length !== 1 || script?.type !== 'chunk') throw new Error('The service worker is no single script.');
  return script.code;
}
