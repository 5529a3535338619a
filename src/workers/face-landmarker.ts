import { FaceLandmarker } from '@mediapipe/tasks-vision';
import type { LandmarkBundle } from '../protocol/landmarks-messages.js';
import { fetchWithProgress } from './fetch-with-progress.js';
import type { Work } from './message-loop.js';
import { Fault } from './message-loop.js';

const RUNTIME = 'vision_wasm_module_internal';

// What the runtime's loader looks for in the global scope: a module to fill, here with the bytes that were fetched already.
const scope = globalThis as { Module?: { wasmBinary: Uint8Array } };

/** What a landmarker is made from. */
export interface LandmarkerSource {
  /** address of the folder with the runtime's WebAssembly; ends with a slash */
  readonly runtimeAddress: string;
  readonly bundle: LandmarkBundle;
}

/**
 * Fetches runtime and bundle, and starts the landmark model. Once in a worker's life: another bundle needs another worker. Throws a fault
 * where one of them cannot be fetched or started.
 *
 * @param mode single pictures, or the frames of a running camera, of which each is looked at where the face was in the one before
 */
export async function createFaceLandmarker(
  { runtimeAddress, bundle }: LandmarkerSource,
  { mode, numFaces }: { readonly mode: 'IMAGE' | 'VIDEO'; readonly numFaces: number },
  work: Work,
): Promise<FaceLandmarker> {
  const loaded = { runtime: 0, bundle: 0 };
  const totals: { runtime: number | null; bundle: number | null } = { runtime: null, bundle: null };
  const track = (part: 'runtime' | 'bundle') => (bytes: number, total: number | null) => {
    loaded[part] = bytes;
    totals[part] = total;
    if (totals.runtime !== null && totals.bundle !== null) {
      work.progress((loaded.runtime + loaded.bundle) / (totals.runtime + totals.bundle));
    }
  };
  const [wasmBinary, modelAssetBuffer] = await Promise.all([
    fetchWithProgress(`${runtimeAddress}${RUNTIME}.wasm`, 'runtime-not-loadable', track('runtime')),
    bundleBytes(bundle, track('bundle')),
  ]);
  await work.checkCancelled();
  scope.Module = { wasmBinary };
  const fileset = {
    wasmLoaderPath: `${runtimeAddress}${RUNTIME}.js`,
    wasmBinaryPath: `${runtimeAddress}${RUNTIME}.wasm`,
  };
  try {
    return await FaceLandmarker.createFromOptions(fileset, {
      // MediaPipe takes the bytes over: it may detach them
      baseOptions: { modelAssetBuffer, delegate: 'CPU' },
      runningMode: mode,
      numFaces,
    });
  } catch (error) {
    // the runtime reports a bad bundle and a failing start of its own alike; without the loader's address it is the bundle
    const detail = String(error);
    const isRuntime = detail.includes(RUNTIME) || detail.includes('WebAssembly') || detail.includes('ModuleFactory');
    throw new Fault(isRuntime ? 'runtime-not-loadable' : 'model-not-loadable', detail);
  }
}

async function bundleBytes(
  bundle: LandmarkBundle,
  onBytes: (loaded: number, total: number | null) => void,
): Promise<Uint8Array> {
  if (bundle.kind === 'address') return fetchWithProgress(bundle.address, 'model-not-loadable', onBytes);
  onBytes(bundle.bytes.byteLength, bundle.bytes.byteLength);
  return new Uint8Array(bundle.bytes);
}
