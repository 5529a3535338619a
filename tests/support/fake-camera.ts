import { vi } from 'vitest';

/** A camera of the test's own: no browser, no picture. */
export interface FakeCamera {
  /** lets so many frames come */
  frames(count: number): void;
  /** the track ends by itself, as where the device is unplugged */
  end(): void;
  /** the page is hidden or seen */
  setHidden(isHidden: boolean): void;
  setPermission(state: PermissionState): void;
  readonly isStopped: () => boolean;
}

/** Puts a camera with one track in place of the browser's, with the permission to use it; `vi.unstubAllGlobals` takes it away. */
export function stubFakeCamera(): FakeCamera {
  let frameCount = 0;
  let isStopped = false;
  let callbacks: (() => void)[] = [];

  const track = Object.assign(new EventTarget(), {
    readyState: 'live',
    stop: () => {
      isStopped = true;
      track.readyState = 'ended';
    },
    getSettings: () => ({ deviceId: 'desk' }),
  });
  const stream = { getVideoTracks: () => [track], getTracks: () => [track] };
  const permission = Object.assign(new EventTarget(), { state: 'granted' });
  const video = {
    paused: false,
    srcObject: null,
    play: () => Promise.resolve(),
    getVideoPlaybackQuality: () => ({ totalVideoFrames: frameCount }),
    requestVideoFrameCallback: (callback: () => void) => callbacks.push(callback),
    cancelVideoFrameCallback: () => undefined,
  };
  const page = Object.assign(new EventTarget(), { visibilityState: 'visible', createElement: () => video });
  const media = Object.assign(new EventTarget(), {
    getUserMedia: () => Promise.resolve(stream),
    enumerateDevices: () => Promise.resolve([]),
  });
  vi.stubGlobal('document', page);
  vi.stubGlobal('navigator', { mediaDevices: media, permissions: { query: () => Promise.resolve(permission) } });

  return {
    frames: (count) => {
      frameCount += count;
      const waiting = callbacks;
      callbacks = [];
      for (const callback of waiting) callback();
    },
    end: () => {
      track.readyState = 'ended';
      track.dispatchEvent(new Event('ended'));
    },
    setHidden: (isHidden) => {
      page.visibilityState = isHidden ? 'hidden' : 'visible';
      page.dispatchEvent(new Event('visibilitychange'));
    },
    setPermission: (state) => {
      permission.state = state;
      permission.dispatchEvent(new Event('change'));
    },
    isStopped: () => isStopped,
  };
}
