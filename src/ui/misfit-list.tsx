import { useId } from 'react';
import type { Explanation } from '../core/crosscheck/reconciliation.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Misfit } from '../session/misfits.js';
import { explanationsOf } from '../session/explanations.js';
import { goToReading } from './hand-place.js';
import { misfitExplanations, misfitSentence } from './misfit-sentences.js';
import type { WrittenSheet } from './slip-sentences.js';
import { offerPlaceWords, offerWords, placesOf, probableExplanation, readAgainWords } from './slip-marks.js';
import { nowText } from './now-text.js';
import { words } from './language.js';
import { fieldDecimalSign } from './numbers.js';
import type { SheetInHand } from './use-sheet.js';
import { useWrittenSheet } from './use-written-sheet.js';

/** What does not fit, and what probably went wrong. It leads to the fields, and changes one only where the reader says so. */
export function MisfitList({ sheet }: { readonly sheet: SheetInHand }) {
  const headingId = useId();
  const { rows, misfits, dispatch } = sheet;
  const written = useWrittenSheet(sheet);
  const isAnyIn = rows.some(({ fields }) => fields.some(({ reading }) => reading.ok));
  if (misfits.length === 0 && !isAnyIn) return null;

  const take = (explanation: Explanation): void => {
    const restorations = explanation.slips.flatMap((slip) => slip.restorations);
    dispatch({
      kind: 'restoration-taken',
      restorations,
      at: nowText(),
      decimalSign: fieldDecimalSign(),
    });
    // The button goes with what it mended; the reader goes on at the number that changed.
    const [first] = restorations;
    if (first !== undefined) goToReading(first.name);
  };

  return (
    <section className="misfits" aria-labelledby={headingId}>
      <h2 id={headingId}>{words.misfit.heading}</h2>
      {misfits.length === 0 ? (
        <p>{words.misfit.fits}</p>
      ) : (
        <ul>
          {misfits.map((misfit) => (
            <li key={`${misfit.kind} ${misfit.names.join(' ')}`}>
              <p>
                {QUIET.includes(misfit.kind) ? (
                  misfitSentence(misfit, written)
                ) : (
                  <strong>{misfitSentence(misfit, written)}</strong>
                )}
              </p>
              {misfitExplanations(misfit, written).map((sentence) => (
                <p key={sentence}>{sentence}</p>
              ))}
              <MisfitActions misfit={misfit} written={written} onTake={take} />
            </li>
          ))}
        </ul>
      )}
      {misfits.some((misfit) => explanationsOf(misfit).length > 0) && <p className="note">{words.misfit.basis}</p>}
    </section>
  );
}

/** What asks for a second look only: nothing shows that it is wrong. */
const QUIET: readonly Misfit['kind'][] = ['does-not-add-up', 'unusual'];

/** Chosen: more places than this are no help in finding the wrong one. */
const MOST_PLACES = 4;

/** The places that the likeliest cause names, then the others. */
function placesToRead(misfit: Misfit): readonly ReadingName[] {
  const [best] = explanationsOf(misfit);
  const named = best === undefined ? [] : placesOf(best);
  return [...new Set([...named, ...misfit.names])].slice(0, MOST_PLACES);
}

function MisfitActions(props: {
  readonly misfit: Misfit;
  readonly written: WrittenSheet;
  readonly onTake: (explanation: Explanation) => void;
}) {
  const { misfit, written, onTake } = props;
  const probable = probableExplanation(misfit);
  const places = placesToRead(misfit);
  return (
    <div className="actions">
      {places.map((name) => (
        <button
          key={name}
          type="button"
          onClick={() => {
            goToReading(name);
          }}
        >
          {readAgainWords(name, written.catalogue)}
        </button>
      ))}
      {probable !== null && (
        <button
          type="button"
          onClick={() => {
            onTake(probable);
          }}
        >
          {offerWords(probable, written.catalogue)}
          <span className="visually-hidden">{offerPlaceWords(probable, written.catalogue)}</span>
        </button>
      )}
    </div>
  );
}
