import { english } from './languages/en.js';

/** All that a language says on the screen: texts, and functions that build sentences from numbers and names. */
export type Words = typeof english;

/** What the screen says in the language of this moment. It is read while a screen is drawn, never kept beyond that. */
export let words: Words = english;

/** From now on the screen speaks like this; whatever is drawn already has to be drawn anew. */
export function speak(spoken: Words): void {
  words = spoken;
}
