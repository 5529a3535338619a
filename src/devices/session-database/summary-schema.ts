import * as z from 'zod/mini';
import type { SessionSummary } from '../../core/record/session-record.js';
import { moment, typedText } from '../../core/record/session-parts.js';
import { findingCountsSchema, sessionIdSchema } from '../../core/record/session-schema.js';

/** Of the form of summaries. Another one than this is made anew from the session: nothing is lost with a summary. */
export const SUMMARY_VERSION = 1;

export const summarySchema: z.ZodMiniType<SessionSummary> = z.object({
  id: sessionIdSchema,
  begunAt: moment,
  changedAt: moment,
  origin: z.enum(['desk', 'distant']),
  wearer: typedText,
  remark: typedText,
  readers: z.array(typedText).check(z.maxLength(2)),
  binocularPd: typedText,
  camera: z.nullable(z.enum(['picture', 'sweep'])),
  findings: findingCountsSchema,
});
