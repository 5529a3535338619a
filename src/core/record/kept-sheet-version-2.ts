import { z } from 'zod';
import { DEFINITIONS } from '../catalogue/definitions.js';
import type { MeasurementId, ReadingName } from '../catalogue/measurement.js';
import { MEASUREMENT_GROUPS, READING_NAMES } from '../catalogue/measurement.js';
import type { Practice } from './practice.js';
import { keptInUse } from './practice.js';
import { NO_READINGS } from './reader-sheet.js';
import type { TypedSheet } from './typed-sheet.js';
import { MAX_TEXT_LENGTH } from './typed-text.js';

const text = z.string().max(MAX_TEXT_LENGTH);
const id = z.string().max(64);
const moment = z.iso.datetime({ offset: true });

/** Chosen: far more than a visit brings about, far less than a browser keeps. */
const MAX_CORRECTIONS = 5000;
const MAX_GAUGES = 200;

function isReadingName(name: string): name is ReadingName {
  return (READING_NAMES as readonly string[]).includes(name);
}

function isMeasurementId(one: string): one is MeasurementId {
  return DEFINITIONS.some((definition) => definition.id === one);
}

/** Entries under names that are known; those of another time's catalogue are dropped. */
function under<Name extends string, Value>(
  isKnown: (name: string) => name is Name,
  entries: Readonly<Record<string, Value>>,
): { readonly [Key in Name]?: Value } {
  return Object.fromEntries(Object.entries(entries).filter(([name]) => isKnown(name))) as { [Key in Name]?: Value };
}

const measurementIds = z.array(id).transform((ids) => [...new Set(ids.filter(isMeasurementId))]);

const gauge = z.object({
  id,
  name: text,
  serves: measurementIds,
  resolution: z.number().positive(),
  zeroOffset: z.number(),
  bias: z.number(),
  checkedOn: z.iso.date().nullable(),
});

const practice = z
  .object({
    hidden: measurementIds,
    tolerances: z.record(id, z.number().positive()),
    gauges: z.array(gauge).max(MAX_GAUGES),
    gaugeInUse: z.record(id, id),
    groupOrder: z.array(z.string()),
    standard: z.enum(['ansi-z80.1', 'iso-21987']),
  })
  .transform((kept): Practice => {
    const known = MEASUREMENT_GROUPS.filter((group) => kept.groupOrder.includes(group));
    const ordered = known.toSorted((a, b) => kept.groupOrder.indexOf(a) - kept.groupOrder.indexOf(b));
    return keptInUse({
      ...kept,
      tolerances: under(isMeasurementId, kept.tolerances),
      gaugeInUse: under(isMeasurementId, kept.gaugeInUse),
      groupOrder: [...ordered, ...MEASUREMENT_GROUPS.filter((group) => !known.includes(group))],
    });
  });

const readerSheet = z.object({
  reader: text,
  readings: z.record(id, text).transform((readings) => ({ ...NO_READINGS, ...under(isReadingName, readings) })),
  corrections: z
    .array(z.object({ name: id, earlier: text, by: text, at: moment }))
    .max(MAX_CORRECTIONS)
    .transform((corrections) =>
      corrections.flatMap(({ name, ...others }) => (isReadingName(name) ? [{ name, ...others }] : [])),
    ),
});

const eye = z.object({
  sphere: text,
  cylinder: text,
  axis: text,
  prismHorizontal: text,
  baseHorizontal: z.enum(['in', 'out', '']),
  prismVertical: text,
  baseVertical: z.enum(['up', 'down', '']),
  add: text,
});

const version2 = z.object({
  version: z.literal(2),
  readers: z.object({ first: readerSheet, second: readerSheet }),
  reader: z.enum(['first', 'second']),
  notes: z.object({
    wearer: text,
    squint: z.boolean(),
    light: z.enum(['bright', 'room', 'dim']).nullable(),
    remark: text,
  }),
  prescription: z.object({
    R: eye,
    L: eye,
    vertexDistance: text,
    lensKind: z.enum(['single-vision', 'multifocal', 'progressive']),
    effectiveDiameter: text,
  }),
  confirmations: z
    // what both readers entered, joined
    .record(id, z.object({ text: z.string().max(2 * MAX_TEXT_LENGTH + 8), by: text, at: moment }))
    .transform((confirmations) => under(isReadingName, confirmations)),
  settings: z.object({
    gaze: z.enum(['camera', 'far']),
    workingDistanceText: text,
    covered: z.boolean(),
    card: z.enum(['bought', 'printed']),
    checkLengthText: text,
    cameraId: z.string().max(512).nullable(),
    profileId: id.nullable(),
    practice,
  }),
});

/** A sheet of version 2; null where it is none. What today's catalogue does not know is left out of it. */
export function parseVersion2(raw: unknown): TypedSheet | null {
  const parsed = version2.safeParse(raw);
  if (!parsed.success) return null;
  const { readers, reader, notes, prescription, confirmations, settings } = parsed.data;
  return { readers, reader, notes, prescription, confirmations, settings };
}
