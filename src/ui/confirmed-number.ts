import { formatNumber } from './numbers.js';

/** The number of an order as `confirmedText` gives it, with the decimal sign of the language; its decimals stay as they are. */
export function confirmedNumber(text: string): string {
  const [, decimals = ''] = text.split('.');
  return formatNumber(Number(text.replace('\u2212', '-')), decimals.length);
}
