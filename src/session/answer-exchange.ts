import * as z from 'zod/mini';
import type { Result } from '../core/result.js';
import { fail, succeed, unreachable } from '../core/result.js';
import type { Answer } from './answer.js';
import { ANSWER_FORMAT, ANSWER_LIMIT_BYTES, ANSWER_VERSION, answerSchema, writeAnswer } from './answer.js';
import type { InvitationList, SentInvitation } from './invitation-list.js';
import type { Invitation } from './invitation.js';
import { endOfInvitation } from './invitation.js';
import type { PracticeKeys } from './practice-key.js';
import { identitiesOf } from './practice-key.js';
import type { SealFailure, SealingOutage, SealingPort } from './sealing.js';
import { padded } from './sealing.js';

/** What an answer's file is called: what it is, and the day in UTC on which it was taken. */
export function answerFileName({ camera }: Answer): string {
  return `glabella-answer-${new Date(camera.takenAt).toISOString().slice(0, 'YYYY-MM-DD'.length)}.age`;
}

/** An answer as the file that is sent back: only the practice that invited can open it. */
export function sealAnswer(
  sealing: SealingPort,
  answer: Answer,
  { recipient }: Pick<Invitation, 'recipient'>,
): Promise<Result<Uint8Array<ArrayBuffer>, SealFailure>> {
  return sealing.sealToRecipient(padded(writeAnswer(answer)), recipient);
}

/** Why a file was not accepted as an answer. */
export type AnswerFailure =
  | SealingOutage
  /** something else: choose another file; `sealedWith` says how it is sealed, null where it is not sealed at all */
  | { readonly kind: 'no-answer'; readonly sealedWith: 'key' | 'passphrase' | null }
  | { readonly kind: 'too-large'; readonly bytes: number; readonly limitBytes: number }
  /** it ends too early: ask the wearer to send it once more */
  | { readonly kind: 'truncated' }
  /** not as it was sealed: ask the wearer to send it once more */
  | { readonly kind: 'altered' }
  /** sealed for someone else, or to a key that is here no more: bring the keys back from a backup */
  | { readonly kind: 'for-another-key' }
  /** nobody here sent such an invitation, or it was removed from the list */
  | { readonly kind: 'no-such-invitation' }
  /** this very answer was accepted before, when (ISO 8601) */
  | { readonly kind: 'replayed'; readonly at: string }
  /** another answer to the same invitation was accepted before, when (ISO 8601): invite once more */
  | { readonly kind: 'invitation-answered'; readonly at: string }
  /** the practice took the invitation back, when (ISO 8601) */
  | { readonly kind: 'invitation-withdrawn'; readonly at: string }
  /** it was taken, or comes, too late: invite once more */
  | { readonly kind: 'expired'; readonly expiresOn: string }
  /** written by a later version of the app: use that one */
  | { readonly kind: 'newer-version'; readonly version: number; readonly knownVersion: number }
  /** sealed as an answer, but what is in it cannot be one; `place` is the first field that cannot be right */
  | { readonly kind: 'unreadable'; readonly place: string | null };

/** An answer that may be taken in. */
export interface AcceptedAnswer {
  readonly answer: Answer;
  /** the invitation that it answers; still to be marked as answered, once the answer is kept */
  readonly sent: SentInvitation;
}

/** Chosen: days that an answer may lie about after its invitation's end, if it was taken before. */
export const ANSWER_GRACE_DAYS = 30;

const head = z.object({ format: z.literal(ANSWER_FORMAT), version: z.int().check(z.positive()) });

/**
 * The answer of a file, or why it is none that may be taken in. Nothing is kept by it: whoever keeps the answer tells the list so
 * (event 'answered'), which then refuses it the next time.
 *
 * @param invitations all that are kept, in whatever state
 */
export async function acceptAnswer(
  sealing: SealingPort,
  file: Uint8Array,
  invitations: InvitationList,
  keys: PracticeKeys,
  now: Date,
): Promise<Result<AcceptedAnswer, AnswerFailure>> {
  const options = { limitBytes: ANSWER_LIMIT_BYTES, isPadded: true };
  const opened = await sealing.openWithIdentities(file, identitiesOf(keys), options);
  if (!opened.ok) {
    const { failure } = opened;
    switch (failure.kind) {
      case 'not-sealed':
        return fail({ kind: 'no-answer', sealedWith: null });
      case 'sealed-with-passphrase':
        return fail({ kind: 'no-answer', sealedWith: 'passphrase' });
      // Keys are checked where they are kept: one that is none opens nothing.
      case 'no-identity':
        return fail({ kind: 'for-another-key' });
      case 'sealing-not-loadable':
      case 'sealing-unsupported':
      case 'too-large':
      case 'truncated':
      case 'altered':
      case 'for-another-key':
        return fail(failure);
      default:
        return unreachable(failure);
    }
  }
  const raw = parseJson(opened.value);
  const parsedHead = head.safeParse(raw);
  if (!parsedHead.success) return fail({ kind: 'no-answer', sealedWith: 'key' });
  const { version } = parsedHead.data;
  if (version > ANSWER_VERSION) return fail({ kind: 'newer-version', version, knownVersion: ANSWER_VERSION });
  const parsed = answerSchema.safeParse(raw);
  if (!parsed.success) return fail({ kind: 'unreadable', place: parsed.error.issues[0]?.path.join('.') ?? null });
  return accepted(parsed.data, invitations, now);
}

/** Whether this answer may be taken in, as far as the invitations say. */
function accepted(answer: Answer, invitations: InvitationList, now: Date): Result<AcceptedAnswer, AnswerFailure> {
  const before = invitations.find((sent) => sent.answer?.id === answer.id);
  if (before?.answer != null) return fail({ kind: 'replayed', at: before.answer.at });
  const sent = invitations.find(({ invitation }) => invitation.id === answer.invitationId);
  if (sent === undefined) return fail({ kind: 'no-such-invitation' });
  if (sent.answer !== null) return fail({ kind: 'invitation-answered', at: sent.answer.at });
  if (sent.withdrawnAt !== null) return fail({ kind: 'invitation-withdrawn', at: sent.withdrawnAt });
  const endMs = endOfInvitation(sent.invitation).getTime();
  const isLate = Date.parse(answer.camera.takenAt) >= endMs || now.getTime() >= endMs + ANSWER_GRACE_DAYS * 86_400_000;
  if (isLate) return fail({ kind: 'expired', expiresOn: sent.invitation.expiresOn });
  return succeed({ answer, sent });
}

function parseJson(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return undefined;
  }
}
