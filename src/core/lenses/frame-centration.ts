import type { ReadingName } from '../catalogue/measurement.js';
import { nearCentrationDistanceMm } from '../estimate/gaze.js';
import type { Side } from '../units/side.js';
import { powerAlongD } from './lens-power.js';
import type { LensPower } from './prescription.js';

/** The boxed sizes of a frame's front, mm. */
export interface FrameSizes {
  readonly boxWidthMm: number;
  readonly distanceBetweenLensesMm: number;
}

/** From the boxed centre of a lens to where its centre goes, mm. */
export interface Decentration {
  /** towards the nose; negative: outward */
  readonly inwardMm: number;
  readonly upMm: number;
}

/** Distance between both boxed centres, mm. */
export function boxedCentreDistanceMm({ boxWidthMm, distanceBetweenLensesMm }: FrameSizes): number {
  return boxWidthMm + distanceBetweenLensesMm;
}

/** Decentration inward of one lens: half of the boxed centre distance less the eye's PD, mm (common practice). */
export function inwardDecentrationMm(frame: FrameSizes, monocularPdMm: number): number {
  return boxedCentreDistanceMm(frame) / 2 - monocularPdMm;
}

/** Decentration upward: height above the lower edge of the box less half of the box, mm. */
export function upwardDecentrationMm(fittingHeightMm: number, boxHeightMm: number): number {
  return fittingHeightMm - boxHeightMm / 2;
}

/** What the edge of a blank is not good for, both sides together, mm (common practice). */
const BLANK_ALLOWANCE_MM = 2;

/**
 * Smallest diameter of an uncut lens with its optical centre in the middle, mm: twice the largest distance from the optical centre to the
 * edge of the shape, and the allowance. `outline` from the boxed centre, in mm, inward and up as the decentration.
 */
export function smallestBlankMm(outline: readonly Decentration[], { inwardMm, upMm }: Decentration): number {
  const farthestMm = Math.max(...outline.map((point) => Math.hypot(point.inwardMm - inwardMm, point.upMm - upMm)));
  return 2 * farthestMm + BLANK_ALLOWANCE_MM;
}

/**
 * The same where only the effective diameter of the shape is known: ED + 2 d + 2, never less than what the outline itself asks, because no
 * edge lies farther from the optical centre than half the effective diameter and the decentration d together.
 */
export function smallestBlankOfDiameterMm(effectiveDiameterMm: number, { inwardMm, upMm }: Decentration): number {
  return effectiveDiameterMm + 2 * Math.hypot(inwardMm, upMm) + BLANK_ALLOWANCE_MM;
}

/** The corners of a box about its centre: no shape in the box reaches farther. */
export function boxCorners(boxWidthMm: number, boxHeightMm: number): readonly Decentration[] {
  return [-1, 1].flatMap((across) =>
    [-1, 1].map((along) => ({ inwardMm: (across * boxWidthMm) / 2, upMm: (along * boxHeightMm) / 2 })),
  );
}

/** Where one lens is centred in a frame, and the blank that it takes; null for what the numbers do not tell. */
export interface CentredLens {
  /** towards the nose; negative: outward */
  readonly inwardMm: number | null;
  /** null without a fitting height: the centre then lies on the horizontal centre line */
  readonly upMm: number | null;
  /** smallest uncut lens whose optical centre lies in its middle; `isBound` where only the box is known: never more than this */
  readonly blank: { readonly diameterMm: number; readonly isBound: boolean } | null;
}

/** One lens in the frame whose sizes are among the `values` (mm); `pdMm` is that eye's PD. */
export function centredLens(
  side: Side,
  values: { readonly [Name in ReadingName]?: number },
  { pdMm, effectiveDiameterMm }: { readonly pdMm: number | null; readonly effectiveDiameterMm: number | null },
): CentredLens {
  const { boxLensWidth, boxLensHeight, distanceBetweenLenses } = values;
  const heightMm = side === 'R' ? values.fittingHeightR : values.fittingHeightL;
  const inwardMm =
    boxLensWidth === undefined || distanceBetweenLenses === undefined || pdMm === null
      ? null
      : inwardDecentrationMm({ boxWidthMm: boxLensWidth, distanceBetweenLensesMm: distanceBetweenLenses }, pdMm);
  const upMm =
    heightMm === undefined || boxLensHeight === undefined ? null : upwardDecentrationMm(heightMm, boxLensHeight);
  if (inwardMm === null) return { inwardMm, upMm, blank: null };
  const decentration: Decentration = { inwardMm, upMm: upMm ?? 0 };
  if (effectiveDiameterMm !== null) {
    const diameterMm = smallestBlankOfDiameterMm(effectiveDiameterMm, decentration);
    return { inwardMm, upMm, blank: { diameterMm, isBound: false } };
  }
  if (boxLensWidth === undefined || boxLensHeight === undefined) return { inwardMm, upMm, blank: null };
  const diameterMm = smallestBlankMm(boxCorners(boxLensWidth, boxLensHeight), decentration);
  return { inwardMm, upMm, blank: { diameterMm, isBound: true } };
}

/** Back of the lens to cornea, and cornea to the eye's centre of rotation, mm (the textbooks' 14 + 13 = 27). */
const USUAL_VERTEX_DISTANCE_MM = 14;
const CORNEA_TO_ROTATION_MM = 13;

/**
 * How far in from the distance centre the near centre of one lens lies, mm, by the lens power along the horizontal. Null for a
 * plus lens so strong that it images the centre of rotation beyond all distances: there is no such near centre.
 */
export function nearInsetMm(
  lens: LensPower,
  monocularPdMm: number,
  workingDistanceMm: number,
  backVertexDistanceMm: number | null,
): number | null {
  const powerD = powerAlongD(lens, 180);
  const spectacleToRotationMm = (backVertexDistanceMm ?? USUAL_VERTEX_DISTANCE_MM) + CORNEA_TO_ROTATION_MM;
  if (powerD * spectacleToRotationMm >= 1000) return null;
  return monocularPdMm - nearCentrationDistanceMm(monocularPdMm, workingDistanceMm, powerD, spectacleToRotationMm);
}
