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

/** Puts the focus into the next place of the prescription, or the one before. At the end it stays. */
export function goOn(from: EventTarget, step: 1 | -1): void {
  if (!isPlace(from)) return;
  const places = [...document.querySelectorAll('[data-prescription-place]')].filter(isPlace);
  for (let at = places.indexOf(from) + step; ; at += step) {
    const place = places[at];
    if (place === undefined) return;
    if (isPassedOver(place)) continue;
    place.focus();
    if (place instanceof HTMLInputElement) place.select();
    return;
  }
}
