import type { BoardFailure, BoardView } from '../core/camera/board.js';
import type { CameraProfile } from '../core/camera/camera-profile.js';
import type { PictureFeatures } from '../core/camera/features.js';
import { MOST_VIEWS } from '../core/camera/profile-quality.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { CardReply, CardRequest } from '../protocol/card-messages.js';
import { parseFromCardWorker } from '../protocol/card-messages.js';
import type { LandmarkBundle, LandmarksReply, LandmarksRequest } from '../protocol/landmarks-messages.js';
import { parseFromLandmarksWorker } from '../protocol/landmarks-messages.js';
import type {
  DeviceFailure,
  FindingFailure,
  MeasuringFailure,
  MeasuringProgress,
  Picture,
  VisionPort,
} from '../session/ports.js';
import { createIdleEnd } from './idle-end.js';
import { startCardWorker, startLandmarksWorker } from './start-workers.js';
import type { WorkerClient, WorkerFailure, WorkerLike } from './worker-client.js';
import { createWorkerClient } from './worker-client.js';

export interface VisionSettings {
  readonly startLandmarksWorker: () => WorkerLike;
  readonly startCardWorker: () => WorkerLike;
  /** the page's own address, below which `models/` and `vision/` lie */
  readonly pageAddress: string;
  /** how long a worker may take to load; some 15 MB come over the line the first time */
  readonly startLimitMs: number;
  /** how long a worker may take for one picture */
  readonly answerLimitMs: number;
  /** how long a cancelled worker may go on before it is ended and, when next needed, started again */
  readonly cancelGraceMs: number;
  /** after this time without a picture the workers are ended, to give their memory back */
  readonly idleLimitMs: number;
}

/** The vision devices with what the live view shares of them. */
export interface Vision extends VisionPort {
  /** Where the landmark bundle in use comes from; its bytes are a copy. */
  landmarkBundle(): LandmarkBundle;
}

type Part = 'landmarks' | 'card';
type OnProgress = (progress: MeasuringProgress) => void;
type LandmarksClient = WorkerClient<LandmarksRequest, LandmarksReply>;

/** A worker with the loading that its first request waits for. */
interface LoadedOnce {
  loading: Promise<Result<null, DeviceFailure>> | null;
  /** the one that was loaded; a successor is not */
  worker: number | null;
  readonly listeners: Set<(share: number | null) => void>;
  /** how far the loading under way has come, for those who join it; null where that is not known */
  lastShare: number | null;
  isUnderWay: boolean;
}

/** Finds features in pictures in two workers, which it starts, watches, cancels and starts again as needed. */
export function createVision(overrides: Partial<VisionSettings> = {}): Vision {
  const settings: VisionSettings = {
    startLandmarksWorker,
    startCardWorker,
    pageAddress: overrides.pageAddress ?? document.baseURI,
    // chosen: a slow line loads in two minutes, a slow computer works on the largest picture for some ten seconds
    startLimitMs: 120_000,
    answerLimitMs: 30_000,
    cancelGraceMs: 500,
    idleLimitMs: 15 * 60_000,
    ...overrides,
  };
  const { cancelGraceMs } = settings;

  const createLandmarksClient = (): LandmarksClient =>
    createWorkerClient({ start: settings.startLandmarksWorker, parse: parseFromLandmarksWorker, cancelGraceMs });

  let landmarks = createLandmarksClient();
  let landmarksState: LoadedOnce = notLoaded();
  const card: WorkerClient<CardRequest, CardReply> = createWorkerClient({
    start: settings.startCardWorker,
    parse: parseFromCardWorker,
    cancelGraceMs,
  });
  const cardState = notLoaded();
  let ownBundle: Uint8Array | null = null;

  const busy = createIdleEnd(() => {
    landmarks.end();
    card.end();
  }, settings.idleLimitMs);

  const bundleOf = (bytes: Uint8Array | null): LandmarkBundle =>
    bytes === null
      ? { kind: 'address', address: new URL('models/face-landmarks.task', settings.pageAddress).href }
      : { kind: 'bytes', bytes: new Uint8Array(bytes).buffer };

  const askToLoadLandmarks = (client: LandmarksClient, bytes: Uint8Array | null, report: (share: number) => void) => {
    const bundle = bundleOf(bytes);
    const runtimeAddress = new URL('vision/', settings.pageAddress).href;
    return client.ask(
      { kind: 'load-landmarks', runtimeAddress, bundle },
      {
        transfer: bundle.kind === 'bytes' ? [bundle.bytes] : [],
        limitMs: settings.startLimitMs,
        onProgress: report,
        signal: null,
      },
    );
  };

  const loadLandmarks = (onProgress: OnProgress) => {
    // held fast: another bundle may take the place of `landmarks` meanwhile
    const current = landmarks;
    return loadOnce(landmarksState, current, 'loading-landmarks', onProgress, async (report) => {
      const reply = await askToLoadLandmarks(current, ownBundle, report);
      return reply.ok ? succeed(null) : fail(loadingFailure('landmarks', reply.failure));
    });
  };

  const loadCard = (onProgress: OnProgress) =>
    loadOnce(cardState, card, 'loading-card', onProgress, async (report) => {
      const reply = await card.ask(
        { kind: 'load-card' },
        { transfer: [], limitMs: settings.startLimitMs, onProgress: report, signal: null },
      );
      return reply.ok ? succeed(null) : fail(loadingFailure('card', reply.failure));
    });

  const find = async (
    picture: Picture,
    onProgress: OnProgress,
    signal: AbortSignal,
  ): Promise<Result<PictureFeatures, FindingFailure>> => {
    // both at once: while faces are looked for, the card's worker can load; it is spoken of only once it is waited for
    let isCardAwaited = false;
    let lastOfCard: MeasuringProgress | null = null;
    const cardLoading = loadCard((progress) => {
      lastOfCard = progress;
      if (isCardAwaited) onProgress(progress);
    }).finally(() => (lastOfCard = null));
    const faces = await askLoaded(
      'landmarks',
      () => loadLandmarks(onProgress),
      async () => {
        onProgress({ stage: 'finding-face', share: null });
        const bitmap = await copyOf(picture);
        return landmarks.ask(
          { kind: 'find-landmarks', bitmap },
          { transfer: [bitmap], limitMs: settings.answerLimitMs, onProgress: () => undefined, signal },
        );
      },
      signal,
    );
    if (!faces.ok) return withoutFeatures(faces.failure);
    const found = faces.value;
    if (found.kind !== 'landmarks-found') return withoutFeatures({ kind: 'vision-stopped', part: 'landmarks' });
    if (found.faceCount === 0) return withoutFeatures({ kind: 'no-face' });
    if (found.faceCount > 1) return withoutFeatures({ kind: 'several-faces', count: found.faceCount });

    isCardAwaited = true;
    if (lastOfCard !== null) onProgress(lastOfCard);
    const features = await askLoaded(
      'card',
      (isAgain) => (isAgain ? loadCard(onProgress) : cardLoading),
      async () => {
        onProgress({ stage: 'finding-card', share: null });
        const bitmap = await copyOf(picture);
        return card.ask(
          { kind: 'find-features', bitmap, landmarks: found.landmarks },
          { transfer: [bitmap], limitMs: settings.answerLimitMs, onProgress: () => undefined, signal },
        );
      },
      signal,
    );
    if (!features.ok) return withoutFeatures(features.failure);
    const { value } = features;
    if (value.kind === 'features-found') return succeed(value.features);
    if (value.kind === 'features-missing') return fail({ failure: value.failure, partial: value.partial });
    return withoutFeatures({ kind: 'vision-stopped', part: 'card' });
  };

  const findBoard = async (
    picture: Picture,
    signal: AbortSignal,
  ): Promise<Result<BoardView, BoardFailure | DeviceFailure>> => {
    const found = await askLoaded(
      'card',
      () => loadCard(() => undefined),
      async () => {
        const bitmap = await copyOf(picture);
        return card.ask(
          { kind: 'find-board', bitmap },
          { transfer: [bitmap], limitMs: settings.answerLimitMs, onProgress: () => undefined, signal },
        );
      },
      signal,
    );
    if (!found.ok) return found;
    const { value } = found;
    if (value.kind === 'board-found') return succeed(value.view);
    return fail(value.kind === 'board-missing' ? value.failure : { kind: 'vision-stopped', part: 'card' });
  };

  const makeProfile = async (
    views: readonly BoardView[],
    signal: AbortSignal,
  ): Promise<Result<CameraProfile, BoardFailure | DeviceFailure>> => {
    const made = await askLoaded(
      'card',
      () => loadCard(() => undefined),
      () =>
        card.ask(
          { kind: 'make-profile', views: evenlyPicked(views, MOST_VIEWS) },
          { transfer: [], limitMs: settings.answerLimitMs, onProgress: () => undefined, signal },
        ),
      signal,
    );
    if (!made.ok) return made;
    const { value } = made;
    if (value.kind === 'profile-made') return succeed(value.profile);
    return fail(value.kind === 'profile-refused' ? value.failure : { kind: 'vision-stopped', part: 'card' });
  };

  return {
    landmarkBundle: () => bundleOf(ownBundle),
    warmUp: (onProgress) =>
      busy(async () => {
        const [first, second] = await Promise.all([loadLandmarks(onProgress), loadCard(onProgress)]);
        return first.ok ? second : first;
      }),
    findFeatures: (picture, onProgress, signal) => busy(() => find(picture, onProgress, signal)),
    findBoard: (picture, signal) => busy(() => findBoard(picture, signal)),
    makeProfile: (views, signal) => busy(() => makeProfile(views, signal)),
    useLandmarkBundle: (bytes) =>
      busy(async () => {
        // a worker loads one bundle in its life; the old one goes on until the new one has shown that it works
        const next = createLandmarksClient();
        const reply = await askToLoadLandmarks(next, bytes, () => undefined);
        if (!reply.ok) {
          next.end();
          return fail(loadingFailure('landmarks', reply.failure));
        }
        landmarks.end();
        landmarks = next;
        landmarksState = { ...notLoaded(), loading: Promise.resolve(succeed(null)), worker: next.runningWorker() };
        ownBundle = bytes;
        return succeed(null);
      }),
  };
}

function notLoaded(): LoadedOnce {
  return { loading: null, worker: null, listeners: new Set(), lastShare: null, isUnderWay: false };
}

/** Loads a worker once in its life; everybody who asks meanwhile waits for the same loading, and hears of its progress. */
async function loadOnce(
  state: LoadedOnce,
  client: { runningWorker(): number | null },
  stage: 'loading-landmarks' | 'loading-card',
  onProgress: OnProgress,
  load: (report: (share: number) => void) => Promise<Result<null, DeviceFailure>>,
): Promise<Result<null, DeviceFailure>> {
  if (state.worker !== client.runningWorker()) state.loading = null;
  const listener = (share: number | null) => onProgress({ stage, share });
  state.listeners.add(listener);
  try {
    if (state.loading === null) {
      state.lastShare = null;
      state.isUnderWay = true;
      state.loading = load((share) => {
        state.lastShare = share;
        for (const each of state.listeners) each(share);
      }).finally(() => (state.isUnderWay = false));
      state.worker = client.runningWorker();
    }
    if (state.isUnderWay) listener(state.lastShare);
    const loading = state.loading;
    const loaded = await loading;
    // the next one who asks tries again
    if (!loaded.ok && state.loading === loading) state.loading = null;
    return loaded;
  } finally {
    state.listeners.delete(listener);
  }
}

/**
 * Loads the worker and sends it a picture. A worker that is still busy with a cancelled picture is ended, and what waits behind
 * that picture with it; one that died meanwhile left a successor that is not loaded. Then the next worker is asked, once.
 */
async function askLoaded<Reply>(
  part: Part,
  load: (isAgain: boolean) => Promise<Result<null, DeviceFailure>>,
  send: () => Promise<Result<Reply, WorkerFailure>>,
  signal: AbortSignal,
): Promise<Result<Reply, DeviceFailure>> {
  for (let isAgain = false; ; isAgain = true) {
    const loaded = await unlessAborted(load(isAgain), signal);
    if (!loaded.ok) return loaded;
    const reply = await send();
    signal.throwIfAborted();
    if (reply.ok) return reply;
    const { failure } = reply;
    const isOfPredecessor =
      failure.kind === 'ended' || (failure.kind === 'fault' && failure.fault.code === 'not-loaded');
    if (!isOfPredecessor || isAgain) return fail({ kind: 'vision-stopped', part });
  }
}

/** Why a worker could not be loaded, for the screen; more of it for developers. */
export function loadingFailure(part: Part, failure: WorkerFailure): DeviceFailure {
  // for developers: the sentence on the screen does not say what was wrong with the bytes
  console.warn(
    `The ${part} worker could not be loaded:`,
    failure.kind === 'fault' ? failure.fault.detail : failure.kind,
  );
  const isModel = failure.kind === 'fault' && failure.fault.code === 'model-not-loadable';
  return isModel ? { kind: 'model-not-loadable' } : { kind: 'vision-not-loadable', part };
}

function withoutFeatures(failure: MeasuringFailure): { readonly ok: false; readonly failure: FindingFailure } {
  return fail({ failure, partial: null });
}

/** As many of the items as allowed, spread evenly over all of them. */
function evenlyPicked<Item>(items: readonly Item[], most: number): readonly Item[] {
  if (items.length <= most) return items;
  return Array.from({ length: most }, (_, place) => items[Math.floor((place * items.length) / most)]!);
}

/** The workers close what they get, and the picture stays the caller's. */
function copyOf(picture: Picture): Promise<ImageBitmap> {
  return createImageBitmap(picture.bitmap);
}

/** The outcome, or the signal's reason as a rejection, whichever comes first. The work itself goes on. */
function unlessAborted<Value>(work: Promise<Value>, signal: AbortSignal): Promise<Value> {
  return new Promise((resolve, reject) => {
    const abort = () => reject(signal.reason instanceof Error ? signal.reason : new Error(String(signal.reason)));
    if (signal.aborted) {
      abort();
      return;
    }
    signal.addEventListener('abort', abort, { once: true });
    work.then(resolve, reject).finally(() => signal.removeEventListener('abort', abort));
  });
}
