import type { PictureFailure } from '../core/camera/failure.js';
import type { PictureFeatures } from '../core/camera/features.js';
import type { Result } from '../core/result.js';

/** What keeps a picture from being looked at at all, before any face was searched. */
export type DeviceFailure =
  | { readonly kind: 'picture-unsupported'; readonly type: string }
  | { readonly kind: 'picture-broken' }
  | { readonly kind: 'picture-too-large'; readonly megapixels: number; readonly limitMegapixels: number }
  | { readonly kind: 'camera-refused' }
  | { readonly kind: 'camera-missing' }
  | { readonly kind: 'camera-busy' }
  | { readonly kind: 'camera-unplugged' }
  | { readonly kind: 'camera-unsupported' }
  | { readonly kind: 'model-not-loadable' }
  | { readonly kind: 'vision-not-loadable'; readonly part: 'landmarks' | 'card' }
  | { readonly kind: 'vision-stopped'; readonly part: 'landmarks' | 'card' };

export type MeasuringFailure = PictureFailure | DeviceFailure;

/** How far the loading of the vision parts, or the work on a picture, has come. */
export interface MeasuringProgress {
  readonly stage: 'loading-landmarks' | 'loading-card' | 'finding-face' | 'finding-card';
  /** 0 to 1 where it is known (bytes loaded over bytes in all), otherwise null */
  readonly share: number | null;
}

/** A decoded picture; upright, unmirrored. The one who made it closes the bitmap. */
export interface Picture {
  readonly bitmap: ImageBitmap;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly name: string;
}

/** Finds the features in pictures, off the page's thread. */
export interface VisionPort {
  /** Starts loading; resolves once both workers are warm. */
  warmUp(onProgress: (progress: MeasuringProgress) => void): Promise<Result<null, MeasuringFailure>>;
  /**
   * Finds face, card, irises and lids. The bitmap stays the caller's. With several pictures (a burst) the sharpest usable one
   * is measured. An aborted signal rejects with the signal's reason.
   */
  findFeatures(
    picture: Picture,
    onProgress: (progress: MeasuringProgress) => void,
    signal: AbortSignal,
  ): Promise<Result<PictureFeatures, MeasuringFailure>>;
}

/** Opens picture files. */
export interface PicturePort {
  open(file: Blob, name: string): Promise<Result<Picture, MeasuringFailure>>;
}

export interface CameraDevice {
  readonly id: string;
  readonly label: string;
}

/** A running camera. */
export interface CameraStream {
  readonly stream: MediaStream;
  readonly deviceId: string;
  /** Called once when the device is unplugged or its permission is taken away. */
  onEnded(listener: () => void): void;
  /** Takes one frame at full resolution, unmirrored. */
  takeFrame(): Promise<Result<Picture, MeasuringFailure>>;
  stop(): void;
}

export interface CameraPort {
  devices(): Promise<readonly CameraDevice[]>;
  open(deviceId: string | null): Promise<Result<CameraStream, MeasuringFailure>>;
}
