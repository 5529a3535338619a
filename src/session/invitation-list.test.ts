import { describe, expect, it } from 'vitest';
import { exampleId, exampleInvitation } from '../../tests/support/example-answer.js';
import { memoryInvitationStore } from '../../tests/support/memory-exchange-stores.js';
import type { InvitationEvent, InvitationList } from './invitation-list.js';
import { invitationListSchema, invitationReducer, statusOf } from './invitation-list.js';

const invited: InvitationEvent = { kind: 'invited', invitation: exampleInvitation(), wearer: 'Nr. 12' };
const answered: InvitationEvent = {
  kind: 'answered',
  invitationId: exampleId(1),
  answerId: exampleId(1001),
  at: '2026-03-03T08:00:00Z',
};
const withdrawn: InvitationEvent = { kind: 'withdrawn', invitationId: exampleId(1), at: '2026-03-03T09:00:00Z' };

const IN_TIME = new Date('2026-03-10T12:00:00Z');
const TOO_LATE = new Date('2026-04-10T12:00:00Z');

function after(...events: readonly InvitationEvent[]): InvitationList {
  return events.reduce(invitationReducer, []);
}

function status(list: InvitationList, now = IN_TIME): string {
  const [sent] = list;
  return sent === undefined ? 'none' : statusOf(sent, now);
}

describe('the list of invitations', () => {
  it('says how each stands', () => {
    expect(status(after(invited))).toBe('out');
    expect(status(after(invited), TOO_LATE)).toBe('expired');
    expect(status(after(invited, answered))).toBe('answered');
    expect(status(after(invited, answered), TOO_LATE)).toBe('answered');
    expect(status(after(invited, withdrawn))).toBe('withdrawn');
    expect(status(after(invited, withdrawn), TOO_LATE)).toBe('withdrawn');
  });

  it('keeps the first answer, and none to an invitation that was taken back', () => {
    const again: InvitationEvent = { ...answered, answerId: exampleId(1002), at: '2026-03-04T08:00:00Z' };
    expect(after(invited, answered, again)).toEqual(after(invited, answered));
    expect(after(invited, answered, withdrawn)).toEqual(after(invited, answered));
    expect(after(invited, withdrawn, answered)).toEqual(after(invited, withdrawn));
  });

  it('has the newest first, each once, and lets go of what is removed', () => {
    const second: InvitationEvent = {
      ...invited,
      invitation: exampleInvitation({ id: exampleId(2) }),
      wearer: 'x'.repeat(300),
    };
    const both = after(invited, second, invited);
    expect(both.map(({ invitation }) => invitation.id)).toEqual([exampleId(2), exampleId(1)]);
    expect(both[0]?.wearer).toHaveLength(200);
    expect(invitationReducer(both, { kind: 'removed', invitationId: exampleId(2) })).toEqual(after(invited));
    expect(invitationReducer(both, { ...answered, invitationId: exampleId(3) })).toEqual(both);
  });

  it('passes its schema, and nothing else does', () => {
    const list = after(invited, answered);
    expect(invitationListSchema.parse(JSON.parse(JSON.stringify(list)))).toEqual(list);
    const [sent] = list;
    expect(invitationListSchema.safeParse([sent, sent]).success).toBe(false);
    expect(invitationListSchema.safeParse([{ ...sent, answer: { id: '', at: 'today' } }]).success).toBe(false);
    expect(invitationListSchema.safeParse([{ ...sent, invitation: { ...sent?.invitation, cards: [] } }]).success).toBe(
      false,
    );
  });

  it('is kept by a store that works event by event', async () => {
    const store = memoryInvitationStore();
    await store.update(invited);
    await store.update(answered);
    expect(await store.load()).toEqual({ ok: true, value: after(invited, answered) });
  });
});
