import { describe, expect, it } from 'vitest';
import { exampleInvitation } from '../../tests/support/example-answer.js';
import { expectSentence } from '../../tests/support/expect-sentence.js';
import type { IntakeFailure } from '../session/answer-intake.js';
import type { SentInvitation } from '../session/invitation-list.js';
import type { KeyBackupFailure, NewKeyFailure } from '../session/practice-key.js';
import type { LinkFailure } from '../session/invitation.js';
import type { SealFailure } from '../session/sealing.js';
import {
  conditionsRemark,
  invitationFailureSaying,
  keyBackupFailureSaying,
  statusSentence,
} from './invitations-sentences.js';

type OfKind<Failure extends { readonly kind: string }> = {
  readonly [Kind in Failure['kind']]: Extract<Failure, { readonly kind: Kind }>;
};

const AT = '2026-03-02T18:30:00.000Z';

const INTAKE: OfKind<IntakeFailure> = {
  'sealing-not-loadable': { kind: 'sealing-not-loadable' },
  'sealing-unsupported': { kind: 'sealing-unsupported' },
  'no-answer': { kind: 'no-answer', sealedWith: null },
  'too-large': { kind: 'too-large', bytes: 7_200_000, limitBytes: 5_000_000 },
  truncated: { kind: 'truncated' },
  altered: { kind: 'altered' },
  'for-another-key': { kind: 'for-another-key' },
  'no-such-invitation': { kind: 'no-such-invitation' },
  replayed: { kind: 'replayed', at: AT },
  'invitation-answered': { kind: 'invitation-answered', at: AT },
  'invitation-withdrawn': { kind: 'invitation-withdrawn', at: AT },
  expired: { kind: 'expired', expiresOn: '2026-03-15' },
  'newer-version': { kind: 'newer-version', version: 2, knownVersion: 1 },
  unreadable: { kind: 'unreadable', place: 'camera.takenAt' },
  'keys-damaged': { kind: 'keys-damaged' },
  'storage-refused': { kind: 'storage-refused' },
  'storage-full': { kind: 'storage-full' },
  'storage-broken': { kind: 'storage-broken' },
  'storage-newer': { kind: 'storage-newer' },
  'storage-locked': { kind: 'storage-locked' },
  'session-missing': { kind: 'session-missing', id: 'a' },
  'session-unreadable': { kind: 'session-unreadable', id: 'a', raw: '' },
  'changed-elsewhere': { kind: 'changed-elsewhere', id: 'a' },
};

type Inviting = Exclude<NewKeyFailure | SealFailure | LinkFailure, { kind: `storage-${string}` | `session-${string}` }>;
const INVITING: Omit<OfKind<Inviting>, 'changed-elsewhere'> = {
  'sealing-not-loadable': { kind: 'sealing-not-loadable' },
  'sealing-unsupported': { kind: 'sealing-unsupported' },
  'keys-damaged': { kind: 'keys-damaged' },
  'link-too-long': { kind: 'link-too-long', letters: 430, limit: 412 },
  'no-recipient': { kind: 'no-recipient', recipient: 'age1' },
  'passphrase-empty': { kind: 'passphrase-empty' },
};

const BACKUP: OfKind<KeyBackupFailure> = {
  'sealing-not-loadable': { kind: 'sealing-not-loadable' },
  'sealing-unsupported': { kind: 'sealing-unsupported' },
  'too-large': { kind: 'too-large', bytes: 2_000_000, limitBytes: 1_048_576 },
  'not-sealed': { kind: 'not-sealed' },
  truncated: { kind: 'truncated' },
  altered: { kind: 'altered' },
  'wrong-passphrase': { kind: 'wrong-passphrase' },
  'passphrase-too-costly': { kind: 'passphrase-too-costly', workFactor: 22, limit: 19 },
  'no-key-backup': { kind: 'no-key-backup' },
  'newer-version': { kind: 'newer-version', version: 2, knownVersion: 1 },
};

describe('what is said at the desk of distant wearers', () => {
  it.each(Object.values(INTAKE))('why an answer was not taken in, and what to do: $kind', (failure) => {
    const { what, next } = invitationFailureSaying(failure);
    expectSentence(what);
    expectSentence(next);
  });

  it('names sizes and days', () => {
    expect(invitationFailureSaying(INTAKE['too-large']).what).toContain('7.2 MB, and 5 MB');
    expect(invitationFailureSaying(INTAKE.expired).what).toContain('15 March 2026');
    expect(invitationFailureSaying({ kind: 'no-answer', sealedWith: 'passphrase' }).what).toContain('passphrase');
  });

  it.each(Object.values(INVITING))('why nobody was invited: $kind', (failure) => {
    const { what, next } = invitationFailureSaying(failure);
    expectSentence(what);
    expectSentence(next);
  });

  it.each(Object.values(BACKUP))('why a backup gave no keys: $kind', (failure) => {
    const { what, next } = keyBackupFailureSaying(failure);
    expectSentence(what);
    expectSentence(next);
  });

  it('how an invitation stands', () => {
    const sent: SentInvitation = { invitation: exampleInvitation(), wearer: 'R.', answer: null, withdrawnAt: null };
    const before = new Date('2026-03-02T10:00:00Z');
    expect(statusSentence(sent, before)).toBe('open until 15 March 2026');
    expect(statusSentence(sent, new Date('2026-04-02T10:00:00Z'))).toBe('expired on 15 March 2026');
    expect(statusSentence({ ...sent, answer: { id: 'a', at: '2026-03-04T12:00:00Z' } }, before)).toBe(
      'answered on 4 March 2026',
    );
    expect(statusSentence({ ...sent, withdrawnAt: '2026-03-05T12:00:00Z' }, before)).toBe('withdrawn on 5 March 2026');
  });

  it('what the wearer said of the circumstances, only where it was not as asked', () => {
    const conditions = { card: 'bought', printScale: 1, gaze: 'camera' } as const;
    expect(conditionsRemark({ ...conditions, glassesOff: true, evenLight: true, cardFlat: true })).toBe('');
    const remark = conditionsRemark({ ...conditions, glassesOff: false, evenLight: true, cardFlat: false });
    expect(remark).toContain('kept glasses on');
    expect(remark).toContain('did not lie flat');
    expect(remark).not.toContain('light');
  });
});
