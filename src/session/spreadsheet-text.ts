/** What makes spreadsheets read a text as a formula (OWASP, CSV Injection), in either width of the letters. */
const FORMULA = /^[\s\0]*[=+\-@＝＋－＠]|^[\t\r\n]/;

/** A text for a cell, with an apostrophe before it where a spreadsheet would run it; NUL, at which some readers stop, is replaced. */
export function harmlessText(text: string): string {
  const whole = text.replaceAll('\0', '\uFFFD');
  return FORMULA.test(text) ? `'${whole}` : whole;
}
