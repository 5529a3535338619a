import { Buffer } from 'node:buffer';
import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EXAMPLE_RECIPIENT, exampleId, exampleInvitation } from '../../tests/support/example-answer.js';
import type { Invitation } from './invitation.js';
import { isInvitation } from './is-invitation.js';
import {
  encodeInvitation,
  endOfInvitation,
  invitationSchema,
  LINK_LIMIT,
  linkOf,
  makeInvitation,
  parseInvitation,
  PRACTICE_NAME_LIMIT_BYTES,
} from './invitation.js';

const NOW = new Date('2026-03-02T12:00:00Z');

/** A text with the check that Node makes of it, in the form of a fragment. */
function checked(text: string): string {
  return text + crc32(text).toString(36).padStart(7, '0');
}

function kindOf(fragment: string, now = NOW): string {
  const parsed = parseInvitation(fragment, now);
  return parsed.ok ? 'parsed' : parsed.failure.kind;
}

const anyInvitation: fc.Arbitrary<Invitation> = fc
  .record({
    id: fc.uint8Array({ minLength: 16, maxLength: 16 }).map((bytes) => Buffer.from(bytes).toString('base64url')),
    recipient: fc
      .array(fc.constantFrom(...'qpzry9x8gf2tvdw0s3jn54khce6mua7l'), { minLength: 58, maxLength: 58 })
      .map((letters) => `age1${letters.join('')}`),
    practice: fc.string({ unit: 'binary', maxLength: 20 }),
    language: fc.constantFrom('en', 'de', 'fr', 'pt-BR', 'zh-Hant-TW'),
    cards: fc.constantFrom<Invitation['cards']>(['bought'], ['printed'], ['bought', 'printed'], ['printed', 'bought']),
    asksForPictures: fc.boolean(),
    days: fc.integer({ min: 0, max: 365 }),
    now: fc.date({ min: NOW, max: new Date('2095-01-01'), noInvalidDate: true }),
  })
  .map(({ id, now, ...choices }) => makeInvitation(choices, id, now));

describe('an invitation', () => {
  it('is made to the minute, for whole days, with a name of limited length', () => {
    const made = exampleInvitation();
    expect(made.madeAt).toBe('2026-03-01T10:00:00.000Z');
    expect(made.expiresOn).toBe('2026-03-15');
    const choices = { ...made, practice: `  ${'Brillen Müller '.repeat(20)}`, days: 1 };
    const { practice, madeAt } = makeInvitation(choices, exampleId(2), new Date('2026-03-01T10:00:59.999Z'));
    expect(madeAt).toBe('2026-03-01T10:00:00.000Z');
    expect(Buffer.byteLength(practice)).toBeLessThanOrEqual(PRACTICE_NAME_LIMIT_BYTES);
    expect(practice).toMatch(/^Brillen Müller Brillen/);
    expect(invitationSchema.safeParse({ ...made, practice }).success).toBe(true);
  });

  it('keeps no half letters of a long name', () => {
    const { practice } = makeInvitation(
      { ...exampleInvitation(), practice: '👓'.repeat(40), days: 1 },
      exampleId(2),
      NOW,
    );
    expect(practice).toBe('👓'.repeat(PRACTICE_NAME_LIMIT_BYTES / 4));
  });

  it('comes back from its fragment as it was', () => {
    fc.assert(
      fc.property(anyInvitation, (invitation) => {
        const fragment = encodeInvitation(invitation);
        expect(fragment).toMatch(/^[\w.-]+$/);
        expect(isInvitation(`#${fragment}`)).toBe(true);
        expect(parseInvitation(`#${fragment}`, new Date(invitation.madeAt))).toEqual({ ok: true, value: invitation });
      }),
    );
  });

  it('comes back where a message left marks and blanks around it', () => {
    const fragment = encodeInvitation(exampleInvitation());
    for (const around of [`  ${fragment}\n`, `${fragment}.`, `${fragment})`, `${fragment}>,`]) {
      expect(parseInvitation(around, NOW)).toEqual({ ok: true, value: exampleInvitation() });
    }
  });

  it('counts until its last day is over everywhere on earth', () => {
    const invitation = exampleInvitation({ expiresOn: '2026-03-15' });
    // The last zone of the day is twelve hours behind UTC.
    expect(endOfInvitation(invitation).toISOString()).toBe('2026-03-16T12:00:00.000Z');
    const fragment = encodeInvitation(invitation);
    expect(kindOf(fragment, new Date('2026-03-16T11:59:59Z'))).toBe('parsed');
    expect(parseInvitation(fragment, new Date('2026-03-16T12:00:00Z'))).toEqual({
      ok: false,
      failure: { kind: 'expired', expiresOn: '2026-03-15', practice: 'Optik Beispiel' },
    });
  });
});

describe('a fragment that is no good', () => {
  it.each(['', '#', 'top', 'invite', 'https://example.org/', '{"id":1}'])('takes %j for something else', (fragment) => {
    expect(kindOf(fragment)).toBe('no-invitation');
    expect(isInvitation(fragment)).toBe(false);
  });

  it('notices a cut at every length', () => {
    const fragment = encodeInvitation(exampleInvitation());
    for (let length = 'invite.'.length; length < fragment.length; length += 1) {
      const kind = kindOf(fragment.slice(0, length));
      // Of the mark alone, its point may be taken for one that a message left.
      expect([length, kind]).toEqual([length, length === 'invite.'.length ? 'no-invitation' : 'damaged']);
    }
  });

  it('notices every changed letter, and letters in another order', () => {
    const fragment = encodeInvitation(exampleInvitation({ practice: 'Brillen Müller' }));
    for (let place = 'invite.'.length; place < fragment.length; place += 1) {
      for (const letter of ['A', 'q', '7', '.', '%', fragment[place]?.toUpperCase() ?? '']) {
        const changed = fragment.slice(0, place) + letter + fragment.slice(place + 1);
        if (changed !== fragment) expect([place, letter, kindOf(changed)]).toEqual([place, letter, 'damaged']);
      }
      const [one = '', next = ''] = fragment.slice(place, place + 2);
      const swapped = fragment.slice(0, place) + next + one + fragment.slice(place + 2);
      if (swapped !== fragment) expect([place, kindOf(swapped)]).toEqual([place, 'damaged']);
    }
  });

  it('knows a later version for what it is, and a damaged one of it for damaged', () => {
    const later = checked('invite.2.of-some-other.form.');
    expect(parseInvitation(later, NOW)).toEqual({
      ok: false,
      failure: { kind: 'newer-version', version: 2, knownVersion: 1 },
    });
    expect(kindOf(later.replace('other', 'otter'))).toBe('damaged');
  });

  it('does not trust a check alone', () => {
    const whole = encodeInvitation(exampleInvitation());
    const fields = whole.split('.').slice(1, -1);
    const withField = (place: number, text: string) =>
      checked(`invite.${fields.map((field, at) => (at === place ? text : field)).join('.')}.`);
    expect(withField(0, '1')).toBe(whole);
    const wrong: readonly (readonly [number, string])[] = [
      [0, '0'],
      [0, 'x'],
      [0, ''],
      [1, 'short'],
      [1, 'x'.repeat(22)],
      [2, 'q'.repeat(57)],
      [2, 'Q'.repeat(58)],
      [3, ''],
      [3, 'zzzzzzz'],
      [4, '-1'],
      [4, 'zzzzz'],
      [5, ''],
      [5, 'i'],
      [5, 'bb'],
      [5, 'bx'],
      [6, 'd'],
      [6, '<b>'],
      [7, 'A'],
      [7, Buffer.from([0xff, 0xfe]).toString('base64url')],
      [7, Buffer.from('x'.repeat(PRACTICE_NAME_LIMIT_BYTES + 1)).toString('base64url')],
    ];
    for (const [place, text] of wrong)
      expect([place, text, kindOf(withField(place, text))]).toEqual([place, text, 'damaged']);
    expect(kindOf(checked(`invite.${[...fields, 'more'].join('.')}.`))).toBe('damaged');
  });

  it('never throws, whatever stands there', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => kindOf(`invite.${text}`) !== 'parsed'));
    fc.assert(fc.property(fc.string(), (text) => kindOf(checked(`invite.1.${text}.`)) === 'damaged'));
  });
});

describe('the link', () => {
  it('carries everything in the fragment', () => {
    const link = linkOf(exampleInvitation(), 'https://example.org/desk/?x=1#sessions');
    if (!link.ok) throw new Error(link.failure.kind);
    const { hash, origin, pathname, search } = new URL(link.value);
    expect(origin + pathname + search).toBe('https://example.org/desk/?x=1');
    expect(parseInvitation(hash, NOW)).toEqual({ ok: true, value: exampleInvitation() });
  });

  it('is short enough for its code with the longest name and language', () => {
    const longest = exampleInvitation({
      practice: 'x'.repeat(PRACTICE_NAME_LIMIT_BYTES),
      language: 'zh-Hant-TW',
      expiresOn: '2099-12-31',
    });
    expect(linkOf(longest, `https://${'a'.repeat(100)}.example.org/glabella/`).ok).toBe(true);
  });

  it('is refused where the address is too long', () => {
    const address = `https://example.org/${'a'.repeat(LINK_LIMIT)}`;
    const letters = address.length + 1 + encodeInvitation(exampleInvitation()).length;
    expect(linkOf(exampleInvitation({ recipient: EXAMPLE_RECIPIENT }), address)).toEqual({
      ok: false,
      failure: { kind: 'link-too-long', letters, limit: LINK_LIMIT },
    });
  });
});
