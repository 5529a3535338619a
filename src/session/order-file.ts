import * as z from 'zod/mini';
import { DEFINITIONS } from '../core/catalogue/definitions.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import type { EyePrescription } from '../core/lenses/prescription.js';
import { DICOM_DISTANCES, dicomDistances } from '../core/record/dicom-distances.js';
import { moment } from '../core/record/session-parts.js';
import type { WearerNotes } from '../core/record/wearer-notes.js';
import type { Result } from '../core/result.js';
import { unreachable } from '../core/result.js';
import { SIDES } from '../core/units/side.js';
import type { Order, OrderDoubt } from './order.js';
import { valuesOfOrder } from './order.js';
import type { PrescriptionEntry, PrescriptionFailure } from './prescription-entry.js';

export const ORDER_FILE_FORMAT = 'glabella-order';
export const ORDER_FILE_VERSION = 1;

const millimetres = z.number();
const positive = z.number().check(z.positive());
const readingName = z.enum(READING_NAMES);
const dicomValue = z.strictObject({ vr: z.literal('FD'), Value: z.tuple([positive]) });

const eyeSchema = z.strictObject({
  sphereD: z.number(),
  cylinderD: z.number(),
  axisDeg: z.number().check(z.positive(), z.lte(180)),
  prismHorizontal: z.strictObject({ amount: z.number().check(z.nonnegative()), base: z.enum(['in', 'out']) }),
  prismVertical: z.strictObject({ amount: z.number().check(z.nonnegative()), base: z.enum(['up', 'down']) }),
  addD: z.number().check(z.nonnegative()),
});

/** One confirmed number. */
export const orderedValueSchema = z.strictObject({
  name: readingName,
  measurement: z.enum(DEFINITIONS.map(({ id }) => id)),
  side: z.nullable(z.enum(SIDES)),
  unit: z.enum(['mm', 'deg']),
  value: z.number(),
  /** step to which it is read by hand, in its unit */
  resolution: positive,
  /** how many decimals `value` was rounded to */
  decimals: z.int().check(z.gte(0), z.lte(2)),
  /** one standard deviation, in its unit */
  standardUncertainty: positive,
  /** empty where no name was typed */
  confirmedBy: z.string(),
  confirmedAt: moment,
});

/**
 * The order as numbers for a workshop's program; its JSON Schema, order-file.schema.json, is made from this. R and L are the
 * wearer's; lengths are millimetres, angles degrees, powers dioptres.
 */
export const orderFileSchema = z.strictObject({
  format: z.literal(ORDER_FILE_FORMAT),
  version: z.literal(ORDER_FILE_VERSION),
  writtenAt: moment,
  wearer: z.string(),
  isInvented: z.boolean(),
  isSquinting: z.boolean(),
  values: z.array(orderedValueSchema),
  prescription: z.nullable(
    z.strictObject({
      lensKind: z.enum(['single-vision', 'multifocal', 'progressive']),
      vertexDistanceMm: z.nullable(positive),
      R: eyeSchema,
      L: eyeSchema,
    }),
  ),
  frame: z.strictObject({
    boxWidthMm: z.nullable(millimetres),
    boxHeightMm: z.nullable(millimetres),
    distanceBetweenLensesMm: z.nullable(millimetres),
    overallSideLengthMm: z.nullable(millimetres),
    effectiveDiameterMm: z.nullable(positive),
  }),
  open: z.array(
    z.strictObject({
      kind: z.enum([
        'suspected',
        'does-not-add-up',
        'camera-disagrees',
        'camera-cannot-tell',
        'refused',
        'readers-differ',
        'read-by-other-only',
        'unconfirmed',
        'gauge-overdue',
        'squint',
        'pupil-without-light',
        'frame-incomplete',
      ]),
      names: z.array(readingName),
    }),
  ),
  dicom: z.strictObject({
    [DICOM_DISTANCES.distance.tag]: z.optional(dicomValue),
    [DICOM_DISTANCES.near.tag]: z.optional(dicomValue),
  }),
});

type OrderFile = z.infer<typeof orderFileSchema>;

/** What the file is made from. */
export interface OrderForFile {
  readonly order: Order;
  readonly prescription: Result<PrescriptionEntry, PrescriptionFailure>;
  /** null where nobody typed a usable one */
  readonly effectiveDiameterMm: number | null;
  readonly notes: Pick<WearerNotes, 'wearer' | 'squint'>;
  /** the demo's wearer: nothing of it is to be made */
  readonly isInvented: boolean;
}

/**
 * The order as JSON: what was confirmed and nothing speaks against, as numbers with names. It holds neither the history of a
 * reading, nor what was remarked, nor what the camera says.
 *
 * @param writtenAt ISO 8601
 */
export function writeOrderFile(content: OrderForFile, writtenAt: string): string {
  const { order, prescription, effectiveDiameterMm, notes, isInvented } = content;
  const values = valuesOfOrder(order);
  const valueOf = (name: ReadingName): number | null => values[name] ?? null;
  const file: OrderFile = {
    format: ORDER_FILE_FORMAT,
    version: ORDER_FILE_VERSION,
    writtenAt,
    wearer: notes.wearer.trim(),
    isInvented,
    isSquinting: notes.squint,
    values: orderedValues(order),
    prescription: prescription.ok ? prescribed(prescription.value) : null,
    frame: {
      boxWidthMm: valueOf('boxLensWidth'),
      boxHeightMm: valueOf('boxLensHeight'),
      distanceBetweenLensesMm: valueOf('distanceBetweenLenses'),
      overallSideLengthMm: valueOf('overallSideLength'),
      effectiveDiameterMm,
    },
    open: order.doubts.map((doubt) => ({ kind: doubt.kind, names: [...namesOf(doubt)] })),
    dicom: { ...dicomDistances({ distanceMm: valueOf('pdFar'), nearMm: valueOf('pdNear') }) } as OrderFile['dicom'],
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

function orderedValues(order: Order): OrderFile['values'] {
  return order.lines.flatMap(({ measurement, values }) => {
    const { id, unit, resolution } = measurement;
    return values.map(({ name, side, value, text, standardUncertainty, by, at }) => ({
      name,
      measurement: id,
      side,
      unit,
      value,
      resolution,
      decimals: text.split('.')[1]?.length ?? 0,
      standardUncertainty,
      confirmedBy: by.trim(),
      confirmedAt: at,
    }));
  });
}

function prescribed({ prescription }: PrescriptionEntry): OrderFile['prescription'] {
  const { R, L, vertexDistanceMm, lensKind } = prescription;
  const eye = ({ sphereD, cylinderD, axisDeg, prism, addD }: EyePrescription) => ({
    sphereD,
    cylinderD,
    axisDeg,
    prismHorizontal: prism.horizontal,
    prismVertical: prism.vertical,
    addD,
  });
  return { lensKind, vertexDistanceMm, R: eye(R), L: eye(L) };
}

/** The places that an open point is about. */
function namesOf(doubt: OrderDoubt): readonly ReadingName[] {
  switch (doubt.kind) {
    case 'suspected':
      return doubt.suspicion.names;
    case 'does-not-add-up':
      return doubt.misfit.names;
    case 'camera-disagrees':
    case 'camera-cannot-tell':
    case 'refused':
    case 'readers-differ':
      return [doubt.name];
    case 'read-by-other-only':
    case 'unconfirmed':
    case 'gauge-overdue':
    case 'pupil-without-light':
    case 'frame-incomplete':
      return doubt.names;
    case 'squint':
      return DEFINITIONS.filter(({ id }) => doubt.measurements.includes(id)).flatMap(({ fields }) =>
        fields.map(({ name }) => name),
      );
    default:
      return unreachable(doubt);
  }
}
