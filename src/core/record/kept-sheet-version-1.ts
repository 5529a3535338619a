import * as z from 'zod/mini';
import { NO_READINGS } from './reader-sheet.js';
import type { TypedSheet } from './typed-sheet.js';
import { DEFAULT_SHEET_SETTINGS, EMPTY_TYPED_SHEET } from './typed-sheet.js';

const text = z.string().check(z.maxLength(64));

/** Sheets as they were kept while there were seven fields, one reader and no practice. */
const version1 = z.object({
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
    cameraId: z.nullable(z.string().check(z.maxLength(512))),
    // sheets that were kept before there were profiles have none
    profileId: z._default(z.nullable(z.string().check(z.maxLength(64))), null),
  }),
});

/** A sheet of version 1 as one of today: its readings are the first reader's. Null where it is none. */
export function parseVersion1(raw: unknown): TypedSheet | null {
  const parsed = version1.safeParse(raw);
  if (!parsed.success) return null;
  const { readings, settings } = parsed.data;
  const { readers } = EMPTY_TYPED_SHEET;
  return {
    ...EMPTY_TYPED_SHEET,
    readers: { ...readers, first: { ...readers.first, readings: { ...NO_READINGS, ...readings } } },
    settings: { ...DEFAULT_SHEET_SETTINGS, ...settings },
  };
}
