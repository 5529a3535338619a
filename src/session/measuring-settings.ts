import type { MeasuringSettings } from '../core/estimate/face-estimates.js';
import { DEFAULT_MEASURING_SETTINGS } from '../core/estimate/face-estimates.js';
import type { PrintCheckFailure } from '../core/reading/print-check.js';
import { PRINT_CHECK_LENGTH_MM, printScaleFromMeasuredLength } from '../core/reading/print-check.js';
import { parseDecimal } from '../core/reading/parse-reading.js';
import type { Result } from '../core/result.js';
import { fail } from '../core/result.js';
import type { TakenBy } from './profile-choice.js';
import { profileFor } from './profile-choice.js';
import type { StoredProfile } from './stored-profile.js';
import type { SheetSettings } from '../core/record/typed-sheet.js';

/** Working distances that are believed. Chosen: from a strong near addition to beyond an arm's length. */
const WORKING_DISTANCE_LIMITS_MM = { lowest: 200, highest: 1000 } as const;

export type LengthFailure =
  | { readonly kind: 'not-a-number' }
  | { readonly kind: 'beyond-limits'; readonly lowestMm: number; readonly highestMm: number };

export function parseWorkingDistance(text: string): Result<number, LengthFailure> {
  const length = parseDecimal(text);
  if (!length.ok) return fail({ kind: 'not-a-number' });
  const { lowest, highest } = WORKING_DISTANCE_LIMITS_MM;
  return length.value >= lowest && length.value <= highest
    ? length
    : fail({ kind: 'beyond-limits', lowestMm: lowest, highestMm: highest });
}

/** The scale of the printed card; null where nothing was measured yet. */
export function parsePrintScale(
  text: string,
): Result<number, PrintCheckFailure | { readonly kind: 'not-a-number' }> | null {
  if (text.trim() === '') return null;
  const length = parseDecimal(text);
  return length.ok ? printScaleFromMeasuredLength(length.value, PRINT_CHECK_LENGTH_MM) : fail({ kind: 'not-a-number' });
}

/** The working distance that counts, mm: 400 where what was typed cannot be read. */
export function workingDistanceOf(settings: SheetSettings): number {
  const working = parseWorkingDistance(settings.workingDistanceText);
  return working.ok ? working.value : DEFAULT_MEASURING_SETTINGS.workingDistanceMm;
}

/**
 * What the estimates depend on. A length that cannot be read counts as its default, and the screen says so beside the
 * field: a working distance of 400 mm, a print at true size.
 *
 * @param profiles the shelf on which the camera profiles stand
 * @param takenBy what took the picture or the sweep: it says which of them counts
 */
export function measuringSettings(
  settings: SheetSettings,
  profiles: readonly StoredProfile[],
  takenBy: TakenBy,
): MeasuringSettings {
  // Markers are only on the printed card: its scale counts whenever they are seen, whatever card was named.
  const scale = parsePrintScale(settings.checkLengthText);
  return {
    gaze: settings.gaze,
    workingDistanceMm: workingDistanceOf(settings),
    printScale: scale?.ok === true ? scale.value : 1,
    profile: profileFor(profiles, settings.profileId, takenBy)?.profile ?? null,
  };
}
