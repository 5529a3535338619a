import type { BoardFailure, BoardView } from '../core/camera/board.js';
import type { CameraProfile } from '../core/camera/camera-profile.js';
import type { PictureFailure } from '../core/camera/failure.js';
import type { PictureFeatures } from '../core/camera/features.js';
import type { ImagePoint } from '../core/geometry/vector.js';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import type { SweepFailure, SweepMeasurement } from '../core/estimate/sweep.js';
import type { Result } from '../core/result.js';
import type { StoredProfile } from './stored-profile.js';

/** What keeps a picture from being looked at at all, before any face was searched. */
export type DeviceFailure =
  | { readonly kind: 'picture-unsupported'; readonly type: string }
  | { readonly kind: 'picture-broken' }
  | { readonly kind: 'video-unsupported'; readonly type: string }
  | { readonly kind: 'video-broken' }
  | { readonly kind: 'picture-too-large'; readonly megapixels: number; readonly limitMegapixels: number }
  | { readonly kind: 'camera-refused' }
  | { readonly kind: 'camera-missing' }
  | { readonly kind: 'camera-busy' }
  | { readonly kind: 'camera-unplugged' }
  /** the camera is open, but no picture came for some seconds */
  | { readonly kind: 'camera-silent' }
  | { readonly kind: 'camera-unsupported' }
  | { readonly kind: 'model-not-loadable' }
  | { readonly kind: 'vision-not-loadable'; readonly part: VisionPart }
  | { readonly kind: 'vision-stopped'; readonly part: VisionPart };

/** The workers: the face and its landmarks, the card and the edges, the adjustment of a sweep. */
export type VisionPart = 'landmarks' | 'card' | 'sweep';

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

/**
 * A picture without features. Where the face and its eyes were found but not the card, `partial` carries them together with
 * a guessed card (source 'hand', in the size and place where a card would be held), so that its corners can be placed by hand.
 */
export interface FindingFailure {
  readonly failure: MeasuringFailure;
  readonly partial: PictureFeatures | null;
}

/** Finds the features in pictures, off the page's thread. */
export interface VisionPort {
  /** Starts loading; resolves once both workers are warm. */
  warmUp(onProgress: (progress: MeasuringProgress) => void): Promise<Result<null, MeasuringFailure>>;
  /**
   * Finds face, card, irises and lids. The bitmap stays the caller's. An aborted signal rejects with the signal's reason.
   */
  findFeatures(
    picture: Picture,
    onProgress: (progress: MeasuringProgress) => void,
    signal: AbortSignal,
  ): Promise<Result<PictureFeatures, FindingFailure>>;
  /** Finds the corners of the printed ChArUco sheet. The bitmap stays the caller's. An aborted signal rejects. */
  findBoard(picture: Picture, signal: AbortSignal): Promise<Result<BoardView, BoardFailure | DeviceFailure>>;
  /** Makes a camera profile from views of the sheet by one camera at one resolution. An aborted signal rejects. */
  makeProfile(
    views: readonly BoardView[],
    signal: AbortSignal,
  ): Promise<Result<CameraProfile, BoardFailure | DeviceFailure>>;
  /**
   * Uses another landmark bundle (a .task file that the reader has) in place of the built-in one, from the next picture on;
   * null goes back to the built-in one. Where it cannot be loaded, what was in use before stays in use.
   */
  useLandmarkBundle(bytes: Uint8Array | null): Promise<Result<null, MeasuringFailure>>;
}

/** Measures a sweep off the page's thread. */
export interface SweepPort {
  /**
   * One adjustment over all frames; see `MeasureSweep`. An aborted signal rejects with the signal's reason.
   *
   * @param onProgress called with the share of the work done, 0 to 1
   */
  measure(
    frames: readonly PictureFeatures[],
    settings: MeasuringSettings,
    onProgress: (share: number) => void,
    signal: AbortSignal,
  ): Promise<Result<SweepMeasurement, SweepFailure | DeviceFailure>>;
}

/** A video file whose frames can be taken one after the other. */
export interface VideoFrames {
  readonly frameCount: number;
  /** The frame at this place, 0 to frameCount - 1; places are spread evenly over the length of the video. */
  frame(index: number): Promise<Result<Picture, DeviceFailure>>;
  /** Releases the file. Calling it twice is no mistake. */
  close(): void;
}

/** The size of a picture as it is stored, before any EXIF orientation. */
export interface StoredSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Opens picture and video files. */
export interface PicturePort {
  /** What the head of the file says of its size, without decoding it; null where that cannot be read. */
  storedSize(file: Blob): Promise<StoredSize | null>;
  open(file: Blob, name: string): Promise<Result<Picture, MeasuringFailure>>;
  /** Opens a video file to take at most this many frames from it. */
  openVideo(file: Blob, name: string, frameCount: number): Promise<Result<VideoFrames, DeviceFailure>>;
}

export interface CameraDevice {
  readonly id: string;
  readonly label: string;
}

/** A running camera. */
export interface CameraStream {
  readonly stream: MediaStream;
  readonly deviceId: string;
  /**
   * Called once when nothing more comes: the device was unplugged, its permission was taken away, or it gave no picture for some
   * seconds although the page was seen. Whoever has the camera stops it then.
   */
  onEnded(listener: (why: MeasuringFailure) => void): void;
  /**
   * Takes `frames` frames in a row at full resolution, unmirrored, and hands back the sharpest; the others are closed. While the page is
   * hidden it waits.
   *
   * @param around where in the frame sharpness matters, px; null for its middle
   */
  takeBurst(frames: number, around: ImagePoint | null): Promise<Result<Picture, MeasuringFailure>>;
  /** The frame of this moment at full resolution, unmirrored. */
  takeFrame(): Promise<Result<Picture, MeasuringFailure>>;
  /** Releases the camera. Calling it twice is no mistake. */
  stop(): void;
}

/** Something that may bring a camera back, or take it away. */
export type CameraChange =
  /** some device was plugged in or unplugged */
  | { readonly kind: 'devices' }
  /** this page's permission to use cameras */
  | { readonly kind: 'permission'; readonly isGranted: boolean };

export interface CameraPort {
  /** The cameras known so far; labels are empty until the wearer's permission was given once. */
  devices(): Promise<readonly CameraDevice[]>;
  open(deviceId: string | null): Promise<Result<CameraStream, MeasuringFailure>>;
  /** Tells of changes until the signal aborts; resolves as soon as it does. */
  watchChanges(listener: (change: CameraChange) => void, signal: AbortSignal): Promise<void>;
}

export type Paper = 'a4' | 'letter';

/** The sheets to be printed at true size, as PDF files. */
export interface PrintPort {
  /** the marker card to cut out, with the ruled line that is to be measured */
  markerCardPdf(paper: Paper): Promise<Blob>;
  /** a ruled line, and an outline to lay a real card on */
  printCheckPdf(paper: Paper): Promise<Blob>;
  /** the ChArUco sheet for making a camera profile, with no line to be measured: its size does not matter */
  boardPdf(paper: Paper): Promise<Blob>;
}

/** Keeps camera profiles on this device. */
export interface ProfileStore {
  /** All that can be read; what is damaged is left out. */
  load(): readonly StoredProfile[];
  /** Returns false where the device keeps nothing (storage full or forbidden). */
  save(profiles: readonly StoredProfile[]): boolean;
}

/** Keeps on this device whether single characters are shortcuts. */
export interface SingleKeyStore {
  /** true unless they were switched off */
  areOn(): boolean;
  /** Returns false where the device keeps nothing; what was chosen then holds as long as the page is open. */
  switch(on: boolean): boolean;
}

/** How a picture is taken once all is right before the camera. */
export type ShutterWay = 'by-itself' | 'by-hand';

/** Keeps on this device how pictures are taken. */
export interface ShutterStore {
  load(): ShutterWay;
  /** Returns false where the device keeps nothing (storage full or forbidden). */
  save(way: ShutterWay): boolean;
}

/** Keeps on this device which language the screen speaks. */
export interface LanguageStore {
  /** BCP-47 tag of the language that was chosen last; null where none was, or nothing is kept. */
  load(): string | null;
  /** Returns false where the device keeps nothing (storage full or forbidden). */
  save(tag: string): boolean;
}
