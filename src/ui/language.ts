import { english } from './languages/en.js';
import { writeNumbersLike } from './numbers.js';

/** All that a language says on the screen: texts, and functions that build sentences from numbers and names. */
export type Words = typeof english;

/** English is built in; its dates are those of the country whose spelling it has. */
export const ENGLISH_TAG = 'en-GB';

/** What the screen says in the language of this moment. It is read while a screen is drawn, never kept beyond that. */
export let words: Words = english;

/** The BCP-47 tag of the language of this moment, for dates and for the page. */
export let spokenTag: string = ENGLISH_TAG;

/** From now on the screen speaks like this, and writes numbers so; whatever is drawn already has to be drawn anew. */
export function speak(spoken: Words, tag: string): void {
  words = spoken;
  spokenTag = tag;
  writeNumbersLike(tag);
}

/** A day or a time as the language of this moment writes it. */
export function dateText(date: Date, options: Intl.DateTimeFormatOptions): string {
  return new Intl.DateTimeFormat(spokenTag, options).format(date);
}
