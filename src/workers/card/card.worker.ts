import type { BoardFailure, BoardView } from '../../core/camera/board.js';
import type { CameraProfile } from '../../core/camera/camera-profile.js';
import type { PictureFailure } from '../../core/camera/failure.js';
import type { FourCorners, PictureFeatures } from '../../core/camera/features.js';
import type { MarkerFinder, RgbaImage } from '../../core/camera/find-features.js';
import { findCardByEdges } from '../../core/camera/find-card.js';
import { findFeatures } from '../../core/camera/find-features.js';
import type { ImagePoint } from '../../core/geometry/vector.js';
import type {
  CardReply,
  CardRequest,
  FindBoardRequest,
  FindFeaturesRequest,
  MakeProfileRequest,
  SearchCardRequest,
} from '../../protocol/card-messages.js';
import { parseToCardWorker } from '../../protocol/card-messages.js';
import type { Work } from '../message-loop.js';
import { answerMessages, Fault } from '../message-loop.js';
import type { BoardFinder } from './board-finder.js';
import { createBoardFinder } from './board-finder.js';
import { createMarkerFinder } from './marker-finder.js';
import type { ProfileMaker } from './profile-maker.js';
import { createProfileMaker } from './profile-maker.js';
import type { WorkingFrame } from './working-image.js';
import {
  cornersInPicture,
  eyesInFrame,
  featuresInPicture,
  landmarksInFrame,
  searchFrame,
  workingFrame,
} from './working-image.js';

let findMarkers: MarkerFinder | null = null;
let findBoard: BoardFinder | null = null;
let makeProfile: ProfileMaker | null = null;

answerMessages<CardRequest, CardReply>(parseToCardWorker, async (request, work) => {
  switch (request.kind) {
    case 'load-card':
      return { kind: 'card-loaded', loadMs: await load() };
    case 'find-features':
      return find(request, work);
    case 'find-board':
      return boardIn(request, work);
    case 'search-card':
      return search(request);
    case 'make-profile':
      return profileOf(request, work);
  }
});

/** Loads and starts OpenCV, and returns the milliseconds it took. */
async function load(): Promise<number> {
  const startMs = performance.now();
  if (findMarkers !== null) return 0;
  try {
    const { loadOpenCv } = await import('./load-open-cv.js');
    const { cv } = await loadOpenCv();
    const finder = createMarkerFinder(cv);
    // the first run compiles; the first picture should not wait for it
    finder({ widthPx: 64, heightPx: 64, data: new Uint8ClampedArray(4 * 64 * 64) });
    findMarkers = finder;
    findBoard = createBoardFinder(cv);
    makeProfile = createProfileMaker(cv);
  } catch (error) {
    throw new Fault('runtime-not-loadable', String(error));
  }
  return performance.now() - startMs;
}

async function find(
  { bitmap, landmarks }: FindFeaturesRequest,
  work: Work,
): Promise<
  | { kind: 'features-found'; features: PictureFeatures; workMs: number }
  | { kind: 'features-missing'; failure: PictureFailure; partial: PictureFeatures | null; workMs: number }
> {
  const startMs = performance.now();
  if (findMarkers === null) throw new Fault('not-loaded', 'find-features before load-card');
  const frame = workingFrame(bitmap.width, bitmap.height, landmarks);
  const picture = { widthPx: bitmap.width, heightPx: bitmap.height, landmarks };
  const image = pixels(bitmap, frame);
  const inFrame = landmarksInFrame(landmarks, frame);
  await work.checkCancelled();
  const found = findFeatures(image, inFrame, findMarkers);
  if (found.ok) {
    const features = featuresInPicture(found.value, frame, picture);
    return { kind: 'features-found', features, workMs: performance.now() - startMs };
  }
  const { failure } = found.failure;
  const partial = found.failure.partial && featuresInPicture(found.failure.partial, frame, picture);
  return { kind: 'features-missing', failure, partial, workMs: performance.now() - startMs };
}

function search({ bitmap, eyes }: SearchCardRequest): {
  kind: 'card-searched';
  corners: FourCorners<ImagePoint> | null;
  workMs: number;
} {
  const startMs = performance.now();
  const frame = searchFrame(bitmap.width, bitmap.height, eyes);
  const found = findCardByEdges(pixels(bitmap, frame), eyesInFrame(eyes, frame), true);
  const corners = found.ok ? cornersInPicture(found.value.fitted.corners, frame) : null;
  return { kind: 'card-searched', corners, workMs: performance.now() - startMs };
}

type BoardReply =
  | { kind: 'board-found'; view: BoardView; workMs: number }
  | { kind: 'board-missing'; failure: BoardFailure; workMs: number };

async function boardIn({ bitmap }: FindBoardRequest, work: Work): Promise<BoardReply> {
  const startMs = performance.now();
  if (findBoard === null) throw new Fault('not-loaded', 'find-board before load-card');
  const image = pixels(bitmap, workingFrame(bitmap.width, bitmap.height, []));
  await work.checkCancelled();
  const found = findBoard(image);
  const workMs = performance.now() - startMs;
  if (found.ok) return { kind: 'board-found', view: found.value, workMs };
  return { kind: 'board-missing', failure: found.failure, workMs };
}

type ProfileReply =
  | { kind: 'profile-made'; profile: CameraProfile; workMs: number }
  | { kind: 'profile-refused'; failure: BoardFailure; workMs: number };

async function profileOf({ views }: MakeProfileRequest, work: Work): Promise<ProfileReply> {
  const startMs = performance.now();
  if (makeProfile === null) throw new Fault('not-loaded', 'make-profile before load-card');
  await work.checkCancelled();
  const made = makeProfile(views);
  const workMs = performance.now() - startMs;
  if (made.ok) return { kind: 'profile-made', profile: made.value, workMs };
  return { kind: 'profile-refused', failure: made.failure, workMs };
}

function pixels(bitmap: ImageBitmap, frame: WorkingFrame): RgbaImage {
  const widthPx = Math.max(1, Math.round(frame.widthPx * frame.scale));
  const heightPx = Math.max(1, Math.round(frame.heightPx * frame.scale));
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Fault('failed', 'no 2d context');
  context.imageSmoothingEnabled = frame.scale !== 1;
  context.imageSmoothingQuality = 'high';
  context.drawImage(
    bitmap,
    frame.xPx,
    frame.yPx,
    widthPx / frame.scale,
    heightPx / frame.scale,
    0,
    0,
    widthPx,
    heightPx,
  );
  return { widthPx, heightPx, data: context.getImageData(0, 0, widthPx, heightPx).data };
}
