import { useId } from 'react';
import { hasWritten, otherReader } from '../session/entries.js';
import { READER_IDS } from '../core/record/reader-sheet.js';
import { readerId, readerNameId } from './place-ids.js';
import type { SheetInHand } from './use-sheet.js';
import { words } from './language.js';

/** Far below what is kept; longer names fit nowhere. */
export const READER_NAME_LIMIT = 64;

/** Whose sheet is open, and what the two readers are called. */
export function ReaderChoice({ sheet }: { readonly sheet: SheetInHand }) {
  const { dispatch, state } = sheet;
  const name = useId();
  const hasOtherRead = hasWritten(state.readers[otherReader(state.reader)]);
  return (
    <>
      <fieldset className="readers">
        <legend className="visually-hidden">{words.reader.legend}</legend>
        {READER_IDS.map((reader) => (
          <span key={reader} className="reader">
            <label>
              <input
                id={readerId(reader)}
                type="radio"
                name={name}
                checked={state.reader === reader}
                onChange={() => {
                  dispatch({ kind: 'reader-chosen', reader });
                }}
              />
              {words.reader[reader]}
            </label>
            <input
              id={readerNameId(reader)}
              type="text"
              className="reader-name"
              aria-label={words.reader.name[reader]}
              placeholder={words.reader.namePlaceholder}
              autoComplete="off"
              spellCheck={false}
              maxLength={READER_NAME_LIMIT}
              value={state.readers[reader].reader}
              onChange={(event) => {
                dispatch({ kind: 'reader-named', reader, name: event.currentTarget.value });
              }}
            />
          </span>
        ))}
      </fieldset>
      <p className="note readers-note" role="status">
        {hasOtherRead && words.reader.coveredFrom[state.reader]}
      </p>
    </>
  );
}
