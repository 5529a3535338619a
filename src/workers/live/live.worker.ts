import type { FaceLandmarker } from '@mediapipe/tasks-vision';
import canonicalFace from '../../../calibration/canonical-face.json';
import contactDepth from '../../../calibration/contact-depth.json';
import { eyesFromLandmarks } from '../../core/camera/face-landmarks.js';
import type { Landmark } from '../../core/camera/features.js';
import { windowOfInterest, type FrameWindow } from '../../core/camera/follow-frame.js';
import { expectedCard, stepLive, type LiveMemory, type SearchedCard } from '../../core/estimate/live-step.js';
import type { LiveReply, LiveRequest, LoadLiveRequest, SeeFrameRequest } from '../../protocol/live-messages.js';
import { parseToLiveWorker } from '../../protocol/live-messages.js';
import { createFaceLandmarker } from '../face-landmarker.js';
import type { Work } from '../message-loop.js';
import { answerMessages, Fault } from '../message-loop.js';

const known = { canonicalFace, contactDepth };

let landmarker: FaceLandmarker | null = null;
let canvas: OffscreenCanvas | null = null;
let memory: LiveMemory | null = null;
let lastFrameId = -1;
/** Landmarks of the frames that are being searched, by their ids. */
const searched = new Map<number, readonly Landmark[]>();
/** A search that brings nothing never asks for its landmarks again. Chosen: one is under way at a time, and one more may have been given up. */
const MOST_SEARCHED = 2;

answerMessages<LiveRequest, LiveReply>(parseToLiveWorker, async (request, work) => {
  switch (request.kind) {
    case 'load-live':
      return { kind: 'live-loaded', loadMs: await load(request, work) };
    case 'see-frame':
      return see(request);
  }
});

async function load(request: LoadLiveRequest, work: Work): Promise<number> {
  const startMs = performance.now();
  if (landmarker !== null) return 0;
  landmarker = await createFaceLandmarker(request, { mode: 'VIDEO', numFaces: 1 }, work);
  // the first run allocates and compiles; the first frame should not wait for it
  landmarker.detectForVideo(new ImageData(64, 64), 0);
  return performance.now() - startMs;
}

function see(request: SeeFrameRequest): Omit<Extract<LiveReply, { kind: 'frame-seen' }>, 'v' | 'id'> {
  const { bitmap, frameId, settings } = request;
  if (landmarker === null) throw new Fault('not-loaded', 'see-frame before load-live');
  if (frameId <= lastFrameId) forget();
  lastFrameId = frameId;
  const startMs = performance.now();
  const landmarks = landmarksOf(landmarker, bitmap, request.takenMs);
  const landmarksMs = performance.now() - startMs;
  const frame = { widthPx: bitmap.width, heightPx: bitmap.height };
  const nothing = { kind: 'frame-seen', bitmap, sight: { ...frame, face: null, card: null, estimate: null } } as const;
  if (landmarks === null) {
    memory = null;
    return { ...nothing, eyes: null, times: { landmarksMs, readingMs: 0, followingMs: 0 } };
  }
  if (request.isSearched) remember(frameId, landmarks);
  const expected = expectedCard(memory, searchedCard(request), landmarks);
  const readStartMs = performance.now();
  const window = readWindow(bitmap, landmarks, expected.corners);
  const readingMs = performance.now() - readStartMs;
  if (window === null) return { ...nothing, eyes: null, times: { landmarksMs, readingMs, followingMs: 0 } };
  const followStartMs = performance.now();
  const step = stepLive(frame, window, landmarks, memory, expected, settings, known);
  memory = step.memory;
  const followingMs = performance.now() - followStartMs;
  const times = { landmarksMs, readingMs, followingMs };
  return { kind: 'frame-seen', bitmap, sight: step.sight, eyes: eyesFromLandmarks(landmarks), times };
}

/** Another camera, or the same one after a while: nothing of what was seen holds any more. */
function forget(): void {
  memory = null;
  searched.clear();
}

function remember(frameId: number, landmarks: readonly Landmark[]): void {
  searched.set(frameId, landmarks);
  for (const id of searched.keys()) {
    if (searched.size <= MOST_SEARCHED) break;
    searched.delete(id);
  }
}

function searchedCard({ found }: SeeFrameRequest): SearchedCard | null {
  if (found === null) return null;
  const landmarks = searched.get(found.frameId);
  searched.delete(found.frameId);
  return landmarks === undefined ? null : { corners: found.corners, landmarks };
}

/** Landmarks in pixels of the frame; null without a face. */
function landmarksOf(model: FaceLandmarker, bitmap: ImageBitmap, takenMs: number): readonly Landmark[] | null {
  const [points] = model.detectForVideo(bitmap, takenMs).faceLandmarks;
  if (points === undefined) return null;
  const { width, height } = bitmap;
  return points.map(({ x, y, z }) => ({ xPx: x * width, yPx: y * height, depthPx: z * width }));
}

/** The pixels that are looked at; null where none of them lies in the frame. */
function readWindow(
  bitmap: ImageBitmap,
  landmarks: readonly Landmark[],
  corners: Parameters<typeof windowOfInterest>[2],
): FrameWindow | null {
  const rectangle = windowOfInterest({ widthPx: bitmap.width, heightPx: bitmap.height }, landmarks, corners);
  if (rectangle === null) return null;
  const { leftPx, topPx, widthPx, heightPx } = rectangle;
  if (canvas === null || canvas.width < widthPx || canvas.height < heightPx) {
    canvas = new OffscreenCanvas(Math.max(widthPx, canvas?.width ?? 0), Math.max(heightPx, canvas?.height ?? 0));
  }
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Fault('failed', 'no 2d context');
  context.drawImage(bitmap, leftPx, topPx, widthPx, heightPx, 0, 0, widthPx, heightPx);
  return { image: { widthPx, heightPx, data: context.getImageData(0, 0, widthPx, heightPx).data }, leftPx, topPx };
}
