/** One way to the key of a sealed file: a recipient, or a passphrase. */
export interface Stanza {
  readonly type: string;
  readonly parameters: readonly string[];
}

/** What the head of a sealed file is, without any key. */
export type SealedHead =
  | { readonly kind: 'whole'; readonly stanzas: readonly Stanza[]; readonly lengthBytes: number }
  /** it ends within the head */
  | { readonly kind: 'cut' }
  /** it begins as one, but goes on as none */
  | { readonly kind: 'malformed' }
  /** it does not begin as one */
  | { readonly kind: 'foreign' };

const FIRST_LINE = 'age-encryption.org/v1';

/** Chosen: a head has a few hundred bytes. One that goes on for longer is none. */
const LONGEST_HEAD_BYTES = 64 * 1024;

const BASE64_LINE = /^[A-Za-z0-9+/]{0,64}$/;
const FULL_LINE_LETTERS = 64;

/** Reads the head of a file in the binary form (age-encryption.org/v1, "Encrypted file format", the header). */
export function readHead(bytes: Uint8Array): SealedHead {
  // One byte stands for one letter: what is not ASCII fits no line below.
  const text = Array.from(bytes.subarray(0, LONGEST_HEAD_BYTES), (byte) => String.fromCharCode(byte)).join('');
  const start = `${FIRST_LINE}\n`;
  if (!text.startsWith(start)) return { kind: text !== '' && start.startsWith(text) ? 'cut' : 'foreign' };
  const stanzas: Stanza[] = [];
  let at = start.length;
  let isInBody = false;
  for (;;) {
    const end = text.indexOf('\n', at);
    if (end < 0) return { kind: bytes.length > LONGEST_HEAD_BYTES ? 'malformed' : 'cut' };
    const line = text.slice(at, end);
    at = end + 1;
    if (isInBody) {
      if (!BASE64_LINE.test(line)) return { kind: 'malformed' };
      // A body ends with the first line that is not full.
      isInBody = line.length === FULL_LINE_LETTERS;
    } else if (/^-> [!-~]+( [!-~]+)*$/.test(line)) {
      const [type = '', ...parameters] = line.slice(3).split(' ');
      stanzas.push({ type, parameters });
      isInBody = true;
    } else if (/^--- [A-Za-z0-9+/]{43}$/.test(line) && stanzas.length > 0) {
      return { kind: 'whole', stanzas, lengthBytes: at };
    } else {
      return { kind: 'malformed' };
    }
  }
}

const PIECE_BYTES = 64 * 1024;
const TAG_BYTES = 16;
const NONCE_BYTES = 16;

/** The length of what is sealed in a file of this length with this head; null where no such file can be whole. */
export function plainLength(fileBytes: number, headBytes: number): number | null {
  const payload = fileBytes - headBytes - NONCE_BYTES;
  const pieces = Math.ceil(payload / (PIECE_BYTES + TAG_BYTES));
  if (pieces < 1) return null;
  const last = payload - (pieces - 1) * (PIECE_BYTES + TAG_BYTES);
  // Only a file of nothing has an empty last piece.
  if (last < TAG_BYTES || (last === TAG_BYTES && pieces > 1)) return null;
  return payload - pieces * TAG_BYTES;
}
