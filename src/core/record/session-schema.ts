import * as z from 'zod/mini';
import type { Result } from '../result.js';
import { fail, invariant, succeed } from '../result.js';
import { adviceSchema, faceEstimatesSchema, sweepAdviceSchema } from './measured-schema.js';
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
import type { SessionRecord } from './session-record.js';
import type { TypedSheet } from './typed-sheet.js';

/** The form in which sessions are kept and handed on. Versions 1 and 2 were single sheets, without a session around them. */
export const SESSION_VERSION = 3;

/** Chosen: twice what a sheet of version 2 could bring, far more than anyone types in a visit. */
const MAX_HISTORY = 20_000;

/** Chosen: there are fewer kinds of advice than that, and each is given once or for a few places. */
const MAX_ADVICE = 100;

/** Chosen: a sheet has fewer places, and what does not fit concerns one or a few of them. */
const MAX_COUNT = 10_000;

/** Letters that mean nothing in an address, a name of a file or a key. */
export const sessionIdSchema = z.string().check(z.regex(/^[A-Za-z0-9_-]{1,64}$/));

const entry = z.object({ name: shortId, text: typedText, by: typedText, at: z.nullable(moment) });

const readerSheet = z.object({
  reader: typedText,
  readings: readingsSchema,
  history: entriesOfPlaces(entry, MAX_HISTORY),
});

/** All that is typed. What today's catalogue does not know is left out of it. */
export const typedSheetSchema: z.ZodMiniType<TypedSheet> = z.object({
  readers: z.object({ first: readerSheet, second: readerSheet }),
  reader: readerIdSchema,
  notes: notesSchema,
  prescription: prescriptionSchema,
  confirmations: confirmationsSchema,
  settings: settingsSchema,
});

const count = z.int().check(z.nonnegative(), z.lte(MAX_COUNT));

const ofAnyCamera = {
  takenAt: moment,
  supervision: z.enum(['reader', 'none']),
  estimates: faceEstimatesSchema,
  pixelsPerMm: z.number().check(z.positive()),
  lidsByHand: z.object({ R: z.boolean(), L: z.boolean() }),
};

/** What the camera said of a wearer. */
export const cameraRecordSchema = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('picture'),
    ...ofAnyCamera,
    advice: z.array(adviceSchema).check(z.maxLength(MAX_ADVICE)),
  }),
  z.object({
    kind: z.literal('sweep'),
    ...ofAnyCamera,
    advice: z.array(sweepAdviceSchema).check(z.maxLength(MAX_ADVICE)),
    framesUsed: count,
    framesTaken: count,
  }),
]);

export const findingCountsSchema = z.object({
  written: count,
  confirmed: count,
  agrees: count,
  disagrees: count,
  cannotTell: count,
  misfits: count,
});

export const sessionOriginSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('desk') }),
  z.object({ kind: z.literal('distant'), invitationId: shortId, answerId: shortId, receivedAt: moment }),
]);

/** What a session of today consists of, by name. */
export const sessionShape = {
  id: sessionIdSchema,
  begunAt: moment,
  changedAt: moment,
  origin: sessionOriginSchema,
  sheet: typedSheetSchema,
  camera: z.nullable(cameraRecordSchema),
  findings: findingCountsSchema,
};

/** A session of today. */
export const sessionRecordSchema: z.ZodMiniType<SessionRecord> = z.object(sessionShape);

/** Where something is damaged: the names and places that lead there, outermost first. */
export type DamagePath = readonly (string | number)[];

/** Why something that was kept is no session. */
export type SessionRecordFailure =
  /** a later version of the app wrote it; leave it as it is */
  | { readonly kind: 'record-newer'; readonly version: number }
  /** no session of the version that it should be */
  | { readonly kind: 'record-damaged'; readonly path: DamagePath };

/**
 * A session from what was kept of it.
 *
 * @param version the form in which it was kept; of the forms before this one none held whole sessions
 */
export function parseSessionRecord(version: number, raw: unknown): Result<SessionRecord, SessionRecordFailure> {
  if (version > SESSION_VERSION) return fail({ kind: 'record-newer', version });
  if (version !== SESSION_VERSION) return fail({ kind: 'record-damaged', path: ['version'] });
  const parsed = sessionRecordSchema.safeParse(raw);
  if (!parsed.success) return fail({ kind: 'record-damaged', path: pathOf(parsed.error) });
  passed.add(parsed.data);
  return succeed(parsed.data);
}

/** What has passed the schema need not pass it again: records are never changed, only replaced. */
const passed = new WeakSet<SessionRecord>();

/**
 * The record as its schema gives it back, for writing. One that does not pass is a mistake of whoever made it: throws, and names
 * the place but not what stands there, which belongs to a wearer and to no report.
 */
export function checkedRecord(record: SessionRecord): SessionRecord {
  if (passed.has(record)) return record;
  const parsed = parseSessionRecord(SESSION_VERSION, record);
  const place = parsed.ok || parsed.failure.kind === 'record-newer' ? '' : parsed.failure.path.join('.');
  invariant(parsed.ok, `a session that is written passes its schema, but ${place} does not`);
  return parsed.value;
}

/** Where the first thing stands that is wrong. */
export function pathOf(error: z.core.$ZodError): DamagePath {
  return (error.issues[0]?.path ?? []).map((step) => (typeof step === 'symbol' ? String(step) : step));
}
