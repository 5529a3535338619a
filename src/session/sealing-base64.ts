/** Bytes as base64url without padding (RFC 4648, 5). */
export function toBase64Url(bytes: Uint8Array): string {
  return toBase64(bytes).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** The bytes of a base64url text without padding; null where it is none. */
export function fromBase64Url(text: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[\w-]*$/.test(text)) return null;
  const base64 = text.replaceAll('-', '+').replaceAll('_', '/');
  return fromBase64(base64.padEnd(Math.ceil(base64.length / 4) * 4, '='));
}

/** Bytes as base64 with padding (RFC 4648, 4). */
export function toBase64(bytes: Uint8Array): string {
  let binary = '';
  // In pieces: a function takes only so many arguments.
  for (let start = 0; start < bytes.length; start += 8192) {
    binary += String.fromCharCode(...bytes.subarray(start, start + 8192));
  }
  return btoa(binary);
}

/** The bytes of a base64 text with padding; null where it is none, or not as `toBase64` writes it. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | null {
  if (text.length % 4 !== 0 || !/^[A-Za-z0-9+/]*={0,2}$/.test(text)) return null;
  try {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    // Two texts must not mean the same bytes: an id would have two spellings.
    return text.slice(-4) === toBase64(bytes.subarray(bytes.length - (bytes.length % 3 || 3))).slice(-4) ? bytes : null;
  } catch {
    return null;
  }
}
