import type { BoardFailure, BoardView } from '../core/camera/board.js';
import type { CameraProfile } from '../core/camera/camera-profile.js';
import type { PictureFailure } from '../core/camera/failure.js';
import type { EyesSeed } from '../core/camera/face-landmarks.js';
import type { FourCorners, Landmark, PictureFeatures } from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import { isBitmap, parseLandmarks } from './landmarks-messages.js';
import type { CancelledReply, CancelMessage, FaultReply, Message, ProgressMessage } from './message.js';
import { isFiniteNumber, isMessage, parseCommonReply } from './message.js';
import { areCorners, isEyes } from './parse-eyes.js';
import { isBoardFailure, isBoardView, parseBoardViews } from './parse-board.js';
import { parseCameraProfile } from './parse-camera-profile.js';
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

/**
 * Looks for the printed sheet; answered with `board-found` or `board-missing`. The bitmap is transferred, and the worker
 * closes it.
 */
export interface FindBoardRequest extends Message {
  readonly kind: 'find-board';
  readonly bitmap: ImageBitmap;
}

/**
 * Looks for a card on a face by its edges alone, without OpenCV; answered with `card-searched`. The bitmap is transferred, and the worker
 * closes it.
 */
export interface SearchCardRequest extends Message {
  readonly kind: 'search-card';
  readonly bitmap: ImageBitmap;
  readonly eyes: EyesSeed;
}

/** Makes a camera profile; answered with `profile-made` or `profile-refused`. At most `MOST_VIEWS` views are understood. */
export interface MakeProfileRequest extends Message {
  readonly kind: 'make-profile';
  readonly views: readonly BoardView[];
}

export type CardRequest =
  LoadCardRequest | FindFeaturesRequest | FindBoardRequest | SearchCardRequest | MakeProfileRequest;
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

export interface BoardFoundReply extends Message {
  readonly kind: 'board-found';
  readonly view: BoardView;
  readonly workMs: number;
}

/** Too little of the sheet was found in the picture. */
export interface BoardMissingReply extends Message {
  readonly kind: 'board-missing';
  readonly failure: BoardFailure;
  readonly workMs: number;
}

export interface CardSearchedReply extends Message {
  readonly kind: 'card-searched';
  /** null where there is no card, or more than one */
  readonly corners: FourCorners<ImagePoint> | null;
  readonly workMs: number;
}

export interface ProfileMadeReply extends Message {
  readonly kind: 'profile-made';
  readonly profile: CameraProfile;
  readonly workMs: number;
}

/** The views gave no profile. */
export interface ProfileRefusedReply extends Message {
  readonly kind: 'profile-refused';
  readonly failure: BoardFailure;
  readonly workMs: number;
}

export type CardReply =
  | CardLoadedReply
  | FeaturesFoundReply
  | FeaturesMissingReply
  | BoardFoundReply
  | BoardMissingReply
  | CardSearchedReply
  | ProfileMadeReply
  | ProfileRefusedReply
  | CancelledReply
  | FaultReply;
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
    case 'find-board': {
      const bitmap = value['bitmap'];
      return isBitmap(bitmap) ? { v, id, kind: 'find-board', bitmap } : null;
    }
    case 'search-card': {
      const { bitmap, eyes } = value;
      return isBitmap(bitmap) && isEyes(eyes) ? { v, id, kind: 'search-card', bitmap, eyes } : null;
    }
    case 'make-profile': {
      const views = parseBoardViews(value['views']);
      return views !== null ? { v, id, kind: 'make-profile', views } : null;
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
    case 'board-found': {
      const view = value['view'];
      return isBoardView(view) && isFiniteNumber(workMs) ? { v, id, kind: 'board-found', view, workMs } : null;
    }
    case 'card-searched': {
      const { corners, workMs } = value;
      if (!isFiniteNumber(workMs) || (corners !== null && !areCorners(corners))) return null;
      return { v, id, kind: 'card-searched', corners, workMs };
    }
    case 'profile-made': {
      const profile = parseCameraProfile(value['profile']);
      return profile !== null && isFiniteNumber(workMs) ? { v, id, kind: 'profile-made', profile, workMs } : null;
    }
    case 'board-missing': {
      const failure = value['failure'];
      return isBoardFailure(failure) && isFiniteNumber(workMs)
        ? { v, id, kind: 'board-missing', failure, workMs }
        : null;
    }
    case 'profile-refused': {
      const failure = value['failure'];
      if (!isBoardFailure(failure) || !isFiniteNumber(workMs)) return null;
      return { v, id, kind: 'profile-refused', failure, workMs };
    }
    default:
      return parseCommonReply(value);
  }
}
