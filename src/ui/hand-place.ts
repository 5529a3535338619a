import type { UIEvent } from 'react';
import { flushSync } from 'react-dom';
import type { ReadingName } from '../core/catalogue/measurement.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';

/** Told to a folded block that one of its fields is wanted. */
export const PLACE_WANTED = 'place-wanted';

const PREFIX = 'reading-';

/** The id of the element in which a reading is typed. */
export function readingFieldId(name: ReadingName): string {
  return `${PREFIX}${name}`;
}

/** The reading that is typed into this element; null for any other element. */
export function readingOf(element: EventTarget | null): ReadingName | null {
  if (!(element instanceof HTMLInputElement)) return null;
  return READING_NAMES.find((name) => readingFieldId(name) === element.id) ?? null;
}

function fieldOf(name: ReadingName): HTMLInputElement | null {
  const element = document.getElementById(readingFieldId(name));
  return element instanceof HTMLInputElement ? element : null;
}

/** Puts the focus into a field of the sheet and brings it into view; a block that is folded opens for it. */
export function goToReading(name: ReadingName): void {
  const element = fieldOf(name);
  if (element === null) return;
  // The field can only take the focus when its block stands open.
  flushSync(() => element.dispatchEvent(new CustomEvent(PLACE_WANTED, { bubbles: true })));
  element.scrollIntoView({ block: 'center' });
  element.focus();
}

/** For buttons that write into a field: it keeps the focus, since its reading is not finished. */
export const KEEPS_FOCUS = {
  onPointerDown: (event: UIEvent): void => {
    event.preventDefault();
  },
  onMouseDown: (event: UIEvent): void => {
    event.preventDefault();
  },
};

/** The focus goes on behind what a button just wrote into a field. */
export function goOnBehind(name: ReadingName): void {
  const element = fieldOf(name);
  if (element === null) return;
  element.focus();
  // The text with its new end stands in the field only after this event.
  queueMicrotask(() => {
    element.setSelectionRange(element.value.length, element.value.length);
  });
}

/** The first field on the screen, wherever the practice begins. */
export function goToFirstReading(): void {
  const [first] = placesOnScreen();
  if (first !== undefined) goToReading(first);
}

/** The fields that can be seen, as they stand on the screen. */
function placesOnScreen(): readonly ReadingName[] {
  return [...document.querySelectorAll(`input[id^="${PREFIX}"]`)].flatMap((element) => {
    const name = readingOf(element);
    return name === null || element.closest('[hidden]') !== null ? [] : [name];
  });
}

/** The field that comes after `name` on the screen, or before it; null at the end. */
export function nextPlace(name: ReadingName, step: 1 | -1): ReadingName | null {
  const places = placesOnScreen();
  return places[places.indexOf(name) + step] ?? null;
}

function sideOf(name: ReadingName): string | undefined {
  return /[RL]$/.exec(name)?.[0];
}

/** The field in the row below `name`, or above it: on the same side where that row has sides; null at the end. */
export function placeInNextRow(name: ReadingName, step: 1 | -1): ReadingName | null {
  const places = placesOnScreen();
  const rowOf = (one: ReadingName): Element | null => fieldOf(one)?.closest('tr') ?? null;
  const here = rowOf(name);
  for (let at = places.indexOf(name) + step; ; at += step) {
    const place = places[at];
    if (place === undefined) return null;
    const row = rowOf(place);
    if (row === here) continue;
    const sameSide = places.find((one) => rowOf(one) === row && sideOf(one) === sideOf(name));
    return sameSide ?? places.find((one) => rowOf(one) === row) ?? place;
  }
}
