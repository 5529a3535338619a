import { VERDICTS } from '../core/reading/trial-series.js';
import type { FieldRow } from '../session/rows.js';
import { goOnBehind, KEEPS_FOCUS } from './hand-place.js';
import { endsWithSize, withVerdict } from './hand-series.js';
import type { SheetInHand } from './use-sheet.js';
import { words } from './language.js';

/** How the size typed last sat: writes the word behind it, where a phone's number keys have no letters. */
export function TrialVerdicts(props: { readonly field: FieldRow; readonly name: string; readonly sheet: SheetInHand }) {
  const { field, sheet } = props;
  const isWaiting = endsWithSize(field.typed);
  return (
    <span className="verdicts" role="group" aria-label={words.hand.tried(props.name)}>
      {VERDICTS.map((verdict) => (
        <button
          key={verdict}
          type="button"
          // Not `disabled`: the button that was pressed would lose the focus.
          aria-disabled={!isWaiting}
          {...KEEPS_FOCUS}
          onClick={() => {
            if (!isWaiting) return;
            sheet.dispatch({ kind: 'reading-typed', field: field.field, text: withVerdict(field.typed, verdict) });
            goOnBehind(field.field);
          }}
        >
          {words.hand.verdicts[verdict]}
        </button>
      ))}
    </span>
  );
}
