import type { englishLater } from './english-later.js';
import { english } from './languages/en.js';
import { writeNumbersLike } from './numbers.js';

/** All that a language says on the screen: texts, and functions that build sentences from numbers and names. */
export type Words = typeof english & typeof englishLater;

/** English is built in; its dates are those of the country whose spelling it has. */
export const ENGLISH_TAG = 'en-GB';

/**
 * English as it is built in: without the words of later parts until `completeEnglish` has added them.
 */
const builtIn = english as Words;

/** What the screen says in the language of this moment. It is read while a screen is drawn, never kept beyond that. */
export let words: Words = builtIn;

/** Adds the words of all later parts to the built-in English; rejects where they cannot be fetched. */
export async function completeEnglish(): Promise<Words> {
  return Object.assign(builtIn, (await import('./english-later.js')).englishLater);
}

/** Waits until the language of this moment has the words of all parts: only English comes in two pieces. */
export async function completeWords(): Promise<void> {
  if (words === builtIn) await completeEnglish();
}

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
