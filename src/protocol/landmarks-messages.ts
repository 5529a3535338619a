import type { Landmark } from '../core/camera/features.js';
import type { CancelledReply, CancelMessage, FaultReply, Message, ProgressMessage } from './message.js';
import { isFiniteNumber, isMessage, isRecord, parseCommonReply } from './message.js';

/** Where the landmark bundle comes from: the app's own address, or bytes that the reader handed over. */
export type LandmarkBundle =
  { readonly kind: 'address'; readonly address: string } | { readonly kind: 'bytes'; readonly bytes: ArrayBuffer };

/** Loads runtime and bundle; answered with `landmarks-loaded`. The bundle's bytes may be transferred. */
export interface LoadLandmarksRequest extends Message {
  readonly kind: 'load-landmarks';
  /** address of the folder with the runtime's WebAssembly; ends with a slash */
  readonly runtimeAddress: string;
  readonly bundle: LandmarkBundle;
}

/** Looks for faces; answered with `landmarks-found`. The bitmap is transferred, and the worker closes it. */
export interface FindLandmarksRequest extends Message {
  readonly kind: 'find-landmarks';
  readonly bitmap: ImageBitmap;
}

export type LandmarksRequest = LoadLandmarksRequest | FindLandmarksRequest;
export type ToLandmarksWorker = LandmarksRequest | CancelMessage;

export interface LandmarksLoadedReply extends Message {
  readonly kind: 'landmarks-loaded';
  readonly loadMs: number;
}

export interface LandmarksFoundReply extends Message {
  readonly kind: 'landmarks-found';
  /** faces of about the size of the largest; smaller ones (a portrait on a card, somebody far behind) are not counted */
  readonly faceCount: number;
  /** the largest face; empty without a face, otherwise all points of the model, in pixels of the picture */
  readonly landmarks: readonly Landmark[];
  readonly workMs: number;
}

export type LandmarksReply = LandmarksLoadedReply | LandmarksFoundReply | CancelledReply | FaultReply;
export type FromLandmarksWorker = LandmarksReply | ProgressMessage;

/** What the worker was sent; null where it is no message of this protocol. */
export function parseToLandmarksWorker(value: unknown): ToLandmarksWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  switch (value['kind']) {
    case 'cancel':
      return { v, id, kind: 'cancel' };
    case 'load-landmarks': {
      const bundle = parseBundle(value['bundle']);
      const runtimeAddress = value['runtimeAddress'];
      if (bundle === null || typeof runtimeAddress !== 'string') return null;
      return { v, id, kind: 'load-landmarks', runtimeAddress, bundle };
    }
    case 'find-landmarks': {
      const bitmap = value['bitmap'];
      return isBitmap(bitmap) ? { v, id, kind: 'find-landmarks', bitmap } : null;
    }
    default:
      return null;
  }
}

/** What the worker sent; null where it is no message of this protocol. */
export function parseFromLandmarksWorker(value: unknown): FromLandmarksWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  switch (value['kind']) {
    case 'landmarks-loaded': {
      const loadMs = value['loadMs'];
      return isFiniteNumber(loadMs) ? { v, id, kind: 'landmarks-loaded', loadMs } : null;
    }
    case 'landmarks-found': {
      const { faceCount, workMs } = value as { faceCount?: unknown; workMs?: unknown };
      const landmarks = parseLandmarks(value['landmarks']);
      if (!isFiniteNumber(faceCount) || !isFiniteNumber(workMs) || landmarks === null) return null;
      return { v, id, kind: 'landmarks-found', faceCount, landmarks, workMs };
    }
    default:
      return parseCommonReply(value);
  }
}

/** A list of landmarks; null where one of them is none. */
export function parseLandmarks(value: unknown): readonly Landmark[] | null {
  return Array.isArray(value) && value.every(isLandmark) ? value : null;
}

/** Whether the value is a bitmap. Node, where the parsers are tested, has no such class: its shape decides there. */
export function isBitmap(value: unknown): value is ImageBitmap {
  if (typeof ImageBitmap === 'function') return value instanceof ImageBitmap;
  return isRecord(value) && isFiniteNumber(value['width']) && isFiniteNumber(value['height']);
}

function isLandmark(value: unknown): value is Landmark {
  return (
    isRecord(value) && isFiniteNumber(value['xPx']) && isFiniteNumber(value['yPx']) && isFiniteNumber(value['depthPx'])
  );
}

/** Where a bundle comes from; null where the value does not say it. */
export function parseBundle(value: unknown): LandmarkBundle | null {
  if (!isRecord(value)) return null;
  const { kind, address, bytes } = value as { kind?: unknown; address?: unknown; bytes?: unknown };
  if (kind === 'address' && typeof address === 'string') return { kind, address };
  if (kind === 'bytes' && bytes instanceof ArrayBuffer) return { kind, bytes };
  return null;
}
