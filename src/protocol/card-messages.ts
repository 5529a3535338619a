import type { PictureFailure } from '../core/camera/failure.js';
import type { Landmark, PictureFeatures } from '../core/camera/features.js';
import { isBitmap, parseLandmarks } from './landmarks-messages.js';
import type { CancelledReply, CancelMessage, FaultReply, Message, ProgressMessage } from './message.js';
import { isFiniteNumber, isMessage, parseCommonReply } from './message.js';
import { parsePictureFailure } from './parse-picture-failure.js';
import { parsePictureFeatures } from './parse-picture-features.js';

/** Loads OpenCV; answered with `card-loaded`. */
export interface LoadCardRequest extends Message {
  readonly kind: 'load-card';
}

/**
 * Looks for card, irises, lids and outline; answered with `features-found` or `features-missing`. The bitmap is transferred,
 * and the worker closes it.
 */
export interface FindFeaturesRequest extends Message {
  readonly kind: 'find-features';
  readonly bitmap: ImageBitmap;
  readonly landmarks: readonly Landmark[];
}

export type CardRequest = LoadCardRequest | FindFeaturesRequest;
export type ToCardWorker = CardRequest | CancelMessage;

export interface CardLoadedReply extends Message {
  readonly kind: 'card-loaded';
  readonly loadMs: number;
}

export interface FeaturesFoundReply extends Message {
  readonly kind: 'features-found';
  readonly features: PictureFeatures;
  readonly workMs: number;
}

/** The picture gave no card, or something else is wrong with it. */
export interface FeaturesMissingReply extends Message {
  readonly kind: 'features-missing';
  readonly failure: PictureFailure;
  /** everything but the card, with a guessed one to be placed by hand; null where more than the card is missing */
  readonly partial: PictureFeatures | null;
  readonly workMs: number;
}

export type CardReply = CardLoadedReply | FeaturesFoundReply | FeaturesMissingReply | CancelledReply | FaultReply;
export type FromCardWorker = CardReply | ProgressMessage;

/** What the worker was sent; null where it is no message of this protocol. */
export function parseToCardWorker(value: unknown): ToCardWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  switch (value['kind']) {
    case 'cancel':
      return { v, id, kind: 'cancel' };
    case 'load-card':
      return { v, id, kind: 'load-card' };
    case 'find-features': {
      const bitmap = value['bitmap'];
      const landmarks = parseLandmarks(value['landmarks']);
      return isBitmap(bitmap) && landmarks !== null ? { v, id, kind: 'find-features', bitmap, landmarks } : null;
    }
    default:
      return null;
  }
}

/** What the worker sent; null where it is no message of this protocol. */
export function parseFromCardWorker(value: unknown): FromCardWorker | null {
  if (!isMessage(value)) return null;
  const { v, id } = value;
  const { loadMs, workMs } = value as { loadMs?: unknown; workMs?: unknown };
  switch (value['kind']) {
    case 'card-loaded':
      return isFiniteNumber(loadMs) ? { v, id, kind: 'card-loaded', loadMs } : null;
    case 'features-found': {
      const features = parsePictureFeatures(value['features']);
      return features !== null && isFiniteNumber(workMs) ? { v, id, kind: 'features-found', features, workMs } : null;
    }
    case 'features-missing': {
      const failure = parsePictureFailure(value['failure']);
      const partial = value['partial'] === null ? null : parsePictureFeatures(value['partial']);
      if (failure === null || !isFiniteNumber(workMs)) return null;
      if (partial === null && value['partial'] !== null) return null;
      return { v, id, kind: 'features-missing', failure, partial, workMs };
    }
    default:
      return parseCommonReply(value);
  }
}
