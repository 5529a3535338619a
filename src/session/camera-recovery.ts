import type { CameraChange, MeasuringFailure } from './ports.js';

/** What happened since a camera failed. */
export type CameraHope =
  | CameraChange
  /** the page is seen again, after it was hidden or the computer slept */
  | { readonly kind: 'page-shown' }
  /** some seconds went by while the page was seen */
  | { readonly kind: 'time-passed' };

/** So often a camera that may come back at any moment is tried again. Chosen: its lamp need not flicker. */
export const RETRY_MS = 4_000;

/**
 * Whether it is worth trying a failed camera again now, without anybody asking for it. Never where the browser would ask for
 * permission once more by itself.
 */
export function isWorthTrying({ kind }: MeasuringFailure, hope: CameraHope): boolean {
  switch (hope.kind) {
    case 'time-passed':
      return kind === 'camera-busy' || kind === 'camera-silent';
    case 'page-shown':
      return kind === 'camera-busy' || kind === 'camera-silent' || kind === 'camera-unplugged';
    case 'devices':
      return (
        kind === 'camera-busy' || kind === 'camera-silent' || kind === 'camera-unplugged' || kind === 'camera-missing'
      );
    case 'permission':
      return kind === 'camera-refused' && hope.isGranted;
  }
}

/**
 * What to say after it was tried again in vain: a camera that was unplugged is missing as well, but whoever saw it work knows
 * better what to do when told so.
 */
export function failureAfterRetry(before: MeasuringFailure, now: MeasuringFailure): MeasuringFailure {
  return before.kind === 'camera-unplugged' && now.kind === 'camera-missing' ? before : now;
}
