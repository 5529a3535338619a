import { expect, it } from 'vitest';
import { passphraseProblem, passphraseStrength } from './passphrase.js';

// The bounds are chosen; see beside the code.

it('judges a passphrase by its length and by how many letters are in it', () => {
  expect(passphraseStrength('')).toBe('empty');
  expect(passphraseStrength('abcdefg')).toBe('too-short');
  expect(passphraseStrength('abcdefgh')).toBe('weak');
  expect(passphraseStrength('abcdefghijklmn')).toBe('fair');
  expect(passphraseStrength('eleven calm herons')).toBe('fair');
  expect(passphraseStrength('eleven calm herons walk')).toBe('good');
  expect(passphraseStrength('aaaaaaaaaaaaaaaaaaaaaaaa')).toBe('weak');
});

it('counts letters, not the units of their encoding', () => {
  expect(passphraseStrength('🙂🙃🙂🙃')).toBe('too-short');
});

it('says what keeps a passphrase from being used', () => {
  expect(passphraseProblem('', '')).toBe('empty');
  expect(passphraseProblem('short', 'short')).toBe('too-short');
  expect(passphraseProblem('long enough', 'long enoughh')).toBe('not-the-same');
  expect(passphraseProblem('long enough', 'long enough')).toBeNull();
  // é as one letter, and as e with an accent
  expect(passphraseProblem('caf\u00e9 au lait', 'cafe\u0301 au lait')).toBeNull();
});
