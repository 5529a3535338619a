import type * as age from 'age-encryption';
import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import { toBase64Url } from '../session/sealing-base64.js';
import type {
  IdentityFailure,
  OpenOptions,
  PassphraseFailure,
  SealFailure,
  SealingOutage,
  SealingPort,
} from '../session/sealing.js';
import { IDENTITY_FORM, PADDING_BYTES, RECIPIENT_FORM } from '../session/sealing.js';
import { readArmour } from './sealing-armour.js';
import type { SealedHead } from './sealing-head.js';
import { plainLength, readHead } from './sealing-head.js';

type AgeLibrary = typeof age;

/**
 * log2 of scrypt's N for what is sealed here. Chosen: 17 takes 128 MiB, about a second on a phone and less on a desk, and is what
 * is advised for passwords at r = 8, p = 1 (OWASP, Password Storage Cheat Sheet, from memory).
 */
const SCRYPT_WORK_FACTOR = 17;

/** Chosen: 19 takes 512 MiB. Beyond that a phone's browser may end the page; other programs seal with 18. */
export const SCRYPT_WORK_FACTOR_LIMIT = 19;

type WholeHead = Extract<SealedHead, { kind: 'whole' }>;

export interface SealingSettings {
  /** loads the library of the format */
  readonly load: () => Promise<AgeLibrary>;
  /** log2 of scrypt's N */
  readonly scryptWorkFactor: number;
}

/** Seals and opens files with the age format's own library, which is loaded when it is first needed. */
export function createSealing({
  load = () => import('age-encryption'),
  scryptWorkFactor = SCRYPT_WORK_FACTOR,
}: Partial<SealingSettings> = {}): SealingPort {
  /** Does something with the library; what it throws becomes what `refused` makes of it. */
  async function withLibrary<Value, Failure>(
    work: (age: AgeLibrary) => Promise<Value>,
    refused: (reason: unknown) => Failure,
  ): Promise<Result<Value, Failure | SealingOutage>> {
    let age: AgeLibrary;
    try {
      age = await load();
    } catch {
      return fail({ kind: 'sealing-not-loadable' });
    }
    try {
      return succeed(await work(age));
    } catch (reason) {
      return fail(refused(reason));
    }
  }

  /** The same for work with keys: pages that did not come over https have no cryptography for it. */
  function withKeys<Value, Failure>(
    work: (age: AgeLibrary) => Promise<Value>,
    refused: (reason: unknown) => Failure,
  ): Promise<Result<Value, Failure | SealingOutage>> {
    // The types do not know of such pages.
    if ((crypto.subtle as SubtleCrypto | undefined) === undefined) {
      return Promise.resolve(fail({ kind: 'sealing-unsupported' }));
    }
    return withLibrary(work, refused);
  }

  return {
    randomId: () => toBase64Url(crypto.getRandomValues(new Uint8Array(16))),

    makeKeyPair: () =>
      withKeys(
        async (age) => {
          const identity = await age.generateX25519Identity();
          return { identity, recipient: await age.identityToRecipient(identity) };
        },
        // It is given nothing that it could refuse.
        (): SealingOutage => ({ kind: 'sealing-unsupported' }),
      ),

    sealWithPassphrase: async (plain, passphrase) => {
      if (passphrase === '') return fail({ kind: 'passphrase-empty' });
      return withLibrary(
        async (age) => {
          const encrypter = new age.Encrypter();
          encrypter.setPassphrase(passphrase.normalize('NFC'));
          encrypter.setScryptWorkFactor(scryptWorkFactor);
          return new Uint8Array(await encrypter.encrypt(plain));
        },
        // With a passphrase, the only thing that can fail is to find so much memory.
        (): SealFailure => ({ kind: 'sealing-unsupported' }),
      );
    },

    sealToRecipient: async (plain, recipient) => {
      if (!RECIPIENT_FORM.test(recipient)) return fail({ kind: 'no-recipient', recipient });
      return withKeys(
        async (age) => {
          const encrypter = new age.Encrypter();
          encrypter.addRecipient(recipient);
          return new Uint8Array(await encrypter.encrypt(plain));
        },
        (): SealFailure => ({ kind: 'no-recipient', recipient }),
      );
    },

    openWithPassphrase: async (sealed, passphrase, options) => {
      const looked = look(sealed, options);
      if (!looked.ok) return looked;
      const { head, file, isWhole } = looked.value;
      const [stanza] = head.stanzas.filter(({ type }) => type === 'scrypt');
      if (stanza === undefined) return fail({ kind: 'sealed-to-key' });
      // The format allows no other way beside a passphrase, and exactly two parameters: the salt and the work factor.
      const written = stanza.parameters[1];
      if (head.stanzas.length > 1 || stanza.parameters.length !== 2 || !/^[1-9]\d*$/.test(written ?? '')) {
        return fail({ kind: 'altered' });
      }
      const workFactor = Number(written);
      const limit = SCRYPT_WORK_FACTOR_LIMIT;
      if (workFactor > limit) return fail({ kind: 'passphrase-too-costly', workFactor, limit });
      if (!isWhole) return fail({ kind: 'truncated' });
      return withLibrary(
        async (age) => {
          const decrypter = new age.Decrypter();
          decrypter.addPassphrase(passphrase.normalize('NFC'));
          return readWhole(await decrypter.decrypt(asStream(file)));
        },
        (reason): PassphraseFailure => {
          if (reason instanceof RangeError) return { kind: 'passphrase-too-costly', workFactor, limit };
          return isUnmatched(reason) ? { kind: 'wrong-passphrase' } : { kind: 'altered' };
        },
      );
    },

    openWithIdentities: async (sealed, identities, options) => {
      const looked = look(sealed, options);
      if (!looked.ok) return looked;
      const { head, file, isWhole } = looked.value;
      if (head.stanzas.some(({ type }) => type === 'scrypt')) return fail({ kind: 'sealed-with-passphrase' });
      if (!identities.every((identity) => IDENTITY_FORM.test(identity))) return fail({ kind: 'no-identity' });
      const outcome = await withKeys(
        async (age) => {
          const decrypter = new age.Decrypter();
          for (const identity of identities) {
            try {
              decrypter.addIdentity(identity);
            } catch {
              return null;
            }
          }
          return readWhole(await decrypter.decrypt(asStream(file)));
        },
        (reason): IdentityFailure => ({ kind: isUnmatched(reason) ? 'for-another-key' : 'altered' }),
      );
      if (outcome.ok) return outcome.value === null ? fail({ kind: 'no-identity' }) : succeed(outcome.value);
      // Whether a key fits can be said of a shortened file as well, and says more.
      return outcome.failure.kind === 'altered' && !isWhole ? fail({ kind: 'truncated' }) : outcome;
    },
  };
}

interface SealedFile {
  /** in the binary form */
  readonly file: Uint8Array;
  readonly head: WholeHead;
  /** whether the length can be that of a whole file */
  readonly isWhole: boolean;
}

/** What can be said of a file without any key. */
function look(
  sealed: Uint8Array,
  { limitBytes, isPadded }: OpenOptions,
): Result<
  SealedFile,
  | { readonly kind: 'not-sealed' | 'truncated' | 'altered' }
  | { readonly kind: 'too-large'; readonly bytes: number; readonly limitBytes: number }
> {
  if (sealed.length > limitBytes) return fail({ kind: 'too-large', bytes: sealed.length, limitBytes });
  const armour = readArmour(sealed);
  if (armour.kind === 'cut') return fail({ kind: 'truncated' });
  if (armour.kind === 'malformed') return fail({ kind: 'altered' });
  const file = armour.kind === 'whole' ? armour.bytes : sealed;
  const head = readHead(file);
  if (head.kind === 'foreign') return fail({ kind: 'not-sealed' });
  if (head.kind === 'cut') return fail({ kind: 'truncated' });
  if (head.kind === 'malformed') return fail({ kind: 'altered' });
  const length = plainLength(file.length, head.lengthBytes);
  // What was padded is never empty.
  const isWhole = length !== null && (!isPadded || (length > 0 && length % PADDING_BYTES === 0));
  return succeed({ file, head, isWhole });
}

/** The library says so where no stanza of the head gives the key. It has no other sign of it than its message. */
function isUnmatched(reason: unknown): boolean {
  return reason instanceof Error && reason.message.startsWith('no identity matched');
}

function asStream(bytes: Uint8Array): ReadableStream<Uint8Array> {
  return new ReadableStream({
    start(controller) {
      controller.enqueue(bytes);
      controller.close();
    },
  });
}

/** Read by hand: browsers hide behind a network error why the stream of a `Response` broke off. */
async function readWhole(stream: ReadableStream<Uint8Array>): Promise<Uint8Array<ArrayBuffer>> {
  const reader = stream.getReader();
  const pieces: Uint8Array[] = [];
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    pieces.push(value);
  }
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
