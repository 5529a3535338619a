import type { Result } from '../core/result.js';

/**
 * Sealed files are age files (age-encryption.org/v1), so that they can also be opened without this app: by whoever has the
 * passphrase or the identity, with any program that reads the format.
 */

/** A pair of keys in the notation of the format. */
export interface KeyPair {
  /** the secret half, `AGE-SECRET-KEY-1…`: opens what was sealed to the recipient */
  readonly identity: string;
  /** the public half, `age1…`: may be given to anyone */
  readonly recipient: string;
}

/** The form of a secret key; whether it is one shows when it is used. */
export const IDENTITY_FORM = /^AGE-SECRET-KEY-1[A-Z0-9]{58}$/;

/** The form of a public key; whether it is one shows when it is used. */
export const RECIPIENT_FORM = /^age1[a-z0-9]{58}$/;

/** The form of `SealingPort.randomId`: the last of the 22 letters stands for two bits. */
export const RANDOM_ID_FORM = /^[\w-]{21}[AQgw]$/;

/** What keeps the format's library from working at all. */
export type SealingOutage =
  /** it could not be loaded: no connection, or the app was replaced on the server meanwhile; try again */
  | { readonly kind: 'sealing-not-loadable' }
  /** this browser cannot do it here: it is too old, or the page did not come over https */
  | { readonly kind: 'sealing-unsupported' };

/** Why nothing was sealed. */
export type SealFailure =
  | SealingOutage
  /** this is no public key, or a mistyped one */
  | { readonly kind: 'no-recipient'; readonly recipient: string }
  | { readonly kind: 'passphrase-empty' };

/** Why a file could not be opened, whoever tried it with what. */
type SealedFileFailure =
  | SealingOutage
  /** larger than whatever is expected: it was not looked at */
  | { readonly kind: 'too-large'; readonly bytes: number; readonly limitBytes: number }
  /** not a file of the format at all: choose another one */
  | { readonly kind: 'not-sealed' }
  /** it ends too early (or goes on too long): get it once more */
  | { readonly kind: 'truncated' }
  /** something in it is not as it was sealed: get it once more. A shortened file that was not padded counts here as well. */
  | { readonly kind: 'altered' };

/** Why a file could not be opened with a passphrase. */
export type PassphraseFailure =
  | SealedFileFailure
  /** or the head of the file was changed: the format makes no difference between the two */
  | { readonly kind: 'wrong-passphrase' }
  /** it was sealed to a key: no passphrase opens it */
  | { readonly kind: 'sealed-to-key' }
  /** it was made to cost so much memory and time that a browser cannot open it; both as powers of two */
  | { readonly kind: 'passphrase-too-costly'; readonly workFactor: number; readonly limit: number };

/** Why a file could not be opened with keys. */
export type IdentityFailure =
  | SealedFileFailure
  /** none of the keys is the one (or the head of the file was changed: the format makes no difference between the two) */
  | { readonly kind: 'for-another-key' }
  /** it was sealed with a passphrase: no key opens it */
  | { readonly kind: 'sealed-with-passphrase' }
  /** this is no identity of the format */
  | { readonly kind: 'no-identity' };

export interface OpenOptions {
  /** a larger file is refused without being looked at */
  readonly limitBytes: number;
  /** the text was padded by `padded` before it was sealed: a file of another length was cut off */
  readonly isPadded: boolean;
}

/** Seals and opens files. Sealing and opening with a passphrase hold up the page for about a second, on purpose. */
export interface SealingPort {
  /** 128 random bits that nobody can guess, as 22 letters of base64url. */
  randomId(): string;
  makeKeyPair(): Promise<Result<KeyPair, SealingOutage>>;
  /** Passphrases are compared in Unicode's composed form (NFC), however a keyboard made them. */
  sealWithPassphrase(plain: Uint8Array, passphrase: string): Promise<Result<Uint8Array<ArrayBuffer>, SealFailure>>;
  sealToRecipient(plain: Uint8Array, recipient: string): Promise<Result<Uint8Array<ArrayBuffer>, SealFailure>>;
  /** Binary or ASCII-armoured. */
  openWithPassphrase(
    sealed: Uint8Array,
    passphrase: string,
    options: OpenOptions,
  ): Promise<Result<Uint8Array<ArrayBuffer>, PassphraseFailure>>;
  /** Binary or ASCII-armoured; any of the identities may open it. */
  openWithIdentities(
    sealed: Uint8Array,
    identities: readonly string[],
    options: OpenOptions,
  ): Promise<Result<Uint8Array<ArrayBuffer>, IdentityFailure>>;
}

/**
 * Padded text is a multiple of this long, in bytes. The largest prime below 1024: the format seals 65536 bytes at a time, and a
 * file that is cut off between two of these pieces has this length by chance only beyond 60 MB.
 */
export const PADDING_BYTES = 1021;

/**
 * A text as bytes, with spaces at its end up to the next multiple of `PADDING_BYTES`. The sealed file then tells less of what
 * is in it, and one that was cut off is told from one that was altered. JSON does not mind spaces at its end.
 */
export function padded(text: string): Uint8Array<ArrayBuffer> {
  const bytes = new TextEncoder().encode(text);
  const pieces = Math.max(1, Math.ceil(bytes.length / PADDING_BYTES));
  const whole = new Uint8Array(pieces * PADDING_BYTES).fill(0x20);
  whole.set(bytes);
  return whole;
}
