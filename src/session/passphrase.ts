/**
 * How long anybody would have to try: judged by length alone, as the only thing that can be said without knowing where the
 * words come from. The bounds are chosen: one guess costs about a second here (scrypt), and letters that people choose carry
 * about two bits each (NIST SP 800-63-2, appendix A, from memory).
 */
export type PassphraseStrength = 'empty' | 'too-short' | 'weak' | 'fair' | 'good';

/** Fewer letters are refused. */
export const SHORTEST_PASSPHRASE = 8;

const FAIR_FROM = 14;
const GOOD_FROM = 20;

/** `aaaaaaaaaaaa` is long and still no passphrase. */
const LEAST_DISTINCT = 6;

export function passphraseStrength(passphrase: string): PassphraseStrength {
  const letters = [...passphrase.normalize('NFC')];
  if (letters.length === 0) return 'empty';
  if (letters.length < SHORTEST_PASSPHRASE) return 'too-short';
  if (letters.length < FAIR_FROM || new Set(letters).size < LEAST_DISTINCT) return 'weak';
  return letters.length < GOOD_FROM ? 'fair' : 'good';
}

/** What keeps a passphrase that was typed twice from being used. */
export type PassphraseProblem = 'empty' | 'too-short' | 'not-the-same';

/** Null where nothing keeps it from being used. */
export function passphraseProblem(once: string, again: string): PassphraseProblem | null {
  const strength = passphraseStrength(once);
  if (strength === 'empty' || strength === 'too-short') return strength;
  // Keyboards make the same letter in two ways; sealing takes both for the same.
  return once.normalize('NFC') === again.normalize('NFC') ? null : 'not-the-same';
}
