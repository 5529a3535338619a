import { goToReading, nextPlace, readingOf } from './hand-place.js';
import type { PrescriptionPlace } from '../session/prescription-entry.js';

/** The id of the element in which a part of the prescription is typed or chosen. */
export function placeId(place: PrescriptionPlace): string {
  return place.side === null ? `prescription-${place.field}` : `prescription-${place.side}-${place.field}`;
}

type PlaceElement = HTMLInputElement | HTMLSelectElement;

function isPlace(element: Element | EventTarget | null): element is PlaceElement {
  return element instanceof HTMLInputElement || element instanceof HTMLSelectElement;
}

/** Whether going on passes it over: an axis without a cylinder, a base without a prism. */
function isPassedOver(place: PlaceElement): boolean {
  const needs = place.dataset['needs'];
  if (needs === undefined || place.value !== '') return false;
  const needed = document.getElementById(needs);
  return isPlace(needed) && needed.value.trim() === '';
}

function placesOnScreen(): readonly PlaceElement[] {
  return [...document.querySelectorAll('[data-prescription-place]')].filter(isPlace);
}

/**
 * Puts the focus into the next place of the prescription, or the one before. Before its first place stands the last reading of the sheet;
 * at the end it stays.
 */
export function goOn(from: EventTarget, step: 1 | -1): void {
  if (!isPlace(from)) return;
  const places = placesOnScreen();
  for (let at = places.indexOf(from) + step; ; at += step) {
    const place = places[at];
    if (place === undefined) {
      if (step === -1) goToLastReading();
      return;
    }
    if (isPassedOver(place)) continue;
    goToPlace(place);
    return;
  }
}

function goToPlace(place: PlaceElement): void {
  place.focus();
  if (place instanceof HTMLInputElement) place.select();
}

function goToLastReading(): void {
  const names = [...document.querySelectorAll('input')].flatMap((element) =>
    element.closest('[hidden]') === null ? (readingOf(element) ?? []) : [],
  );
  const last = names.at(-1);
  if (last !== undefined) goToReading(last);
}

/** From the last reading on the screen into the first place of the prescription; nothing from any other element. */
export function goOnFromReadings(from: EventTarget): void {
  const name = readingOf(from);
  const [first] = placesOnScreen();
  if (name !== null && nextPlace(name, 1) === null && first !== undefined) goToPlace(first);
}
