import type { ReadingName, Tolerance } from '../catalogue/measurement.js';

/** The numbers of one comparison, in the unit of the measurement. */
export interface Comparison {
  readonly name: ReadingName;
  /** hand less camera */
  readonly difference: number;
  /** 95 % interval of the difference: the doubts of both together */
  readonly differenceLow: number;
  readonly differenceHigh: number;
  /** half width of the 95 % interval of each */
  readonly handExpanded: number;
  readonly cameraExpanded: number;
  /** E_n number, signed as the difference (ISO 13528); beyond 1 either way the two are not the same value */
  readonly enNumber: number;
  readonly tolerance: Tolerance;
}

/**
 * Why the numbers do not decide, with the half width of the 95 % interval that would (smaller is better).
 */
export type CannotTellReason =
  /** the camera's doubt is larger than what may be missed: take a better picture */
  | { readonly kind: 'camera-too-uncertain'; readonly neededCameraExpanded: number }
  /** beyond the tolerance, but not by more than the doubts explain: a better picture or another hand reading decides */
  | { readonly kind: 'between'; readonly neededCameraExpanded: number }
  /** the hand reading's own doubt is too large, however good the picture: read again by hand */
  | { readonly kind: 'hand-too-uncertain'; readonly neededHandExpanded: number };

/** What the cross-check says of one reading. */
export type Finding =
  /** within the tolerance, and both are sure enough to say so */
  | { readonly kind: 'agrees'; readonly comparison: Comparison }
  /** beyond the tolerance by more than the doubts explain: look again, one of the two is wrong */
  | { readonly kind: 'disagrees'; readonly comparison: Comparison }
  /** the numbers do not carry either word */
  | { readonly kind: 'cannot-tell'; readonly comparison: Comparison; readonly reason: CannotTellReason };
