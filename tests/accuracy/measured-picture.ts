import type { ComparedEstimate, PixelPoint } from './truth.js';

/** One estimate as the file of `--json` holds it, all in mm. */
export interface WrittenEstimate {
  readonly valueMm: number;
  /** one standard deviation */
  readonly uMm: number;
  /** bounds of the 95 % interval */
  readonly lowMm: number;
  readonly highMm: number;
}

/** One picture as the file of `--json` holds it. */
export interface MeasuredPicture {
  readonly file: string;
  readonly ok: boolean;
  /** the kind of the failure; null where there is none */
  readonly reason: string | null;
  /** from the file to the estimates, with warm workers */
  readonly ms: number;
  /** empty without estimates */
  readonly estimates: Partial<Readonly<Record<ComparedEstimate, WrittenEstimate>>>;
  readonly irisPx: { readonly R: PixelPoint; readonly L: PixelPoint } | null;
  /** top left, top right, bottom right, bottom left as seen */
  readonly cardPx: readonly PixelPoint[] | null;
}
