import { daysAgo } from '../session/session-list.js';
import { spokenTag } from './language.js';

interface Formats {
  readonly locale: string;
  readonly near: Intl.RelativeTimeFormat;
  readonly day: Intl.DateTimeFormat;
  readonly time: Intl.DateTimeFormat;
}

let made: Formats | null = null;

/** Making formats takes longer than using them a thousand times; there is one set for the language of the moment. */
function formats(): Formats {
  const locale = spokenTag;
  if (made?.locale !== locale) {
    made = {
      locale,
      near: new Intl.RelativeTimeFormat(locale, { numeric: 'auto' }),
      // The month as a word: 3/4 is April here and March there.
      day: new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', year: 'numeric' }),
      time: new Intl.DateTimeFormat(locale, { hour: '2-digit', minute: '2-digit' }),
    };
  }
  return made;
}

/** Today, yesterday, or the date. */
export function dayShown(iso: string, now: Date): string {
  const { near, day } = formats();
  const ago = daysAgo(iso, now);
  return ago === 0 || ago === 1 ? near.format(-ago, 'day') : day.format(new Date(iso));
}

export function timeShown(iso: string): string {
  return formats().time.format(new Date(iso));
}

/** The date of a day without a time, such as `2026-11-25`. */
export function plainDateShown(isoDate: string): string {
  // At noon it is that day everywhere the clock of this device may stand.
  return formats().day.format(new Date(`${isoDate}T12:00:00`));
}
