import { z } from 'zod';
import type { ReadingName } from '../core/catalogue/measurement.js';

/**
 * The fields of the sheet into which a hand reading is typed, in the order in which Enter goes through them. The near PD is
 * not among them: the camera works it out for the working distance, and the sheet shows it beside the picture.
 */
export const READING_FIELDS = [
  'pdFar',
  'monoPdR',
  'monoPdL',
  'apertureR',
  'apertureL',
  'headWidth',
  'templeWidth',
] as const satisfies readonly ReadingName[];

export type ReadingField = (typeof READING_FIELDS)[number];

/** What stands in each field, kept as it was typed; empty text where nothing was typed yet. */
export type TypedReadings = Readonly<Record<ReadingField, string>>;

export const NO_READINGS: TypedReadings = {
  pdFar: '',
  monoPdR: '',
  monoPdL: '',
  apertureR: '',
  apertureL: '',
  headWidth: '',
  templeWidth: '',
};

/** What the reader chose; lengths are kept as typed text, like the readings. */
export interface SheetSettings {
  /** where the wearer is asked to look */
  readonly gaze: 'camera' | 'far';
  /** spectacle plane to the near object, in mm, as typed */
  readonly workingDistanceText: string;
  /** the camera's values stay covered until the hand reading of their row is in */
  readonly covered: boolean;
  /** a bought card of size ID-1, or the printed marker card */
  readonly card: 'bought' | 'printed';
  /** measured length of the ruled line on the printed sheet, in mm, as typed; empty where nobody measured it */
  readonly checkLengthText: string;
  /** the camera used last; null for the device's own choice */
  readonly cameraId: string | null;
  /** the camera profile for pictures from files; null for none, and as good as none where it is on the shelf no more */
  readonly profileId: string | null;
}

export const DEFAULT_SHEET_SETTINGS: SheetSettings = {
  gaze: 'camera',
  workingDistanceText: '400',
  covered: true,
  card: 'bought',
  checkLengthText: '',
  cameraId: null,
  profileId: null,
};

/** All that a reload must not lose. Pictures and what was found in them are never part of it. */
export interface TypedSheet {
  readonly readings: TypedReadings;
  readonly settings: SheetSettings;
}

const text = z.string().max(64);

const typedSheetSchema = z.object({
  version: z.literal(1),
  readings: z.object({
    pdFar: text,
    monoPdR: text,
    monoPdL: text,
    apertureR: text,
    apertureL: text,
    headWidth: text,
    templeWidth: text,
  }),
  settings: z.object({
    gaze: z.enum(['camera', 'far']),
    workingDistanceText: text,
    covered: z.boolean(),
    card: z.enum(['bought', 'printed']),
    checkLengthText: text,
    cameraId: z.string().max(512).nullable(),
    // sheets that were kept before there were profiles have none
    profileId: z.string().max(64).nullable().default(null),
  }),
});

/** The sheet as the text that is kept. */
export function writeTypedSheet(sheet: TypedSheet): string {
  return JSON.stringify({ version: 1, readings: sheet.readings, settings: sheet.settings });
}

/** The sheet from kept text; null where the text is not what `writeTypedSheet` writes. */
export function parseTypedSheet(kept: string): TypedSheet | null {
  let raw: unknown;
  try {
    raw = JSON.parse(kept);
  } catch {
    return null;
  }
  const parsed = typedSheetSchema.safeParse(raw);
  return parsed.success ? { readings: parsed.data.readings, settings: parsed.data.settings } : null;
}
