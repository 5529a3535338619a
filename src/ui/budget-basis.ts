import type { PictureFeatures } from '../core/camera/features.js';
import type { EstimateName } from '../core/estimate/estimate.js';
import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import { matchingProfile } from '../core/estimate/assumed-camera.js';
import type { RemedyContext } from '../core/estimate/most-helpful.js';
import { distancePx, midpointPx } from '../core/geometry/vector.js';
import type { Side } from '../core/units/side.js';
import { HAND_LID_PX, handMidlinePx } from '../session/handles.js';
import { featuresInUse } from '../session/sweep-frames.js';
import type { SheetInHand } from './use-sheet.js';

/** What the estimates on the sheet rest on, as far as it decides what would help. */
export interface BudgetBasis {
  /** of the picture, or of one frame of the sweep */
  readonly features: PictureFeatures;
  readonly settings: MeasuringSettings;
  readonly isSweep: boolean;
  readonly pixelsPerMm: number;
  readonly distanceMm: number;
}

/** Null where nothing was measured. */
export function budgetBasis({ measurement, settings, state }: SheetInHand): BudgetBasis | null {
  if (measurement?.ok !== true) return null;
  const { estimates, kind, pixelsPerMm } = measurement.value;
  const measured = { pixelsPerMm, distanceMm: estimates.distance.value, isSweep: kind === 'sweep' };
  const { picture } = state;
  if (picture.kind === 'measured') return { ...measured, features: picture.marking.features, settings };
  if (picture.kind !== 'swept') return null;
  const { basis } = picture.outcome;
  const [features] = featuresInUse(basis.frames);
  return features === undefined ? null : { ...measured, features, settings: basis.settings };
}

/** The facts that remedies for one number depend on. */
export function remedyContext(basis: BudgetBasis, name: EstimateName, side: Side | null): RemedyContext {
  const { features, settings, isSweep, pixelsPerMm, distanceMm } = basis;
  const { card, iris, lids, midline } = features;
  const [topLeft, topRight, bottomRight, bottomLeft] = card.corners;
  const cardMiddle = midpointPx(midpointPx(topLeft, bottomRight), midpointPx(topRight, bottomLeft));
  const eyesMiddle = midpointPx(iris.R.centre, iris.L.centre);
  // No hand sets marks in the frames of a sweep.
  const isMarked = (source: string): boolean => isSweep || source === 'hand';
  const eyeLids = side === null ? null : lids[side];
  return {
    name,
    isSweep,
    hasProfile: matchingProfile(settings.profile, features) !== null,
    cardSource: card.source,
    cardPosition: card.position,
    cardToEyesMm: distancePx(cardMiddle, eyesMiddle) / pixelsPerMm,
    distanceMm,
    lidsByHandShare: eyeLids === null || isMarked(eyeLids.source) ? null : HAND_LID_PX / eyeLids.uncertaintyPx,
    midlineByHandShare: isMarked(midline.source) ? null : handMidlinePx(features) / midline.uncertaintyPx,
  };
}
