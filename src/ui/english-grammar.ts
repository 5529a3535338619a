/** `a`, `a and b`, `a, b and c`. */
export function listInEnglish(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1) ?? ''}`;
}

/** As what begins with a capital stands within a sentence; abbreviations such as PD stay. */
export function lowerFirstInEnglish(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
