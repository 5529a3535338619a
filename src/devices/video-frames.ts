import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { DeviceFailure, Picture, VideoFrames } from '../session/ports.js';
import { tooLargeToOpen } from './picture-limit.js';
import { readVideoFormat } from './video-format.js';

/** Chosen: the head of a file on a slow disk, and a seek into footage with few key frames, take a second or two. */
const METADATA_LIMIT_MS = 10_000;
const SEEK_LIMIT_MS = 10_000;

/** Chosen: after a seek the frame is there at once, or it is the one shown before, of which no browser tells again. */
const SHOWING_LIMIT_MS = 300;

/** Chosen: webcams in little light give 15 frames a second; of two places nearer than this both may show the same frame. */
const CLOSEST_FRAMES_S = 1 / 15;

/** A seek that ends further from its goal than this met the end of what there is. Chosen: a frame or two of the slowest camera. */
const MISSED_SEEK_S = 0.25;

/** Later than the end of any video. */
const FAR_AWAY_S = 1e9;

/**
 * Opens a video file with the browser's own player, in an element outside of the page. Fails with `video-unsupported` where
 * the browser cannot play its format, `video-broken` where it should but cannot, or where there is no length or no picture,
 * and `picture-too-large`. A frame fails with `video-broken` where its part of the file is damaged or the file was closed.
 */
export async function openVideoFrames(
  file: Blob,
  name: string,
  frameCount: number,
): Promise<Result<VideoFrames, DeviceFailure>> {
  if (file.size === 0) return fail({ kind: 'video-broken' });
  const video = document.createElement('video');
  const address = URL.createObjectURL(file);
  let isClosed = false;
  const close = () => {
    if (isClosed) return;
    isClosed = true;
    video.removeAttribute('src');
    // without this the player keeps its decoder
    video.load();
    URL.revokeObjectURL(address);
  };

  video.muted = true;
  video.playsInline = true;
  video.preload = 'auto';
  const hasMetadata = eventOf(video, 'loadedmetadata', METADATA_LIMIT_MS);
  video.src = address;
  if (!(await hasMetadata) || video.videoWidth === 0) {
    const failure = await failureToPlay(file, video);
    close();
    return fail(failure);
  }
  const tooLarge = tooLargeToOpen(video.videoWidth, video.videoHeight);
  if (tooLarge !== null) {
    close();
    return fail(tooLarge);
  }
  const lengthS = await lengthOf(video);
  if (lengthS === null) {
    close();
    return fail({ kind: 'video-broken' });
  }

  const count = Math.max(1, Math.min(frameCount, Math.floor(lengthS / CLOSEST_FRAMES_S)));
  const take = async (index: number): Promise<Result<Picture, DeviceFailure>> => {
    if (isClosed || !(await seek(video, placeS(index, count, lengthS)))) return fail({ kind: 'video-broken' });
    try {
      const bitmap = await createImageBitmap(video);
      return succeed({ bitmap, widthPx: bitmap.width, heightPx: bitmap.height, name });
    } catch {
      return fail({ kind: 'video-broken' });
    }
  };
  // one player can stand at one place only
  let last: Promise<unknown> = Promise.resolve();
  return succeed({
    frameCount: count,
    frame: (index) => {
      const taken = last.then(() => take(index));
      last = taken;
      return taken;
    },
    close,
  });
}

/** Middle of the part, of as many equal ones as there are frames, in seconds: neither the first nor the last instant. */
export function placeS(index: number, frameCount: number, lengthS: number): number {
  return ((index + 0.5) / frameCount) * lengthS;
}

/** Whether the event came; false where an error came first, or nothing in time. */
function eventOf(video: HTMLVideoElement, name: string, limitMs: number, isIt = () => true): Promise<boolean> {
  return new Promise((resolve) => {
    const settle = (hasCome: boolean) => {
      clearTimeout(timer);
      video.removeEventListener(name, onEvent);
      video.removeEventListener('error', onFailure);
      video.removeEventListener('emptied', onFailure);
      resolve(hasCome);
    };
    const onEvent = () => {
      if (isIt()) settle(true);
    };
    const onFailure = () => settle(false);
    const timer = setTimeout(() => settle(false), limitMs);
    video.addEventListener(name, onEvent);
    video.addEventListener('error', onFailure);
    // closed meanwhile
    video.addEventListener('emptied', onFailure);
  });
}

/** The video's length in seconds; null where it has none. Recordings of browsers do not say theirs: their end is looked for. */
async function lengthOf(video: HTMLVideoElement): Promise<number | null> {
  if (!Number.isFinite(video.duration)) {
    const isKnown = eventOf(video, 'durationchange', SEEK_LIMIT_MS, () => Number.isFinite(video.duration));
    video.currentTime = FAR_AWAY_S;
    if (!(await isKnown)) return null;
  }
  return video.duration > 0 ? video.duration : null;
}

/** Goes to a place and waits until its frame is the one shown; false where that fails. */
async function seek(video: HTMLVideoElement, goalS: number): Promise<boolean> {
  const isShown = nextFrameShown(video);
  const hasArrived = eventOf(video, 'seeked', SEEK_LIMIT_MS, () => !video.seeking);
  video.currentTime = goalS;
  if (!(await hasArrived) || Math.abs(video.currentTime - goalS) > MISSED_SEEK_S) return false;
  await Promise.race([isShown, afterMs(SHOWING_LIMIT_MS)]);
  return true;
}

/** Resolves when a frame is handed to the screen. Where the browser does not tell of it, at once. */
function nextFrameShown(video: HTMLVideoElement): Promise<unknown> {
  if (!('requestVideoFrameCallback' in video)) return Promise.resolve();
  return new Promise((resolve) => {
    video.requestVideoFrameCallback(resolve);
  });
}

function afterMs(delayMs: number): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, delayMs);
  });
}

/** Players say the same of a format they do not know and of a damaged file: what the file says of itself tells which it is. */
async function failureToPlay(file: Blob, video: HTMLVideoElement): Promise<DeviceFailure> {
  const format = await readVideoFormat(file);
  // one of no known format, or cut off, is taken for what its name says
  const { type, playableAs } = format ?? { type: file.type, playableAs: file.type };
  return video.canPlayType(playableAs) === '' ? { kind: 'video-unsupported', type } : { kind: 'video-broken' };
}
