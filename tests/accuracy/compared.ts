import type { MeasuredPicture, MeasuredSweep } from './measured-picture.js';
import type { Comparison } from './statistics.js';
import type { ComparedEstimate, PictureTruth, PixelPoint, SweepTruth } from './truth.js';

/** One picture's outcome beside its truth. */
export interface ComparedPicture {
  readonly truth: PictureTruth;
  readonly measured: MeasuredPicture;
}

/** One sweep's outcome beside its truth. */
export interface ComparedSweep {
  readonly truth: SweepTruth;
  readonly measured: MeasuredSweep;
}

export type Compared = ComparedPicture | ComparedSweep;

/** All outcomes of one way to measure. */
export interface ComparedRun {
  /** with or without a camera profile */
  readonly title: string;
  readonly pictures: readonly ComparedPicture[];
  readonly sweeps: readonly ComparedSweep[];
}

export function stillsOf({ pictures }: ComparedRun): readonly ComparedPicture[] {
  return pictures.filter(({ truth }) => truth.frameOf === null);
}

export function framesOf({ pictures }: ComparedRun): readonly ComparedPicture[] {
  return pictures.filter(({ truth }) => truth.frameOf !== null);
}

/** The file of a picture, or the name of a sweep. */
export function nameOf({ measured }: Compared): string {
  return 'file' in measured ? measured.file : measured.sweep;
}

/** Null where there is no estimate, or no truth to hold against it. */
export function comparisonOf({ truth, measured }: Compared, name: ComparedEstimate): Comparison | null {
  const estimate = measured.estimates[name];
  const value = truth.valuesMm[name];
  if (estimate === undefined || value === null) return null;
  const { valueMm, uMm, lowMm, highMm } = estimate;
  return { value: valueMm, uncertainty: uMm, low: lowMm, high: highMm, truth: value };
}

export function comparisonsOf(cases: readonly Compared[], names: readonly ComparedEstimate[]): readonly Comparison[] {
  return cases.flatMap((compared) => names.flatMap((name) => comparisonOf(compared, name) ?? []));
}

/** Distances between the iris centres as found and the truth, px: none or two. */
export function irisErrorsPx({ truth, measured }: ComparedPicture): readonly number[] {
  const { pupilsPx } = truth;
  const { irisPx } = measured;
  if (pupilsPx === null || irisPx === null) return [];
  return [distancePx(irisPx.R, pupilsPx.R), distancePx(irisPx.L, pupilsPx.L)];
}

/** Distances between the card's corners as found and the truth, px: none or four. */
export function cornerErrorsPx({ truth, measured }: ComparedPicture): readonly number[] {
  const { cardPx } = measured;
  if (truth.cardPx === null || cardPx === null) return [];
  return truth.cardPx.flatMap((corner, index) => {
    const found = cardPx[index];
    return found === undefined ? [] : [distancePx(found, corner)];
  });
}

function distancePx(a: PixelPoint, b: PixelPoint): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
