import type { LiveSight } from '../core/camera/live-sight.js';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import type { CameraStream, MeasuringFailure, MeasuringProgress } from './ports.js';

/** One frame of a running camera, with what was seen in it. */
export interface LiveFrame {
  /** unmirrored; whoever gets it closes it, or hands it to a canvas */
  readonly bitmap: ImageBitmap;
  readonly sight: LiveSight;
  /** when it was taken, on the clock of `performance.now()` */
  readonly takenMs: number;
}

/** What is told while a camera is watched. */
export interface LiveListener {
  onFrame(frame: LiveFrame): void;
  /** how far the loading has come that the first frame waits for; null once nothing is loaded any more */
  onLoading(progress: MeasuringProgress | null): void;
  /** nothing more comes: what looks at the frames cannot be loaded, or stopped twice in a row */
  onFailure(failure: MeasuringFailure): void;
}

/** Looks at a running camera off the page's thread, at its rate or as fast as it can: a frame that comes too early is left out. */
export interface LivePort {
  /** Starts loading what looks at frames, so that the first one does not wait for it. Resolves when that has ended, well or not. */
  prepare(): Promise<void>;
  /**
   * Watches until the signal aborts. Nothing is taken while the page is hidden or the camera gives nothing; it goes on by itself. The camera
   * stays the caller's: that it was unplugged or refused is told by the camera. Resolves once it is over, after a failure or the signal.
   */
  watch(camera: CameraStream, settings: MeasuringSettings, listener: LiveListener, signal: AbortSignal): Promise<void>;
}
