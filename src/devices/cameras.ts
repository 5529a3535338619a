import { measureSharpness } from '../core/camera/sharpness.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { CameraPort, CameraStream, MeasuringFailure, Picture } from '../session/ports.js';

/** Asked for, not demanded: a camera that gives less is used as it is. */
const IDEAL_WIDTH_PX = 1920;
const IDEAL_HEIGHT_PX = 1080;

/** Chosen: a camera that gave no frame for so long gives none. */
const FRAME_LIMIT_MS = 5_000;

/** Chosen: the middle of the frame, where the face is, as a share of each side; only there sharpness matters. */
const FACE_SHARE = 0.5;

/**
 * The cameras of this device.
 *
 * @param facing which camera of a phone is asked for where none was chosen: beside the screen, or on the back; null for the
 *   browser's own choice
 */
export function createCameras(facing: 'user' | 'environment' | null = null): CameraPort {
  return {
    devices: async () => {
      const media = mediaDevices();
      if (media === null) return [];
      const all = await media.enumerateDevices();
      return all.filter(({ kind }) => kind === 'videoinput').map(({ deviceId, label }) => ({ id: deviceId, label }));
    },
    open: async (deviceId) => {
      const media = mediaDevices();
      if (media === null) return fail({ kind: 'camera-unsupported' });
      let stream: MediaStream;
      try {
        stream = await media.getUserMedia({
          audio: false,
          video: {
            ...askedFor(deviceId, facing),
            width: { ideal: IDEAL_WIDTH_PX },
            height: { ideal: IDEAL_HEIGHT_PX },
          },
        });
      } catch (error) {
        return fail(cameraFailure(error));
      }
      return openStream(stream);
    },
  };
}

/** A camera that was chosen is demanded; a side of the phone is only asked for, as a desk's camera has none. */
function askedFor(deviceId: string | null, facing: 'user' | 'environment' | null): MediaTrackConstraints {
  if (deviceId !== null && deviceId !== '') return { deviceId: { exact: deviceId } };
  return facing === null ? {} : { facingMode: { ideal: facing } };
}

/** What a failed `getUserMedia` means, by the name of its exception (Media Capture and Streams, 10.2.1). */
export function cameraFailure(error: unknown): MeasuringFailure {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  switch (name) {
    case 'NotAllowedError':
    case 'SecurityError':
      return { kind: 'camera-refused' };
    case 'NotFoundError':
    case 'OverconstrainedError':
      return { kind: 'camera-missing' };
    case 'NotReadableError':
    case 'AbortError':
      return { kind: 'camera-busy' };
    default:
      return { kind: 'camera-unsupported' };
  }
}

/** Null where the browser has none, or the page came over an insecure line. */
function mediaDevices(): MediaDevices | null {
  return 'mediaDevices' in navigator ? navigator.mediaDevices : null;
}

async function openStream(stream: MediaStream): Promise<Result<CameraStream, MeasuringFailure>> {
  const [track] = stream.getVideoTracks();
  if (track === undefined) return fail({ kind: 'camera-missing' });
  let hasEnded = false;
  const listeners: (() => void)[] = [];
  track.addEventListener('ended', () => {
    hasEnded = true;
    for (const listener of listeners.splice(0)) listener();
  });

  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  video.srcObject = stream;
  const stop = () => {
    for (const each of stream.getTracks()) each.stop();
    video.srcObject = null;
  };
  try {
    await video.play();
  } catch {
    stop();
    return fail(hasEnded ? { kind: 'camera-unplugged' } : { kind: 'camera-busy' });
  }

  const grab = async (): Promise<ImageBitmap | null> => {
    if (hasEnded || track.readyState === 'ended' || !(await nextFrame(video, track))) return null;
    try {
      return await createImageBitmap(video);
    } catch {
      return null;
    }
  };

  const noFrame = () => fail<MeasuringFailure>({ kind: hasEnded ? 'camera-unplugged' : 'camera-busy' });

  return succeed({
    stream,
    deviceId: track.getSettings().deviceId ?? '',
    onEnded: (listener) => {
      if (hasEnded) listener();
      else listeners.push(listener);
    },
    takeBurst: async (frames) => {
      let best: { readonly bitmap: ImageBitmap; readonly sharpness: number } | null = null;
      for (let taken = 0; taken < frames; taken++) {
        const bitmap = await grab();
        if (bitmap === null) break;
        const sharpness = sharpnessOfMiddle(bitmap);
        if (best === null || sharpness > best.sharpness) {
          best?.bitmap.close();
          best = { bitmap, sharpness };
        } else {
          bitmap.close();
        }
      }
      return best === null ? noFrame() : succeed(framePicture(best.bitmap));
    },
    takeFrame: async () => {
      const bitmap = await grab();
      return bitmap === null ? noFrame() : succeed(framePicture(bitmap));
    },
    stop,
  });
}

function framePicture(bitmap: ImageBitmap): Picture {
  return { bitmap, widthPx: bitmap.width, heightPx: bitmap.height, name: '' };
}

/** Waits for a frame that was not there before; false where none comes, because the camera sleeps or was unplugged. */
function nextFrame(video: HTMLVideoElement, track: MediaStreamTrack): Promise<boolean> {
  return new Promise((resolve) => {
    const settle = (isThere: boolean) => {
      clearTimeout(timer);
      video.cancelVideoFrameCallback(handle);
      track.removeEventListener('ended', onEnded);
      resolve(isThere);
    };
    const onEnded = () => settle(false);
    const handle = video.requestVideoFrameCallback(() => settle(true));
    const timer = setTimeout(() => settle(false), FRAME_LIMIT_MS);
    track.addEventListener('ended', onEnded);
  });
}

function sharpnessOfMiddle(bitmap: ImageBitmap): number {
  const widthPx = Math.max(1, Math.round(bitmap.width * FACE_SHARE));
  const heightPx = Math.max(1, Math.round(bitmap.height * FACE_SHARE));
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) return 0;
  context.drawImage(bitmap, -Math.round((bitmap.width - widthPx) / 2), -Math.round((bitmap.height - heightPx) / 2));
  return measureSharpness({ widthPx, heightPx, data: context.getImageData(0, 0, widthPx, heightPx).data });
}
