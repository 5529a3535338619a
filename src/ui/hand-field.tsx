import type { KeyboardEvent } from 'react';
import type { Measurement, ReadingName } from '../core/catalogue/measurement.js';
import type { FieldRow } from '../session/rows.js';
import { goOnBehind, goToReading, KEEPS_FOCUS, nextPlace, placeInNextRow, readingFieldId } from './hand-place.js';
import { withAnotherReading } from './hand-series.js';
import { spokenName } from './sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { nowText } from './now-text.js';
import { unitSign } from './numbers.js';
import type { ShortcutId } from './shortcuts.js';
import { isPressed } from './shortcuts.js';
import { words } from './language.js';

/** As much as is kept of a field. */
const LENGTH_LIMIT = 64;

/** How the keys go on from a field. */
const STEPS = [
  { id: 'nextReading', find: (name) => nextPlace(name, 1) },
  { id: 'previousReading', find: (name) => nextPlace(name, -1) },
  { id: 'rowBelow', find: (name) => placeInNextRow(name, 1) },
  { id: 'rowAbove', find: (name) => placeInNextRow(name, -1) },
] as const satisfies readonly {
  readonly id: ShortcutId;
  readonly find: (name: ReadingName) => ReadingName | null;
}[];

/** Whether something was entered that is no reading. */
export function isUnreadable({ reading }: FieldRow): boolean {
  return !reading.ok && reading.failure.kind !== 'empty';
}

/** The field in which a hand reading is typed, with all that the keyboard does in it. */
export function HandField(props: {
  readonly field: FieldRow;
  readonly measurement: Measurement;
  readonly sheet: SheetInHand;
  /** the ids of what is said about it in the row */
  readonly describedBy: readonly string[];
}) {
  const { field, measurement, sheet } = props;
  const { dispatch } = sheet;
  const id = readingFieldId(field.field);
  const name = spokenName(measurement, field.side);
  const enter = (): void => {
    dispatch({ kind: 'reading-entered', field: field.field, at: nowText() });
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    const step = STEPS.find(({ id }) => isPressed(id, event));
    if (step === undefined) return;
    event.preventDefault();
    enter();
    const next = step.find(field.field);
    if (next !== null) goToReading(next);
  };
  return (
    <span className="hand-field">
      <label>
        {field.side !== null && (
          <span className="side" aria-hidden="true">
            {words.sheet.side[field.side]}
          </span>
        )}
        <input
          id={id}
          className={field.typed.trim().length > 5 ? 'is-long' : undefined}
          type="text"
          // The number keys of some phones have no minus.
          inputMode={measurement.isSigned ? 'text' : 'decimal'}
          autoComplete="off"
          spellCheck={false}
          maxLength={LENGTH_LIMIT}
          enterKeyHint="next"
          aria-label={words.sheet.handField(name, measurement.unit)}
          aria-invalid={isUnreadable(field)}
          aria-describedby={props.describedBy.length === 0 ? undefined : props.describedBy.join(' ')}
          value={field.typed}
          onChange={(event) => {
            dispatch({ kind: 'reading-typed', field: field.field, text: event.currentTarget.value });
          }}
          onFocus={(event) => {
            event.currentTarget.select();
          }}
          onBlur={enter}
          onKeyDown={onKeyDown}
        />
        {measurement.unit === 'deg' && (
          <span className="unit" aria-hidden="true">
            {unitSign('deg')}
          </span>
        )}
      </label>
      {measurement.takenBy === 'scale' && (
        <button
          type="button"
          className="another"
          // With the keyboard a space says the same.
          tabIndex={-1}
          aria-label={words.hand.another(name)}
          {...KEEPS_FOCUS}
          onClick={() => {
            dispatch({ kind: 'reading-typed', field: field.field, text: withAnotherReading(field.typed) });
            goOnBehind(field.field);
          }}
        >
          +
        </button>
      )}
    </span>
  );
}
