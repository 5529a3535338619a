import type { CameraStream } from '../session/ports.js';
import type { LiveCamera } from '../session/profile-choice.js';

/** What an open camera is called and how large its pictures are; null where its track has ended already. */
export function liveCameraOf({ stream }: CameraStream): LiveCamera | null {
  const track = stream.getVideoTracks()[0];
  const { width, height } = track?.getSettings() ?? {};
  return track === undefined || width === undefined || height === undefined
    ? null
    : { label: track.label, widthPx: width, heightPx: height };
}
