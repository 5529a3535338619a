import type { TrialResult, Verdict } from '../core/reading/trial-series.js';

/** The text with room for another reading behind it; as it is where there is nothing yet. */
export function withAnotherReading(text: string): string {
  const typed = text.trimEnd();
  return typed === '' ? text : `${typed} `;
}

/** Whether the last thing typed is a size of which nobody said yet how it sat. */
export function endsWithSize(text: string): boolean {
  return /(^|[\s;])\d+([.,]\d+)?$/.test(text.trimEnd());
}

/** The text with a verdict on the size typed last, and room for the next size. */
export function withVerdict(text: string, verdict: Verdict): string {
  return endsWithSize(text) ? `${text.trimEnd()} ${verdict} ` : text;
}

/** Whether no size that was tried fits: the value of the series is then a size between two, which nobody tried. */
export function nothingFits({ trials }: TrialResult): boolean {
  return trials.every(({ verdict }) => verdict !== 'fits');
}
