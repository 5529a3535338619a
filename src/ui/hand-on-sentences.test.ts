import { describe, expect, it } from 'vitest';
import { expectSentence } from '../../tests/support/expect-sentence.js';
import type { BringFailure, HandOnFailure } from '../session/hand-on.js';
import type { LockFailure, StoreFailure } from '../session/session-store.js';
import { bringFailureSaying, handOnFailureSaying, lockFailureSaying, tooLargeSaying } from './hand-on-sentences.js';
import { storeFailureSaying } from './store-sentences.js';

// One of each kind: the compiler sees to it that none is missing.
const STORE: Readonly<Record<StoreFailure['kind'], StoreFailure>> = {
  'storage-refused': { kind: 'storage-refused' },
  'storage-full': { kind: 'storage-full' },
  'storage-broken': { kind: 'storage-broken' },
  'storage-newer': { kind: 'storage-newer' },
  'storage-locked': { kind: 'storage-locked' },
  'session-missing': { kind: 'session-missing', id: 'a' },
  'session-unreadable': { kind: 'session-unreadable', id: 'a', raw: '?' },
  'changed-elsewhere': { kind: 'changed-elsewhere', id: 'a' },
};
const BRING: Readonly<Record<Exclude<BringFailure['kind'], StoreFailure['kind']>, BringFailure>> = {
  'not-text': { kind: 'not-text' },
  'not-json': { kind: 'not-json' },
  'not-a-session-file': { kind: 'not-a-session-file' },
  'file-newer': { kind: 'file-newer', version: 9 },
  'file-damaged': { kind: 'file-damaged', path: ['sessions', 3, 'sheet', 'reader'] },
  'file-too-large': { kind: 'file-too-large', characters: 300_000_000, limit: 200_000_000 },
  'too-large': { kind: 'too-large', bytes: 300_000_000, limitBytes: 200_000_000 },
  'not-sealed': { kind: 'not-sealed' },
  truncated: { kind: 'truncated' },
  altered: { kind: 'altered' },
  'wrong-passphrase': { kind: 'wrong-passphrase' },
  'sealed-to-key': { kind: 'sealed-to-key' },
  'passphrase-too-costly': { kind: 'passphrase-too-costly', workFactor: 24, limit: 18 },
  'sealing-not-loadable': { kind: 'sealing-not-loadable' },
  'sealing-unsupported': { kind: 'sealing-unsupported' },
};
const HAND_ON: Readonly<Record<Exclude<HandOnFailure['kind'], StoreFailure['kind']>, HandOnFailure>> = {
  'no-recipient': { kind: 'no-recipient', recipient: '' },
  'passphrase-empty': { kind: 'passphrase-empty' },
  'sealing-not-loadable': { kind: 'sealing-not-loadable' },
  'sealing-unsupported': { kind: 'sealing-unsupported' },
};
const LOCK: Readonly<Record<Exclude<LockFailure['kind'], StoreFailure['kind']>, LockFailure>> = {
  'passphrase-empty': { kind: 'passphrase-empty' },
  'passphrase-wrong': { kind: 'passphrase-wrong' },
  'sealing-not-loadable': { kind: 'sealing-not-loadable' },
  'sealing-unsupported': { kind: 'sealing-unsupported' },
};

describe('failures around kept sessions', () => {
  it.each([
    ...Object.values(STORE).map((failure) => ({ kind: failure.kind, saying: storeFailureSaying(failure) })),
    ...[...Object.values(BRING), STORE['storage-full']].map((failure) => ({
      kind: failure.kind,
      saying: bringFailureSaying(failure),
    })),
    ...[...Object.values(HAND_ON), STORE['storage-locked']].map((failure) => ({
      kind: failure.kind,
      saying: handOnFailureSaying(failure),
    })),
    ...[...Object.values(LOCK), STORE['storage-broken']].map((failure) => ({
      kind: failure.kind,
      saying: lockFailureSaying(failure),
    })),
  ])('$kind says what happened and what to do next', ({ saying: { what, next } }) => {
    expectSentence(what);
    expectSentence(next);
  });

  it('carry the facts', () => {
    // places are counted from one where people read them
    expect(bringFailureSaying(BRING['file-damaged']).what).toBe('Session 4 of this file is damaged at sheet.reader.');
    expect(bringFailureSaying({ kind: 'file-damaged', path: ['version'] }).what).toContain('version');
    expect(bringFailureSaying(BRING['file-newer']).what).toContain('9');
    expect(tooLargeSaying(300_000_000, 200_000_000).what).toMatch(/300 MB.*200 MB/);
  });
});
