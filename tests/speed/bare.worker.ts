import type { FaceLandmarker } from '@mediapipe/tasks-vision';
import { createFaceLandmarker } from '../../src/workers/face-landmarker.js';

// What the live loop is held against: the landmark model alone, on the same frames, in a worker of its own.

export type BareRequest =
  | { readonly kind: 'load'; readonly pageAddress: string }
  | { readonly kind: 'look'; readonly bitmap: ImageBitmap; readonly takenMs: number };

let landmarker: FaceLandmarker | null = null;

self.addEventListener('message', (event: MessageEvent<BareRequest>) => {
  void answer(event.data);
});

async function answer(request: BareRequest): Promise<void> {
  if (request.kind === 'load') {
    const { pageAddress } = request;
    landmarker = await createFaceLandmarker(
      {
        runtimeAddress: `${pageAddress}vision/`,
        bundle: { kind: 'address', address: `${pageAddress}models/face-landmarks.task` },
      },
      { mode: 'VIDEO', numFaces: 1 },
      { progress: () => undefined, checkCancelled: () => Promise.resolve() },
    );
    self.postMessage(0);
    return;
  }
  const startMs = performance.now();
  landmarker?.detectForVideo(request.bitmap, request.takenMs);
  const tookMs = performance.now() - startMs;
  request.bitmap.close();
  self.postMessage(tookMs);
}
