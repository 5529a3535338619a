import type { Range, ReadingName } from '../catalogue/measurement.js';

/** `contradiction`: the readings cannot all be right. `look-again`: unusual, but faces are. */
export type Gravity = 'look-again' | 'contradiction';

/** What does not fit among the hand readings, before any camera. Lengths in millimetres. */
export type Inconsistency = { readonly gravity: Gravity; readonly names: readonly ReadingName[] } & (
  | {
      /** both eyes do not add up to the whole by more than rounding */
      readonly kind: 'eyes-do-not-add-up';
      readonly sumMm: number;
      readonly wholeMm: number;
      /** whole less sum */
      readonly differenceMm: number;
      /** what rounding of the three explains */
      readonly roundingMm: number;
    }
  /** the near distance is not below the far one */
  | { readonly kind: 'near-not-below-distance'; readonly nearMm: number; readonly farMm: number }
  | {
      /** the near distance is not what follows from the far one for the working distance */
      readonly kind: 'near-unlike-distance';
      readonly nearMm: number;
      readonly expectedNearMm: number;
      readonly allowanceMm: number;
    }
  /** the temples are not narrower than the head */
  | { readonly kind: 'temples-not-below-head'; readonly templeMm: number; readonly headMm: number }
  /** right and left differ more than faces usually do */
  | { readonly kind: 'sides-differ'; readonly differenceMm: number; readonly limitMm: number }
  /** outside of what is usual among adults */
  | { readonly kind: 'unusual'; readonly value: number; readonly range: Range }
);
