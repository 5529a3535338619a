import * as z from 'zod/mini';
import { DEFINITIONS } from '../catalogue/definitions.js';
import type { MeasurementId, ReadingName } from '../catalogue/measurement.js';
import { MEASUREMENT_GROUPS, READING_NAMES } from '../catalogue/measurement.js';
import type { Practice } from './practice.js';
import { keptInUse } from './practice.js';
import type { TypedReadings } from './reader-sheet.js';
import { NO_READINGS, READER_IDS } from './reader-sheet.js';
import { MAX_TEXT_LENGTH } from './typed-text.js';

// The parts that several versions of what is kept have in common. What one version changes moves into that version's own file.

/** A field as it was typed. */
export const typedText = z.string().check(z.maxLength(MAX_TEXT_LENGTH));

/** The name of a measurement, a gauge, a profile or a choice. */
export const shortId = z.string().check(z.maxLength(64));

/** A date with its time and what it is ahead of UTC, ISO 8601. */
export const moment = z.iso.datetime({ offset: true });

const positive = z.number().check(z.positive());

/** Chosen: more than any practice owns, far less than a browser keeps. */
const MAX_GAUGES = 200;

/** Chosen: room for the names of another time's catalogue beside the ones of today. */
const MAX_NAMES = 500;

// Sets: a file of a thousand sessions asks for a hundred thousand names.
const readingNames: ReadonlySet<string> = new Set(READING_NAMES);
const measurementNames: ReadonlySet<string> = new Set(DEFINITIONS.map((definition) => definition.id));

function isReadingName(name: string): name is ReadingName {
  return readingNames.has(name);
}

function isMeasurementId(one: string): one is MeasurementId {
  return measurementNames.has(one);
}

/** Entries under names that are known; those of another time's catalogue are dropped. */
function under<Name extends string, Value>(
  isKnown: (name: string) => name is Name,
  entries: Readonly<Record<string, Value>>,
): { readonly [Key in Name]?: Value } {
  return Object.fromEntries(Object.entries(entries).filter(([name]) => isKnown(name))) as { [Key in Name]?: Value };
}

const measurementIds = z.pipe(
  z.array(shortId).check(z.maxLength(MAX_NAMES)),
  z.transform((ids: string[]) => [...new Set(ids.filter(isMeasurementId))]),
);

export const gaugeSchema = z.object({
  id: shortId,
  name: typedText,
  serves: measurementIds,
  resolution: positive,
  zeroOffset: z.number(),
  bias: z.number(),
  checkedOn: z.nullable(z.iso.date()),
});

const keptPractice = z.object({
  hidden: measurementIds,
  tolerances: z.record(shortId, positive),
  gauges: z.array(gaugeSchema).check(z.maxLength(MAX_GAUGES)),
  gaugeInUse: z.record(shortId, shortId),
  groupOrder: z.array(shortId).check(z.maxLength(MAX_NAMES)),
  standard: z.enum(['ansi-z80.1', 'iso-21987']),
});

/** Blocks that are missing come last, in the catalogue's order. */
const practiceSchema = z.pipe(
  keptPractice,
  z.transform((kept: z.output<typeof keptPractice>): Practice => {
    const known = MEASUREMENT_GROUPS.filter((group) => kept.groupOrder.includes(group));
    const ordered = known.toSorted((a, b) => kept.groupOrder.indexOf(a) - kept.groupOrder.indexOf(b));
    return keptInUse({
      ...kept,
      tolerances: under(isMeasurementId, kept.tolerances),
      gaugeInUse: under(isMeasurementId, kept.gaugeInUse),
      groupOrder: [...ordered, ...MEASUREMENT_GROUPS.filter((group) => !known.includes(group))],
    });
  }),
);

/** Places that are missing are empty. */
export const readingsSchema = z.pipe(
  z.record(shortId, typedText),
  z.transform((readings: Readonly<Record<string, string>>): TypedReadings => ({
    ...NO_READINGS,
    ...under(isReadingName, readings),
  })),
);

/** Entries of places of the sheet, in their order; those of places that another time's catalogue had are dropped. */
export function entriesOfPlaces<Entry extends { readonly name: string }>(
  entry: z.ZodMiniType<Entry>,
  most: number,
): z.ZodMiniType<(Entry & { readonly name: ReadingName })[]> {
  return z.pipe(
    z.array(entry).check(z.maxLength(most)),
    z.transform((entries: Entry[]) =>
      entries.filter((one): one is Entry & { readonly name: ReadingName } => isReadingName(one.name)),
    ),
  );
}

const eye = z.object({
  sphere: typedText,
  cylinder: typedText,
  axis: typedText,
  prismHorizontal: typedText,
  baseHorizontal: z.enum(['in', 'out', '']),
  prismVertical: typedText,
  baseVertical: z.enum(['up', 'down', '']),
  add: typedText,
});

export const prescriptionSchema = z.object({
  R: eye,
  L: eye,
  vertexDistance: typedText,
  lensKind: z.enum(['single-vision', 'multifocal', 'progressive']),
  effectiveDiameter: typedText,
});

const confirmation = z.object({
  // what both readers entered, joined
  text: z.string().check(z.maxLength(2 * MAX_TEXT_LENGTH + 8)),
  by: typedText,
  at: moment,
});

export const confirmationsSchema = z.pipe(
  z.record(shortId, confirmation),
  z.transform((confirmations: Readonly<Record<string, z.output<typeof confirmation>>>) =>
    under(isReadingName, confirmations),
  ),
);

export const readerIdSchema = z.enum(READER_IDS);

export const notesSchema = z.object({
  wearer: typedText,
  squint: z.boolean(),
  light: z.nullable(z.enum(['bright', 'room', 'dim'])),
  remark: typedText,
});

export const settingsSchema = z.object({
  gaze: z.enum(['camera', 'far']),
  workingDistanceText: typedText,
  covered: z.boolean(),
  card: z.enum(['bought', 'printed']),
  checkLengthText: typedText,
  cameraId: z.nullable(z.string().check(z.maxLength(512))),
  profileId: z.nullable(shortId),
  practice: practiceSchema,
});
