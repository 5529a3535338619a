import { headView } from '../core/camera/head-view.js';
import type { Result } from '../core/result.js';
import type { MeasuringFailure, MeasuringProgress, Picture, VisionPort } from '../session/ports.js';
import type { FrameOutcome } from '../session/sweep-frames.js';

/** A frame that is still to be looked at. */
export interface FrameSource {
  readonly id: number;
  /** Opens the frame; whoever opens it closes it. */
  readonly open: () => Promise<Result<Picture, MeasuringFailure>>;
  /** Lets go of a frame that will not be opened. */
  readonly discard: () => void;
  /** the file that the frame is, where it is one */
  readonly file: Blob | null;
}

/** A frame that was looked at. */
export interface SettledFrame {
  readonly id: number;
  readonly outcome: FrameOutcome;
  readonly thumbnail: Picture | null;
  readonly kept: Blob | null;
}

/** Looks at the frames of one sweep. */
export interface SweepFinder {
  add(source: FrameSource): void;
  /** Lets go of the frames that nobody looked at yet; those under way are still settled. */
  discardWaiting(): void;
  /** Lets go of everything; nothing is reported any more. */
  stop(): void;
}

/** While the card of one frame is looked for, the face of the next one can be: two workers, two frames. */
const FRAMES_UNDER_WAY = 2;

/** Wide enough for the strip on a dense screen. */
const THUMBNAIL_WIDTH_PX = 320;

/** Chosen: to look at, and to be measured alone, without blocks to be seen; some 250 kB for a frame of a webcam. */
const KEPT_QUALITY = 0.95;

/**
 * Looks at frames, the newest first: what the wearer sees of the own head is then as fresh as can be, and the order does not
 * matter to the measuring. Bitmaps are closed as soon as they were looked at; a small copy and a file stay.
 */
export function createSweepFinder(handlers: {
  readonly vision: VisionPort;
  readonly isNewestFirst: boolean;
  readonly onSettled: (frame: SettledFrame) => void;
  /** with how far the loading has come, where a frame waits for it */
  readonly onLoading: (progress: MeasuringProgress) => void;
  /** with what an exception was thrown, that is with a bug */
  readonly onFault: (reason: unknown) => void;
}): SweepFinder {
  const { vision, onSettled, onLoading, onFault } = handlers;
  const abort = new AbortController();
  const { signal } = abort;
  let waiting: FrameSource[] = [];
  let underWay = 0;

  const look = async (source: FrameSource): Promise<void> => {
    const opened = await source.open();
    if (!opened.ok) {
      if (!signal.aborted) onSettled(missed(source, opened.failure));
      return;
    }
    const picture = opened.value;
    try {
      if (signal.aborted) return;
      const found = await vision.findFeatures(
        picture,
        (progress) => {
          const isLoading = progress.stage === 'loading-landmarks' || progress.stage === 'loading-card';
          if (isLoading && !signal.aborted) onLoading(progress);
        },
        signal,
      );
      const outcome: FrameOutcome = found.ok
        ? { kind: 'found', features: found.value }
        : {
            kind: 'missed',
            failure: found.failure.failure,
            view: found.failure.partial === null ? null : headView(found.failure.partial.landmarks),
          };
      const [thumbnail, kept] = await Promise.all([smallCopy(picture), source.file ?? asFile(picture.bitmap)]);
      if (signal.aborted) thumbnail.bitmap.close();
      else onSettled({ id: source.id, outcome, thumbnail, kept });
    } finally {
      picture.bitmap.close();
    }
  };

  const next = (): void => {
    while (underWay < FRAMES_UNDER_WAY && !signal.aborted) {
      const source = handlers.isNewestFirst ? waiting.pop() : waiting.shift();
      if (source === undefined) return;
      underWay += 1;
      look(source)
        .catch((reason: unknown) => {
          // An abort rejects with the signal's reason and is expected.
          if (!signal.aborted) onFault(reason);
        })
        .finally(() => {
          underWay -= 1;
          next();
        });
    }
  };

  const discardWaiting = (): void => {
    for (const source of waiting) source.discard();
    waiting = [];
  };

  return {
    add: (source) => {
      if (signal.aborted) {
        source.discard();
        return;
      }
      waiting.push(source);
      next();
    },
    discardWaiting,
    stop: () => {
      abort.abort();
      discardWaiting();
    },
  };
}

function missed({ id, file }: FrameSource, failure: MeasuringFailure): SettledFrame {
  return { id, outcome: { kind: 'missed', failure, view: null }, thumbnail: null, kept: file };
}

/** A small copy that keeps the coordinates of the picture. */
async function smallCopy(picture: Picture): Promise<Picture> {
  const { bitmap, widthPx, heightPx } = picture;
  const width = Math.min(THUMBNAIL_WIDTH_PX, widthPx);
  const small = await createImageBitmap(bitmap, {
    resizeWidth: width,
    resizeHeight: Math.max(1, Math.round((width * heightPx) / widthPx)),
    resizeQuality: 'medium',
  });
  return { ...picture, bitmap: small };
}

async function asFile(bitmap: ImageBitmap): Promise<Blob> {
  const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: KEPT_QUALITY });
}
