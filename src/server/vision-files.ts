import { createReadStream, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { mimeType } from './mime-type.js';

/** A file that the vision workers fetch while the app runs; paths are relative to the project, addresses to the page. */
interface VisionFile {
  readonly address: string;
  readonly path: string;
  /** what to do where the file is missing */
  readonly remedy: string;
}

const RUNTIME_FOLDER = 'node_modules/@mediapipe/tasks-vision/wasm';

// The variant for module workers. The others are for classic workers and for browsers without SIMD, of which the build
// target admits none; each would weigh 11 MB.
const RUNTIME_FILES = ['vision_wasm_module_internal.js', 'vision_wasm_module_internal.wasm'];

/** All files that are served under `vision/` and `models/`. */
export const VISION_FILES: readonly VisionFile[] = [
  ...RUNTIME_FILES.map((name) => ({
    address: `vision/${name}`,
    path: `${RUNTIME_FOLDER}/${name}`,
    remedy: 'run `npm ci`',
  })),
  {
    address: 'models/face-landmarks.task',
    path: 'models/assembled/face-landmarks.task',
    remedy: 'run `npm run models`',
  },
];

/** Serves the vision files while developing and copies them into the build. A build without one of them fails. */
export function visionFiles(): Plugin {
  return {
    name: 'glabella-vision-files',
    configureServer(server) {
      server.middlewares.use((request, response, next) => {
        const pathname = new URL(request.url ?? '/', 'http://localhost').pathname;
        const wanted = VISION_FILES.find((file) => pathname === `/${file.address}`);
        if (wanted === undefined) {
          next();
          return;
        }
        const path = join(server.config.root, wanted.path);
        if (!existsSync(path)) {
          response.statusCode = 404;
          response.end(`${wanted.path} is missing: ${wanted.remedy}.`);
          return;
        }
        response.setHeader('Content-Type', mimeType(path));
        createReadStream(path).pipe(response);
      });
    },
    generateBundle() {
      for (const file of VISION_FILES) {
        const path = join(this.environment.config.root, file.path);
        if (!existsSync(path)) this.error(`${file.path} is missing: ${file.remedy}.`);
        this.emitFile({ type: 'asset', fileName: file.address, source: readFileSync(path) });
      }
    },
  };
}
