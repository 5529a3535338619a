import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { ageFixture, fixtureKeys } from '../../tests/support/age-fixtures.js';
import { exampleAnswer, exampleId, exampleInvitation } from '../../tests/support/example-answer.js';
import { runAge } from '../../tests/support/run-age.js';
import type { Result } from '../core/result.js';
import type { Answer } from '../session/answer.js';
import { ANSWER_LIMIT_BYTES, writeAnswer } from '../session/answer.js';
import type { AcceptedAnswer, AnswerFailure } from '../session/answer-exchange.js';
import { ANSWER_GRACE_DAYS, acceptAnswer, answerFileName, sealAnswer } from '../session/answer-exchange.js';
import type { InvitationEvent, InvitationList } from '../session/invitation-list.js';
import { invitationReducer } from '../session/invitation-list.js';
import type { PracticeKeys } from '../session/practice-key.js';
import { sealKeyBackup } from '../session/practice-key.js';
import { padded } from '../session/sealing.js';
import { createSealing } from './sealing.js';

const sealing = createSealing({ scryptWorkFactor: 10 });
const NOW = new Date('2026-03-03T09:00:00Z');

const practice = fixtureKeys('practice');
const other = fixtureKeys('other');
const keys: PracticeKeys = [{ ...practice, madeAt: '2026-01-01T00:00:00Z', retiredAt: null }];

const invitation = exampleInvitation({ recipient: practice.recipient });
const second = exampleInvitation({ recipient: practice.recipient, id: exampleId(2) });

function listAfter(...events: readonly InvitationEvent[]): InvitationList {
  const invited = [invitation, second].map((one) => ({ kind: 'invited', invitation: one, wearer: '' }) as const);
  return [...invited, ...events].reduce(invitationReducer, [] as InvitationList);
}

async function sealed(answer: Answer, recipient = practice.recipient): Promise<Uint8Array<ArrayBuffer>> {
  const outcome = await sealAnswer(sealing, answer, { recipient });
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

async function sealedText(text: string): Promise<Uint8Array<ArrayBuffer>> {
  const outcome = await sealing.sealToRecipient(padded(text), practice.recipient);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

function accept(file: Uint8Array, list = listAfter(), now = NOW): Promise<Result<AcceptedAnswer, AnswerFailure>> {
  return acceptAnswer(sealing, file, list, keys, now);
}

async function refusal(file: Uint8Array, list = listAfter(), now = NOW): Promise<AnswerFailure> {
  const outcome = await accept(file, list, now);
  if (outcome.ok) throw new Error('it was accepted');
  return outcome.failure;
}

let file: Uint8Array<ArrayBuffer>;
let plain: Uint8Array<ArrayBuffer>;

beforeAll(async () => {
  file = await sealed(exampleAnswer());
  plain = await sealed(exampleAnswer({ pictures: null }));
});

describe('an answer', () => {
  it('arrives as it was sent, with the invitation that it answers', async () => {
    expect(await accept(file)).toEqual({
      ok: true,
      value: { answer: exampleAnswer(), sent: { invitation, wearer: '', answer: null, withdrawnAt: null } },
    });
    expect(answerFileName(exampleAnswer())).toBe('glabella-answer-2026-03-02.age');
  });

  it('arrives in whichever order answers come, to the invitation that each names', async () => {
    const toSecond = await sealed(exampleAnswer({ id: exampleId(1002), invitationId: second.id }));
    const outcome = await accept(toSecond);
    expect(outcome.ok && outcome.value.sent.invitation.id).toBe(second.id);
  });

  it('arrives with a key that was retired since', async () => {
    const retired = keys.map((key) => ({ ...key, retiredAt: '2026-03-02T20:00:00Z' }));
    const renewed: PracticeKeys = [{ ...other, madeAt: '2026-03-02T20:00:00Z', retiredAt: null }, ...retired];
    expect((await acceptAnswer(sealing, file, listAfter(), renewed, NOW)).ok).toBe(true);
  });

  it('can be opened without this app, by the age of Debian', () => {
    const files = { 'key.txt': practice.identity, 'answer.age': file };
    const text = new TextDecoder().decode(runAge(['-d', '-i', 'key.txt', 'answer.age'], files));
    expect(JSON.parse(text)).toEqual(JSON.parse(writeAnswer(exampleAnswer())));
  });
});

describe('an answer is refused', () => {
  it('where it was cut off, at any length', async () => {
    const lengths = new Set(Array.from({ length: 220 }, (_, place) => place + 1));
    for (let length = 220; length < plain.length; length += 173) lengths.add(length);
    for (const length of lengths) {
      expect([length, await refusal(plain.subarray(0, length))]).toEqual([length, { kind: 'truncated' }]);
    }
    expect(await refusal(plain.subarray(0, -1))).toEqual({ kind: 'truncated' });
    // one piece of the padding less: its length might be that of another answer
    expect(await refusal(plain.subarray(0, -1021))).toEqual({ kind: 'altered' });
  });

  it('where any byte was changed', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(plain.length - 1), fc.integer({ min: 1, max: 255 }), async (place, change) => {
        const changed = plain.map((byte, at) => (at === place ? byte ^ change : byte));
        const { kind } = await refusal(changed);
        expect(['altered', 'for-another-key', 'no-answer', 'truncated']).toContain(kind);
        if (place > 250) expect(kind).toBe('altered');
      }),
      { numRuns: 150 },
    );
  });

  it('where it is for another key', async () => {
    const foreign = await sealed(exampleAnswer(), other.recipient);
    expect(await refusal(foreign)).toEqual({ kind: 'for-another-key' });
    expect(await acceptAnswer(sealing, file, listAfter(), [], NOW)).toMatchObject({
      failure: { kind: 'for-another-key' },
    });
    const broken: PracticeKeys = keys.map((key) => ({ ...key, identity: 'AGE-SECRET-KEY-1X' }));
    expect(await acceptAnswer(sealing, file, listAfter(), broken, NOW)).toMatchObject({
      failure: { kind: 'for-another-key' },
    });
  });

  it('where nobody sent such an invitation', async () => {
    const guessed = await sealed(exampleAnswer({ invitationId: exampleId(99) }));
    expect(await refusal(guessed)).toEqual({ kind: 'no-such-invitation' });
    const removed = listAfter({ kind: 'removed', invitationId: invitation.id });
    expect(await refusal(file, removed)).toEqual({ kind: 'no-such-invitation' });
  });

  it('where it came before, or another one did', async () => {
    const at = '2026-03-03T08:00:00Z';
    const answered = listAfter({ kind: 'answered', invitationId: invitation.id, answerId: exampleAnswer().id, at });
    expect(await refusal(file, answered)).toEqual({ kind: 'replayed', at });
    const again = await sealed(exampleAnswer({ id: exampleId(1003) }));
    expect(await refusal(again, answered)).toEqual({ kind: 'invitation-answered', at });
    // The same answer, made out to another invitation
    const turned = await sealed(exampleAnswer({ invitationId: second.id }));
    expect(await refusal(turned, answered)).toEqual({ kind: 'replayed', at });
  });

  it('where the invitation was taken back', async () => {
    const at = '2026-03-02T08:00:00Z';
    expect(await refusal(file, listAfter({ kind: 'withdrawn', invitationId: invitation.id, at }))).toEqual({
      kind: 'invitation-withdrawn',
      at,
    });
  });

  it('where it was taken or comes too late', async () => {
    const expired = { kind: 'expired', expiresOn: '2026-03-15' };
    const lastMs = Date.parse('2026-03-16T12:00:00Z') + ANSWER_GRACE_DAYS * 86_400_000;
    expect((await accept(file, listAfter(), new Date(lastMs - 1))).ok).toBe(true);
    expect(await refusal(file, listAfter(), new Date(lastMs))).toEqual(expired);
    const { camera } = exampleAnswer();
    const late = await sealed(exampleAnswer({ camera: { ...camera, takenAt: '2026-03-16T12:00:00Z' } }));
    expect(await refusal(late, listAfter(), new Date('2026-03-17T09:00:00Z'))).toEqual(expired);
  });

  it('where a later version wrote it', async () => {
    const later = await sealedText(JSON.stringify({ format: 'glabella-answer', version: 2, all: 'new' }));
    expect(await refusal(later)).toEqual({ kind: 'newer-version', version: 2, knownVersion: 1 });
  });

  it('where what is in it cannot be an answer', async () => {
    const text = writeAnswer(exampleAnswer()).replace('"gaze":"camera"', '"gaze":"moon"');
    expect(await refusal(await sealedText(text))).toEqual({ kind: 'unreadable', place: 'conditions.gaze' });
  });

  it('where it is another file', async () => {
    const text = (content: string) => new TextEncoder().encode(content);
    expect(await refusal(text('{"format":"glabella-answer"}'))).toEqual({ kind: 'no-answer', sealedWith: null });
    expect(await refusal(new Uint8Array())).toEqual({ kind: 'no-answer', sealedWith: null });
    for (const content of ['', 'not JSON', '{}', '{"format":"glabella-session","version":1}']) {
      expect(await refusal(await sealedText(content))).toEqual({ kind: 'no-answer', sealedWith: 'key' });
    }
    const backup = await sealKeyBackup(sealing, keys, 'four words');
    if (!backup.ok) throw new Error(backup.failure.kind);
    expect(await refusal(backup.value)).toEqual({ kind: 'no-answer', sealedWith: 'passphrase' });
    expect(await refusal(ageFixture('long.age'))).toEqual({ kind: 'no-answer', sealedWith: 'key' });
  });

  it('where it is too large', async () => {
    const bytes = ANSWER_LIMIT_BYTES + 1;
    expect(await refusal(new Uint8Array(bytes))).toEqual({ kind: 'too-large', bytes, limitBytes: ANSWER_LIMIT_BYTES });
  });

  it('where the library of the format cannot be loaded, or works not here', async () => {
    const offline = createSealing({ load: () => Promise.reject(new Error('offline')) });
    expect(await acceptAnswer(offline, file, listAfter(), keys, NOW)).toEqual({
      ok: false,
      failure: { kind: 'sealing-not-loadable' },
    });
    const unable = {
      ...sealing,
      openWithIdentities: () => Promise.resolve({ ok: false, failure: { kind: 'sealing-unsupported' } } as const),
    };
    expect(await acceptAnswer(unable, file, listAfter(), keys, NOW)).toMatchObject({
      failure: { kind: 'sealing-unsupported' },
    });
  });
});
