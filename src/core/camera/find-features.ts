import type { ImagePoint } from '../geometry/vector.js';
import { fail } from '../result.js';
import type { Result } from '../result.js';
import type { PictureFailure } from './failure.js';
import type { FourCorners, Landmark, PictureFeatures } from './features.js';

/** Pixels of a picture, row by row, four bytes each. */
export interface RgbaImage {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly data: Uint8ClampedArray;
}

/** One marker of the marker card; its corners clockwise from the one that the dictionary calls the first. */
export interface FoundMarker {
  readonly id: number;
  readonly cornersPx: FourCorners<ImagePoint>;
}

/** Looks for the markers of the marker card; an empty list where there are none. */
export type MarkerFinder = (image: RgbaImage) => readonly FoundMarker[];

/** Finds card, irises, lids, midline and outline in a picture whose landmarks are known. */
export function findFeatures(
  _image: RgbaImage,
  _landmarks: readonly Landmark[],
  _findMarkers: MarkerFinder,
): Result<PictureFeatures, PictureFailure> {
  return fail({ kind: 'no-card' });
}

/** Everything but the card: a guessed one stands in its place (source 'hand'), for a person to move its corners. */
export function findFeaturesWithoutCard(
  _image: RgbaImage,
  _landmarks: readonly Landmark[],
): Result<PictureFeatures, PictureFailure> {
  return fail({ kind: 'no-card' });
}
