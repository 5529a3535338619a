import { armor } from 'age-encryption';
import * as age from 'age-encryption';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { ageFixture, FIXTURE_PASSPHRASE, FIXTURE_TEXT, fixtureKeys } from '../../tests/support/age-fixtures.js';
import { runAge, runAgeWithPassphrase } from '../../tests/support/run-age.js';
import type { Result } from '../core/result.js';
import type { OpenOptions } from '../session/sealing.js';
import { PADDING_BYTES, padded } from '../session/sealing.js';
import { createSealing, SCRYPT_WORK_FACTOR_LIMIT } from './sealing.js';

// Passphrases of these tests are cheap to try: with the factor of the app each would take a second.
const sealing = createSealing({ scryptWorkFactor: 10 });
const practice = fixtureKeys('practice');
const other = fixtureKeys('other');
const anyLength: OpenOptions = { limitBytes: 1_000_000, isPadded: false };
const onlyPadded: OpenOptions = { limitBytes: 1_000_000, isPadded: true };

function bytesOf(text: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(text);
}

function valueOf<Value>(outcome: Result<Value, { readonly kind: string }>): Value {
  if (!outcome.ok) throw new Error(outcome.failure.kind);
  return outcome.value;
}

function kindOf(outcome: Result<unknown, { readonly kind: string }>): string {
  return outcome.ok ? 'opened' : outcome.failure.kind;
}

function textOf(outcome: Result<Uint8Array, { readonly kind: string }>): string {
  return new TextDecoder().decode(valueOf(outcome));
}

/** The file with one byte changed: one bit of it, so that it never stays what it was. */
function withChangedByte(file: Uint8Array, place: number, bit: number): Uint8Array {
  return file.map((byte, at) => (at === place ? byte ^ (1 << bit) : byte));
}

/** Where a sealed file's lines end, and with the last one the head. */
function headOf(file: Uint8Array) {
  const text = new TextDecoder('latin1').decode(file);
  const macAt = text.indexOf('\n--- ') + 1;
  return { firstLine: text.indexOf('\n') + 1, macAt, end: text.indexOf('\n', macAt) + 1 };
}

/** A head with these lines, in front of what is left of a file. */
function withHead(lines: readonly string[], file: Uint8Array): Uint8Array {
  const rest = new TextDecoder('latin1').decode(file.subarray(headOf(file).macAt));
  return Uint8Array.from([...lines.map((line) => `${line}\n`), rest].join(''), (letter) => letter.charCodeAt(0));
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('files that the age of Debian sealed', () => {
  it.each(['to-recipient.age', 'to-recipient-armoured.age', 'to-two-recipients.age'])('opens %s', async (name) => {
    const outcome = await sealing.openWithIdentities(ageFixture(name), [practice.identity], anyLength);
    expect(textOf(outcome)).toBe(FIXTURE_TEXT);
  });

  it('opens one with whichever of several keys fits', async () => {
    const file = ageFixture('to-recipient.age');
    const outcome = await sealing.openWithIdentities(file, [other.identity, practice.identity], anyLength);
    expect(textOf(outcome)).toBe(FIXTURE_TEXT);
  });

  it('opens an empty one, and one of several pieces', async () => {
    const empty = await sealing.openWithIdentities(ageFixture('empty.age'), [practice.identity], anyLength);
    expect(valueOf(empty)).toHaveLength(0);
    const long = await sealing.openWithIdentities(ageFixture('long.age'), [practice.identity], anyLength);
    // as the README of the fixtures says
    const expected = Uint8Array.from({ length: 140_000 }, (_, i) => (7 * i + Math.floor(i / 251)) % 256);
    expect(Buffer.from(valueOf(long)).equals(expected)).toBe(true);
  });

  // Debian's age makes a passphrase cost a second and more: once is enough.
  it('opens one with a passphrase', { timeout: 120_000 }, async () => {
    const file = ageFixture('with-passphrase.age');
    expect(textOf(await sealing.openWithPassphrase(file, FIXTURE_PASSPHRASE, anyLength))).toBe(FIXTURE_TEXT);
  });

  it('opens armour with blanks around it and line ends of another system', async () => {
    const armoured = new TextDecoder().decode(ageFixture('to-recipient-armoured.age'));
    const mailed = bytesOf(`\r\n\r\n${armoured.replaceAll('\n', '\r\n')}\r\n  `);
    expect(textOf(await sealing.openWithIdentities(mailed, [practice.identity], anyLength))).toBe(FIXTURE_TEXT);
  });
});

describe('files that are sealed here', () => {
  const text = 'Für die Praxis: 62,5 mm\n';

  it('are opened by the age of Debian with the identity', async () => {
    const pair = valueOf(await sealing.makeKeyPair());
    const sealed = valueOf(await sealing.sealToRecipient(bytesOf(text), pair.recipient));
    const opened = runAge(['-d', '-i', 'key.txt', 'sealed.age'], {
      'key.txt': `${pair.identity}\n`,
      'sealed.age': sealed,
    });
    expect(new TextDecoder().decode(opened)).toBe(text);
  });

  it('are opened by the age of Debian with the passphrase', async () => {
    const sealed = valueOf(await sealing.sealWithPassphrase(bytesOf(text), 'vier Wörter sind genug'));
    const words = ['-d', '-o', 'out', 'sealed.age'];
    const opened = runAgeWithPassphrase(words, ['vier Wörter sind genug'], { 'sealed.age': sealed });
    expect(new TextDecoder().decode(opened)).toBe(text);
    expect(() => runAgeWithPassphrase(words, ['vier Worte'], { 'sealed.age': sealed })).toThrow('incorrect passphrase');
  });

  it('take the passphrase in its composed form', async () => {
    const sealed = valueOf(await sealing.sealWithPassphrase(bytesOf(text), 'Wo\u0308rter'));
    expect(textOf(await sealing.openWithPassphrase(sealed, 'W\u00f6rter', anyLength))).toBe(text);
    expect(kindOf(await sealing.openWithPassphrase(sealed, 'Worter', anyLength))).toBe('wrong-passphrase');
  });

  it('come back as they were, whatever their length', async () => {
    for (const length of [0, 1, 65_535, 65_536, 65_537, 140_000]) {
      const plain = Uint8Array.from({ length }, (_, place) => place % 251);
      const sealed = valueOf(await sealing.sealToRecipient(plain, practice.recipient));
      const opened = valueOf(await sealing.openWithIdentities(sealed, [practice.identity], anyLength));
      expect(Buffer.from(opened).equals(plain)).toBe(true);
    }
  });

  it('have another key each time', async () => {
    const first = valueOf(await sealing.sealToRecipient(bytesOf(text), practice.recipient));
    const second = valueOf(await sealing.sealToRecipient(bytesOf(text), practice.recipient));
    expect(Buffer.from(first).equals(second)).toBe(false);
  });
});

describe('what is refused', () => {
  const limit = 64 * 1024;
  const text = 'a text of some length';

  it('says when a file is for another key, or for a passphrase', async () => {
    const file = ageFixture('to-recipient.age');
    expect(kindOf(await sealing.openWithIdentities(file, [other.identity], anyLength))).toBe('for-another-key');
    expect(kindOf(await sealing.openWithIdentities(file, [], anyLength))).toBe('for-another-key');
    expect(kindOf(await sealing.openWithPassphrase(file, 'any', anyLength))).toBe('sealed-to-key');
    const closed = ageFixture('with-passphrase.age');
    expect(kindOf(await sealing.openWithIdentities(closed, [practice.identity], anyLength))).toBe(
      'sealed-with-passphrase',
    );
  });

  it('says when what it is given are no keys', async () => {
    const file = ageFixture('to-recipient.age');
    expect(kindOf(await sealing.openWithIdentities(file, ['AGE-SECRET-KEY-1'], anyLength))).toBe('no-identity');
    const mistyped = practice.identity.replace(/.$/, (last) => (last === 'Q' ? 'P' : 'Q'));
    expect(kindOf(await sealing.openWithIdentities(file, [mistyped], anyLength))).toBe('no-identity');
    const swapped = await sealing.sealToRecipient(bytesOf(text), practice.identity);
    expect(swapped).toEqual({ ok: false, failure: { kind: 'no-recipient', recipient: practice.identity } });
    const wrong = practice.recipient.replace(/.$/, (last) => (last === 'q' ? 'p' : 'q'));
    expect(kindOf(await sealing.sealToRecipient(bytesOf(text), wrong))).toBe('no-recipient');
    expect(kindOf(await sealing.sealWithPassphrase(bytesOf(text), ''))).toBe('passphrase-empty');
  });

  it('looks at no file that is too large', async () => {
    const file = new Uint8Array(limit + 1);
    expect(await sealing.openWithIdentities(file, [], { limitBytes: limit, isPadded: false })).toEqual({
      ok: false,
      failure: { kind: 'too-large', bytes: limit + 1, limitBytes: limit },
    });
  });

  it.each([
    ['nothing', ''],
    ['text', 'Dear practice, here is my answer'],
    ['another version of the format', 'age-encryption.org/v2\n-> X25519 a\nb\n--- c\n'],
    ['a picture', '\u00ff\u00d8\u00ff\u00e0'],
  ])('takes %s for no sealed file', async (_, content) => {
    const file = Uint8Array.from(content, (letter) => letter.charCodeAt(0));
    expect(kindOf(await sealing.openWithIdentities(file, [practice.identity], anyLength))).toBe('not-sealed');
    expect(kindOf(await sealing.openWithPassphrase(file, 'any', anyLength))).toBe('not-sealed');
  });

  it('does not try a passphrase that was made too costly', async () => {
    const file = ageFixture('with-passphrase.age');
    const [version = '', stanza = '', ...body] = new TextDecoder('latin1')
      .decode(file.subarray(0, headOf(file).macAt - 1))
      .split('\n');
    const withFactor = (factor: string) => withHead([version, stanza.replace(/18$/, factor), ...body], file);
    const tried = (factor: string) => sealing.openWithPassphrase(withFactor(factor), 'any', anyLength);
    for (const workFactor of [SCRYPT_WORK_FACTOR_LIMIT + 1, 30, 64, 1e9]) {
      expect(await tried(workFactor.toString())).toEqual({
        ok: false,
        failure: { kind: 'passphrase-too-costly', workFactor, limit: SCRYPT_WORK_FACTOR_LIMIT },
      });
    }
    // The format: a decimal number without leading zeros, and nothing beside it
    for (const factor of ['018', '-1', '1e1', '18 18']) expect(kindOf(await tried(factor))).toBe('altered');
    // A passphrase is the only way to its file
    const twice = withHead([version, stanza, ...body, stanza, ...body], file);
    expect(kindOf(await sealing.openWithPassphrase(twice, 'any', anyLength))).toBe('altered');
  });

  it('tells a file that is cut off from one that is changed, at every length', async () => {
    const sealed = valueOf(await sealing.sealToRecipient(padded(text), practice.recipient));
    for (let length = 1; length < sealed.length; length += length < 260 ? 1 : 37) {
      const outcome = await sealing.openWithIdentities(sealed.subarray(0, length), [practice.identity], onlyPadded);
      expect([length, kindOf(outcome)]).toEqual([length, 'truncated']);
    }
    const longer = Uint8Array.from([...sealed, 10]);
    expect(kindOf(await sealing.openWithIdentities(longer, [practice.identity], onlyPadded))).toBe('truncated');
  });

  it('tells it between two pieces as well', async () => {
    const sealed = valueOf(await sealing.sealToRecipient(padded('x'.repeat(150_000)), practice.recipient));
    const { end } = headOf(sealed);
    for (const pieces of [1, 2]) {
      const cut = sealed.subarray(0, end + 16 + pieces * (65_536 + 16));
      expect(kindOf(await sealing.openWithIdentities(cut, [practice.identity], onlyPadded))).toBe('truncated');
    }
  });

  it('finds every changed byte', async () => {
    const sealed = valueOf(await sealing.sealToRecipient(bytesOf(text), practice.recipient));
    const { firstLine, macAt, end } = headOf(sealed);
    for (let place = 0; place < sealed.length; place += 1) {
      const changed = withChangedByte(sealed, place, place % 8);
      const kind = kindOf(await sealing.openWithIdentities(changed, [practice.identity], anyLength));
      if (place < firstLine) expect([place, kind]).toEqual([place, 'not-sealed']);
      // In the head of a key a change may look like the head of another key.
      else if (place < macAt) expect([place, ['altered', 'for-another-key'].includes(kind)]).toEqual([place, true]);
      else if (place < end - 1) expect([place, kind]).toEqual([place, 'altered']);
      // Without the end of its last line a head goes on into what is sealed.
      else if (place === end - 1) expect(['altered', 'truncated']).toContain(kind);
      else expect([place, kind]).toEqual([place, 'altered']);
    }
  });

  it('finds every changed byte behind a passphrase', async () => {
    const sealed = valueOf(await sealing.sealWithPassphrase(bytesOf(text), 'four words'));
    const { firstLine, macAt, end } = headOf(sealed);
    for (let place = 0; place < sealed.length; place += 1) {
      const kind = kindOf(
        await sealing.openWithPassphrase(withChangedByte(sealed, place, place % 8), 'four words', anyLength),
      );
      if (place < firstLine) expect([place, kind]).toEqual([place, 'not-sealed']);
      else if (place < macAt) {
        expect(['altered', 'wrong-passphrase', 'sealed-to-key', 'passphrase-too-costly']).toContain(kind);
      } else if (place === end - 1) expect(['altered', 'truncated']).toContain(kind);
      else expect([place, kind]).toEqual([place, 'altered']);
    }
  });

  it('tells cut and changed armour', async () => {
    const armoured = armor.encode(valueOf(await sealing.sealToRecipient(padded(text), practice.recipient)));
    const opened = (file: string) => sealing.openWithIdentities(bytesOf(file), [practice.identity], onlyPadded);
    expect(textOf(await opened(armoured)).trimEnd()).toBe(text);
    for (let length = 6; length < armoured.trimEnd().length; length += 11) {
      expect([length, kindOf(await opened(armoured.slice(0, length)))]).toEqual([length, 'truncated']);
    }
    expect(kindOf(await opened(armoured.replace('END AGE', 'END PGP')))).toBe('altered');
    expect(kindOf(await opened(armoured.replace(/\n(.{30})./, '\n$1!')))).toBe('altered');
    expect(kindOf(await opened(armoured.replace(/\n(.{30})./, '\n$1')))).toBe('altered');
  });

  it('says when the library cannot be loaded', async () => {
    const offline = createSealing({ load: () => Promise.reject(new TypeError('Failed to fetch')) });
    const file = ageFixture('to-recipient.age');
    expect(kindOf(await offline.makeKeyPair())).toBe('sealing-not-loadable');
    expect(kindOf(await offline.sealToRecipient(bytesOf(text), practice.recipient))).toBe('sealing-not-loadable');
    expect(kindOf(await offline.openWithIdentities(file, [practice.identity], anyLength))).toBe('sealing-not-loadable');
  });

  it('says where the page has no cryptography for keys, as without https', async () => {
    const insecure = createSealing({ load: () => Promise.resolve(age), scryptWorkFactor: 10 });
    vi.stubGlobal('crypto', { getRandomValues: crypto.getRandomValues.bind(crypto) });
    expect(kindOf(await insecure.makeKeyPair())).toBe('sealing-unsupported');
    expect(kindOf(await insecure.sealToRecipient(bytesOf(text), practice.recipient))).toBe('sealing-unsupported');
    // Passphrases need none.
    const sealed = valueOf(await insecure.sealWithPassphrase(bytesOf(text), 'four words'));
    expect(textOf(await insecure.openWithPassphrase(sealed, 'four words', anyLength))).toBe(text);
  });
});

describe('padded', () => {
  it('fills with spaces up to the next multiple', () => {
    expect(padded('')).toHaveLength(PADDING_BYTES);
    expect(padded('a')).toHaveLength(PADDING_BYTES);
    expect(padded('a'.repeat(PADDING_BYTES))).toHaveLength(PADDING_BYTES);
    expect(padded('ä'.repeat(PADDING_BYTES))).toHaveLength(2 * PADDING_BYTES);
    expect(new TextDecoder().decode(padded('{}')).trimEnd()).toBe('{}');
  });
});

describe('randomId', () => {
  it('gives 128 bits in base64url, another each time', () => {
    const ids = Array.from({ length: 200 }, () => sealing.randomId());
    expect(new Set(ids).size).toBe(200);
    for (const id of ids) expect(Buffer.from(id, 'base64url')).toHaveLength(16);
    for (const id of ids) expect(Buffer.from(id, 'base64url').toString('base64url')).toBe(id);
  });
});
