import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { EyesSeed } from '../core/camera/face-landmarks.js';
import type { FourCorners } from '../core/camera/features.js';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { CardReply, CardRequest } from '../protocol/card-messages.js';
import { parseFromCardWorker } from '../protocol/card-messages.js';
import type { FoundOutline, LiveReply, LiveRequest } from '../protocol/live-messages.js';
import { parseFromLiveWorker } from '../protocol/live-messages.js';
import type { LiveListener, LivePort } from '../session/live.js';
import type { CameraStream, DeviceFailure } from '../session/ports.js';
import { createIdleEnd } from './idle-end.js';
import { startCardWorker, startLiveWorker } from './start-workers.js';
import type { Vision } from './vision.js';
import { loadingFailure } from './vision.js';
import type { WorkerClient, WorkerLike } from './worker-client.js';
import { createWorkerClient } from './worker-client.js';

export interface LiveSettings {
  readonly startLiveWorker: () => WorkerLike;
  /** the worker that finds cards in pictures; here it is one that searches only, so that no picture's work stands in its way */
  readonly startSearchWorker: () => WorkerLike;
  /** the page's own address, below which `vision/` lies */
  readonly pageAddress: string;
  /** how long the worker may take to load */
  readonly startLimitMs: number;
  /** how long it may take for one frame */
  readonly answerLimitMs: number;
  /** after this time without a frame the worker is ended, to give its memory back */
  readonly idleLimitMs: number;
  /** a card that is followed is searched all the same after this time, lest print beside its edge be followed for ever */
  readonly searchAgainMs: number;
  /** a card that is not there is searched again after this time, so that the search leaves time for all else */
  readonly searchPauseMs: number;
}

/** Two frames under way: while one is looked at, the next is fetched. */
const FRAMES_UNDER_WAY = 2;

/** Looks at running cameras in a worker of its own, and searches the card in another. */
export function createLive(vision: Pick<Vision, 'landmarkBundle'>, overrides: Partial<LiveSettings> = {}): LivePort {
  const settings: LiveSettings = {
    startLiveWorker,
    startSearchWorker: startCardWorker,
    pageAddress: overrides.pageAddress ?? document.baseURI,
    startLimitMs: 120_000,
    answerLimitMs: 10_000,
    // chosen: a next wearer sits down within it
    idleLimitMs: 2 * 60_000,
    searchAgainMs: 3_000,
    searchPauseMs: 250,
    ...overrides,
  };
  const worker: WorkerClient<LiveRequest, LiveReply> = createWorkerClient({
    start: settings.startLiveWorker,
    parse: parseFromLiveWorker,
    cancelGraceMs: 500,
  });
  const searcher: WorkerClient<CardRequest, CardReply> = createWorkerClient({
    start: settings.startSearchWorker,
    parse: parseFromCardWorker,
    cancelGraceMs: 500,
  });
  const busy = createIdleEnd(() => {
    worker.end();
    searcher.end();
  }, settings.idleLimitMs);

  /** The bitmap is handed over; null where there is no card, or more than one. */
  const searchCard: CardSearcher = async (bitmap, eyes) => {
    const reply = await searcher.ask(
      { kind: 'search-card', bitmap, eyes },
      { transfer: [bitmap], limitMs: settings.answerLimitMs, onProgress: () => undefined, signal: null },
    );
    return reply.ok && reply.value.kind === 'card-searched' ? reply.value.corners : null;
  };

  let nextFrameId = 0;
  const listeners = new Set<LiveListener['onLoading']>();
  let loaded: { readonly worker: number | null; readonly outcome: Promise<Result<null, DeviceFailure>> } | null = null;

  const startOnce = (): Promise<Result<null, DeviceFailure>> => {
    if (loaded !== null && loaded.worker === worker.runningWorker()) return loaded.outcome;
    const ask = async (): Promise<Result<null, DeviceFailure>> => {
      const bundle = vision.landmarkBundle();
      const reply = await worker.ask(
        { kind: 'load-live', runtimeAddress: new URL('vision/', settings.pageAddress).href, bundle },
        {
          transfer: bundle.kind === 'bytes' ? [bundle.bytes] : [],
          limitMs: settings.startLimitMs,
          onProgress: (share) => {
            for (const each of listeners) each({ stage: 'loading-landmarks', share });
          },
          signal: null,
        },
      );
      return reply.ok ? succeed(null) : fail(loadingFailure('landmarks', reply.failure));
    };
    const outcome = ask();
    loaded = { worker: worker.runningWorker(), outcome };
    return outcome;
  };

  /** Starts the worker, unless it runs; everybody who waits for it hears how far it has come. */
  const load = async (onLoading: LiveListener['onLoading']): Promise<Result<null, DeviceFailure>> => {
    listeners.add(onLoading);
    onLoading({ stage: 'loading-landmarks', share: null });
    const outcome = await startOnce();
    listeners.delete(onLoading);
    onLoading(null);
    // the next one who asks tries again
    if (!outcome.ok) loaded = null;
    return outcome;
  };

  const watch = async (
    camera: CameraStream,
    measuring: MeasuringSettings,
    listener: LiveListener,
    signal: AbortSignal,
  ): Promise<void> => {
    const onLoading: LiveListener['onLoading'] = (progress) => {
      if (!signal.aborted) listener.onLoading(progress);
    };
    const first = await load(onLoading);
    if (signal.aborted) return;
    if (!first.ok) {
      listener.onFailure(first.failure);
      return;
    }
    const search = createSearch(searchCard, settings);
    let failures = 0;
    const see = async (bitmap: ImageBitmap, takenMs: number): Promise<void> => {
      const frameId = nextFrameId++;
      const isSearched = search.begins(takenMs);
      const reply = await worker.ask(
        { kind: 'see-frame', bitmap, frameId, takenMs, isSearched, found: search.taken(), settings: measuring },
        { transfer: [bitmap], limitMs: settings.answerLimitMs, onProgress: () => undefined, signal: null },
      );
      if (!reply.ok) {
        search.dropped(isSearched);
        failures += 1;
        if (signal.aborted) return;
        // It died, or an exception came out of it: once it is started again, then the screen says so.
        if (failures > 1) {
          listener.onFailure({ kind: 'vision-stopped', part: 'landmarks' });
          return;
        }
        await load(onLoading);
        return;
      }
      failures = 0;
      if (reply.value.kind !== 'frame-seen') return;
      const { bitmap: seen, sight, eyes } = reply.value;
      if (isSearched) await search.begin(seen, eyes, frameId);
      search.follows(sight.card !== null);
      if (signal.aborted) seen.close();
      else listener.onFrame({ bitmap: seen, sight, takenMs });
    };
    await forEachFrame(camera.stream, see, () => failures <= 1, signal);
  };

  return {
    prepare: () =>
      busy(async () => {
        // the first search compiles, and takes ten times as long as the next: it is of no wearer
        if (searcher.runningWorker() === null) void searchCard(paintedCard(), PAINTED_EYES);
        await load(() => undefined);
      }),
    watch: (camera, measuring, listener, signal) => busy(() => watch(camera, measuring, listener, signal)),
  };
}

/** Eyes of nobody, in a picture of 320 x 320 pixels. */
const PAINTED_EYES: EyesSeed = {
  irisCentre: { R: { xPx: 110, yPx: 180 }, L: { xPx: 210, yPx: 180 } },
  irisRadiusPx: { R: 9, L: 9 },
  middle: { xPx: 160, yPx: 180 },
  spanPx: 100,
  rollRad: 0,
};

/** A card above those eyes, so that all parts of a search have something to do. */
function paintedCard(): ImageBitmap {
  const canvas = new OffscreenCanvas(320, 320);
  const context = canvas.getContext('2d');
  if (context !== null) {
    context.fillStyle = '#b08a74';
    context.fillRect(0, 0, 320, 320);
    context.fillStyle = '#ffffff';
    context.fillRect(92, 60, 135, 85);
  }
  return canvas.transferToImageBitmap();
}

/** When the card is searched, and what became of it. */
interface CardSearch {
  /** Whether the frame of this moment is to be searched. */
  begins(nowMs: number): boolean;
  /** Searches the frame; it stays the caller's. Resolves as soon as it was copied. */
  begin(bitmap: ImageBitmap, eyes: EyesSeed | null, frameId: number): Promise<void>;
  /** The frame that was to be searched did not come back. */
  dropped(wasToBeSearched: boolean): void;
  /** What a search has found since it was last asked. */
  taken(): FoundOutline | null;
  follows(isFollowed: boolean): void;
}

type CardSearcher = (bitmap: ImageBitmap, eyes: EyesSeed) => Promise<FourCorners<ImagePoint> | null>;

function createSearch(searchCard: CardSearcher, settings: LiveSettings): CardSearch {
  let isUnderWay = false;
  let lastMs = -Infinity;
  let isFollowed = false;
  let found: FoundOutline | null = null;
  return {
    begins: (nowMs) => {
      if (isUnderWay || nowMs - lastMs < (isFollowed ? settings.searchAgainMs : settings.searchPauseMs)) return false;
      isUnderWay = true;
      return true;
    },
    begin: async (bitmap, eyes, frameId) => {
      if (eyes === null) {
        isUnderWay = false;
        return;
      }
      const copy = await createImageBitmap(bitmap);
      void searchCard(copy, eyes).then((corners) => {
        found = corners === null ? null : { frameId, corners };
        lastMs = performance.now();
        isUnderWay = false;
      });
    },
    dropped: (wasToBeSearched) => {
      if (wasToBeSearched) isUnderWay = false;
    },
    taken: () => {
      const outline = found;
      found = null;
      return outline;
    },
    follows: (followed) => {
      isFollowed = followed;
    },
  };
}

/** Hands on each new frame of a stream, unless as many as may be are still under way. Ends with the signal, or where `goesOn` says so. */
async function forEachFrame(
  stream: MediaStream,
  see: (bitmap: ImageBitmap, takenMs: number) => Promise<void>,
  goesOn: () => boolean,
  signal: AbortSignal,
): Promise<void> {
  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  video.srcObject = stream;
  let underWay = 0;
  let handle = 0;
  try {
    await new Promise<void>((resolve, reject) => {
      signal.addEventListener('abort', () => {
        resolve();
      });
      const take = async (takenMs: number): Promise<void> => {
        let bitmap: ImageBitmap;
        try {
          bitmap = await createImageBitmap(video);
        } catch {
          // a camera that gives nothing at this moment: the next frame may
          return;
        }
        if (signal.aborted) bitmap.close();
        else await see(bitmap, takenMs);
      };
      const onFrame = (): void => {
        if (signal.aborted) return;
        if (!goesOn()) {
          resolve();
          return;
        }
        handle = video.requestVideoFrameCallback(onFrame);
        if (underWay >= FRAMES_UNDER_WAY) return;
        underWay += 1;
        take(performance.now())
          .catch(reject)
          .finally(() => {
            underWay -= 1;
          });
      };
      handle = video.requestVideoFrameCallback(onFrame);
      // Playing is refused where the stream ended in between: who holds the camera says so.
      video.play().catch(() => undefined);
    });
  } finally {
    video.cancelVideoFrameCallback(handle);
    video.srcObject = null;
  }
}
