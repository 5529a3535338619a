/** As what begins with a capital stands within a sentence; abbreviations such as PD stay. */
export function lowerFirstInEnglish(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}

/** As a sentence begins. */
export function upperFirstInEnglish(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
