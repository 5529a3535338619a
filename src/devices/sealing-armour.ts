import { ARMOUR_BEGINNING, ARMOUR_END } from '../session/armoured.js';
import { fromBase64 } from '../session/sealing-base64.js';

/** Chosen: blank bytes that may stand before the armour, as a mail program may leave them. */
const LONGEST_BLANK = 256;

export type Armour =
  /** binary, or anything else */
  | { readonly kind: 'none' }
  | { readonly kind: 'whole'; readonly bytes: Uint8Array<ArrayBuffer> }
  | { readonly kind: 'cut' }
  | { readonly kind: 'malformed' };

/** Takes the ASCII armour off a file (age-encryption.org/v1, "ASCII armor"; line ends LF or CRLF, blanks around it allowed). */
export function readArmour(file: Uint8Array): Armour {
  const beginning = asText(file.subarray(0, LONGEST_BLANK + ARMOUR_BEGINNING.length)).trimStart();
  // "-----B" is more than any other file begins with by chance.
  if (!beginning.startsWith(ARMOUR_BEGINNING)) {
    return { kind: beginning.length > 5 && ARMOUR_BEGINNING.startsWith(beginning) ? 'cut' : 'none' };
  }
  const lines = asText(file).trim().replaceAll('\r\n', '\n').split('\n').slice(1);
  const last = lines.at(-1) ?? '';
  const body = lines.slice(0, -1);
  if (last !== ARMOUR_END) {
    // An end that is only begun, or none: cut. Whatever stands in the lines before, it has to come once more anyway.
    return { kind: ARMOUR_END.startsWith(last) || /^[A-Za-z0-9+/=]{0,64}$/.test(last) ? 'cut' : 'malformed' };
  }
  const isEven = body.every((line, place) => (place < body.length - 1 ? line.length === 64 : line.length <= 64));
  const bytes = isEven ? fromBase64(body.join('')) : null;
  return bytes === null ? { kind: 'malformed' } : { kind: 'whole', bytes };
}

function asText(bytes: Uint8Array): string {
  return new TextDecoder('latin1').decode(bytes);
}
