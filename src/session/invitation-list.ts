import * as z from 'zod/mini';
import type { Result } from '../core/result.js';
import { unreachable } from '../core/result.js';
import { endOfInvitation, invitationSchema } from './invitation.js';
import type { Invitation } from './invitation.js';
import type { StoreFailure } from './session-store.js';

/** An invitation as the practice that made it keeps it. */
export interface SentInvitation {
  readonly invitation: Invitation;
  /** whom it was made for, as typed; stays with the practice */
  readonly wearer: string;
  /** the answer that was accepted, when (ISO 8601); null while none was */
  readonly answer: { readonly id: string; readonly at: string } | null;
  /** when the practice took it back, ISO 8601; null where it did not */
  readonly withdrawnAt: string | null;
}

/** All invitations that are kept, newest first; each id once. */
export type InvitationList = readonly SentInvitation[];

export type InvitationStatus = 'out' | 'answered' | 'expired' | 'withdrawn';

/** How an invitation stands at this moment. One that was answered stays so after its last day. */
export function statusOf({ invitation, answer, withdrawnAt }: SentInvitation, now: Date): InvitationStatus {
  if (answer !== null) return 'answered';
  if (withdrawnAt !== null) return 'withdrawn';
  return now.getTime() >= endOfInvitation(invitation).getTime() ? 'expired' : 'out';
}

export type InvitationEvent =
  | { readonly kind: 'invited'; readonly invitation: Invitation; readonly wearer: string }
  /** an answer was accepted and is kept; `at` in ISO 8601 */
  | { readonly kind: 'answered'; readonly invitationId: string; readonly answerId: string; readonly at: string }
  | { readonly kind: 'withdrawn'; readonly invitationId: string; readonly at: string }
  /** from the list, for good: an answer to it is a stranger's from now on */
  | { readonly kind: 'removed'; readonly invitationId: string };

/** The list after an event; events that do not fit leave it as it is. */
export function invitationReducer(list: InvitationList, event: InvitationEvent): InvitationList {
  const change = (id: string, changed: (sent: SentInvitation) => SentInvitation): InvitationList =>
    list.map((sent) => (sent.invitation.id === id && isOpen(sent) ? changed(sent) : sent));
  switch (event.kind) {
    case 'invited': {
      const { invitation, wearer } = event;
      if (list.some((sent) => sent.invitation.id === invitation.id)) return list;
      return [{ invitation, wearer: wearer.slice(0, WEARER_LIMIT), answer: null, withdrawnAt: null }, ...list];
    }
    case 'answered':
      return change(event.invitationId, (sent) => ({ ...sent, answer: { id: event.answerId, at: event.at } }));
    case 'withdrawn':
      return change(event.invitationId, (sent) => ({ ...sent, withdrawnAt: event.at }));
    case 'removed':
      return list.filter((sent) => sent.invitation.id !== event.invitationId);
    default:
      return unreachable(event);
  }
}

function isOpen({ answer, withdrawnAt }: SentInvitation): boolean {
  return answer === null && withdrawnAt === null;
}

/** Chosen: as long as any field of the sheet. */
const WEARER_LIMIT = 200;

/** Chosen: far more than a practice sends before it removes the old ones. */
const MOST_INVITATIONS = 10_000;

const moment = z.iso.datetime({ offset: true });

export const invitationListSchema: z.ZodMiniType<InvitationList> = z
  .array(
    z.object({
      invitation: invitationSchema,
      wearer: z.string().check(z.maxLength(WEARER_LIMIT)),
      answer: z.nullable(z.object({ id: z.string().check(z.minLength(1), z.maxLength(64)), at: moment })),
      withdrawnAt: z.nullable(moment),
    }),
  )
  .check(
    z.maxLength(MOST_INVITATIONS),
    z.refine((list) => new Set(list.map(({ invitation }) => invitation.id)).size === list.length),
  );

/** Keeps the list on this device. Checked by its schema when it is written and when it is read. */
export interface InvitationStore {
  /** All that are kept; none where there are none, or what is kept cannot be read. */
  load(): Promise<Result<InvitationList, StoreFailure>>;
  /**
   * Keeps what the event makes of the list that is kept at that moment, and resolves with it once it stands. Nobody else writes in
   * between.
   */
  update(event: InvitationEvent): Promise<Result<InvitationList, StoreFailure>>;
}
