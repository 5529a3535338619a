import { fail, invariant, succeed, type Result } from '../result.js';

/** Nominal length of the ruled line on the printed sheets, mm. Chosen: as long as a hand rule and both papers allow. */
export const PRINT_CHECK_LENGTH_MM = 150;

/**
 * Print scales that are believed. Chosen: "fit to page" shrinks by 3 to 6 %; beyond 10 % a slip of typing is likelier, and
 * nothing on the print would be near the size that it was drawn for.
 */
const PRINT_SCALE_LIMITS = { lowest: 0.9, highest: 1.1 } as const;

/** Millimetres in the units that a length is typed in by mistake (an inch is 25.4 mm by definition). */
const MM_IN_OTHER_UNITS = { cm: 10, inch: 25.4 } as const;

export type OtherLengthUnit = keyof typeof MM_IN_OTHER_UNITS;

export type PrintCheckFailure =
  /** not a finite length above zero */
  | { readonly kind: 'not-a-length'; readonly measuredMm: number }
  /** believable only as another unit: ask whether `lengthMm` was meant, and never convert unasked */
  | {
      readonly kind: 'other-unit';
      readonly unit: OtherLengthUnit;
      readonly measured: number;
      readonly lengthMm: number;
    }
  /** outside the limits: measure again, and print again without scaling if the number stands */
  | {
      readonly kind: 'beyond-limits';
      readonly measuredMm: number;
      readonly lowestMm: number;
      readonly highestMm: number;
    };

/**
 * The scale of a print: measured over nominal length of a line on the same sheet (so 0.97 where a printer shrank by 3 %).
 * True lengths on the print are their nominal lengths times this. A length that cannot be believed is a failure.
 */
export function printScaleFromMeasuredLength(measuredMm: number, nominalMm: number): Result<number, PrintCheckFailure> {
  invariant(Number.isFinite(nominalMm) && nominalMm > 0, `nominal length above zero, got ${nominalMm} mm`);
  if (!Number.isFinite(measuredMm) || measuredMm <= 0) return fail({ kind: 'not-a-length', measuredMm });

  const isBelievable = (lengthMm: number): boolean =>
    lengthMm >= nominalMm * PRINT_SCALE_LIMITS.lowest && lengthMm <= nominalMm * PRINT_SCALE_LIMITS.highest;
  if (isBelievable(measuredMm)) return succeed(measuredMm / nominalMm);

  for (const unit of ['cm', 'inch'] as const) {
    const lengthMm = measuredMm * MM_IN_OTHER_UNITS[unit];
    if (isBelievable(lengthMm)) return fail({ kind: 'other-unit', unit, measured: measuredMm, lengthMm });
  }
  return fail({
    kind: 'beyond-limits',
    measuredMm,
    lowestMm: nominalMm * PRINT_SCALE_LIMITS.lowest,
    highestMm: nominalMm * PRINT_SCALE_LIMITS.highest,
  });
}
