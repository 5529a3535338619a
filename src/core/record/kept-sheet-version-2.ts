import * as z from 'zod/mini';
import type { ReaderSheet } from './reader-sheet.js';
import type { ReadingHistory } from './reading-history.js';
import {
  confirmationsSchema,
  entriesOfPlaces,
  moment,
  notesSchema,
  prescriptionSchema,
  readerIdSchema,
  readingsSchema,
  settingsSchema,
  shortId,
  typedText,
} from './session-parts.js';
import type { TypedSheet } from './typed-sheet.js';

/** Chosen: far more than a visit brings about, far less than a browser keeps. */
const MAX_CORRECTIONS = 5000;

const correction = z.object({ name: shortId, earlier: typedText, by: typedText, at: moment });

const readerSheet = z.object({
  reader: typedText,
  readings: readingsSchema,
  corrections: entriesOfPlaces(correction, MAX_CORRECTIONS),
});

/** Sheets as they were kept while there was one of them, and of what was replaced only the corrections. */
const version2 = z.object({
  version: z.literal(2),
  readers: z.object({ first: readerSheet, second: readerSheet }),
  reader: readerIdSchema,
  notes: notesSchema,
  prescription: prescriptionSchema,
  confirmations: confirmationsSchema,
  settings: settingsSchema,
});

/** A sheet of version 2; null where it is none. What today's catalogue does not know is left out of it. */
export function parseVersion2(raw: unknown): TypedSheet | null {
  const parsed = version2.safeParse(raw);
  if (!parsed.success) return null;
  const { readers: kept, reader, notes, prescription, confirmations, settings } = parsed.data;
  const readers = { first: withHistory(kept.first), second: withHistory(kept.second) };
  return { readers, reader, notes, prescription, confirmations, settings };
}

/**
 * Version 2 noted only what was replaced, by whom and when. What took its place is the next correction of the same place, or
 * what stands there now.
 */
function withHistory({ reader, readings, corrections }: z.infer<typeof readerSheet>): ReaderSheet {
  const history = corrections.flatMap(({ name, earlier, by, at }, place): ReadingHistory => {
    const next = corrections.slice(place + 1).find((one) => one.name === name);
    const isFirst = !corrections.slice(0, place).some((one) => one.name === name);
    return [
      ...(isFirst ? [{ name, text: earlier, by: '', at: null }] : []),
      { name, text: next?.earlier ?? readings[name], by, at },
    ];
  });
  return { reader, readings, history };
}
