import { spokenTag } from './language.js';

/**
 * A day of the calendar (`YYYY-MM-DD`), which is the same everywhere, as a language writes it.
 *
 * @param tag BCP 47; the language of this moment where none is given
 */
export function dayText(day: string, tag = spokenTag): string {
  return new Intl.DateTimeFormat(tag, { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(`${day}T12:00:00Z`));
}
