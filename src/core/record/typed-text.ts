/** The longest text that any field of the sheet keeps, in characters. Chosen: far longer than anything that is read from a gauge. */
export const MAX_TEXT_LENGTH = 200;

/** The text as a field keeps it: what goes beyond the longest is cut off. */
export function clipText(text: string): string {
  return text.length > MAX_TEXT_LENGTH ? text.slice(0, MAX_TEXT_LENGTH) : text;
}
