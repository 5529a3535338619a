import type { EyesSeed } from '../core/camera/face-landmarks.js';
import type { FourCorners } from '../core/camera/features.js';
import type { LiveSight } from '../core/camera/live-sight.js';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { LandmarkBundle } from './landmarks-messages.js';
import { isBitmap, parseBundle } from './landmarks-messages.js';
import type { CancelledReply, CancelMessage, FaultReply, Message, ProgressMessage } from './message.js';
import { isFiniteNumber, isMessage, isRecord, parseCommonReply } from './message.js';
import { areCorners, isEyes, isOfBothSides, isPoint } from './parse-eyes.js';
import { isMeasuringSettings } from './parse-measuring-settings.js';

/** Loads runtime and bundle; answered with `live-loaded`. The bundle's bytes may be transferred. */
export interface LoadLiveRequest extends Message {
  readonly kind: 'load-live';
  /** address of the folder with the runtime's WebAssembly; ends with a slash */
  readonly runtimeAddress: string;
  readonly bundle: LandmarkBundle;
}

/** Where a search found the card. */
export interface FoundOutline {
  /** the `frameId` of the request whose bitmap was searched */
  readonly frameId: number;
  readonly corners: FourCorners<ImagePoint>;
}

/** Looks at the next frame of a camera; answered with `frame-seen`. The bitmap is transferred, and comes back with the reply. */
export interface SeeFrameRequest extends Message {
  readonly kind: 'see-frame';
  readonly bitmap: ImageBitmap;
  /** grows from frame to frame of one camera; a smaller one than before begins anew */
  readonly frameId: number;
  /** on the clock of the page; grows */
  readonly takenMs: number;
  /** this frame will be searched for the card: its landmarks are to be remembered */
  readonly isSearched: boolean;
  /** what a search of a frame before has found since; null where none ended */
  readonly found: FoundOutline | null;
  readonly settings: MeasuringSettings;
}

export type LiveRequest = LoadLiveRequest | SeeFrameRequest;
export type ToLiveWorker = LiveRequest | CancelMessage;

export interface LiveLoadedReply extends Message {
  readonly kind: 'live-loaded';
  readonly loadMs: number;
}

/** Time that the parts of the work on one frame took, ms. */
export interface SeeingTimes {
  readonly landmarksMs: number;
  /** reading the pixels that are looked at */
  readonly readingMs: number;
  readonly followingMs: number;
}

export interface FrameSeenReply extends Message {
  readonly kind: 'frame-seen';
  readonly bitmap: ImageBitmap;
  readonly sight: LiveSight;
  /** the eyes, for a search; null without a face */
  readonly eyes: EyesSeed | null;
  readonly times: SeeingTimes;
}

export type LiveReply = LiveLoadedReply | FrameSeenReply | CancelledReply | FaultReply;
export type FromLiveWorker = LiveReply | ProgressMessage;

/** What the worker was sent; null where it is no message of this protocol. */
export function parseToLiveWorker(value: unknown): ToLiveWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  switch (value['kind']) {
    case 'cancel':
      return { v, id, kind: 'cancel' };
    case 'load-live': {
      const bundle = parseBundle(value['bundle']);
      const runtimeAddress = value['runtimeAddress'];
      if (bundle === null || typeof runtimeAddress !== 'string') return null;
      return { v, id, kind: 'load-live', runtimeAddress, bundle };
    }
    case 'see-frame': {
      const { bitmap, frameId, takenMs, isSearched, found, settings } = value;
      const outline = found === null ? null : parseFound(found);
      if (!isBitmap(bitmap) || !isFiniteNumber(frameId) || !isFiniteNumber(takenMs)) return null;
      if (typeof isSearched !== 'boolean' || outline === undefined || !isMeasuringSettings(settings)) return null;
      return { v, id, kind: 'see-frame', bitmap, frameId, takenMs, isSearched, found: outline, settings };
    }
    default:
      return null;
  }
}

/** What the worker sent; null where it is no message of this protocol. It comes with each frame: what the page uses is looked at, no more. */
export function parseFromLiveWorker(value: unknown): FromLiveWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  switch (value['kind']) {
    case 'live-loaded': {
      const loadMs = value['loadMs'];
      return isFiniteNumber(loadMs) ? { v, id, kind: 'live-loaded', loadMs } : null;
    }
    case 'frame-seen': {
      const { bitmap, sight, eyes, times } = value;
      if (!isBitmap(bitmap) || !isSight(sight) || !isTimes(times)) return null;
      if (eyes !== null && !isEyes(eyes)) return null;
      return { v, id, kind: 'frame-seen', bitmap, sight, eyes, times };
    }
    default:
      return parseCommonReply(value);
  }
}

function parseFound(value: unknown): FoundOutline | undefined {
  if (!isRecord(value)) return undefined;
  const { frameId, corners } = value;
  return isFiniteNumber(frameId) && areCorners(corners) ? { frameId, corners } : undefined;
}

function isSight(value: unknown): value is LiveSight {
  if (!isRecord(value) || !isFiniteNumber(value['widthPx']) || !isFiniteNumber(value['heightPx'])) return false;
  const { face, card, estimate } = value;
  return (
    (face === null || isFace(face)) &&
    (card === null || (isRecord(card) && areCorners(card['corners']) && Array.isArray(card['edgeSupport']))) &&
    (estimate === null || (isRecord(estimate) && Object.values(estimate).every(isFiniteNumber)))
  );
}

function isFace(value: unknown): boolean {
  if (!isRecord(value)) return false;
  const { iris, lids, midline, yawDeg, nodDeg, rollDeg, opening, whiteLevel, lightRatio } = value;
  return (
    isOfBothSides(iris, (one) => isRecord(one) && isPoint(one['centre']) && isFiniteNumber(one['radiusPx'])) &&
    isOfBothSides(lids, (one) => isRecord(one) && Array.isArray(one['upper']) && Array.isArray(one['lower'])) &&
    isOfBothSides(opening, isFiniteNumber) &&
    Array.isArray(midline) &&
    midline.every(isPoint) &&
    [yawDeg, nodDeg, rollDeg, whiteLevel, lightRatio].every(isFiniteNumber)
  );
}

function isTimes(value: unknown): value is SeeingTimes {
  return (
    isRecord(value) &&
    isFiniteNumber(value['landmarksMs']) &&
    isFiniteNumber(value['readingMs']) &&
    isFiniteNumber(value['followingMs'])
  );
}
