import { describe, expect, it } from 'vitest';
import { fixtureKeys } from '../../tests/support/age-fixtures.js';
import { exampleAnswer, exampleId, exampleInvitation } from '../../tests/support/example-answer.js';
import { memoryInvitationStore, memoryKeyStore } from '../../tests/support/memory-exchange-stores.js';
import { MemorySessionStore } from '../../tests/support/memory-session-store.js';
import { sessionRecordSchema } from '../core/record/session-schema.js';
import { fail, succeed } from '../core/result.js';
import type { Answer } from '../session/answer.js';
import { sealAnswer } from '../session/answer-exchange.js';
import type { IntakeTools } from '../session/answer-intake.js';
import { takeAnswerIn } from '../session/answer-intake.js';
import { armoured } from '../session/armoured.js';
import type { InvitationStore } from '../session/invitation-list.js';
import type { KeptPicture, StoreFailure } from '../session/session-store.js';
import { createSealing } from './sealing.js';

const sealing = createSealing();
const NOW = new Date('2026-03-03T09:00:00Z');
const practice = fixtureKeys('practice');
const invitation = exampleInvitation({ recipient: practice.recipient });

async function sealed(answer: Answer): Promise<Uint8Array<ArrayBuffer>> {
  const file = await sealAnswer(sealing, answer, practice);
  if (!file.ok) throw new Error(file.failure.kind);
  return file.value;
}

/** A desk that invited R. Sample once, and what it keeps. */
function desk(changes: Partial<IntakeTools> = {}) {
  const sessions = new MemorySessionStore();
  const kept: KeptPicture[] = [];
  let ids = 0;
  const tools: IntakeTools = {
    sealing,
    keys: memoryKeyStore([{ ...practice, madeAt: '2026-01-01T00:00:00Z', retiredAt: null }]),
    invitations: memoryInvitationStore([{ invitation, wearer: 'R. Sample', answer: null, withdrawnAt: null }]),
    sessions,
    pictures: {
      ofSession: () => Promise.resolve(succeed(kept)),
      keep: (picture) => {
        kept.push(picture);
        return Promise.resolve(succeed(null));
      },
      remove: () => Promise.resolve(succeed(null)),
      removeExpired: () => Promise.resolve(succeed(0)),
    },
    desk: { load: () => Promise.resolve(succeed(null)), save: () => Promise.resolve(succeed(null)) },
    newId: () => `00000000-0000-4000-8000-${String(++ids).padStart(12, '0')}`,
    remarkOn: ({ cardFlat }) => (cardFlat ? '' : 'The card did not lie flat.'),
    ...changes,
  };
  return { tools, sessions, kept };
}

async function countOf(sessions: MemorySessionStore): Promise<number> {
  const all = await sessions.all();
  return all.ok ? all.value.records.length : NaN;
}

describe('an answer that is taken in', () => {
  it('becomes a session of its wearer, marked as distant, with its pictures for as long as the wearer agreed', async () => {
    const { tools, sessions, kept } = desk();
    const answer = exampleAnswer({ conditions: { ...exampleAnswer().conditions, cardFlat: false } });
    const taken = await takeAnswerIn(tools, await sealed(answer), NOW);
    if (!taken.ok) throw new Error(taken.failure.kind);
    expect(taken.value.picturesLost).toBe(0);
    const stored = await sessions.load(taken.value.sessionId);
    if (!stored.ok) throw new Error(stored.failure.kind);
    const { record } = stored.value;
    expect(sessionRecordSchema.safeParse(record).success).toBe(true);
    expect(record).toMatchObject({
      origin: { kind: 'distant', invitationId: invitation.id, answerId: answer.id, receivedAt: NOW.toISOString() },
      camera: answer.camera,
      sheet: { notes: { wearer: 'R. Sample', remark: 'The card did not lie flat.' }, settings: { gaze: 'camera' } },
    });
    expect(kept).toHaveLength(2);
    expect(kept[0]).toMatchObject({
      sessionId: record.id,
      takenAt: answer.camera.takenAt,
      consent: answer.pictures?.consent,
      // 90 days after 3 March: 28 more in March, 30 in April, 31 in May, and one
      keptUntil: '2026-06-01',
    });
  });

  it('is refused the second time, in its text form as well', async () => {
    const { tools, sessions } = desk();
    const file = await sealed(exampleAnswer());
    const text = new TextEncoder().encode(armoured(file));
    expect((await takeAnswerIn(tools, text, NOW)).ok).toBe(true);
    const again = await takeAnswerIn(tools, file, new Date('2026-03-04T09:00:00Z'));
    expect(again).toEqual(fail({ kind: 'replayed', at: NOW.toISOString() }));
    expect(await countOf(sessions)).toBe(1);
  });

  it('leaves nothing behind where another window was faster', async () => {
    const { tools, sessions } = desk();
    const file = await sealed(exampleAnswer());
    const [list, at] = [tools.invitations, '2026-03-03T08:59:59.000Z'];
    const raced: InvitationStore = {
      load: () => list.load(),
      update: async (event) => {
        await list.update({ kind: 'answered', invitationId: invitation.id, answerId: exampleAnswer().id, at });
        return list.update(event);
      },
    };
    const taken = await takeAnswerIn({ ...tools, invitations: raced }, file, NOW);
    expect(taken).toEqual(fail({ kind: 'replayed', at }));
    expect(await countOf(sessions)).toBe(0);
  });

  it('leaves nothing behind where the invitation cannot be marked, so that it can be tried again', async () => {
    const { tools, sessions } = desk();
    const failure: StoreFailure = { kind: 'storage-full' };
    const full = { ...tools.invitations, update: () => Promise.resolve(fail(failure)) };
    const file = await sealed(exampleAnswer());
    expect(await takeAnswerIn({ ...tools, invitations: full }, file, NOW)).toEqual(fail(failure));
    expect(await countOf(sessions)).toBe(0);
    expect((await takeAnswerIn(tools, file, NOW)).ok).toBe(true);
  });

  it('is not marked as answered where it could not be kept', async () => {
    const { tools, sessions } = desk();
    sessions.failure = { kind: 'storage-broken' };
    expect(await takeAnswerIn(tools, await sealed(exampleAnswer()), NOW)).toEqual(fail({ kind: 'storage-broken' }));
    const list = await tools.invitations.load();
    expect(list.ok && list.value[0]?.answer).toBe(null);
  });

  it('is kept without the pictures that cannot be kept', async () => {
    const { tools } = desk();
    const none = { ...tools.pictures, keep: () => Promise.resolve(fail<StoreFailure>({ kind: 'storage-full' })) };
    const taken = await takeAnswerIn({ ...tools, pictures: none }, await sealed(exampleAnswer()), NOW);
    expect(taken).toMatchObject({ ok: true, value: { picturesLost: 2 } });
  });

  it('is a stranger’s without its invitation', async () => {
    const { tools } = desk();
    const file = await sealed(exampleAnswer({ invitationId: exampleId(77) }));
    expect(await takeAnswerIn(tools, file, NOW)).toEqual(fail({ kind: 'no-such-invitation' }));
  });
});
