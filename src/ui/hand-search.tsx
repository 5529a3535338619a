import type { KeyboardEvent } from 'react';
import { useEffect, useId, useRef, useState } from 'react';
import type { SheetRow } from '../session/rows.js';
import type { NamedPlace } from './hand-matches.js';
import { matchingPlaces, namedPlaces } from './hand-matches.js';
import { goToReading, KEEPS_FOCUS, readingOf } from './hand-place.js';
import { useEquipment } from './equipment.js';
import { isPressed, SHORTCUTS } from './shortcuts.js';
import { useShortcut } from './use-shortcut.js';
import { words } from './language.js';

const SEARCH_KEY = SHORTCUTS.search.strokes[0].key;

/** Finds a field of the sheet by letters of its name, so that the reader can go on in any order. */
export function MeasurementSearch({ rows }: { readonly rows: readonly SheetRow[] }) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const cameFrom = useRef<HTMLElement | null>(null);
  const [typed, setTyped] = useState('');
  const [isOpen, setIsOpen] = useState(false);
  const [at, setAt] = useState(0);
  const list = useRef<HTMLUListElement>(null);
  const hasKey = useEquipment().singleKeys.areOn();
  const places = isOpen ? matchingPlaces(typed, namedPlaces(rows)) : [];

  // A hand reading never has the key of the search in it.
  useShortcut('search', () => input.current?.focus(), { worksIn: (target) => readingOf(target) !== null });
  useEffect(() => {
    list.current?.querySelector('[aria-selected=true]')?.scrollIntoView({ block: 'nearest' });
  }, [at]);

  const close = (): void => {
    setIsOpen(false);
    setTyped('');
    setAt(0);
  };
  const goTo = ({ name }: NamedPlace): void => {
    close();
    goToReading(name);
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const place = places[at];
    const isNext = isPressed('nextFound', event);
    if (isNext || isPressed('previousFound', event)) {
      const step = isNext ? 1 : -1;
      setIsOpen(true);
      if (places.length > 0) setAt((at + step + places.length) % places.length);
    } else if (isPressed('goToFound', event) && place !== undefined) {
      goTo(place);
    } else if (isPressed('leaveSearch', event)) {
      close();
      cameFrom.current?.focus();
    } else {
      return;
    }
    event.preventDefault();
  };
  return (
    <div className="search">
      <label htmlFor={id}>{words.search.label}</label>
      <input
        ref={input}
        id={id}
        type="text"
        role="combobox"
        autoComplete="off"
        spellCheck={false}
        maxLength={40}
        enterKeyHint="go"
        placeholder={hasKey ? SEARCH_KEY : undefined}
        aria-keyshortcuts={hasKey ? SEARCH_KEY : undefined}
        aria-autocomplete="list"
        aria-expanded={isOpen}
        aria-controls={`${id}-list`}
        aria-activedescendant={places[at] === undefined ? undefined : `${id}-${places[at].name}`}
        value={typed}
        onFocus={({ relatedTarget }) => {
          cameFrom.current = relatedTarget instanceof HTMLElement ? relatedTarget : null;
          setIsOpen(true);
        }}
        onBlur={close}
        onClick={() => {
          setIsOpen(true);
        }}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          setIsOpen(true);
          setAt(0);
        }}
        onKeyDown={onKeyDown}
      />
      <ul
        ref={list}
        id={`${id}-list`}
        role="listbox"
        aria-label={words.search.label}
        hidden={!isOpen || places.length === 0}
      >
        {places.map((place, index) => (
          <li
            key={place.name}
            id={`${id}-${place.name}`}
            role="option"
            aria-selected={index === at}
            // The input must keep the focus until the click has come.
            {...KEEPS_FOCUS}
            onClick={() => {
              goTo(place);
            }}
          >
            {place.label}
          </li>
        ))}
      </ul>
      <p className={isOpen && places.length === 0 ? 'search-none' : 'visually-hidden'} role="status">
        {isOpen && typed !== '' && (places.length === 0 ? words.search.none : words.search.count(places.length))}
      </p>
    </div>
  );
}
