import type { EyesSeed } from '../../src/core/camera/face-landmarks.js';
import type { FourCorners } from '../../src/core/camera/features.js';
import type { LiveSight } from '../../src/core/camera/live-sight.js';
import type { MeasuringSettings } from '../../src/core/estimate/face-estimates.js';
import type { ImagePoint } from '../../src/core/geometry/vector.js';
import { startCardWorker, startLiveWorker } from '../../src/devices/start-workers.js';
import { createWorkerClient } from '../../src/devices/worker-client.js';
import type { CardReply, CardRequest } from '../../src/protocol/card-messages.js';
import { parseFromCardWorker } from '../../src/protocol/card-messages.js';
import type { FoundOutline, LiveReply, LiveRequest } from '../../src/protocol/live-messages.js';
import { parseFromLiveWorker } from '../../src/protocol/live-messages.js';
import { drawSight } from '../../src/ui/draw-sight.js';
import type { BareRequest } from './bare.worker.js';

/** What one frame cost, ms. */
export interface FrameCost {
  readonly bareMs: number;
  readonly landmarksMs: number;
  readonly readingMs: number;
  readonly followingMs: number;
  readonly drawingMs: number;
  readonly isCardFollowed: boolean;
  readonly isEstimated: boolean;
}

/** What the speed bench asks of its page. */
export interface SpeedBench {
  /** Starts both workers. */
  load(): Promise<void>;
  /** Each frame through the bare model and through the live loop, turn by turn. */
  run(rounds: number): Promise<readonly FrameCost[]>;
  /** How long the search for a card takes, ms, on each of the pictures. */
  search(): Promise<readonly number[]>;
}

declare global {
  interface Window {
    speedBench?: SpeedBench;
  }
}

// this page lies two folders below the one that the app would have in its place
const pageAddress = new URL('../../', document.baseURI).href;
const SETTINGS: MeasuringSettings = { gaze: 'camera', workingDistanceMm: 400, printScale: 1, profile: null };
const WIDTH_PX = 1280;
const HEIGHT_PX = 720;
/** Each picture is seen so many times, a little further on each time, as a head moves. */
const STEPS = 8;
const LIMIT_MS = 60_000;

const searcher = createWorkerClient<CardRequest, CardReply>({
  start: startCardWorker,
  parse: parseFromCardWorker,
  cancelGraceMs: 500,
});
const live = createWorkerClient<LiveRequest, LiveReply>({
  start: startLiveWorker,
  parse: parseFromLiveWorker,
  cancelGraceMs: 500,
});
const bare = new Worker(new URL('./bare.worker.ts', import.meta.url), { type: 'module' });

const COLOURS = { edge: '#10141a', card: '#ffd479', iris: '#8fe3ff', line: '#ffffff' };
const overlay = document.createElement('canvas');
overlay.width = WIDTH_PX;
overlay.height = HEIGHT_PX;
document.body.append(overlay);
const context = overlay.getContext('2d') ?? fail();
let takenMs = 0;
let frameId = 0;

window.speedBench = {
  load: async () => {
    const loaded = await live.ask(
      {
        kind: 'load-live',
        runtimeAddress: `${pageAddress}vision/`,
        bundle: { kind: 'address', address: `${pageAddress}models/face-landmarks.task` },
      },
      { transfer: [], limitMs: LIMIT_MS, onProgress: () => undefined, signal: null },
    );
    if (!loaded.ok) throw new Error('The live worker did not start.');
    await askBare({ kind: 'load', pageAddress }, []);
  },
  run: async (rounds) => {
    const pictures = await picturesOfInput();
    const costs: FrameCost[] = [];
    let found: FoundOutline | null = null;
    let isFollowed = false;
    for (let round = 0; round < rounds; round++) {
      for (const picture of pictures) {
        for (let step = 0; step < STEPS; step++) {
          const frame = await moved(picture, step);
          takenMs += 33;
          frameId += 1;
          const copy = await createImageBitmap(frame);
          const bareMs = await askBare({ kind: 'look', bitmap: copy, takenMs }, [copy]);
          const isSearched = !isFollowed;
          const reply = await live.ask(
            { kind: 'see-frame', bitmap: frame, frameId, takenMs, isSearched, found, settings: SETTINGS },
            { transfer: [frame], limitMs: LIMIT_MS, onProgress: () => undefined, signal: null },
          );
          if (!reply.ok || reply.value.kind !== 'frame-seen') throw new Error('The live worker did not answer.');
          const { sight, times, bitmap, eyes } = reply.value;
          const drawingMs = draw(sight);
          found = null;
          if (isSearched && eyes !== null) {
            const corners = await searchCard(bitmap, eyes);
            found = corners && { frameId, corners };
          } else bitmap.close();
          isFollowed = sight.card !== null || found !== null;
          costs.push({
            bareMs,
            ...times,
            drawingMs,
            isCardFollowed: sight.card !== null,
            isEstimated: sight.estimate !== null,
          });
        }
      }
    }
    return costs;
  },
  search: async () => {
    const took: number[] = [];
    for (const picture of await picturesOfInput()) {
      const frame = await moved(picture, 0);
      takenMs += 33;
      frameId += 1;
      const reply = await live.ask(
        { kind: 'see-frame', bitmap: frame, frameId, takenMs, isSearched: false, found: null, settings: SETTINGS },
        { transfer: [frame], limitMs: LIMIT_MS, onProgress: () => undefined, signal: null },
      );
      if (!reply.ok || reply.value.kind !== 'frame-seen' || reply.value.eyes === null) continue;
      const startMs = performance.now();
      await searchCard(reply.value.bitmap, reply.value.eyes);
      took.push(performance.now() - startMs);
    }
    return took;
  },
};

function fail(): never {
  throw new Error('no 2d context');
}

async function searchCard(bitmap: ImageBitmap, eyes: EyesSeed): Promise<FourCorners<ImagePoint> | null> {
  const reply = await searcher.ask(
    { kind: 'search-card', bitmap, eyes },
    { transfer: [bitmap], limitMs: LIMIT_MS, onProgress: () => undefined, signal: null },
  );
  if (!reply.ok || reply.value.kind !== 'card-searched') throw new Error('The search was not answered.');
  return reply.value.corners;
}

function askBare(request: BareRequest, transfer: Transferable[]): Promise<number> {
  return new Promise((resolve, reject) => {
    bare.addEventListener('message', (event: MessageEvent<number>) => resolve(event.data), { once: true });
    bare.addEventListener('error', () => reject(new Error('The bare worker stopped.')), { once: true });
    bare.postMessage(request, transfer);
  });
}

function picturesOfInput(): Promise<readonly ImageBitmap[]> {
  const files = [...(document.querySelector('input')?.files ?? [])];
  return Promise.all(files.map((file) => createImageBitmap(file)));
}

/** The picture as a frame of a camera, some pixels aside and a little nearer with each step. */
function moved(picture: ImageBitmap, step: number): Promise<ImageBitmap> {
  const canvas = new OffscreenCanvas(WIDTH_PX, HEIGHT_PX);
  const context = canvas.getContext('2d') ?? fail();
  const scale = (1 + 0.004 * step) * Math.max(WIDTH_PX / picture.width, HEIGHT_PX / picture.height);
  context.translate(WIDTH_PX / 2 + 1.5 * step, HEIGHT_PX / 2 - step);
  context.rotate(0.003 * step);
  context.scale(scale, scale);
  context.drawImage(picture, -picture.width / 2, -picture.height / 2);
  return createImageBitmap(canvas);
}

function draw(sight: LiveSight): number {
  const startMs = performance.now();
  drawSight(context, sight, { scale: 1, leftPx: 0, topPx: 0, pixelRatio: 1 }, COLOURS);
  return performance.now() - startMs;
}
