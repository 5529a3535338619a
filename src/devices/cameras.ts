import { measureSharpness } from '../core/camera/sharpness.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { CameraPort, CameraStream, MeasuringFailure, Picture } from '../session/ports.js';
import { watchForSilence } from './camera-silence.js';
import { afterSeenMs } from './seen-time.js';

/** Asked for, not demanded: a camera that gives less is used as it is. */
const IDEAL_WIDTH_PX = 1920;
const IDEAL_HEIGHT_PX = 1080;

/** Chosen: a camera that gave no frame for so long, while the page was seen, gives none. */
const FRAME_LIMIT_MS = 5_000;

/** Chosen: both eyes and the card at the usual distance. Sharpness is told from so much of a frame; all of it would hold up the page. */
const SHARPNESS_WIDTH_PX = 640;
const SHARPNESS_HEIGHT_PX = 360;

/** Chosen: the permission is heard of a moment after the track has ended by it. */
const PERMISSION_LAG_MS = 150;

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
    watchChanges: async (listener, signal) => {
      mediaDevices()?.addEventListener('devicechange', () => listener({ kind: 'devices' }), { signal });
      const status = await cameraPermission();
      if (signal.aborted) return;
      status?.addEventListener(
        'change',
        () => listener({ kind: 'permission', isGranted: status.state === 'granted' }),
        { signal },
      );
    },
  };
}

/** What this page may do; null where the browser does not tell (not all know of cameras here). */
async function cameraPermission(): Promise<PermissionStatus | null> {
  if (!('permissions' in navigator)) return null;
  try {
    return await navigator.permissions.query({ name: 'camera' });
  } catch {
    return null;
  }
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
  const ending = createEnding();
  // Not waited for: the picture comes first.
  const permission = cameraPermission().then((status) => ({ status, wasGranted: status?.state === 'granted' }));
  track.addEventListener('ended', () => {
    void permission.then(whyEnded).then(ending.end);
  });

  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  video.srcObject = stream;
  let isStopped = false;
  let endWatch: () => void = () => undefined;
  const stop = () => {
    isStopped = true;
    endWatch();
    for (const each of stream.getTracks()) each.stop();
    video.srcObject = null;
  };
  const isEnded = () => ending.hasBegun() || track.readyState === 'ended';
  const noFrame = async () => {
    // Of its own stop a track does not tell.
    if (isStopped) return fail<MeasuringFailure>({ kind: 'camera-unplugged' });
    return fail<MeasuringFailure>(isEnded() ? await ending.why() : { kind: 'camera-silent' });
  };
  if (!(await isPlaying(video))) {
    const failed = await noFrame();
    stop();
    return failed;
  }
  endWatch = watchForSilence(video, () => ending.end({ kind: 'camera-silent' }));

  const grab = async (): Promise<ImageBitmap | null> => {
    if (isEnded() || !(await nextFrame(video, track))) return null;
    try {
      return await createImageBitmap(video);
    } catch {
      return null;
    }
  };

  return succeed({
    stream,
    deviceId: track.getSettings().deviceId ?? '',
    onEnded: ending.listen,
    takeBurst: async (frames, around) => {
      let best: { readonly bitmap: ImageBitmap; readonly sharpness: number } | null = null;
      for (let taken = 0; taken < frames; taken++) {
        const bitmap = await grab();
        if (bitmap === null) break;
        const sharpness = sharpnessAround(bitmap, around);
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

/** Whether the player began to play in time. */
function isPlaying(video: HTMLVideoElement): Promise<boolean> {
  return new Promise((resolve) => {
    const cancel = afterSeenMs(FRAME_LIMIT_MS, () => resolve(false));
    const settle = (plays: boolean) => {
      cancel();
      resolve(plays);
    };
    video.play().then(
      () => settle(true),
      () => settle(false),
    );
  });
}

/** The end of a camera, and those who are told of it. */
function createEnding() {
  let why: MeasuringFailure | null = null;
  let tell: (why: MeasuringFailure) => void = () => undefined;
  const told = new Promise<MeasuringFailure>((resolve) => {
    tell = resolve;
  });
  return {
    hasBegun: () => why !== null,
    why: () => told,
    listen: (listener: (why: MeasuringFailure) => void) => {
      void told.then(listener);
    },
    end: (reason: MeasuringFailure) => {
      why ??= reason;
      tell(why);
    },
  };
}

/** A track ends by itself where its device goes, or the permission for it. */
async function whyEnded(permission: {
  readonly status: PermissionStatus | null;
  readonly wasGranted: boolean;
}): Promise<MeasuringFailure> {
  const { status, wasGranted } = permission;
  const isTaken = () => status?.state === 'denied' || (wasGranted && status?.state !== 'granted');
  if (!isTaken()) await new Promise((resolve) => setTimeout(resolve, PERMISSION_LAG_MS));
  return { kind: isTaken() ? 'camera-refused' : 'camera-unplugged' };
}

function framePicture(bitmap: ImageBitmap): Picture {
  return { bitmap, widthPx: bitmap.width, heightPx: bitmap.height, name: '' };
}

/** Waits for a frame that was not there before; false where none comes, because the camera sleeps or was unplugged. */
function nextFrame(video: HTMLVideoElement, track: MediaStreamTrack): Promise<boolean> {
  return new Promise((resolve) => {
    const settle = (isThere: boolean) => {
      cancel();
      video.cancelVideoFrameCallback(handle);
      track.removeEventListener('ended', onEnded);
      resolve(isThere);
    };
    const onEnded = () => settle(false);
    const handle = video.requestVideoFrameCallback(() => settle(true));
    const cancel = afterSeenMs(FRAME_LIMIT_MS, () => settle(false));
    track.addEventListener('ended', onEnded);
  });
}

function sharpnessAround(bitmap: ImageBitmap, around: ImagePoint | null): number {
  const widthPx = Math.min(SHARPNESS_WIDTH_PX, bitmap.width);
  const heightPx = Math.min(SHARPNESS_HEIGHT_PX, bitmap.height);
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) return 0;
  const { xPx, yPx } = around ?? { xPx: bitmap.width / 2, yPx: bitmap.height / 2 };
  const leftPx = Math.round(Math.min(Math.max(0, xPx - widthPx / 2), bitmap.width - widthPx));
  const topPx = Math.round(Math.min(Math.max(0, yPx - heightPx / 2), bitmap.height - heightPx));
  context.drawImage(bitmap, -leftPx, -topPx);
  return measureSharpness({ widthPx, heightPx, data: context.getImageData(0, 0, widthPx, heightPx).data });
}
