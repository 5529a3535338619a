import type { PictureFailure } from '../camera/failure.js';
import type { PictureFeatures } from '../camera/features.js';
import type { Result } from '../result.js';
import type { FaceEstimates } from './estimate.js';
import type { MeasuringSettings } from './face-estimates.js';

/** What became of one frame of a sweep. */
export type FrameFate =
  | 'used'
  /** the card sat elsewhere on the face than in most frames */
  | 'slipped'
  /** what was found in it does not fit the others: a blink, a blurred edge, eyes that looked elsewhere */
  | 'misfit';

/** What would make the next sweep better; the estimates stand all the same, with their wider intervals. */
export type SweepAdvice =
  /** the head turned, from one end to the other, by less than is useful */
  | { readonly kind: 'turn-further'; readonly rangeDeg: number; readonly usefulDeg: number }
  /** nearest and farthest frame hardly differ */
  | { readonly kind: 'lean-more'; readonly ratio: number; readonly usefulRatio: number }
  | { readonly kind: 'more-frames'; readonly used: number; readonly useful: number }
  /** the card slipped: what came after (or before) was left out */
  | { readonly kind: 'card-slipped'; readonly fromFrame: number }
  | { readonly kind: 'come-nearer'; readonly pixelsPerMm: number }
  /** card and eyes moved as if the eyes had looked elsewhere than they were asked to: this was taken into the doubt */
  | { readonly kind: 'eyes-elsewhere' };

/** What a sweep says of a face. */
export interface SweepMeasurement {
  readonly estimates: FaceEstimates;
  /** at the eyes, middle of the frames used */
  readonly pixelsPerMm: number;
  readonly advice: readonly SweepAdvice[];
  /** one for each frame given, in the same order */
  readonly fates: readonly FrameFate[];
  readonly framesUsed: number;
  /** place, among the frames given, of the first one in which the card sits elsewhere; null where it never did */
  readonly slippedFromFrame: number | null;
  /** angle of the head in each frame given, degrees; null where it is not known. Positive: face to picture right */
  readonly yawsDeg: readonly (number | null)[];
  /** camera to the plane of the pupils in each frame given, mm; null where it is not known */
  readonly distancesMm: readonly (number | null)[];
}

/** Why a sweep gave no estimates. */
export type SweepFailure =
  | { readonly kind: 'too-few-frames'; readonly usable: number; readonly needed: number }
  /** the card never sat still for long enough: hold it firmly, or lean the hand on the head */
  | { readonly kind: 'card-not-still'; readonly longestRun: number; readonly needed: number }
  /** the frames are of different sizes, so not of one camera */
  | { readonly kind: 'frames-of-different-size' }
  /** most frames could not be measured; the reason that the most of them had */
  | PictureFailure;

/**
 * Signature of `measureSweep`.
 *
 * @param frames what was found in each frame, in the order in which they were taken; all of one camera and one wearer
 * @param onProgress called with the share of the work done, 0 to 1
 */
export type MeasureSweep = (
  frames: readonly PictureFeatures[],
  settings: MeasuringSettings,
  onProgress: (share: number) => void,
) => Result<SweepMeasurement, SweepFailure>;
