import { toBase64 } from './sealing-base64.js';

export const ARMOUR_BEGINNING = '-----BEGIN AGE ENCRYPTED FILE-----';
export const ARMOUR_END = '-----END AGE ENCRYPTED FILE-----';

/** Letters in a line of the armour (age-encryption.org/v1, "ASCII armor"). */
const LINE = 64;

/** A sealed file as text, for ways on which only texts are let through. It opens like the file itself. */
export function armoured(file: Uint8Array): string {
  const base64 = toBase64(file);
  const lines: string[] = [];
  for (let start = 0; start < base64.length; start += LINE) lines.push(base64.slice(start, start + LINE));
  return [ARMOUR_BEGINNING, ...lines, ARMOUR_END, ''].join('\n');
}
