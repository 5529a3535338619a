import type { ComparedEstimate, PixelPoint, WrittenEstimateName } from './truth.js';
import { WRITTEN_ESTIMATES } from './truth.js';

/** One estimate as the file of `--json` holds it, all in mm. */
export interface WrittenEstimate {
  readonly valueMm: number;
  /** one standard deviation */
  readonly uMm: number;
  /** bounds of the 95 % interval */
  readonly lowMm: number;
  readonly highMm: number;
}

export type MeasuredEstimates = Partial<Readonly<Record<ComparedEstimate, WrittenEstimate>>>;

/** What became of one picture. */
export interface MeasuredPicture {
  readonly file: string;
  readonly ok: boolean;
  /** the kind of the failure; null where there is none */
  readonly reason: string | null;
  /** from the file to the estimates, with warm workers */
  readonly ms: number;
  /** empty without estimates */
  readonly estimates: MeasuredEstimates;
  readonly irisPx: { readonly R: PixelPoint; readonly L: PixelPoint } | null;
  /** top left, top right, bottom right, bottom left as seen */
  readonly cardPx: readonly PixelPoint[] | null;
}

/** What became of one sweep. */
export interface MeasuredSweep {
  readonly sweep: string;
  readonly ok: boolean;
  readonly reason: string | null;
  /** to find all its frames' features one after the other, from their files, and to measure them together */
  readonly ms: number;
  /** of `ms`, what it took to measure them together */
  readonly adjustmentMs: number;
  /** frames in which all features were found, so that they could be measured */
  readonly framesGiven: number;
  readonly framesUsed: number;
  /** number, as the truth counts, of the first frame in which the card was found to sit elsewhere */
  readonly slippedFromFrame: number | null;
  readonly estimates: MeasuredEstimates;
}

/** Exactly what the file of `--json` promises, in its order. */
export function writeOutcomes(
  pictures: readonly MeasuredPicture[],
  sweeps: readonly MeasuredSweep[],
): { readonly pictures: readonly object[]; readonly sweeps: readonly object[] } {
  return {
    pictures: pictures.map(({ file, ok, reason, ms, estimates, irisPx, cardPx }) => {
      return { file, ok, reason, ms, estimates: written(estimates), irisPx, cardPx };
    }),
    sweeps: sweeps.map(({ sweep, ok, reason, ms, framesUsed, slippedFromFrame, estimates }) => {
      return { sweep, ok, reason, ms, framesUsed, slippedFromFrame, estimates: written(estimates) };
    }),
  };
}

function written(estimates: MeasuredEstimates): Partial<Record<WrittenEstimateName, WrittenEstimate>> {
  const kept: Partial<Record<WrittenEstimateName, WrittenEstimate>> = {};
  for (const name of WRITTEN_ESTIMATES) {
    const estimate = estimates[name];
    if (estimate !== undefined) kept[name] = estimate;
  }
  return kept;
}
