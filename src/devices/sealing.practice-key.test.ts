import { describe, expect, it } from 'vitest';
import { ageFixture, fixtureKeys } from '../../tests/support/age-fixtures.js';
import { memoryKeyStore } from '../../tests/support/memory-exchange-stores.js';
import { runAgeWithPassphrase } from '../../tests/support/run-age.js';
import { fail } from '../core/result.js';
import type { KeyStore, PracticeKeys } from '../session/practice-key.js';
import {
  identitiesOf,
  KEY_BACKUP_LIMIT_BYTES,
  keyBackupName,
  keyForInvitations,
  keyInUse,
  openKeyBackup,
  practiceKeysSchema,
  replaceKey,
  sealKeyBackup,
  withBackup,
  withNewKey,
} from '../session/practice-key.js';
import { padded } from '../session/sealing.js';
import { createSealing } from './sealing.js';

const sealing = createSealing({ scryptWorkFactor: 10 });
const offline = createSealing({ load: () => Promise.reject(new Error('offline')) });
const first = fixtureKeys('practice');
const second = fixtureKeys('other');

const MADE = new Date('2026-01-05T08:00:00.000Z');
const REPLACED = new Date('2026-06-01T08:00:00.000Z');
const RESTORED = new Date('2026-07-01T08:00:00.000Z');

const one = withNewKey([], first, MADE);
const two = withNewKey(one, second, REPLACED);

async function sealedBackup(keys: PracticeKeys, passphrase = 'four words'): Promise<Uint8Array<ArrayBuffer>> {
  const outcome = await sealKeyBackup(sealing, keys, passphrase);
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

async function sealedWith(text: string): Promise<Uint8Array<ArrayBuffer>> {
  const outcome = await sealing.sealWithPassphrase(padded(text), 'four words');
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

describe('the keys of a practice', () => {
  it('are in use one at a time; the one before is retired and still opens', () => {
    expect(keyInUse([])).toBeNull();
    expect(keyInUse(one)).toEqual({ ...first, madeAt: MADE.toISOString(), retiredAt: null });
    expect(two).toEqual([
      { ...second, madeAt: REPLACED.toISOString(), retiredAt: null },
      { ...first, madeAt: MADE.toISOString(), retiredAt: REPLACED.toISOString() },
    ]);
    expect(identitiesOf(two)).toEqual([second.identity, first.identity]);
  });

  it('pass their schema, and nothing else does', () => {
    expect(practiceKeysSchema.parse(JSON.parse(JSON.stringify(two)))).toEqual(two);
    const inUse = two.map((key) => ({ ...key, retiredAt: null }));
    expect(practiceKeysSchema.safeParse(inUse).success).toBe(false);
    expect(practiceKeysSchema.safeParse([...two, two[1]]).success).toBe(false);
    expect(practiceKeysSchema.safeParse([{ ...one[0], identity: first.recipient }]).success).toBe(false);
  });
});

describe('a key for invitations', () => {
  it('is made when it is first needed, and stays', async () => {
    const store = memoryKeyStore();
    const made = await keyForInvitations(sealing, store, MADE);
    expect(made).toMatchObject({ ok: true, value: { madeAt: MADE.toISOString(), retiredAt: null } });
    expect(await keyForInvitations(sealing, store, REPLACED)).toEqual(made);
    expect(await store.load()).toEqual({ ok: true, value: made.ok ? [made.value] : [] });
  });

  it('opens what is sealed to it', async () => {
    const made = await keyForInvitations(sealing, memoryKeyStore(), MADE);
    if (!made.ok) throw new Error(made.failure.kind);
    const sealed = await sealing.sealToRecipient(padded('x'), made.value.recipient);
    if (!sealed.ok) throw new Error(sealed.failure.kind);
    const options = { limitBytes: 10_000, isPadded: true };
    expect((await sealing.openWithIdentities(sealed.value, [made.value.identity], options)).ok).toBe(true);
  });

  it('is the same for two windows that need it at once', async () => {
    const store = memoryKeyStore();
    const [here, there] = await Promise.all([1, 2].map(() => keyForInvitations(sealing, store, MADE)));
    expect(here?.ok).toBe(true);
    expect(there).toEqual(here);
  });

  it('is replaced by a new one', async () => {
    const store = memoryKeyStore(one);
    const replaced = await replaceKey(sealing, store, REPLACED);
    const kept = await store.load();
    if (!replaced.ok || !kept.ok) throw new Error('not replaced');
    expect(kept.value).toEqual([replaced.value, { ...one[0], retiredAt: REPLACED.toISOString() }]);
  });

  it('is not handed out where it cannot be made or kept', async () => {
    expect(await keyForInvitations(offline, memoryKeyStore(), MADE)).toEqual(fail({ kind: 'sealing-not-loadable' }));
    const full: KeyStore = { ...memoryKeyStore(), update: () => Promise.resolve(fail({ kind: 'storage-full' })) };
    expect(await keyForInvitations(sealing, full, MADE)).toEqual(fail({ kind: 'storage-full' }));
    expect(await replaceKey(sealing, full, MADE)).toEqual(fail({ kind: 'storage-full' }));
    const damaged: KeyStore = { ...memoryKeyStore(), load: () => Promise.resolve(fail({ kind: 'keys-damaged' })) };
    expect(await keyForInvitations(sealing, damaged, MADE)).toEqual(fail({ kind: 'keys-damaged' }));
  });
});

describe('a backup of the keys', () => {
  it('brings them back', async () => {
    expect(await openKeyBackup(sealing, await sealedBackup(two), 'four words')).toEqual({ ok: true, value: two });
    expect(await openKeyBackup(sealing, await sealedBackup([]), 'four words')).toEqual({ ok: true, value: [] });
    expect(keyBackupName(MADE)).toBe('glabella-keys-2026-01-05.age');
  });

  it('serves the age of Debian as it is, to open an answer', async () => {
    const backup = await sealedBackup(two);
    for (const { recipient } of [first, second]) {
      const answer = await sealing.sealToRecipient(padded('an answer'), recipient);
      if (!answer.ok) throw new Error(answer.failure.kind);
      const files = { 'keys.age': backup, 'answer.age': answer.value };
      const opened = runAgeWithPassphrase(['-d', '-i', 'keys.age', '-o', 'out', 'answer.age'], ['four words'], files);
      expect(new TextDecoder().decode(opened).trimEnd()).toBe('an answer');
    }
  });

  it('adds to the keys that are here', () => {
    expect(withBackup([], two, RESTORED)).toEqual(two);
    expect(withBackup(two, one, RESTORED)).toEqual(two);
    expect(withBackup(one, two, RESTORED)).toEqual(two);
    // Two machines that each made a key of their own: the one made last stays in use.
    const elsewhere = withNewKey([], second, REPLACED);
    const together = [
      { ...second, madeAt: REPLACED.toISOString(), retiredAt: null },
      { ...first, madeAt: MADE.toISOString(), retiredAt: RESTORED.toISOString() },
    ];
    expect(withBackup(one, elsewhere, RESTORED)).toEqual(together);
    expect(withBackup(elsewhere, one, RESTORED)).toEqual(together);
  });

  it('is refused with another passphrase, cut, changed, or as another file', async () => {
    const backup = await sealedBackup(one);
    const kind = async (file: Uint8Array, passphrase = 'four words') => {
      const outcome = await openKeyBackup(sealing, file, passphrase);
      return outcome.ok ? 'opened' : outcome.failure.kind;
    };
    expect(await kind(backup, 'five words')).toBe('wrong-passphrase');
    expect(await kind(backup.subarray(0, -1))).toBe('truncated');
    expect(await kind(backup.map((byte, at) => (at === backup.length - 1 ? byte ^ 1 : byte)))).toBe('altered');
    expect(await kind(ageFixture('to-recipient.age'))).toBe('no-key-backup');
    expect(await kind(ageFixture('practice-identity.txt'))).toBe('not-sealed');
    expect(await kind(new Uint8Array(KEY_BACKUP_LIMIT_BYTES + 1))).toBe('too-large');
    expect(await kind(await sealedWith('{"sessions":[]}'))).toBe('no-key-backup');
    expect(await kind(await sealedWith('# glabella-practice-keys 1\n# created: then\nAGE-SECRET-KEY-1\n#'))).toBe(
      'no-key-backup',
    );
    const newer = await openKeyBackup(sealing, await sealedWith('# glabella-practice-keys 2\n'), 'four words');
    expect(newer).toEqual(fail({ kind: 'newer-version', version: 2, knownVersion: 1 }));
    expect(await openKeyBackup(offline, backup, 'four words')).toEqual(fail({ kind: 'sealing-not-loadable' }));
  });
});
